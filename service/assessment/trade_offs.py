"""What is gained and what is lost, in one paragraph.

Where the service has a number it is given; where no published number exists (comfort, heat, steering response, wear)
only the usual direction is said, as common practice.
"""

from __future__ import annotations

from service.assessment.comparison import AxleView, CarView
from service.assessment.words import plain, signed
from service.core.sources import basis

PRACTICE = basis("COMMON-PRACTICE", "usual direction, no published number")
# Less than this is no difference worth a word.
WORTH_A_WORD_PERCENT = 0.5
WORTH_A_WORD_MM = 2.0


def trade_offs(car: CarView) -> str:
    """Return the paragraph on gains and losses."""
    parts = [
        *(_axle_words(view) for view in (car.front, car.rear)),
        _usual_words(car),
    ]
    text = " ".join(part for part in parts if part)
    return text or "Nothing changes that could be felt."


def _axle_words(view: AxleView) -> str:
    stiffness, onset = view.change.cornering_stiffness, view.change.aquaplaning_onset_percent
    gain, wet = 100.0 * (stiffness.value - 1.0), onset.value
    if not (abs(gain) > WORTH_A_WORD_PERCENT or abs(wet) > WORTH_A_WORD_PERCENT):
        return ""
    dry = f"about {signed(gain, 0)} % cornering stiffness in the dry"
    dry += f" ({signed(100.0 * (stiffness.low - 1.0), 0)} to {signed(100.0 * (stiffness.high - 1.0), 0)} %)"
    if wet == wet and abs(wet) > WORTH_A_WORD_PERCENT:
        when = "earlier" if wet < 0.0 else "later"
        link = "but" if (wet < 0.0) == (gain > 0.0) else "and"
        return f"{view.name.capitalize()}: {dry}, {link} it floats about {plain(abs(wet))} % {when} on standing water."
    return f"{view.name.capitalize()}: {dry}."


def _usual_words(car: CarView) -> str:
    heights = [view.then.facts.section_height_mm - view.now.facts.section_height_mm for view in (car.front, car.rear)]
    widths = [view.then.facts.nominal_width_mm - view.now.facts.nominal_width_mm for view in (car.front, car.rear)]
    words = []
    if min(heights) < -WORTH_A_WORD_MM and max(heights) < WORTH_A_WORD_MM:
        words.append("lower sidewalls usually answer the steering sooner, ride harder and guard the rim less")
    if max(heights) > WORTH_A_WORD_MM and min(heights) > -WORTH_A_WORD_MM:
        words.append("higher sidewalls usually ride softer and answer the steering later")
    if max(widths) > WORTH_A_WORD_MM and min(widths) > -WORTH_A_WORD_MM:
        words.append("wider tyres usually follow ruts more, roll harder and warm up more slowly")
    if min(widths) < -WORTH_A_WORD_MM and max(widths) < WORTH_A_WORD_MM:
        words.append("narrower tyres usually roll more easily, follow ruts less and run hotter when driven hard")
    if not words:
        return ""
    return f"Common practice, without a number: {'; '.join(words)}."
