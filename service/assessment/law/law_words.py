"""What a rule of a place found, in a sentence: first what was found, then what the place allows."""

from __future__ import annotations

from collections.abc import Mapping
from functools import reduce
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.checks.words import plain
from service.assessment.law.load_words import carried_beside, law_number, unit_of
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import known, unknown
from service.core.saying import Amount, Said, capital, say
from service.rules.quantities import QUANTITIES
from service.rules.rule import Bound, Rule

# For whom a rule is written may hang on these facts of the vehicle.
FACTS: Mapping[str, Said] = MappingProxyType(
    {
        # Say: what is lacking, in a list: "not known without {facts}", "give {facts}".
        "category": say("the vehicle's category"),
        # Say: what is lacking, in a list: "not known without {facts}", "give {facts}".
        "driven_axle": say("which axle is driven"),
        # Say: what is lacking, in a list: "not known without {facts}", "give {facts}".
        "max_mass_kg": say("the vehicle's maximum mass"),
        # Say: what is lacking, in a list: "not known without {facts}", "give {facts}".
        "built": say("the day on which the vehicle was built"),
    }
)


class _Change(NamedTuple):
    """How the change of a quantity is told: of what, and whether it rises and falls rather than grows and shrinks."""

    of: Said
    rises: bool = False


# Say: these begin a sentence: "{quantity} grows by {change}".
_TRACK, _OFFSET = _Change(say("The track")), _Change(say("The offset (ET)"))
# Say: these begin a sentence: "{quantity} grows by {change}".
_DIAMETER, _CIRCUMFERENCE = _Change(say("The overall diameter")), _Change(say("The rolling circumference"))
# Say: these begin a sentence: "{quantity} grows by {change}".
_SECTION, _RIM = _Change(say("The tyre's section width")), _Change(say("The rim diameter"))
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
        "rim_width_change_mm": _Change(say("The rim width")),
        "load_index_change": _Change(say("The load index"), rises=True),
        "speed_symbol_change_kmh": _Change(say("The speed of the tyre's symbol"), rises=True),
    }
)

# Limited at most, all other levels at least.
SPACER = "spacer_mm"
_NAUGHT: Mapping[str, Said] = MappingProxyType(
    {"speed_capability_margin_kmh": say("the vehicle's top speed"), SPACER: say("no spacer")}
)


def explained(rule: Rule, values: tuple[float, ...], view: AxleView | CarView) -> Said:
    """Return what was found and what the place allows; a yes or no says what was found alone."""
    bounds = list(zip(rule.bounds, values, strict=True))
    quantity = rule.bounds[0].quantity
    if rule.bounds[0].unit == "yes/no":
        return _yes_or_no(quantity, view)
    track_mm = view.change.track_mm if isinstance(view, AxleView) else values[0]
    if quantity == "track_change_percent" and unknown(values[0]) and known(track_mm):
        found, allowed = _changed(_TRACK, plain(abs(track_mm), 0, "mm"), track_mm), _allowed(rule, None)
        if track_mm > 0.0:
            return say("{found}; {allowed}, and that is more on any car.", found=found, allowed=allowed)
        return say("{found}; {allowed}.", found=found, allowed=allowed)
    if any(unknown(value) for value in values):
        # Say: a quantity with its article, such as "the change of the track".
        found = capital(say("{quantity} is not known", quantity=QUANTITIES[quantity].words))
        return say("{found}; {allowed}.", found=found, allowed=_allowed(rule, None))
    return say("{found}; {allowed}.", found=_found(bounds, rule, view), allowed=_allowed(rule, values[0]))


def _found(bounds: list[tuple[Bound, float]], rule: Rule, view: AxleView | CarView) -> Said:
    bound, value = bounds[0]
    change = _CHANGES.get(bound.quantity)
    if change is None:
        if isinstance(view, AxleView) and "margin" in bound.quantity and bound.unit != "km/h":
            return carried_beside(rule, value, view)
        return _levels(bounds)
    numbers = _either([law_number(*each) for each in bounds])
    if "_abs_" in bound.quantity and value != 0.0:
        return say("{quantity} changes by {change}", quantity=change.of, change=numbers)
    return _changed(change, numbers, value)


