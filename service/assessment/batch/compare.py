"""Many candidates on one vehicle: graded by the array path, measured, ranked.

The numbers are those of a single check; its sentences are made one by one, so only for those asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.answer.assess import Assessment, assess
from service.assessment.batch.against import already_of
from service.assessment.batch.changed_axles import change_in_words, changed_axles, renamed_axles
from service.assessment.batch.comparison_measures import Flags, Measures, RankBy, Sets, gains, losses, measures
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.one_of_many import Words, words_of
from service.assessment.batch.ranking import Places, not_bettered, ranked, worst_questions
from service.assessment.case import Candidate, Case
from service.core.findings import AxleName

MOST_FINDINGS = 5


class Compared(NamedTuple):
    """What was found of many candidates; arrays have one element for each, in the caller's order."""

    graded: Graded
    already: Flags
    """Shape (questions, candidates): whether the present fitment has it too, and no less."""
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
    words: list[Words]
    changed: list[list[AxleName]]
    """For each candidate the axles that do not stay as they are."""
    changes: list[str]
    """The same in words."""


def compare(case: Case, candidates: Sequence[Candidate], rank_by: RankBy) -> Compared:
    """Return the comparison of one or more candidates on the vehicle of a case, whose own candidate does not count."""
    graded = grade_all(case, *stack_candidates(case, candidates))
    return _weigh_up(case, candidates, graded, rank_by)


def _weigh_up(case: Case, candidates: Sequence[Candidate], graded: Graded, rank_by: RankBy) -> Compared:
    vehicle = case.vehicle
    changed = [changed_axles(vehicle, each) for each in candidates]
    renamed = np.array([renamed_axles(vehicle, each) for each in candidates], np.intp)
    found, already = measures(graded), already_of(case, graded)
    worst, worth = worst_questions(graded, MOST_FINDINGS)
    return Compared(
        graded=graded,
        already=already,
        measures=found,
        order=ranked(case, graded, already, found, rank_by, renamed),
        not_bettered=not_bettered(graded.verdicts, found),
        gains=gains(graded.car, found),
        losses=losses(graded.car, found),
        worst=worst,
        worth_showing=worth,
        units=_units(case._replace(candidate=candidates[0]), graded),
        words=words_of(case, candidates, graded, already, worst),
        changed=changed,
        changes=[change_in_words(vehicle, *each) for each in zip(candidates, changed, strict=True)],
    )


def explained(case: Case, candidates: Sequence[Candidate]) -> list[Assessment]:
    """Return the whole single check of each of these candidates."""
    return [assess(case._replace(candidate=each)) for each in candidates]


def _units(case: Case, graded: Graded) -> tuple[str | None, ...]:
    """Return the unit of each question as the findings of one of the candidates name it: it is the same for all."""
    named = {(each.code, each.axle): each.unit for each in assess(case).findings}
    return tuple(named.get((question.code, question.where)) for question in graded.questions)
