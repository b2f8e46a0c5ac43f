"""One assessment: the checks are run, the findings gathered, the verdict drawn."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.answer.actions import CAUTIONS, Action, actions
from service.assessment.answer.assumptions import assumptions
from service.assessment.answer.axle_answer import Asked, AxleAnswer, axle_answer, in_turn
from service.assessment.answer.summary import summary
from service.assessment.answer.trade_offs import trade_offs
from service.assessment.answer.verdict import Verdict, order, verdict_of
from service.assessment.case import Case
from service.assessment.checks import CAR_CHECKS
from service.assessment.law import law_findings as law
from service.assessment.view.conditions import conditions_of
from service.assessment.view.views import CarView, both_axles
from service.core.findings import Finding


class Assessment(NamedTuple):
    """The whole answer to one question, not yet rounded."""

    case: Case
    car: CarView
    verdict: Verdict
    summary: str
    findings: list[Finding]
    actions: list[Action]
    cautions: tuple[str, ...]
    trade_offs: str
    assumptions: list[str]
    front: AxleAnswer
    rear: AxleAnswer
    vehicle: Asked[Finding]
    order: list[int]
    """Where each of `findings` stands among the findings in the order of the questions (`in_turn`)."""


def assess(case: Case) -> Assessment:
    """Return the assessment of one candidate on one vehicle."""
    vehicle, candidate, pack, _, _ = case
    chassis, conditions = vehicle.chassis, conditions_of(case)
    front = axle_answer(vehicle.front, candidate.front, chassis, pack, conditions)
    rear = axle_answer(vehicle.rear, candidate.rear, chassis, pack, conditions)
    car = both_axles(case, front.view, rear.view)
    on_vehicle = Asked(
        [check.explain(car, check.grade(car)) for check in CAR_CHECKS], law.findings_on_vehicle(case, car)
    )
    asked = in_turn(front.findings, rear.findings, on_vehicle)
    places = order(asked)
    findings = [asked[place] for place in places]
    verdict = verdict_of(findings[0])
    return Assessment(
        case,
        car,
        verdict,
        summary(verdict, findings),
        findings,
        actions(front.tasks, rear.tasks, car, verdict),
        CAUTIONS,
        trade_offs(car, front.trade_offs, rear.trade_offs),
        assumptions(case, front.assumptions, rear.assumptions),
        front,
        rear,
        on_vehicle,
        places,
    )
