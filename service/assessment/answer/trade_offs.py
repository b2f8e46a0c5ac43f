"""What is gained and what is lost, in one paragraph.

Where the service has a number it is given; where no published number exists (comfort, heat, steering response, wear)
only the usual direction is said, as common practice.
"""

from __future__ import annotations

from service.assessment.checks.balance import balance
from service.assessment.checks.words import plain, signed
from service.assessment.view.views import AxleView, CarView
from service.core.sources import basis

PRACTICE = basis("COMMON-PRACTICE", "usual direction, no published number")
# Less than this is no difference worth a word.
WORTH_A_WORD_PERCENT = 0.5
WORTH_A_WORD_MM = 2.0


def trade_offs(car: CarView) -> str:
    """Return the paragraph on gains and losses."""
    said = (_axle_words(car.front), _axle_words(car.rear), _balance_words(car), _usual_words(car))
    text = " ".join(part for part in said if part)
    return text or "Nothing changes that could be felt."


def _axle_words(view: AxleView) -> str:
    """Return what is gained and lost on one axle, empty when nothing is worth a word."""
    gain = 100.0 * (view.change.cornering_stiffness.value - 1.0)
    wet = view.change.aquaplaning_onset_percent.value
    said = [_patch_words(view)]
    # Comparisons with NaN are false, so what is not known is not spoken of.
    if abs(gain) > WORTH_A_WORD_PERCENT:
        _, low, high = view.change.cornering_stiffness
        band = f"{signed(100.0 * (low - 1.0), 0)} to {signed(100.0 * (high - 1.0), 0)} %"
        said.append(f"about {signed(gain, 0)} % cornering stiffness in the dry ({band})")
    if abs(wet) > WORTH_A_WORD_PERCENT:
        way = "lower" if wet < 0.0 else "higher"
        link = "but " if (wet < 0.0) == (gain > 0.0) and abs(gain) > WORTH_A_WORD_PERCENT else ""
        said.append(f"{link}afloat on standing water from a speed about {plain(abs(wet))} % {way}")
    track = view.change.track_mm
    if abs(track) > WORTH_A_WORD_MM:
        said.append(f"a track {plain(abs(track))} mm {'wider' if track > 0.0 else 'narrower'}")
    words = ", ".join(each for each in said if each)
    return f"{view.name.capitalize()}: {words}." if words else ""


def _patch_words(view: AxleView) -> str:
    now, then = view.now.behaviour, view.then.behaviour
    wider = 100.0 * (then.patch_width_mm / now.patch_width_mm - 1.0)
    longer = 100.0 * (then.patch_length_mm / now.patch_length_mm - 1.0)
    found = []
    if abs(wider) > WORTH_A_WORD_PERCENT:
        found.append(f"{plain(abs(wider))} % {'wider' if wider > 0.0 else 'narrower'}")
    if abs(longer) > WORTH_A_WORD_PERCENT:
        found.append(f"{plain(abs(longer))} % {'longer' if longer > 0.0 else 'shorter'}")
    return f"a contact patch about {' and '.join(found)}" if found else ""


def _balance_words(car: CarView) -> str:
    found = balance(car)
    return "" if found.degree == "negligible" else found.text


def _usual_words(car: CarView) -> str:
    heights = [view.then.facts.section_height_mm - view.now.facts.section_height_mm for view in (car.front, car.rear)]
    widths = [view.then.facts.nominal_width_mm - view.now.facts.nominal_width_mm for view in (car.front, car.rear)]
    words = []
    if min(heights) < -WORTH_A_WORD_MM and max(heights) < WORTH_A_WORD_MM:
        words.append("lower sidewalls usually make the steering quicker and the ride harder, and guard the rim less")
    if max(heights) > WORTH_A_WORD_MM and min(heights) > -WORTH_A_WORD_MM:
        words.append("higher sidewalls usually make the ride softer and the steering slower")
    if max(widths) > WORTH_A_WORD_MM and min(widths) > -WORTH_A_WORD_MM:
        words.append("wider tyres usually follow ruts more, roll harder and warm up more slowly")
    if min(widths) < -WORTH_A_WORD_MM and max(widths) < WORTH_A_WORD_MM:
        words.append("narrower tyres usually roll more easily, follow ruts less and run hotter when driven hard")
    if not words:
        return ""
    return f"Common practice, without a number: {'; '.join(words)}."
