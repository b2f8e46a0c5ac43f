"""Many candidates on one vehicle: graded by the array path, measured, ranked.

The numbers are those of a single check; its sentences are made one by one, so only for those asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from service.assessment.answer.assess import Assessment, assess
from service.assessment.batch.comparison_measures import Flags, Measures, RankBy, Sets, gains, losses, measures
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.ranking import Places, not_bettered, ranked, worst_questions
from service.assessment.case import Candidate, Case

MOST_FINDINGS = 5


class Compared(NamedTuple):
    """What was found of many candidates; arrays have one element for each, in the caller's order."""

    graded: Graded
    measures: Measures
    order: Places
    """The candidates, best first."""
    not_bettered: Flags
    gains: Sets
    losses: Sets
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
    found = measures(graded)
    worst, worth = worst_questions(graded, MOST_FINDINGS)
    return Compared(
        graded=graded,
        measures=found,
        order=ranked(graded, found, rank_by),
        not_bettered=not_bettered(graded.verdicts, found),
        gains=gains(graded.car, found),
        losses=losses(graded.car, found),
        worst=worst,
        worth_showing=worth,
        units=_units(case, graded),
    )


def explained(case: Case, candidates: Sequence[Candidate]) -> list[Assessment]:
    """Return the whole single check of each of these candidates."""
    return [assess(case._replace(candidate=each)) for each in candidates]


def _units(case: Case, graded: Graded) -> tuple[str | None, ...]:
    """Return the unit of each question as the findings of one of the candidates name it: it is the same for all."""
    named = {(each.code, each.axle): each.unit for each in assess(case).findings}
    return tuple(named.get((question.code, question.where)) for question in graded.questions)
