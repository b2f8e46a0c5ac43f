"""A plan in words: rule, pairs, repeats and order, as a tester reads them on paper."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from types import MappingProxyType

from service.assessment.batch.plan import Plan, PlannedAxle
from service.assessment.batch.plan_case import PressureRule
from service.assessment.batch.plan_effects import EFFECTS, EffectName
from service.assessment.batch.plan_pairs import REFERENCE, Difference, Pair, Repeats
from service.assessment.checks.words import plain, signed
from service.core.findings import Estimate
from service.core.numeric import known

PRESENT = "present wheels"
RULES: Mapping[PressureRule, str] = MappingProxyType(
    {
        "share_of_load_index": "Each tyre may carry, at its pressure, the same share of its load index as the present "
        "tyre of that axle. What a larger size carries more stays with it.",
        "load_over_capacity": "Each tyre carries its load as the same share of what it may carry at its pressure. A "
        "larger size is let down until it has no more in hand than the present one, so the grip model, which knows "
        "nothing but that, sees no difference between sizes in the dry.",
    }
)
ORDER = (
    "Drive the present wheels before and after each combination, and hold it against the mean of the two: what drifts "
    "steadily (road, weather, driver) falls out. Turn the order round in every second block."
)
NO_ORDER = "None of the combinations can be driven."
_DIGITS = 2
_MINUS, _HYPHEN = "−", "-"


def name_of(plan: Plan, place: int) -> str:
    """Return what a combination is called: its label, its id, or its place."""
    if place == REFERENCE:
        return PRESENT
    asked = plan.combinations[place].asked
    return asked.label or asked.id or f"combination {place + 1}"


def in_band(estimate: Estimate[float], unit: str) -> str:
    """Return an estimate with its band in words."""
    if estimate.low == estimate.high == 0.0:
        return "as now"
    digits = _DIGITS if unit == "deg/g" else 1
    value, low, high = (signed(each, digits).replace(_HYPHEN, _MINUS) for each in estimate)
    return f"{value} {unit} (between {low} and {high})"


def pair_text(plan: Plan, pair: Pair) -> str:
    """Return what a test of two combinations may show."""
    first, second = name_of(plan, pair.first), name_of(plan, pair.second)
    if not pair.apart:
        return f"A test will hardly tell {second} from {first}."
    told = "; ".join(_difference(each) for each in pair.apart)
    return f"{second} against {first}, what a test may show: {told}."


def _difference(found: Difference) -> str:
    effect = EFFECTS[found.effect]
    words = f"{effect.words} {in_band(found.difference, effect.unit)}"
    return f"{words}, {plain(found.repeats)} tests of each" if known(found.repeats) else words


def repeats_text(repeats: Repeats) -> str:
    """Return how many tests an effect takes."""
    words = EFFECTS[repeats.effect].words
    scatter = f"with tests that scatter by {plain(repeats.standard_deviation, _DIGITS)} {EFFECTS[repeats.effect].unit}"
    if not isfinite(repeats.for_greatest):
        return f"{_capital(words)}: no difference to look for."
    least, most = plain(repeats.for_greatest), plain(repeats.for_all)
    if least == most:
        return f"{_capital(words)}: {least} tests of each, {scatter}."
    return f"{_capital(words)}: {least} tests of each for the greatest difference, {most} for the least, {scatter}."


def axle_text(axle: PlannedAxle) -> str:
    """Return the wheel of an axle and its pressure in words."""
    fitment = axle.fitment
    words = f"{fitment.tyre.designation.canonical} on {fitment.rim.designation.canonical}"
    if not known(axle.pressure_kpa):
        return f"{words}; its maker states the pressure"
    held = ", not by the rule: the axle needs it, or the tyre usually gets no more" if axle.pressure_held else ""
    return f"{words}; {plain(axle.pressure_kpa)} kPa{held}"


def blocks_text(plan: Plan) -> str:
    """Return how often the order is to be driven."""
    if not plan.order:
        return NO_ORDER
    if not known(plan.blocks):
        return f"{ORDER} State how far repeated tests scatter to learn how many blocks it takes."
    return f"{ORDER} {plain(plan.blocks)} blocks show the greatest difference of each effect."


def effect_words(name: EffectName) -> str:
    """Return an effect with its unit, as the head of a column."""
    return f"{_capital(EFFECTS[name].words)} [{EFFECTS[name].unit}]"


def _capital(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}"
