"""One assessment: the checks are run, the findings gathered, the verdict drawn.

It depends on its case alone: nothing is remembered from one question to the next.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from service.assessment.answer.action import Action
from service.assessment.answer.actions import actions
from service.assessment.answer.already import with_already
from service.assessment.answer.assumptions import assumptions
from service.assessment.answer.cautions import cautions
from service.assessment.answer.every_question import graded
from service.assessment.answer.keep_present import with_kept_axle
from service.assessment.answer.on_assumption import on_assumption
from service.assessment.answer.summary import summary
from service.assessment.answer.trade_offs import TradeOff, trade_offs
from service.assessment.answer.verdict import Verdict, verdict_of, worst_first
from service.assessment.answer.within_tolerance import with_tolerance
from service.assessment.case import Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.law import law_findings as law
from service.assessment.view.views import CarView, candidate_facts, now_fitted, weigh
from service.core.findings import Finding


class Assessment(NamedTuple):
    """The whole answer to one question, not yet rounded."""

    case: Case
    car: CarView
    verdict: Verdict
    summary: str
    findings: list[Finding]
    """Worst first; alike ones in the order of the questions."""
    actions: list[Action]
    cautions: Mapping[str, str]
    """By code."""
    trade_offs: tuple[TradeOff, ...]
    """Front, rear, vehicle; empty where nothing could be felt."""
    assumptions: Sequence[str]
    law: law.LawTally


def assess(case: Case) -> Assessment:
    """Return the assessment of one candidate on one vehicle."""
    car = weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))
    findings = with_tolerance(case, with_already(case, _findings(case, car)))
    findings = with_kept_axle(case, worst_first(findings))
    verdict = verdict_of(findings[0])
    return Assessment(
        case=case,
        car=car,
        verdict=verdict,
        summary=summary(verdict, findings),
        findings=findings,
        actions=actions(car, findings, verdict),
        cautions=cautions(car),
        trade_offs=trade_offs(car, case.candidate),
        assumptions=assumptions(case, car),
        law=law.tally(case, car, findings),
    )


def _findings(case: Case, car: CarView) -> list[Finding]:
    """Return the findings in the order of the questions, each asked at the front and then at the rear."""
    views = (car.front, car.rear)
    found = [check.explain(view, check.grade(view)) for check in AXLE_CHECKS for view in views]
    found += [check.explain(car, check.grade(car)) for check in CAR_CHECKS]
    for view in views:
        found += law.findings_on_axle(view)
    found += law.findings_on_vehicle(case, car)
    if not case.vehicle.assumes:
        return found
    outcomes = {(code, where): grade.outcome for code, where, grade in graded(case, car)}
    return [on_assumption(case, car, each, outcomes[each.code, each.axle]) for each in found]
