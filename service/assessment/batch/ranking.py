"""In what order candidates are shown, and which of them no other one betters."""

from __future__ import annotations

from typing import cast

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.verdict import LAST_PLACE, UNSUITABLE, places
from service.assessment.batch.grading import Graded, Outcomes
from service.assessment.batch.measures import MERITS, RANK_BY, Measures, RankBy, width_change_mm
from service.core.numeric import FloatArray, known

Places = NDArray[np.intp]
Flags = NDArray[np.bool_]


def ranked(graded: Graded, found: Measures, rank_by: RankBy) -> Places:
    """Return the candidates, best first: by verdict, then by the measure, then by nearness to the present fitment.

    Candidates alike in all of it keep the caller's order. A measure that is not known comes after all known ones.
    """
    size = graded.verdicts.shape
    keys = (
        -_known_or_worst(-width_change_mm(graded.car), size),
        -_known_or_worst(MERITS["closest_to_present"](found), size),
        -_known_or_worst(MERITS[rank_by](found), size),
        graded.verdicts,
    )
    return np.lexsort(keys)


def not_bettered(verdicts: Outcomes, found: Measures) -> Flags:
    """Return which candidates no other one betters.

    Another betters a candidate when it is at least as good in every measure and better in one. What is unsuitable
    betters nothing, and is never marked itself: it is no choice. A measure that is not known counts as the worst.
    """
    choice = np.flatnonzero(verdicts < UNSUITABLE)
    as_good = np.ones((len(choice), len(choice)), np.bool_)
    better = np.zeros_like(as_good)
    for by in RANK_BY:
        merit = _known_or_worst(MERITS[by](found), verdicts.shape)[choice]
        as_good &= merit[:, None] >= merit
        better |= merit[:, None] > merit
    marked = np.zeros(verdicts.shape, np.bool_)
    marked[choice[~(as_good & better).any(axis=0)]] = True
    return marked


def worst_questions(graded: Graded, most: int) -> tuple[Places, Flags]:
    """Return the rows of `graded.questions` that came out worst for each candidate, and whether they are worth showing.

    Both have shape (most, candidates), worst first, in the order that the findings of a single check have; what is
    met is not worth showing.
    """
    table = np.array([places(required=question.required) for question in graded.questions], np.int8)
    place = np.take_along_axis(table, graded.outcomes.astype(np.intp), axis=1)
    order = np.argsort(place, axis=0, kind="stable")[:most]
    return order, np.take_along_axis(place, order, axis=0) < LAST_PLACE


def _known_or_worst(merit: float, size: tuple[int, ...]) -> FloatArray:
    values = np.broadcast_to(cast("FloatArray", merit), size)
    return np.where(known(values), values, -np.inf)
