"""What should be measured before a plan is driven: what holds a verdict back, and what narrows a band.

Facts are set to their two plausible ends, as for one candidate, but for all combinations at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.answer.measure_first import WORTH_A_SHARE
from service.assessment.answer.missing_facts import missing_facts
from service.assessment.batch.grading import Graded, as_column
from service.assessment.batch.one_of_many import finding_at
from service.assessment.batch.plan_effects import EFFECTS, Effect
from service.assessment.case import Candidate, Case
from service.assessment.view.views import CarView, weigh
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET
from service.core.numeric import FloatArray, Number
from service.core.saying import say

MOST_ROWS = 8
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


def measure_before(case: Case, candidates: Sequence[Candidate], graded: Graded) -> list[PlanMeasurement]:
    """Return what to measure first: what settles most verdicts before what narrows most bands."""
    found = _settling(case, candidates, graded) + _narrowing(case, graded)
    return found[:MOST_ROWS]


def _settling(case: Case, candidates: Sequence[Candidate], graded: Graded) -> list[PlanMeasurement]:
    """Return the facts that verdicts or conditions wait for; of what does not fit anyway nothing need be known."""
    waiting = (graded.outcomes == NOT_ASSESSED) | (graded.outcomes == ADVISORY)
    waiting &= graded.outcomes.max(axis=0) < NOT_MET
    found: dict[str, PlanMeasurement] = {}
    for row, question in enumerate(graded.questions):
        places = np.flatnonzero(waiting[row])
        if not len(places):
            continue
        asking = finding_at(case, candidates, graded, row, int(places[0]))
        remedy = asking.remedy
        # A condition that asks for another wheel is nothing to be measured.
        if remedy is None or (asking.outcome == ADVISORY and not remedy.pointer.startswith("/vehicle")):
            continue
        pointer = remedy.pointer
        if pointer.startswith("/candidate"):
            # The combination that asks first; the others ask the same of their own wheels.
            pointer = pointer.replace("/candidate", f"/combinations/{places[0]}", 1)
        before = found.get(pointer)
        settles = (question.code,) if before is None else (*before.settles, question.code)
        text = remedy.text if before is None else before.text
        found[pointer] = PlanMeasurement(pointer, text, tuple(dict.fromkeys(settles)), (), len(places))
    return sorted(found.values(), key=lambda each: -each.combinations)


def _narrowing(case: Case, graded: Graded) -> list[PlanMeasurement]:
    facts = graded.car.front.then.facts, graded.car.rear.then.facts
    found: list[tuple[float, PlanMeasurement]] = []
    for missing in missing_facts(case):
        if not missing.pointer.endswith(_NARROWING):
            continue
        low, high = (weigh(missing.put(case, end), *facts) for end in (missing.low, missing.high))
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
