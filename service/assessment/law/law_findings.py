"""Is it lawful in this place? The rules are the pack's data; here they meet the numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from service.assessment.case import Case
from service.assessment.checks.grade import Grade, finite
from service.assessment.checks.words import apart, plain
from service.assessment.law import speedometer_rule, towing, winter_tyres
from service.assessment.law.law_remedies import law_remedy, missing_for_law
from service.assessment.law.measured_quantities import ON_AN_AXLE, ON_THE_VEHICLE
from service.assessment.view.views import AxleView, CarView
from service.core.findings import MET, OPEN, Finding, Remedy, Where, is_open
from service.core.numeric import UNKNOWN, pick
from service.rules.pack import Asked, asked
from service.rules.rule import Bound, Rule, VehicleFacts


def _asked(where: Where, view: AxleView | CarView) -> Asked:
    vehicle = view.vehicle
    driven = None if vehicle.driven_axle is None else vehicle.driven_axle in (where, "all")
    facts = VehicleFacts(vehicle.category, driven, vehicle.max_mass_kg, vehicle.built)
    day = view.conditions.day if isinstance(view, AxleView) else view.front.conditions.day
    return asked(view.pack, facts, where, day)


def measured(rule: Rule, view: AxleView | CarView) -> tuple[float, ...]:
    """Return the quantities that a rule limits, one for each of its bounds."""
    if isinstance(view, AxleView):
        return tuple(_rated(rule, bound, view) for bound in rule.bounds)
    return tuple(ON_THE_VEHICLE[bound.quantity](view) for bound in rule.bounds)


def _rated(rule: Rule, bound: Bound, view: AxleView) -> float:
    if rule.divisor != 1.0:
        # Some places count passenger tyres on other vehicles at a fraction of their rating.
        facts = view.then.facts
        rated = pick(facts.commercial == 1.0, facts.rated_kg, facts.rated_kg / rule.divisor)
        facts = replace(facts, rated_kg=rated)
        view = view._replace(then=view.then._replace(facts=facts))
    return ON_AN_AXLE[bound.quantity](view)


def grades(case: Case, car: CarView) -> Iterator[tuple[str, Where, Grade]]:
    """Return code, place and grade of every rule that applies, and of those that may apply but lack a fact."""
    for where, view in _places(car):
        rules, unsettled = _asked(where, view)
        for rule in rules:
            values = measured(rule, view)
            yield rule.code, where, Grade(rule.outcome(*values), values[0], rule.value)
        for rule, _ in unsettled:
            yield rule.code, where, Grade(OPEN, UNKNOWN, rule.value)
    for special in (winter_tyres, towing):
        for axle, grade in special.grades(case, car):
            yield special.CODE, axle.name, grade
    for grade in speedometer_rule.grades(case, car):
        yield speedometer_rule.CODE, "vehicle", grade


def _places(car: CarView) -> tuple[tuple[Where, AxleView | CarView], ...]:
    return (("front", car.front), ("rear", car.rear), ("vehicle", car))


def findings_on_axle(view: AxleView) -> list[Finding]:
    """Return one finding for every rule that applies to an axle, and one for each that may but lacks a fact."""
    return _findings(view.name, view)


def findings_on_vehicle(case: Case, car: CarView) -> list[Finding]:
    """Return the same for the rules on the vehicle, and what winter, towing and the speedometer add."""
    found = _findings("vehicle", car)
    for special in (winter_tyres, towing, speedometer_rule):
        found += special.findings(case, car)
    return found


def _findings(where: Where, view: AxleView | CarView) -> list[Finding]:
    rules, unsettled = _asked(where, view)
    found = [_explain(rule, where, view) for rule in rules]
    return found + [_unsettled_finding(rule, missing, where) for rule, missing in unsettled]


def _explain(rule: Rule, where: Where, view: AxleView | CarView) -> Finding:
    values = measured(rule, view)
    outcome = rule.outcome(*values)
    value, bound = values[0], rule.bounds[0]
    remedy = None
    if is_open(outcome):
        message = f"{rule.message} The numbers that this rule needs are not all given."
        remedy = missing_for_law(bound, where, view)
    elif bound.unit == "yes/no":
        message = rule.message
    else:
        found = ", ".join(_found(*each) for each in zip(rule.bounds, values, strict=True))
        message = f"{rule.message} Found: {found}."
    if outcome != MET and not is_open(outcome):
        remedy = law_remedy(rule, view)
    if outcome != MET and rule.caveat:
        message = f"{message} {rule.caveat}"
    limit, unit = bound.value, None if bound.unit == "yes/no" else bound.unit
    return Finding(rule.code, where, outcome, message, finite(value), limit, unit, rule.basis, remedy)


def _found(bound: Bound, value: float) -> str:
    """Return what was found for one bound: `+3.3 %`, `-1 step`, `427 kg to spare`."""
    digits = 1 if bound.unit == "%" else 0
    number = plain(abs(value), digits) if bound.holds(value) else apart(abs(value), abs(bound.value), digits)
    unit = bound.unit
    if unit == "index":
        unit = "step" if number == "1" else "steps"
    if bound.quantity == "speed_capability_margin_kmh":
        return f"{number} {unit} {'above' if value >= 0.0 else 'below'} the vehicle's top speed"
    if "_margin_" in bound.quantity:
        return f"{number} {unit} {'to spare' if value >= 0.0 else 'too little'}"
    if bound.quantity.endswith(("capability_kmh", "_spread")) or number == "0" or "_abs_" in bound.quantity:
        return f"{number} {unit}"
    return f"{'+' if value > 0.0 else '-'}{number} {unit}"


def _unsettled_finding(rule: Rule, missing: tuple[str, ...], where: Where) -> Finding:
    names = " and ".join(f"vehicle.{name}" for name in missing)
    return Finding(
        rule.code,
        where,
        OPEN,
        f"{rule.message} Whether this applies depends on {names}.",
        None,
        rule.value,
        None if rule.unit == "yes/no" else rule.unit,
        rule.basis,
        Remedy(f"state {names}", f"/vehicle/{missing[0]}", missing[0]),
    )