def _changed(change: _Change, numbers: str, value: float) -> Said:
    if value == 0.0:
        return say("{quantity} does not change", quantity=change.of)
    if numbers.startswith("0 "):
        return say("{quantity} hardly changes", quantity=change.of)
    if change.rises:
        if value > 0.0:
            return say("{quantity} rises by {change}", quantity=change.of, change=numbers)
        return say("{quantity} falls by {change}", quantity=change.of, change=numbers)
    if value > 0.0:
        return say("{quantity} grows by {change}", quantity=change.of, change=numbers)
    return say("{quantity} shrinks by {change}", quantity=change.of, change=numbers)


def _either(texts: list[str]) -> str:
    return reduce(lambda first, second: say("{first} or {second}", first=first, second=second), texts)


def _levels(bounds: list[tuple[Bound, float]]) -> Said:
    """Return what was found of quantities that are no change; of a speed also how it stands to the top speed."""
    bound, value = bounds[0]
    if bound.quantity == "speed_capability_kmh" and len(bounds) > 1:
        return say(
            "The tyre is made for {speed}, {beside}", speed=plain(value, 0, "km/h"), beside=_beside_top(*bounds[1])
        )
    if bound.quantity == "speed_capability_kmh":
        return say("The tyre is made for {speed}", speed=plain(value, 0, "km/h"))
    if bound.quantity == "speed_capability_margin_kmh":
        return say("The tyre is made for {beside}", beside=_beside_top(bound, value))
    if bound.quantity == SPACER:
        return say("The spacers are {thickness} thick", thickness=law_number(bound, value))
    if bound.quantity == "load_index_spread" and value == 0.0:
        return say("The load indices on the axle do not differ")
    # Say: a quantity with its article, such as "the thickness of the spacers".
    return capital(
        say("{quantity} is {number}", quantity=QUANTITIES[bound.quantity].words, number=law_number(bound, value))
    )


def _beside_top(bound: Bound, value: float) -> Said:
    if value == 0.0:
        return say("just the vehicle's top speed")
    if value > 0.0:
        return say("{difference} above the vehicle's top speed", difference=law_number(bound, value))
    return say("{difference} below the vehicle's top speed", difference=law_number(bound, value))


def _allowed(rule: Rule, found: float | None) -> Said:
    """Return what the place allows; `found` says which way the quantity went, None where that is not known."""
    limit, place = _either([_limit(bound, found) for bound in rule.bounds]), rule.place
    if rule.bounds[0].quantity.startswith("speed_capability"):
        # Say: the limit is a speed, the place carries its preposition: "180 km/h is enough in South Australia".
        return say("{limit} is enough {place}", limit=limit, place=place)
    # Say: the limit is an amount or "no increase", the place carries its preposition: "in Spain".
    return say("{limit} is allowed {place}", limit=limit, place=place)


def _limit(bound: Bound, found: float | None) -> str:
    quantity, value = bound.quantity, bound.value
    number = plain(abs(value), 2, unit_of(bound))
    if quantity not in _CHANGES:
        return _limit_of_a_level(quantity, number, value)
    if value == 0.0:
        return say("no decrease") if bound.comparison == "at_least" else say("no increase")
    if "_abs_" in quantity:
        return number if found else say("{number} either way", number=number)
    # The number alone is clear only where the quantity went that way.
    if found is not None and found * value > 0.0:
        return number
    return say("{number} more", number=number) if value > 0.0 else say("{number} less", number=number)


def _limit_of_a_level(quantity: str, number: Amount, value: float) -> str:
    """Return the limit of what is no change: a speed, a difference, a load beyond what must be carried."""
    if value == 0.0 and quantity in _NAUGHT:
        return _NAUGHT[quantity]
    if quantity in ("speed_capability_kmh", SPACER):
        return number
    if quantity == "load_index_spread":
        return say("a difference of {number}", number=number)
    if value == 0.0:
        return say("no less")
    if value > 0.0:
        return say("no less than {number} more", number=number)
    return say("no less than {number} less", number=number)


def _yes_or_no(quantity: str, view: AxleView | CarView) -> Said:
    if isinstance(view, AxleView):
        return say("One tyre is given for both sides; whether left and right are the same is seen on the car.")
    front, rear = view.front.then.facts, view.rear.then.facts
    if quantity == "structure_same" and (front.temporary_spare == 1.0 or rear.temporary_spare == 1.0):
        return say("A temporary-use spare is fitted, which may differ in structure.")
    if front.radial == 1.0 and rear.radial == 1.0:
        return say("All tyres are radial.")
    if front.radial == 1.0:
        return say("The front tyres are radial, the rear ones diagonal.")
    if rear.radial == 1.0:
        return say("The front tyres are diagonal, the rear ones radial.")
    return say("All tyres are diagonal.")
