"""Which axle of each candidate is best left as it is, or like the other: `answer/keep_present.py` for many at once."""

from __future__ import annotations

from operator import attrgetter
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.keep_present import ASKING, AXLES, BETWEEN_AXLES, Way, on_unlike_hubs, ways
from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.grading import Graded, as_column, grade_all
from service.assessment.batch.ranking import Places
from service.assessment.case import Candidate, Case
from service.assessment.view.views import candidate_facts
from service.assessment.view.wheel_facts import FACTS, WheelFacts, columns
from service.core.findings import ADVISORY, MET, OPEN
from service.core.numeric import Number, known

# What tells whether two axles are to get the same wheels.
_WHEEL = attrgetter(
    "nominal_width_mm",
    "aspect_percent",
    "tyre_rim_code",
    "radial",
    "commercial",
    "winter_mark",
    "run_flat",
    "load_index",
    "speed_capability_kmh",
    "rim_width_in",
    "rim_code",
    "offset_mm",
)
# The questions that an axle that is kept may settle.
SETTLED = frozenset((*ASKING, *BETWEEN_AXLES))


class Kept(NamedTuple):
    """The way that serves, by candidate, and the findings that it settles."""

    ways: list[Way | None]
    settles: Flags
    """Shape (questions, candidates)."""


def kept_axles(case: Case, graded: Graded, already: Flags, among: Places) -> Kept:
    """Return the ways that settle a shift of balance or a weaker wet reserve.

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
    for way in ways(case):
        tried = _tried(case, graded, places, way)
        met = tried.outcomes == MET
        settled = (tried.outcomes.max(axis=0) <= outcomes.max(axis=0)) & (met | ~wanted).all(axis=0)
        stands = np.array([[way.must_stand(each.code, each.where)] for each in graded.questions])
        settled &= (~stands | (tried.outcomes <= OPEN)).all(axis=0)
        if way.wheels != "present":
            settled &= _unlike(graded)[places]
        for at in np.flatnonzero(settled).tolist():
            place = int(places[at])
            if kept.ways[place] is None:
                kept.ways[place] = way
                kept.settles[:, place] = (asking[:, at] | between[:, at]) & met[:, at]
    return kept


def _is_one_of(graded: Graded, codes: tuple[str, ...]) -> Flags:
    return np.array([[each.code in codes] for each in graded.questions])


def _tried(case: Case, graded: Graded, places: Places, way: Way) -> Graded:
    """Return the grades of these candidates with other wheels on one axle."""
    size = graded.verdicts.shape
    fitted = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    proposed = {view.name: view.then.facts for view in (graded.car.front, graded.car.rear)}
    facts = []
    for present, name in zip(candidate_facts(case, fitted), AXLES, strict=True):
        of_axle: WheelFacts[Number] | WheelFacts[float] = proposed[name]
        if name == way.axle:
            of_axle = present if way.wheels == "present" else proposed[way.wheels]
        facts.append(columns(np.stack([as_column(getattr(of_axle, each), size)[places] for each in FACTS])))
    return grade_all(case, *facts)


def _unlike(graded: Graded) -> NDArray[np.bool_]:
    """Return for each candidate whether its axles get different wheels that belong on the same hub."""
    found = np.zeros(graded.verdicts.shape, np.bool_)
    wheels = (_WHEEL(view.then.facts) for view in (graded.car.front, graded.car.rear))
    for front, rear in zip(*wheels, strict=True):
        found |= (front != rear) & (known(front) | known(rear))
    return found & ~np.asarray(on_unlike_hubs(graded.car.front.then.facts, graded.car.rear.then.facts), np.bool_)
