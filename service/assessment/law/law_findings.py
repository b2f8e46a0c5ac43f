"""Is it lawful in this place? The rules are the pack's data; here they meet the numbers."""

from __future__ import annotations

from collections.abc import Callable, Container, Iterator, Mapping
from dataclasses import replace
from operator import attrgetter
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.case import Case
from service.assessment.checks.grade import EVERYWHERE, Grade, Place, finite, unsaid
from service.assessment.checks.speedometer_lead import SPEEDOMETER
from service.assessment.law import speedometer_rule, towing, winter_tyres
from service.assessment.law.law_remedies import law_remedy, missing_for_law
from service.assessment.law.law_words import FACTS, explained
from service.assessment.law.measured_quantities import ON_AN_AXLE, ON_THE_VEHICLE
from service.assessment.view.views import AxleView, CarView
from service.core.findings import MET, NOT_ASSESSED, OPEN, Finding, Holds, Remedy, Where, is_open
from service.core.numeric import Num, known, pick, unknown
from service.core.ranges import TRACK_MM
from service.core.saying import listed, say, sentences
from service.rules.pack import Asked, r39_is_law
from service.rules.rule import Bound, Rule

# What of a wheel the questions on size, load and speed depend on.
_TYRE_AND_RIM = attrgetter(
    "nominal_width_mm",
    "aspect_percent",
    "tyre_rim_code",
    "load_index",
    "speed_capability_kmh",
    "rim_width_in",
    "rim_code",
)

# From what is found and its limit to the greatest mass of the axle that keeps the limit.
_MASS_KEPT_KG: Mapping[str, Callable[[AxleView, float, float], float]] = MappingProxyType(
    {
        "load_capacity_margin_percent": lambda view, found, limit: (
            view.axle.max_axle_mass_kg * (100.0 + found) / (100.0 + limit)
        ),
        "load_rating_sum_margin_kg": lambda view, found, limit: view.axle.max_axle_mass_kg + found - limit,
        "tyre_load_rating_margin_kg": lambda view, found, limit: (
            view.axle.max_axle_mass_kg + view.axle.tyres * (found - limit)
        ),
    }
)


class LawTally(NamedTuple):
    """How many rules of the place are held, apply to this vehicle today, and are met."""

    held: int
    applied: int
    met: int


def _asked(where: Where, view: AxleView[Num] | CarView[Num]) -> Asked:
    here = view.conditions.rules if isinstance(view, AxleView) else view.front.conditions.rules
    return here.front if where == "front" else here.rear if where == "rear" else here.vehicle


def measured(rule: Rule, view: AxleView[Num] | CarView[Num]) -> tuple[Num, ...]:
    """Return the quantities that a rule limits, one for each of its bounds."""
    if isinstance(view, AxleView):
        derated = _derated(rule, view)
        return tuple(ON_AN_AXLE[bound.quantity](derated) for bound in rule.bounds)
    return tuple(ON_THE_VEHICLE[bound.quantity](view) for bound in rule.bounds)


def _derated(rule: Rule, view: AxleView[Num]) -> AxleView[Num]:
    if rule.divisor == 1.0:
        return view
    # Some places count passenger tyres on other vehicles at a fraction of their rating.
    facts = view.then.facts
    rated = pick(facts.commercial == 1.0, facts.rated_kg, facts.rated_kg / rule.divisor)
    return view._replace(then=view.then._replace(facts=replace(facts, rated_kg=rated)))


def judged(rule: Rule, view: AxleView[Num] | CarView[Num], values: tuple[Num, ...]) -> int:
    """Return how a rule came out, and whether a number that lacks decides; floats or arrays alike.

    It decides where the change makes it matter and the rule can forbid.
    """
    bounds = zip(rule.bounds, values, strict=True)
    outcome = rule.outcome(*(_on_any_track(bound, value, view) for bound, value in bounds))
    if not rule.can_forbid:
        return outcome
    return pick((outcome == OPEN) & _matters(rule, view), NOT_ASSESSED, outcome)


def _on_any_track(bound: Bound, value: Num, view: AxleView[Num] | CarView[Num]) -> Num:
    """Return the value, or one that keeps the bound where it is kept whatever the track that was not given."""
    if bound.quantity != "track_change_percent" or not isinstance(view, AxleView):
        return value
    most: Num = 100.0 * view.change.track_mm / TRACK_MM[0]
    surely = unknown(value) & bound.holds(most) & bound.holds(0.0)
    return pick(surely, most, value)


def _matters(rule: Rule, view: AxleView[Num] | CarView[Num]) -> Holds:
    """Return whether the change touches what a rule limits; nobody can tell whether left and right are alike."""
    quantity = rule.bounds[0].quantity
    if not isinstance(view, AxleView) or quantity == "same_size_on_axle":
        return False
    if quantity.startswith(("track", "offset")):
        # An offset that stays as it is leaves the track as it is, whatever that is: no number lacks then.
        return True
    matters = False
    for now, then in zip(_TYRE_AND_RIM(view.now.facts), _TYRE_AND_RIM(view.then.facts), strict=True):
        matters = matters | ((now != then) & (known(now) | known(then)))
    return matters


