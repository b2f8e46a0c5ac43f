"""What is wrong with the car as it stands: found by asking for its present fitment as the candidate."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.every_question import graded
from service.assessment.case import Candidate, Case
from service.assessment.checks.grade import Grade, Place
from service.assessment.view.axle_view import with_wheel
from service.assessment.view.views import CarView, candidate_facts, car_view, now_fitted, weigh
from service.core.findings import ADVISORY, Finding, Holds
from service.core.numeric import UNKNOWN, Num, known, magnitude, pick
from service.core.saying import say, sentences

# Two numbers that differ by less than this were computed from the same thing.
ALIKE = 1e-6
# Added to the sentence of such a finding.
AS_TODAY, NO_WORSE = say("The change leaves this as it is today."), say("It is worse today.")
# What a pump puts right is not left as it is.
PUMPED = say("It is so today.")


def with_already(case: Case, today: CarView, findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, those marked and worded `already` that the present fitment gets too, and no less."""
    said = {(each.code, each.axle) for each in findings if each.outcome >= ADVISORY}
    present = {(code, where): grade for code, where, grade in graded(case, today, said)}
    return [each if each.outcome < ADVISORY else marked(each, present.get((each.code, each.axle))) for each in findings]


def as_today(case: Case, car: CarView) -> CarView:
    """Return the car of a case with its present fitment as the candidate."""
    fitted = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    views, facts = (car.front, car.rear), (car.front.now.facts, car.rear.now.facts)
    if known(car.front.conditions.law_speed_kmh):
        facts = candidate_facts(case, fitted)
    front, rear = (with_wheel(view, each) for view, each in zip(views, facts, strict=True))
    return car_view(case.vehicle, front, rear)


def weighed(case: Case) -> CarView:
    """Return the car of a case with its candidate."""
    return weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))


def present_grades(case: Case) -> dict[Place, Grade]:
    """Return how the questions come out for the present fitment as the candidate, by code and place."""
    fitted = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    of_today = case._replace(candidate=fitted)
    return {(code, where): grade for code, where, grade in graded(of_today, weighed(of_today))}


def is_already(found: Grade[Num], present: Grade[Num]) -> Holds:
    """Return whether the present fitment has what was found too, and no less; floats or arrays alike."""
    now, then = magnitude(present.measured - present.limit), magnitude(found.measured - found.limit)
    # A distance that is not known on either side counts as alike.
    no_more = pick(then > now + ALIKE, 0, 1) == 1
    return (found.outcome >= ADVISORY) & (present.outcome >= found.outcome) & no_more


def marked(finding: Finding, present: Grade | None) -> Finding:
    """Return a finding, marked and worded `already` where the present fitment has it too, and no less."""
    measured = UNKNOWN if finding.measured is None else finding.measured
    limit = UNKNOWN if finding.limit is None else finding.limit
    if present is None or not is_already(Grade(finding.outcome, measured, limit), present):
        return finding
    now, then = abs(present.measured - present.limit), abs(measured - limit)
    words = NO_WORSE if known(now) and then < now - ALIKE else AS_TODAY
    if finding.code == "load.pressure" and words == AS_TODAY and finding.outcome == ADVISORY:
        words = PUMPED
    return finding._replace(already=True, message=sentences(finding.message, words))
