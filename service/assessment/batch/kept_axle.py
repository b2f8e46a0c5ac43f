"""Which axle of each candidate is best left as it is: `answer/keep_present.py` for many at once."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from service.assessment.answer.keep_present import ASKING, BETWEEN_AXLES
from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.grading import Graded, as_column, grade_all
from service.assessment.batch.ranking import Places
from service.assessment.case import Candidate, Case
from service.assessment.view.views import candidate_facts
from service.assessment.view.wheel_facts import FACTS, columns
from service.core.findings import ADVISORY, MET, AxleName

AXLES: tuple[AxleName, ...] = ("front", "rear")


# The questions that an axle that is kept may settle.
SETTLED = frozenset((*ASKING, *BETWEEN_AXLES))


class Kept(NamedTuple):
    """The axle to keep, by candidate, and the findings that it settles."""

    axles: list[AxleName | None]
    settles: Flags
    """Shape (questions, candidates)."""


def kept_axles(case: Case, graded: Graded, already: Flags, among: Places) -> Kept:
    """Return the axles whose present wheels settle a shift of balance or a weaker wet reserve.

    Only the candidates `among` are looked at; the others have none.
    """
    kept = Kept([None] * graded.verdicts.size, np.zeros(graded.outcomes.shape, np.bool_))
    said = graded.outcomes >= ADVISORY
    asking = said & ~already & _is_one_of(graded, ASKING)
    places = among[asking[:, among].any(axis=0)]
    if not len(places):
        return kept
    said, asking, outcomes = said[:, places], asking[:, places], graded.outcomes[:, places]
    between = said & _is_one_of(graded, BETWEEN_AXLES)
    wanted = between.copy()
    # The first of those that ask, in the order of the findings: the worst, and of those alike the first.
    wanted[np.where(asking, outcomes, -1).argmax(axis=0), np.arange(len(places))] = True
    for axle in AXLES:
        tried = _with_kept(case, graded, places, axle)
        met = tried.outcomes == MET
        settled = (tried.outcomes.max(axis=0) <= outcomes.max(axis=0)) & (met | ~wanted).all(axis=0)
        for at in np.flatnonzero(settled).tolist():
            place = int(places[at])
            if kept.axles[place] is None:
                kept.axles[place] = axle
                kept.settles[:, place] = (asking[:, at] | between[:, at]) & met[:, at]
    return kept


def _is_one_of(graded: Graded, codes: tuple[str, ...]) -> Flags:
    return np.array([[each.code in codes] for each in graded.questions])


def _with_kept(case: Case, graded: Graded, places: Places, axle: AxleName) -> Graded:
    """Return the grades of these candidates with the present wheels on one axle."""
    size = graded.verdicts.shape
    fitted = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    facts = []
    for present, view in zip(candidate_facts(case, fitted), (graded.car.front, graded.car.rear), strict=True):
        of_axle = present if view.name == axle else view.then.facts
        facts.append(columns(np.stack([as_column(getattr(of_axle, name), size)[places] for name in FACTS])))
    return grade_all(case, *facts)
