"""What should be measured before a plan is driven: what holds a verdict back, and what narrows a band.

Facts are set to their two plausible ends, as for one candidate, but for all combinations at once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from service.assessment.answer.measure_first import WORTH_A_SHARE
from service.assessment.answer.missing_facts import missing_facts
from service.assessment.answer.missing_words import INBOARD, OUTBOARD, RADIAL, OnAxle
from service.assessment.answer.within_tolerance import as_measured, is_stated
from service.assessment.batch.grading import Graded, as_column, grade_all
from service.assessment.batch.one_of_many import findings_at
from service.assessment.batch.plan_effects import EFFECTS, Effect
from service.assessment.case import Candidate, Case
from service.assessment.view.views import CarView, now_fitted, weigh
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET
from service.core.numeric import FloatArray, Number
from service.core.saying import say

MOST_ROWS = 8
SCATTER = say(
    "drive the present wheels at least three times: the scatter of the results says how often to repeat a test"
)
# The rooms that are measured; the gap between twin tyres follows from their sizes.
_ROOMS: Mapping[str, OnAxle] = MappingProxyType(
    {"clearance.inboard": INBOARD, "clearance.outboard": OUTBOARD, "clearance.radial": RADIAL}
)
# What only says whether a combination fits is asked by its own finding; these move what is expected of all of them.
_NARROWING = (
    "/vehicle/wheelbase_mm",
    "/vehicle/centre_of_gravity_height_mm",
    "kerb_axle_mass_kg",
    "fitted/pressure_kpa",
)


class PlanMeasurement(NamedTuple):
    """A fact worth measuring first: where it goes, in words, what it settles and narrows, for how many combinations."""

    pointer: str
    text: str
    settles: tuple[str, ...]
    narrows: tuple[str, ...]
    combinations: int


def measure_before(
    case: Case, candidates: Sequence[Candidate], graded: Graded, *, scatter_is_stated: bool
) -> list[PlanMeasurement]:
    """Return what to measure first: what settles most verdicts, then the scatter, then what narrows most bands."""
    found = _settling(case, candidates, graded) + _more_closely(case, graded)
    if not scatter_is_stated:
        found.append(PlanMeasurement("/repeatability", SCATTER, (), (), len(candidates)))
    return (found + _narrowing(case, graded))[:MOST_ROWS]


def _settling(case: Case, candidates: Sequence[Candidate], graded: Graded) -> list[PlanMeasurement]:
    """Return the facts that verdicts or conditions wait for; of what does not fit anyway nothing need be known."""
    # A condition that was held against no number asks for one: "measure before you order".
    unmeasured = (graded.outcomes == ADVISORY) & np.isnan(graded.limits)
    waiting = (graded.outcomes == NOT_ASSESSED) | unmeasured
    waiting &= graded.outcomes.max(axis=0) < NOT_MET
    found: dict[str, PlanMeasurement] = {}
    for row, question in enumerate(graded.questions):
        places = np.flatnonzero(waiting[row])
        if not len(places):
            continue
        asked = [(place, found.remedy) for place, found in findings_at(case, candidates, graded, row, places)]
        remedies = [(place, each) for place, each in asked if each is not None]
        if not remedies:
            continue
        # What is enough for the one that needs most is enough for all.
        place, remedy = max(remedies, key=lambda each: each[1].at_least or 0.0)
        pointer = remedy.pointer.replace("/candidate", f"/combinations/{place}", 1)
        before = found.get(pointer)
        settles = (question.code,) if before is None else (*before.settles, question.code)
        text = remedy.text if before is None else before.text
        found[pointer] = PlanMeasurement(pointer, text, tuple(dict.fromkeys(settles)), (), len(places))
    return sorted(found.values(), key=lambda each: -each.combinations)


def _more_closely(case: Case, graded: Graded) -> list[PlanMeasurement]:
    """Return the rooms that were measured too loosely: as measured they would do, at the worse end they do not."""
    if not is_stated(case):
        return []
    measured = grade_all(as_measured(case), graded.car.front.then.facts, graded.car.rear.then.facts)
    worse = (graded.outcomes > measured.outcomes).sum(axis=1).tolist()
    found = []
    for question, count in zip(graded.questions, worse, strict=True):
        if question.where != "vehicle" and count and question.code in _ROOMS:
            pointer = f"/vehicle/{question.where}/{question.code.replace('.', '/')}_mm"
            text = say("measure {fact} more closely", fact=_ROOMS[question.code].of(question.where))
            found.append(PlanMeasurement(pointer, text, (question.code,), (), count))
    return sorted(found, key=lambda each: -each.combinations)


def _narrowing(case: Case, graded: Graded) -> list[PlanMeasurement]:
    facts = graded.car.front.then.facts, graded.car.rear.then.facts
    found: list[tuple[float, PlanMeasurement]] = []
    for missing in missing_facts(case):
        if not missing.pointer.endswith(_NARROWING):
            continue
        ends = (missing.put(case, end) for end in (missing.low, missing.high))
        low, high = (weigh(each, now_fitted(each.vehicle), *facts) for each in ends)
        shares = {name: _shares(effect, graded, low, high) for name, effect in EFFECTS.items()}
        narrows = tuple(name for name, share in shares.items() if (share > WORTH_A_SHARE).any())
        if narrows:
            moved = np.any([shares[name] > WORTH_A_SHARE for name in narrows], axis=0)
            weight = float(sum(shares[name].mean() for name in narrows))
            row = PlanMeasurement(
                missing.pointer, say("measure {fact}", fact=missing.text), (), narrows, int(moved.sum())
            )
            found.append((weight, row))
    return [row for _, row in sorted(found, key=lambda each: -each[0])]


def _shares(effect: Effect, graded: Graded, low: CarView[Number], high: CarView[Number]) -> FloatArray:
    """Return by how large a share of its band an effect moves between the two ends, for each combination."""
    now, size = effect.of(graded.car), graded.verdicts.shape
    band = as_column(now.high, size) - as_column(now.low, size)
    moved = abs(as_column(effect.of(high).value, size) - as_column(effect.of(low).value, size))
    known = (band > 0.0) & ~np.isnan(moved)
    return np.where(known, moved / np.where(known, band, 1.0), 0.0)
