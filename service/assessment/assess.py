"""One assessment: the checks are run, the findings gathered, the verdict drawn."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.actions import CAUTIONS, Action, actions
from service.assessment.assumptions import assumptions
from service.assessment.case import Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS, law
from service.assessment.comparison import CarView, candidate_facts, weigh
from service.assessment.summary import summary
from service.assessment.trade_offs import trade_offs
from service.assessment.verdict import Verdict, verdict_of, worst_first
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


def assess(case: Case) -> Assessment:
    """Return the assessment of one candidate on one vehicle."""
    car = weigh(case, *candidate_facts(case, case.candidate))
    findings = [check.explain(view, check.grade(view)) for check in AXLE_CHECKS for view in (car.front, car.rear)]
    findings += [check.explain(car, check.grade(car)) for check in CAR_CHECKS]
    findings += law.findings(case, car)
    findings = worst_first(findings)
    verdict = verdict_of(findings)
    return Assessment(
        case,
        car,
        verdict,
        summary(verdict, findings),
        findings,
        actions(car, findings, verdict),
        CAUTIONS,
        trade_offs(car),
        assumptions(case, car),
    )
