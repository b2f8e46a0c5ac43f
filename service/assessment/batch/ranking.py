"""In what order candidates are shown, and which of them no other one betters."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.verdict import UNSUITABLE
from service.assessment.batch.comparison_measures import MERITS, RANK_BY, Flags, Measures, RankBy, width_change_mm
from service.assessment.batch.grading import Graded, as_column
from service.core.findings import MET, Outcomes
from service.core.numeric import FloatArray

Places = NDArray[np.intp]


def ranked(graded: Graded, found: Measures, rank_by: RankBy) -> Places:
    """Return the candidates, best first: by verdict, then by the measure, then by nearness to the present fitment.

    Candidates alike in all of it keep the caller's order. A measure that is not known comes after all known ones.
    """
    keys = (
        -_known_or_worst(-as_column(width_change_mm(graded.car), graded.verdicts.shape)),
        -_known_or_worst(MERITS["closest_to_present"](found)),
        -_known_or_worst(MERITS[rank_by](found)),
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
        merit = _known_or_worst(MERITS[by](found))[choice]
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
    order = np.argsort(-graded.outcomes, axis=0, kind="stable")[:most]
    return order, np.take_along_axis(graded.outcomes, order, axis=0) > MET


def _known_or_worst(merit: FloatArray) -> FloatArray:
    return np.where(np.isnan(merit), -np.inf, merit)
