"""Many candidates on one vehicle at once: the same formulas and the same grades as one check, on arrays.

A `WheelFacts` of columns goes in, and every formula and every `grade` below it is arithmetic that does not mind. Where
no candidate changes a figure, one number stands for all of them; `as_column` makes an array of either.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.answer.every_question import graded
from service.assessment.answer.verdict import verdict_codes
from service.assessment.case import Axle, Candidate, Case, Fitment
from service.assessment.checks.grade import Grade
from service.assessment.view.conditions import law_speed_kmh
from service.assessment.view.facts import wheel_facts
from service.assessment.view.views import CarView, Fitted, now_fitted, weigh
from service.assessment.view.wheel_facts import WheelFacts, columns, table_of
from service.core.findings import Outcomes, Where
from service.core.numeric import FloatArray, Number


class Question(NamedTuple):
    """One row of a grid of grades: which question, and where."""

    code: str
    where: Where


class Graded(NamedTuple):
    """All questions against all candidates."""

    car: CarView[Number]
    questions: tuple[Question, ...]
    outcomes: Outcomes
    """Shape (questions, candidates)."""
    measured: FloatArray
    """Same shape; NaN where there is no number."""
    limits: FloatArray
    verdicts: Outcomes
    """Shape (candidates,), indices into `verdict.VERDICTS`."""


def grade_at(graded: Graded, row: int, place: int) -> Grade:
    """Return how one question came out for one candidate."""
    return Grade(int(graded.outcomes[row, place]), float(graded.measured[row, place]), float(graded.limits[row, place]))


def as_column(value: Number, graded_size: tuple[int, ...]) -> FloatArray:
    """Return a figure of a view as the array that it is; one that no candidate changes is the same for all."""
    return np.broadcast_to(np.asarray(value, np.float64), graded_size)


def stack_candidates(case: Case, candidates: Sequence[Candidate]) -> tuple[WheelFacts[Number], WheelFacts[Number]]:
    """Return the front and the rear wheels of candidates on the vehicle of a case, stacked."""
    vehicle, law_kmh = case.vehicle, law_speed_kmh(case)
    made: dict[tuple[Fitment, int], WheelFacts] = {}

    def facts(fitment: Fitment, axle: Axle) -> WheelFacts:
        # The same wheel on both axles, or in many candidates, is looked up once: of an axle only its twins matter.
        key = (fitment, axle.wheels_per_side)
        if key not in made:
            made[key] = wheel_facts(fitment, axle, vehicle.max_speed_kmh, law_kmh)
        return made[key]

    front = [facts(each.front, vehicle.front) for each in candidates]
    rear = [facts(each.rear, vehicle.rear) for each in candidates]
    return columns(table_of(front)), columns(table_of(rear))


def graded_questions(case: Case[Number], car: CarView[Number]) -> Iterator[tuple[Question, Grade[Number]]]:
    """Return every question with its grade, on whatever shape of arrays the view holds."""
    for code, where, grade in graded(case, car):
        yield Question(code, where), grade


def grade_all(case: Case, front: WheelFacts[Number], rear: WheelFacts[Number]) -> Graded:
    """Return the grades of many candidates on the vehicle of a case; its own candidate is not looked at."""
    return grade_pairs(case, now_fitted(case.vehicle), front, rear)


def grade_pairs(
    case: Case[Number],
    present: tuple[Fitted[Number], Fitted[Number]],
    front: WheelFacts[Number],
    rear: WheelFacts[Number],
) -> Graded:
    """Return the same where the numbers of the vehicle are arrays too, one element for each candidate.

    The vehicles are alike in all that is no array; what is fitted now stands in `present`, not in the case.
    """
    car: CarView[Number] = weigh(case, present, front, rear)
    size = np.shape(front.rim_code)
    asked = list(graded_questions(case, car))
    grades = [grade for _, grade in asked]
    outcomes = np.empty((len(grades), *size), np.int8)
    measured = np.empty((len(grades), *size))
    limits = np.empty((len(grades), *size))
    for at, grade in enumerate(grades):
        outcomes[at], measured[at], limits[at] = grade
    verdicts = verdict_codes(outcomes.max(axis=0))
    return Graded(car, tuple(question for question, _ in asked), outcomes, measured, limits, verdicts)
