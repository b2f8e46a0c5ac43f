"""Many candidates on one vehicle at once: the same formulas and the same grades as one check, on arrays.

This is the one place that puts arrays where the types say float: `stack` turns rows of facts into a `WheelFacts` of
columns, and every formula and every `grade` below it is arithmetic that does not mind.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import chain
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.verdict import verdict_code
from service.assessment.case import Candidate, Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.checks.grade import Grade
from service.assessment.law import law_findings as law
from service.assessment.view.conditions import conditions_of
from service.assessment.view.facts import WheelFacts, wheel_facts
from service.assessment.view.views import CarView, weigh
from service.core.findings import Where
from service.core.numeric import FloatArray

Outcomes = NDArray[np.int8]


class Question(NamedTuple):
    """One row of a grid of grades: which question, where, and whether the verdict needs it."""

    code: str
    where: Where
    required: bool


class Graded(NamedTuple):
    """All questions against all candidates."""

    car: CarView
    questions: tuple[Question, ...]
    outcomes: Outcomes
    """Shape (questions, candidates)."""
    measured: FloatArray
    """Same shape; NaN where there is no number."""
    limits: FloatArray
    verdicts: Outcomes
    """Shape (candidates,), indices into `verdict.VERDICTS`."""


def stack(rows: Sequence[WheelFacts]) -> WheelFacts:
    """Return the rows as one `WheelFacts` whose fields are arrays, one element for each row."""
    width = len(WheelFacts._fields)
    flat = np.fromiter(chain.from_iterable(rows), dtype=np.float64, count=len(rows) * width)
    return columns(np.ascontiguousarray(flat.reshape(len(rows), width).T))


def stack_candidates(case: Case, candidates: Sequence[Candidate]) -> tuple[WheelFacts, WheelFacts]:
    """Return the front and the rear wheels of candidates on the vehicle of a case, stacked."""
    vehicle = case.vehicle
    top, law_speed = vehicle.max_speed_kmh, conditions_of(case).law_speed_kmh
    return (
        stack([wheel_facts(each.front, vehicle.front, top, law_speed) for each in candidates]),
        stack([wheel_facts(each.rear, vehicle.rear, top, law_speed) for each in candidates]),
    )


def columns(table: FloatArray) -> WheelFacts:
    """Return a table of shape (fields, candidates) as a `WheelFacts` whose fields are its rows."""
    return WheelFacts._make(table)


def grade_all(case: Case, front: WheelFacts, rear: WheelFacts) -> Graded:
    """Return the grades of many candidates on the vehicle of a case; its own candidate is not looked at."""
    car = weigh(case, front, rear)
    size = np.shape(front.rim_code)
    questions: list[Question] = []
    grades: list[Grade] = []
    for check in AXLE_CHECKS:
        for view in (car.front, car.rear):
            questions.append(Question(check.code, view.name, check.required))
            grades.append(check.grade(view))
    for car_check in CAR_CHECKS:
        questions.append(Question(car_check.code, "vehicle", car_check.required))
        grades.append(car_check.grade(car))
    for code, where, grade in law.grades(case, car):
        questions.append(Question(code, where, required=False))
        grades.append(grade)
    outcomes = np.empty((len(grades), *size), np.int8)
    measured = np.empty((len(grades), *size))
    limits = np.empty((len(grades), *size))
    for at, grade in enumerate(grades):
        outcomes[at], measured[at], limits[at] = grade
    needed = np.array([question.required for question in questions])
    return Graded(car, tuple(questions), outcomes, measured, limits, verdicts_of(outcomes, needed))


def verdicts_of(outcomes: Outcomes, required: NDArray[np.bool_]) -> Outcomes:
    """Return the verdict of each candidate, an index into `verdict.VERDICTS`."""
    codes = np.zeros(outcomes.shape[1:], np.int8)
    for rows, needed in ((outcomes[required], True), (outcomes[~required], False)):
        if len(rows):
            codes = np.maximum(codes, verdict_code(rows, required=needed).max(axis=0))
    return codes