def _unsettled(rule: Rule, view: AxleView[Num] | CarView[Num], values: tuple[Num, ...]) -> int:
    """Return how a rule came out that may apply: what keeps it anyway need not know whether it does."""
    outcome = judged(rule, view, values)
    forbids = (outcome >= NOT_ASSESSED) & _matters(rule, view)
    return pick(outcome == MET, MET, pick(forbids, NOT_ASSESSED, OPEN))


def grades(
    case: Case[Num], car: CarView[Num], among: Container[Place] = EVERYWHERE
) -> Iterator[tuple[str, Where, Grade[Num]]]:
    """Return code, place and grade of every rule that applies, and of those that may apply but lack a fact.

    Only the rules `among` are asked; those on winter, towing and the speedometer always are.
    """
    for where, view in _places(car):
        rules, unsettled = _asked(where, view)
        for rule in rules:
            if (rule.code, where) in among:
                values = measured(rule, view)
                yield rule.code, where, Grade(judged(rule, view, values), values[0], rule.value)
        for rule, _ in unsettled:
            if (rule.code, where) in among:
                values = measured(rule, view)
                yield rule.code, where, Grade(_unsettled(rule, view, values), values[0], rule.value)
    for special in (winter_tyres, towing):
        for axle, grade in special.grades(case, car):
            yield special.CODE, axle.name, grade
    for grade in speedometer_rule.grades(car):
        yield speedometer_rule.CODE, "vehicle", grade


def _places(car: CarView[Num]) -> tuple[tuple[Where, AxleView[Num] | CarView[Num]], ...]:
    return (("front", car.front), ("rear", car.rear), ("vehicle", car))


def tally(case: Case, car: CarView, findings: list[Finding]) -> LawTally:
    """Return how many rules of the place are held, applied and met; one asked of both axles is one."""
    codes = {rule.code for where, view in _places(car) for rule in _asked(where, view).rules}
    found = {each.code for each in findings}
    if speedometer_rule.CODE in found:
        codes.add(speedometer_rule.CODE)
    elif not case.vehicle.is_trailer and case.pack.speedometers:
        here = car.front.conditions.rules
        if r39_is_law(here.speedometer, here.speedometer_missing):
            codes.add(SPEEDOMETER.code)
    missed = {each.code for each in findings if each.outcome != MET}
    return LawTally(case.pack.rule_count, len(codes), len(codes - missed))


def masses_kept_kg(view: AxleView) -> Iterator[float]:
    """Yield for each rule on the load of an axle the greatest axle mass that keeps it [kg]."""
    rules, unsettled = _asked(view.name, view)
    for rule in (*rules, *(each for each, _ in unsettled)):
        bound = rule.bounds[0]
        if len(rule.bounds) == 1 and bound.quantity in _MASS_KEPT_KG:
            yield _MASS_KEPT_KG[bound.quantity](view, measured(rule, view)[0], bound.value)


def findings_on_axle(view: AxleView, told: int = MET) -> list[Finding]:
    """Return one finding for every rule that applies to an axle, and one for each that may but lacks a fact.

    Those milder than `told` have no words.
    """
    return _findings(view.name, view, told)


def findings_on_vehicle(case: Case, car: CarView, told: int = MET) -> list[Finding]:
    """Return the same for the rules on the vehicle, and what winter, towing and the speedometer add."""
    found = _findings("vehicle", car, told)
    for special in (winter_tyres, towing):
        found += special.findings(case, car)
    return found + speedometer_rule.findings(car)


def _findings(where: Where, view: AxleView | CarView, told: int) -> list[Finding]:
    rules, unsettled = _asked(where, view)
    found = [_explain(rule, where, view, told) for rule in rules]
    return found + [_explain_unsettled(rule, missing, where, view) for rule, missing in unsettled]


def _explain(rule: Rule, where: Where, view: AxleView | CarView, told: int) -> Finding:
    values = measured(rule, view)
    outcome = judged(rule, view, values)
    if outcome < told:
        return unsaid(rule.code, where, Grade(outcome, values[0], rule.value))
    remedy = None
    message = explained(rule, values, view)
    if is_open(outcome):
        remedy = missing_for_law(rule.bounds[0], where, view)
    elif outcome != MET:
        remedy = law_remedy(rule, view)
        asked_here = rule.message if rule.bounds[0].unit == "yes/no" else ""
        message = sentences(message, asked_here, rule.caveat)
    return _finding(rule, where, outcome, message, values[0], remedy)


def _explain_unsettled(rule: Rule, missing: tuple[str, ...], where: Where, view: AxleView | CarView) -> Finding:
    values = measured(rule, view)
    outcome = _unsettled(rule, view, values)
    message, remedy = explained(rule, values, view), None
    if outcome != MET:
        facts = listed([FACTS[name] for name in missing])
        message = sentences(
            message, say("Whether this applies to the vehicle is not known without {facts}.", facts=facts)
        )
        remedy = Remedy(say("give {facts}", facts=facts), f"/vehicle/{missing[0]}", missing[0])
    return _finding(rule, where, outcome, message, values[0], remedy)


def _finding(rule: Rule, where: Where, outcome: int, message: str, value: float, remedy: Remedy | None) -> Finding:
    unit = None if rule.unit == "yes/no" else rule.unit
    return Finding(rule.code, where, outcome, message, finite(value), rule.value, unit, rule.basis, remedy)
