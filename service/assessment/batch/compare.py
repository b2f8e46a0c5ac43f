"""Many candidates on one vehicle: graded by the array path, measured, ranked.

The numbers are those of a single check; its sentences are made one by one, so only for those asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.assess import Assessment, assess
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.measures import Measures, RankBy, gains, losses, measures
from service.assessment.batch.ranking import Flags, Places, not_bettered, ranked, worst_questions
from service.assessment.case import Candidate, Case

MOST_FINDINGS = 5


class Compared(NamedTuple):
    """What was found of many candidates; arrays have one element for each, in the caller's order."""

    graded: Graded
    measures: Measures
    order: Places
    """The candidates, best first."""
    not_bettered: Flags
    gains: NDArray[np.int64]
    """Sets of `measures.TRADES`."""
    losses: NDArray[np.int64]
    worst: Places
    """Shape (MOST_FINDINGS, candidates): rows of the graded questions, worst first."""
    worth_showing: Flags
    """Same shape: false where the question is met."""
    units: tuple[str | None, ...]
    """For each question the unit of its number and limit, None where it has no number to show."""


def compare(case: Case, candidates: Sequence[Candidate], rank_by: RankBy) -> Compared:
    """Return the comparison of one or more candidates on the vehicle of a case, whose own candidate does not count."""
    graded = grade_all(case, *stack_candidates(case, candidates))
    return weigh_up(case._replace(candidate=candidates[0]), graded, rank_by)


def weigh_up(case: Case, graded: Graded, rank_by: RankBy) -> Compared:
    """Return the comparison of what was graded; the candidate of the case is one of them."""
    size = graded.verdicts.shape
    found = Measures._make(np.broadcast_to(value, size) for value in measures(graded.car))
    worst, worth = worst_questions(graded, MOST_FINDINGS)
    return Compared(
        graded,
        found,
        ranked(graded, found, rank_by),
        not_bettered(graded.verdicts, found),
        np.broadcast_to(np.asarray(gains(graded.car, found)), size),
        np.broadcast_to(np.asarray(losses(graded.car, found)), size),
        worst,
        worth,
        _units(case, graded),
    )


def explained(case: Case, candidates: Sequence[Candidate]) -> list[Assessment]:
    """Return the whole single check of each of these candidates."""
    return [assess(case._replace(candidate=each)) for each in candidates]


def _units(case: Case, graded: Graded) -> tuple[str | None, ...]:
    """Return the unit of each question as the findings of one of the candidates name it: it is the same for all."""
    named = {(each.code, each.axle): each.unit for each in assess(case).findings}
    return tuple(named.get((question.code, question.where)) for question in graded.questions)
