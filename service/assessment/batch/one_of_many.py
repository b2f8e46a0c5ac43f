"""Single candidates taken out of the arrays, and what is said of the worst finding of each.

A whole check of every candidate would cost several times what the comparison does: here the views of all of them are
made in one go, and only the findings that a row needs are put into words.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from itertools import chain, repeat
from typing import Any, NamedTuple

import numpy as np

from service.assessment.answer.already import marked
from service.assessment.answer.keep_present import AXLES
from service.assessment.answer.on_assumption import on_assumption
from service.assessment.answer.verdict import SUITABLE
from service.assessment.answer.within_tolerance import as_measured, is_stated, told
from service.assessment.batch.against import already_of
from service.assessment.batch.grading import Graded, Question, grade_all, grade_at
from service.assessment.batch.kept_axle import SETTLED, kept_axles
from service.assessment.batch.ranking import Places
from service.assessment.case import Candidate, Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.checks.grade import AxleCheck, CarCheck, Grade, Place
from service.assessment.law import law_findings as law
from service.assessment.view.views import CarView, candidate_facts, now_fitted, weigh
from service.assessment.view.wheel_facts import FACTS, WheelFacts
from service.core.findings import ADVISORY, Finding, Where

_ON_AN_AXLE: dict[str, AxleCheck] = {check.code: check for check in AXLE_CHECKS}
# By code and place: the wet reserve is asked of the whole car at either axle.
_CHECKS: dict[Place, AxleCheck | CarCheck] = {
    **{(check.code, axle): check for check in AXLE_CHECKS for axle in AXLES},
    **{(check.code, check.where): check for check in CAR_CHECKS},
}


class Words(NamedTuple):
    """What a row says in words, both empty where nothing stands against the candidate."""

    reason: str
    """The sentence of its worst finding."""
    remedy: str
    """What would settle the worst finding that can be settled."""


NOTHING = Words("", "")


def words_of(
    case: Case, candidates: Sequence[Candidate], graded: Graded, now: Mapping[Place, Grade], worst: Places
) -> list[Words]:
    """Return the words of each candidate; `worst` has shape (most, candidates): rows of the questions, worst first.

    `now` is how the questions come out for the present fitment.
    """
    made = [NOTHING] * len(candidates)
    already = already_of(now, graded)
    settled = np.array([each.code in SETTLED for each in graded.questions])
    left = np.flatnonzero(graded.verdicts > SUITABLE)
    measured = _as_measured(case, graded) if is_stated(case) else None
    # The worst findings of all candidates first, then the next ones of those whose worst finding has no remedy.
    for rows in worst:
        left = left[graded.outcomes[rows[left], left] >= ADVISORY]
        kept = kept_axles(case, graded, already, left[settled[rows[left]]])
        without: list[int] = []
        for place, found in _explained(case, candidates, graded, rows, left):
            said = marked(found, now.get((found.code, found.axle)))
            if measured is not None:
                said = told(case, said, grade_at(measured, int(rows[place]), place))
            way, remedy = kept.ways[place], said.remedy
            if way is not None and kept.settles[rows[place], place]:
                remedy = way.remedy
            made[place] = Words(made[place].reason or said.message, "" if remedy is None else remedy.text)
            if remedy is None:
                without.append(place)
        left = np.array(sorted(without), np.intp)
    return made


def findings_at(
    case: Case, candidates: Sequence[Candidate], graded: Graded, row: int, places: Places
) -> list[tuple[int, Finding]]:
    """Return one question to these candidates in words, each with the candidate's place."""
    return list(_explained(case, candidates, graded, np.full(len(candidates), row, np.intp), places))


def _as_measured(case: Case, graded: Graded) -> Graded:
    """Return the same candidates with every measured number taken as exact."""
    return grade_all(as_measured(case), graded.car.front.then.facts, graded.car.rear.then.facts)


def _explained(
    case: Case, candidates: Sequence[Candidate], graded: Graded, rows: Places, places: Places
) -> Iterator[tuple[int, Finding]]:
    """Yield for each of these candidates its finding in this row of the questions."""
    parts = {"front": graded.car.front, "rear": graded.car.rear, "vehicle": graded.car}
    looked_at = np.array([_looks_at(each) for each in graded.questions])[rows[places]]
    for name, part in parts.items():
        mine = places[looked_at == name]
        if not len(mine):
            continue
        views = _each_of(part, len(candidates), mine) or repeat(part)
        numbers = (each[rows[mine], mine].tolist() for each in (graded.outcomes, graded.measured, graded.limits))
        for place, row, view, *grade in zip(mine.tolist(), rows[mine].tolist(), views, *numbers, strict=False):
            question, asked = graded.questions[row], case._replace(candidate=candidates[place])
            if case.vehicle.assumes:
                yield place, _on_assumption(asked, question, grade[0])
            elif question in _CHECKS:
                yield place, _CHECKS[question].explain(view, Grade(*grade))
            else:
                yield place, _of_law(asked, view, question)


def _on_assumption(case: Case, question: Question, outcome: int) -> Finding:
    """Return the finding on a vehicle of which something is assumed, whose words need both of its axles."""
    car = weigh(case, now_fitted(case.vehicle), *candidate_facts(case, case.candidate))
    check = _CHECKS.get(question)
    if isinstance(check, AxleCheck):
        view = car.front if question.where == "front" else car.rear
        found = check.explain(view, check.grade(view))
    elif check is not None:
        found = check.explain(car, check.grade(car))
    else:
        found = _of_law(case, car, question)
    return on_assumption(case, car, found, outcome)


def _looks_at(question: Question) -> Where:
    """Return what must be seen of a car to answer; some questions to the whole car speak of one of its axles."""
    return question.where if question.code in _ON_AN_AXLE else "vehicle"


def _of_law(case: Case, car: CarView, question: Question) -> Finding:
    on_axles = {"front": car.front, "rear": car.rear}
    everything = chain(
        law.findings_on_axle(on_axles[question.where]) if question.where in on_axles else [],
        law.findings_on_vehicle(case, car),
    )
    return next(each for each in everything if (each.code, each.axle) == question)


def _each_of(value: Any, size: int, places: Places) -> Iterator[Any] | None:  # noqa: ANN401 - any part of a view
    """Return a part of a view for each of these places with numbers instead of arrays; None where all have the same."""
    if isinstance(value, np.ndarray):
        numbers: list[Any] = np.broadcast_to(value, (size,))[places].tolist()
        return iter(numbers)
    if isinstance(value, WheelFacts):
        return _joined(_wheel, [getattr(value, name) for name in FACTS], size, places)
    if isinstance(value, tuple) and hasattr(value, "_fields"):
        kind: Callable[..., Any] = type(value)
        return _joined(kind, value, size, places)
    return None


def _joined(kind: Callable[..., Any], values: Iterable[Any], size: int, places: Places) -> Iterator[Any] | None:
    parts = [(value, _each_of(value, size, places)) for value in values]
    if all(each is None for _, each in parts):
        return None
    joined: Iterator[Any] = map(kind, *(repeat(value) if each is None else each for value, each in parts))
    return joined


def _wheel(*numbers: float) -> WheelFacts:
    # A frozen dataclass sets its forty fields one by one, which would take longer than all the rest.
    made = object.__new__(WheelFacts)
    vars(made).update(zip(FACTS, numbers, strict=True))
    return made
