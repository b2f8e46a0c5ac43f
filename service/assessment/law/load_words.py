"""What the tyres of an axle carry beside what a rule of a place asks of them, in a clause without its full stop."""

from __future__ import annotations

from service.assessment.checks.words import apart, plain
from service.assessment.view.views import AxleView
from service.core.saying import Amount, Said, say
from service.rules.rule import Bound, Rule


def unit_of(bound: Bound) -> str:
    """Return the unit as it stands behind a number; an index has none."""
    return "" if bound.unit == "index" else bound.unit


def law_number(bound: Bound, value: float) -> Amount:
    """Return a number without its sign; one beyond its limit with as many decimals as tell it from the limit."""
    digits, unit = 1 if bound.unit == "%" else 0, unit_of(bound)
    if bound.holds(value):
        return plain(abs(value), digits, unit)
    return apart(abs(value), abs(bound.value), digits, unit)


def carried_beside(rule: Rule, value: float, view: AxleView) -> Said:
    """Return what the tyres carry beside what they must; `value` is the margin in the unit of the rule's bound."""
    bound = rule.bounds[0]
    margin, mass_kg, tyres = law_number(bound, value), view.axle.max_axle_mass_kg, view.axle.tyres
    if bound.quantity == "tyre_load_rating_margin_kg":
        marked, share = plain(mass_kg / tyres + value, 1, "kg"), plain(mass_kg / tyres, 1, "kg")
        return _each_tyre(marked, share, margin, value)
    if bound.quantity == "load_rating_sum_margin_kg":
        ratings = say("The load ratings of the axle's tyres")
        if rule.divisor != 1.0:
            ratings = say(
                "The load ratings of the axle's tyres, passenger tyres divided by {divisor},",
                divisor=plain(rule.divisor, 2),
            )
        summed = say("{ratings} add up to {sum}", ratings=ratings, sum=plain(mass_kg + value, 0, "kg"))
        return _beside_the_mass(summed, plain(mass_kg, 0, "kg"), margin, value)
    counted_kg = mass_kg * view.conditions.axle_mass_share
    carried = plain(counted_kg * (1.0 + 0.01 * value), 0, "kg")
    return _by_index(carried, plain(counted_kg, 0, "kg"), margin, value)


def _each_tyre(marked: Amount, share: Amount, margin: Amount, value: float) -> Said:
    if value == 0.0:
        return say(
            "Each tyre is marked for {marked}, as much as its share of the axle mass ({share})",
            marked=marked,
            share=share,
        )
    if value > 0.0:
        return say(
            "Each tyre is marked for {marked}, {margin} more than its share of the axle mass ({share})",
            marked=marked,
            margin=margin,
            share=share,
        )
    return say(
        "Each tyre is marked for {marked}, {margin} less than its share of the axle mass ({share})",
        marked=marked,
        margin=margin,
        share=share,
    )


def _beside_the_mass(summed: Said, mass: Amount, margin: Amount, value: float) -> Said:
    if value == 0.0:
        return say("{summed}, as much as the axle mass of {mass}", summed=summed, mass=mass)
    if value > 0.0:
        return say("{summed}, {margin} more than the axle mass of {mass}", summed=summed, margin=margin, mass=mass)
    return say("{summed}, {margin} less than the axle mass of {mass}", summed=summed, margin=margin, mass=mass)


def _by_index(carried: Amount, counted: Amount, margin: Amount, value: float) -> Said:
    if value == 0.0:
        return say(
            "By their load indices the axle's tyres carry {carried}, as much as the {counted} that count",
            carried=carried,
            counted=counted,
        )
    if value > 0.0:
        return say(
            "By their load indices the axle's tyres carry {carried}, {margin} more than the {counted} that count",
            carried=carried,
            margin=margin,
            counted=counted,
        )
    return say(
        "By their load indices the axle's tyres carry {carried}, {margin} less than the {counted} that count",
        carried=carried,
        margin=margin,
        counted=counted,
    )
