"""What a rule of a place found, in a sentence: first what was found, then what the place allows."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.checks.words import apart, plain
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import known, unknown
from service.rules.quantities import QUANTITIES
from service.rules.rule import Bound, Rule

# For whom a rule is written may hang on these facts of the vehicle.
FACTS: Mapping[str, str] = MappingProxyType(
    {
        "category": "the vehicle's category",
        "driven_axle": "which axle is driven",
        "max_mass_kg": "the vehicle's maximum mass",
        "built": "the day on which the vehicle was built",
    }
)


class _Change(NamedTuple):
    """How the change of a quantity is told: of what, and the verbs for more and less of it."""

    of: str
    more: str = "grows"
    less: str = "shrinks"


_TRACK, _OFFSET = _Change("The track"), _Change("The offset (ET)")
_DIAMETER, _CIRCUMFERENCE = _Change("The overall diameter"), _Change("The rolling circumference")
_SECTION, _RIM = _Change("The tyre's section width"), _Change("The rim diameter")
_CHANGES: Mapping[str, _Change] = MappingProxyType(
    {
        "track_change_percent": _TRACK,
        "track_change_mm": _TRACK,
        "track_change_abs_mm": _TRACK,
        "offset_change_mm": _OFFSET,
        "overall_diameter_change_percent": _DIAMETER,
        "overall_diameter_change_abs_percent": _DIAMETER,
        "overall_diameter_change_mm": _DIAMETER,
        "rolling_circumference_change_percent": _CIRCUMFERENCE,
        "rolling_circumference_change_abs_percent": _CIRCUMFERENCE,
        "section_width_change_mm": _SECTION,
        "section_width_change_percent": _SECTION,
        "rim_diameter_change_mm": _RIM,
        "rim_diameter_change_abs_mm": _RIM,
        "rim_width_change_mm": _Change("The rim width"),
        "load_index_change": _Change("The load index", "rises", "falls"),
        "speed_symbol_change_kmh": _Change("The speed of the tyre's symbol", "rises", "falls"),
    }
)
_STRUCTURES = {True: "radial", False: "diagonal"}


def explained(rule: Rule, values: tuple[float, ...], view: AxleView | CarView) -> str:
    """Return what was found and what the place allows; a yes or no says what was found alone."""
    bounds = list(zip(rule.bounds, values, strict=True))
    if rule.bounds[0].unit == "yes/no":
        return f"{_yes_or_no(rule.bounds[0].quantity, view)}."
    track_mm = view.change.track_mm if isinstance(view, AxleView) else values[0]
    if rule.bounds[0].quantity == "track_change_percent" and unknown(values[0]) and known(track_mm):
        found = _changed(_TRACK, f"{plain(abs(track_mm))} mm", track_mm)
        more = ", and that is more on any car" if track_mm > 0.0 else ""
        return f"{found}; {_allowed(rule, None)}{more}."
    if any(unknown(value) for value in values):
        first = QUANTITIES[rule.bounds[0].quantity].words
        return f"The {first} is not known; {_allowed(rule, None)}."
    return f"{_found(rule, bounds, view)}; {_allowed(rule, values[0])}."


def _found(rule: Rule, bounds: list[tuple[Bound, float]], view: AxleView | CarView) -> str:
    bound, value = bounds[0]
    change = _CHANGES.get(bound.quantity)
    if change is None:
        plainly = ", ".join(_plainly(*each) for each in bounds)
        return _carried(rule, value, view) or (plainly if plainly[0].isupper() else f"The tyre is made for {plainly}")
    numbers = " or ".join(_number(*each) for each in bounds)
    if "_abs_" in bound.quantity and value != 0.0:
        return f"{change.of} changes by {numbers}"
    return _changed(change, numbers, value)


def _changed(change: _Change, numbers: str, value: float) -> str:
    if value == 0.0:
        return f"{change.of} does not change"
    if numbers.startswith("0 "):
        return f"{change.of} hardly changes"
    return f"{change.of} {change.more if value > 0.0 else change.less} by {numbers}"


def _number(bound: Bound, value: float) -> str:
    """Return a number without its sign; one beyond its limit with as many decimals as tell it from the limit."""
    digits = 1 if bound.unit == "%" else 0
    number = plain(abs(value), digits) if bound.holds(value) else apart(abs(value), abs(bound.value), digits)
    return number if bound.unit == "index" else f"{number} {bound.unit}"


def _carried(rule: Rule, value: float, view: AxleView | CarView) -> str:
    """Return what the tyres of an axle carry beside what they must; empty for other quantities."""
    bound = rule.bounds[0]
    if not isinstance(view, AxleView) or "margin" not in bound.quantity or bound.unit == "km/h":
        return ""
    mass, tyres = view.axle.max_axle_mass_kg, view.axle.tyres
    beside = f"{_number(bound, value)} {'more' if value > 0.0 else 'less'} than" if value != 0.0 else "as much as"
    if bound.quantity == "tyre_load_rating_margin_kg":
        marked, share = plain(mass / tyres + value, 1), plain(mass / tyres, 1)
        return f"Each tyre is marked for {marked} kg, {beside} its share of the axle mass ({share} kg)"
    if bound.quantity == "load_rating_sum_margin_kg":
        over = f", passenger tyres divided by {plain(rule.divisor, 2)}," if rule.divisor != 1.0 else ""
        summed = f"The load ratings of the axle's tyres{over} add up to {plain(mass + value)} kg"
        return f"{summed}, {beside} the axle mass of {plain(mass)} kg"
    counted = mass * view.conditions.axle_mass_share
    carried = plain(counted * (1.0 + 0.01 * value))
    return f"By their load indices the axle's tyres carry {carried} kg, {beside} the {plain(counted)} kg that count"


def _plainly(bound: Bound, value: float) -> str:
    if bound.quantity == "speed_capability_kmh":
        return f"The tyre is made for {plain(value)} km/h"
    if bound.quantity == "speed_capability_margin_kmh":
        if value == 0.0:
            return "just the vehicle's top speed"
        return f"{_number(bound, value)} {'above' if value > 0.0 else 'below'} the vehicle's top speed"
    if bound.quantity == "load_index_spread" and value == 0.0:
        return "The load indices on the axle do not differ"
    return f"The {QUANTITIES[bound.quantity].words} is {_number(bound, value)}"


def _allowed(rule: Rule, found: float | None) -> str:
    """Return what the place allows; `found` says which way the quantity went, None where that is not known."""
    limits = [_limit(bound, found) for bound in rule.bounds]
    verb = "is enough" if rule.bounds[0].quantity.startswith("speed_capability") else "is allowed"
    return f"{' or '.join(limits)} {verb} {rule.place}"


def _limit(bound: Bound, found: float | None) -> str:
    quantity, value = bound.quantity, bound.value
    number = plain(abs(value), 2) if bound.unit == "index" else f"{plain(abs(value), 2)} {bound.unit}"
    side = "more" if value > 0.0 else "less"
    if quantity not in _CHANGES:
        return _limit_of_a_level(quantity, number, value, side)
    if value == 0.0:
        return "no decrease" if bound.comparison == "at_least" else "no increase"
    if "_abs_" in quantity:
        return number if found else f"{number} either way"
    # The number alone is clear only where the quantity went that way.
    return number if found is not None and found * value > 0.0 else f"{number} {side}"


def _limit_of_a_level(quantity: str, number: str, value: float, side: str) -> str:
    """Return the limit of what is no change: a speed, a difference, a load beyond what must be carried."""
    special = {
        "speed_capability_kmh": number,
        "speed_capability_margin_kmh": "the vehicle's top speed",
        "load_index_spread": f"a difference of {number}",
    }
    if quantity in special and not (value != 0.0 and "margin" in quantity):
        return special[quantity]
    return "no less" if value == 0.0 else f"no less than {number} {side}"


def _yes_or_no(quantity: str, view: AxleView | CarView) -> str:
    if isinstance(view, AxleView):
        return "One tyre is given for both sides; whether left and right are the same is seen on the car"
    front, rear = view.front.then.facts, view.rear.then.facts
    if quantity == "structure_same" and (front.temporary_spare == 1.0 or rear.temporary_spare == 1.0):
        return "A temporary-use spare is fitted, which may differ in structure"
    kinds = [_STRUCTURES[facts.radial == 1.0] for facts in (front, rear)]
    if kinds[0] == kinds[1]:
        return f"All tyres are {kinds[0]}"
    return f"The front tyres are {kinds[0]}, the rear ones {kinds[1]}"
