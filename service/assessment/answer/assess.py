"""One assessment: the checks are run, the findings gathered, the verdict drawn.

It depends on its case alone: nothing is remembered from one question to the next.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from service.assessment.answer.action import Action
from service.assessment.answer.actions import actions
from service.assessment.answer.already import as_today, with_already
from service.assessment.answer.assumptions import assumptions
from service.assessment.answer.cautions import cautions
from service.assessment.answer.every_question import graded
from service.assessment.answer.keep_present import Cars, with_kept_axle
from service.assessment.answer.label_effects import LabelEffects, label_effects
from service.assessment.answer.on_assumption import on_assumption
from service.assessment.answer.summary import summary
from service.assessment.answer.trade_offs import TradeOff, trade_offs
from service.assessment.answer.verdict import Verdict, verdict_of, worst_first
from service.assessment.answer.within_tolerance import with_tolerance
from service.assessment.case import Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.checks.grade import unsaid
from service.assessment.law import law_findings as law
from service.assessment.view.driving import Driving
from service.assessment.view.views import CarView, candidate_facts, now_fitted, weigh
from service.core.findings import ADVISORY, MET, Finding


class Told(NamedTuple):
    """The mildest outcomes of which an answer has the sentence, and the remedy."""

    words: int
    remedies: int


EVERYTHING = Told(MET, ADVISORY)


@dataclass(frozen=True)
class Assessment:
    """The whole answer to one question, not yet rounded; what stands beside the findings is made when asked for."""

    case: Case
    car: CarView
    verdict: Verdict
    findings: list[Finding]
    """Worst first; alike ones in the order of the questions."""

    @cached_property
    def summary(self) -> str:
        """Return the verdict in a few sentences."""
        return summary(self.verdict, self.findings)

    @cached_property
    def actions(self) -> list[Action]:
        """Return the job card."""
        return actions(self.car, self.findings, self.verdict)

    @cached_property
    def cautions(self) -> Mapping[str, str]:
        """Return what to beware of, by code."""
        return cautions(self.car)

    @cached_property
    def trade_offs(self) -> tuple[TradeOff, ...]:
        """Return front, rear, vehicle; empty where nothing could be felt."""
        return trade_offs(self.car, self.driving, self.label_effects)

    @cached_property
    def driving(self) -> Driving:
        """Return what changes on the road."""
        return self.car.driving

    @cached_property
    def label_effects(self) -> LabelEffects | None:
        """Return what the labels of the tyres tell; None where none is given."""
        return label_effects(self.car, self.driving, (self.case.candidate.front, self.case.candidate.rear))

    @cached_property
    def assumptions(self) -> Sequence[str]:
        """Return what was taken for granted."""
        return assumptions(self.case, self.car)

    @cached_property
    def law(self) -> law.LawTally:
        """Return how many rules of the place are held, applied and met."""
        return law.tally(self.case, self.car, self.findings)


def assess(case: Case, told: Told = EVERYTHING) -> Assessment:
    """Return the assessment of one candidate on one vehicle, with as much in words as is told of it."""
    car = weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))
    findings = _on_assumption(case, car) if case.vehicle.assumes else _findings(case, car, told.words)
    if all(each.outcome < ADVISORY for each in findings):
        findings = worst_first(with_tolerance(case, findings))
    else:
        cars = Cars(car, as_today(case, car))
        findings = worst_first(with_tolerance(case, with_already(case, cars.today, findings)))
        findings = with_kept_axle(case, cars, findings, told.remedies)
    return Assessment(case, car, verdict_of(findings[0]), findings)


def _on_assumption(case: Case, car: CarView) -> list[Finding]:
    """Return the findings where something is assumed of the vehicle, all in words: any of them may rest on it."""
    outcomes = {(code, where): grade.outcome for code, where, grade in graded(case, car)}
    return [on_assumption(case, car, each, outcomes[each.code, each.axle]) for each in _findings(case, car, MET)]


def _findings(case: Case, car: CarView, told: int) -> list[Finding]:
    """Return the findings in the order of the questions, each asked at the front and then at the rear."""
    views, found = (car.front, car.rear), []
    for check in AXLE_CHECKS:
        for view in views:
            grade = check.grade(view)
            words = grade.outcome >= told
            found.append(check.explain(view, grade) if words else unsaid(check.code, view.name, grade))
    for car_check in CAR_CHECKS:
        grade = car_check.grade(car)
        words = grade.outcome >= told
        found.append(car_check.explain(car, grade) if words else unsaid(car_check.code, car_check.where, grade))
    for view in views:
        found += law.findings_on_axle(view, told)
    return found + law.findings_on_vehicle(case, car, told)
