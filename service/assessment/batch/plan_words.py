"""A plan in words: rule, pairs, repeats and order, as a tester reads them on paper."""

from __future__ import annotations

from collections.abc import Mapping
from math import isfinite
from types import MappingProxyType

from service.assessment.batch.plan import Plan, PlannedAxle
from service.assessment.batch.plan_case import PressureRule
from service.assessment.batch.plan_effects import EFFECTS, EffectName
from service.assessment.batch.plan_pairs import REFERENCE, Difference, Pair, Repeats
from service.assessment.checks.words import plain
from service.core.findings import AxleName, Estimate
from service.core.numeric import known
from service.core.saying import Amount, Said, capital, joined, say, sentences

PRESENT = say("present wheels")
RULES: Mapping[PressureRule, Said] = MappingProxyType(
    {
        "share_of_load_index": say(
            "Each tyre may carry, at its pressure, the same share of its load index as the present tyre of that axle. "
            "What a larger size carries more stays with it."
        ),
        "load_over_capacity": say(
            "Each tyre carries its load as the same share of what it may carry at its pressure. A larger size is let "
            "down until it has no more in hand than the present one, so the grip model, which knows nothing but that, "
            "sees no difference between sizes in the dry."
        ),
    }
)
ORDER = say(
    "Drive the present wheels before and after each combination, and hold it against the mean of the two: what drifts "
    "steadily (road, weather, driver) falls out. Turn the order round in every second block."
)
NO_ORDER = say("None of the combinations can be driven.")
_DIGITS = 2


def name_of(plan: Plan, place: int) -> str:
    """Return what a combination is called: its label, its id, or its place."""
    if place == REFERENCE:
        return PRESENT
    asked = plan.combinations[place].asked
    return asked.label or asked.id or say("combination {number}", number=Amount(place + 1))


def in_band(estimate: Estimate[float], unit: str) -> Said:
    """Return an estimate with its band in words."""
    if estimate.low == estimate.high == 0.0:
        return say("as now")
    digits = _DIGITS if unit == "deg/g" else 1
    return say(
        "{value} (between {low} and {high})",
        value=Amount(estimate.value, unit, digits, signed=True),
        low=Amount(estimate.low, unit, digits, signed=True, bare=True),
        high=Amount(estimate.high, unit, digits, signed=True, bare=True),
    )


def pair_text(plan: Plan, pair: Pair) -> Said:
    """Return what a test of two combinations may show."""
    first, second = name_of(plan, pair.first), name_of(plan, pair.second)
    if not pair.apart:
        return say("A test will hardly tell {second} from {first}.", second=second, first=first)
    return say(
        "{second} against {first}, what a test may show: {differences}.",
        second=second,
        first=first,
        differences=joined(map(_difference, pair.apart), "; "),
    )


def _difference(found: Difference) -> Said:
    effect = EFFECTS[found.effect]
    band = in_band(found.difference, effect.unit)
    if not known(found.repeats):
        return say("{effect} {band}", effect=effect.words, band=band)
    return say("{effect} {band}, {count} tests of each", effect=effect.words, band=band, count=plain(found.repeats))


def repeats_text(repeats: Repeats) -> Said:
    """Return how many tests an effect takes."""
    effect = EFFECTS[repeats.effect]
    words, scatter = capital(effect.words), plain(repeats.standard_deviation, _DIGITS, effect.unit)
    if not isfinite(repeats.for_greatest):
        return say("{effect}: no difference to look for.", effect=words)
    least, most = plain(repeats.for_greatest), plain(repeats.for_all)
    if least == most:
        return say(
            "{effect}: {count} tests of each, with tests that scatter by {scatter}.",
            effect=words,
            count=least,
            scatter=scatter,
        )
    return say(
        "{effect}: {least} tests of each for the greatest difference, {most} for the least, with tests that scatter by "
        "{scatter}.",
        effect=words,
        least=least,
        most=most,
        scatter=scatter,
    )


def axle_text(axle: PlannedAxle) -> Said:
    """Return the wheel of an axle and its pressure in words."""
    tyre, rim = axle.fitment.tyre.designation.canonical, axle.fitment.rim_in_words
    if not known(axle.pressure_kpa):
        return say("{tyre} on {rim}; its maker states the pressure", tyre=tyre, rim=rim)
    pressure = plain(axle.pressure_kpa, 0, "kPa")
    if axle.pressure_held:
        return say(
            "{tyre} on {rim}; {pressure}, not by the rule: the axle needs it, or the tyre usually gets no more",
            tyre=tyre,
            rim=rim,
            pressure=pressure,
        )
    return say("{tyre} on {rim}; {pressure}", tyre=tyre, rim=rim, pressure=pressure)


def rims_to_buy(plan: Plan) -> list[tuple[AxleName, str, list[str]]]:
    """Return the fewest rims to buy: the axle, the rim in words, and the tyres that it serves there."""
    found = []
    for axle, smallest, tyres in plan.rims_to_buy:
        for each in smallest.rims:
            serves = [tyres[use.tyre_at].designation.canonical for use in each.serves]
            rim = f"{plain(each.width_in, 1)}J x {plain(each.diameter_code, 1)} ET{plain(each.offset_mm)}"
            found.append((axle, rim, serves))
    return found


def fewest_for_certain(plan: Plan) -> bool:
    """Return whether no smaller set of rims would do."""
    return all(each.smallest.exact for each in plan.rims_to_buy)


def rims_text(plan: Plan) -> Said:
    """Return in a sentence which rims are to be bought."""
    bought = rims_to_buy(plan)
    if not bought:
        return say("No rims have to be bought.")
    told = joined(
        [
            say("front axle: {rim} for {tyres}", rim=rim, tyres=joined(serves))
            if axle == "front"
            else say("rear axle: {rim} for {tyres}", rim=rim, tyres=joined(serves))
            for axle, rim, serves in bought
        ],
        "; ",
    )
    if fewest_for_certain(plan):
        return say("The fewest rims to buy: {rims}.", rims=told)
    return say("Rims to buy: {rims}.", rims=told)


def blocks_text(plan: Plan) -> Said:
    """Return how often the order is to be driven."""
    if not plan.order:
        return NO_ORDER
    if not known(plan.blocks):
        return sentences(ORDER, say("State how far repeated tests scatter to learn how many blocks it takes."))
    blocks = say("{count} blocks show the greatest difference of each effect.", count=plain(plan.blocks))
    return sentences(ORDER, blocks)


def effect_words(name: EffectName) -> Said:
    """Return an effect with its unit, as the head of a column."""
    effect = EFFECTS[name]
    # Say: an effect of a test and its unit
    return say("{effect} [{unit}]", effect=capital(effect.words), unit=_unit(effect.unit))


def _unit(unit: str) -> str:
    """Return a unit as a column is headed with it."""
    return say("points") if unit == "points" else say("deg/g") if unit == "deg/g" else unit
