"""Many candidates on one vehicle: graded by the array path, measured, ranked.

The numbers are those of a single check; its sentences are made one by one, so only for those asked for.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from service.assessment.answer.already import present_grades
from service.assessment.answer.assess import EVERYTHING, Assessment, Told, assess
from service.assessment.batch.against import already_of
from service.assessment.batch.changed_axles import change_in_words, changed_axles, renamed_axles
from service.assessment.batch.comparison_measures import Flags, Measures, RankBy, Sets, gains, losses, measures
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.one_of_many import Words, words_of
from service.assessment.batch.ranking import Places, not_bettered, ranked, worst_questions
from service.assessment.case import Candidate, Case
from service.core.findings import AxleName

MOST_FINDINGS = 5


@dataclass(frozen=True, eq=False)
class Compared:
    """What was found of many candidates; arrays have one element for each, in the caller's order."""

    case: Case
    """With the first of the candidates as its own."""
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
    words: list[Words]
    changed: list[list[AxleName]]
    """For each candidate the axles that do not stay as they are."""
    changes: list[str]
    """The same in words."""

    @cached_property
    def units(self) -> tuple[str | None, ...]:
        """Return for each question the unit of its number and limit, None where it has no number to show.

        The findings of any one candidate name it: it is the same for all.
        """
        named = {(each.code, each.axle): each.unit for each in assess(self.case).findings}
        return tuple(named.get((question.code, question.where)) for question in self.graded.questions)


def compare(case: Case, candidates: Sequence[Candidate], rank_by: RankBy) -> Compared:
    """Return the comparison of one or more candidates on the vehicle of a case, whose own candidate does not count."""
    graded = grade_all(case, *stack_candidates(case, candidates))
    return _weigh_up(case, candidates, graded, rank_by)


def _weigh_up(case: Case, candidates: Sequence[Candidate], graded: Graded, rank_by: RankBy) -> Compared:
    vehicle = case.vehicle
    changed = [changed_axles(vehicle, each) for each in candidates]
    renamed = np.array([renamed_axles(vehicle, each) for each in candidates], np.intp)
    now, found = present_grades(case), measures(graded)
    already = already_of(now, graded)
    worst, worth = worst_questions(graded, MOST_FINDINGS)
    return Compared(
        case=case._replace(candidate=candidates[0]),
        graded=graded,
        already=already,
        measures=found,
        order=ranked(case, graded, already, found, rank_by, renamed),
        not_bettered=not_bettered(graded.verdicts, found),
        gains=gains(graded.car, found),
        losses=losses(graded.car, found),
        worst=worst,
        worth_showing=worth,
        words=words_of(case, candidates, graded, now, worst),
        changed=changed,
        changes=[change_in_words(vehicle, *each) for each in zip(candidates, changed, strict=True)],
    )


def explained(case: Case, candidates: Sequence[Candidate], told: Told = EVERYTHING) -> list[Assessment]:
    """Return the single check of each of these candidates, with as much in words as is told of it."""
    return [assess(case._replace(candidate=each), told) for each in candidates]
