"""In what order candidates are shown, and which of them no other one betters."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.verdict import UNSUITABLE
from service.assessment.batch.against import weight_against
from service.assessment.batch.closeness import distance
from service.assessment.batch.comparison_measures import MERITS, Flags, Measures, RankBy
from service.assessment.batch.grading import Graded
from service.assessment.case import Case
from service.core.findings import OPEN, Outcomes
from service.core.numeric import FloatArray

Places = NDArray[np.intp]

# What is ranked by: for each, the greater the better. Closeness is no measure but comes last in every order.
_ASKED: Mapping[RankBy, Callable[[Measures, FloatArray], FloatArray]] = MappingProxyType(
    {
        "closest_to_present": lambda _, steps: -steps,
        "dry_grip": lambda found, _: found.dry_grip_percent,
        "wet_margin": lambda found, _: found.wet_margin_percent,
        "load_margin": lambda found, _: found.load_margin_percent,
        "balance": lambda found, _: -found.balance_deg_per_g,
        "braking": lambda found, _: -found.braking_distance_percent,
    }
)


def ranked(case: Case, graded: Graded, already: Flags, found: Measures, rank_by: RankBy, renamed: Places) -> Places:
    """Return the candidates, best first.

    By verdict, then by the weight of what speaks against them and is not so today, then by the measure, then by
    closeness to the present fitment, then by `renamed`: on how many axles the tyre has another designation than now.
    Candidates alike in all of it keep the caller's order. A measure that is not known comes after all known ones.
    """
    steps = distance(graded.car, case.season, graded.verdicts.shape)
    keys = (
        renamed,
        steps,
        -_known_or_worst(_ASKED[rank_by](found, steps)),
        weight_against(graded, already),
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
    for merit_of in MERITS:
        merit = _known_or_worst(merit_of(found))[choice]
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
    return order, np.take_along_axis(graded.outcomes, order, axis=0) > OPEN


def _known_or_worst(merit: FloatArray) -> FloatArray:
    return np.where(np.isnan(merit), -np.inf, merit)
