"""The second half of a search: front and rear wheels joined by circumference and stagger."""

from __future__ import annotations

from collections import Counter
from typing import Literal, NamedTuple

import numpy as np

from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.search_axle import AxleFound
from service.assessment.batch.wheel_table import CODE, WIDTH, Places
from service.assessment.case import Case
from service.assessment.checks.grade import LAST_BIT
from service.assessment.view.axle_view import present_wheel
from service.core.numeric import FloatArray
from service.physics.drivetrain import axle_ratio_change_percent

Stagger = Literal["keep", "square", "any"]

# Of each axle only the best go on to be joined, and of the pairs only the best are graded: what is left out is counted.
MOST_WHEELS = 600
MOST_PAIRS = 10_000


class Pairs(NamedTuple):
    """Pairs of wheels that go together."""

    front_at: Places
    rear_at: Places
    tried: int
    removed: Counter[str]


def best(found: AxleFound) -> AxleFound:
    """Return the best wheels of an axle when there are too many to join; the others are counted as not joined."""
    if found.wheels.size <= MOST_WHEELS:
        return found
    order = np.sort(np.argsort(-found.merit, kind="stable")[:MOST_WHEELS])
    return found._replace(
        wheels=found.wheels.at(order),
        circumference_mm=found.circumference_mm[order],
        merit=found.merit[order],
        removed=found.removed + Counter({"search.not_joined": found.wheels.size - MOST_WHEELS}),
    )


def join(case: Case, front: AxleFound, rear: AxleFound, stagger: Stagger, axle_ratio_percent: float) -> Pairs:
    """Return the pairs whose axles turn nearly as now, staggered as asked."""
    tried = front.wheels.size * rear.wheels.size
    change = _ratio_change_percent(case, front, rear)
    uneven = np.abs(change) > axle_ratio_percent + LAST_BIT
    fits = ~uneven & _staggered(case, front, rear, stagger)
    front_at, rear_at = np.nonzero(fits)
    removed = Counter(
        {
            "limits.axle_ratio_percent": int(uneven.sum()),
            "limits.stagger": tried - int(uneven.sum()) - len(front_at),
        }
    )
    if len(front_at) > MOST_PAIRS:
        merit = np.minimum(front.merit[front_at], rear.merit[rear_at])
        order = np.sort(np.argsort(-merit, kind="stable")[:MOST_PAIRS])
        removed["search.not_graded"] = len(front_at) - MOST_PAIRS
        front_at, rear_at = front_at[order], rear_at[order]
    return Pairs(front_at, rear_at, tried, removed)


def _ratio_change_percent(case: Case, front: AxleFound, rear: AxleFound) -> FloatArray:
    """Return the change of the ratio of circumferences, front wheels down and rear wheels across."""
    now_front, now_rear = (
        np.full(1, present_wheel(axle, case.vehicle, case.pack.limits).geometry.rolling_circumference_mm)
        for axle in (case.vehicle.front, case.vehicle.rear)
    )
    return axle_ratio_change_percent(
        now_front, now_rear, front.circumference_mm[:, None], rear.circumference_mm[None, :]
    )


def _staggered(case: Case, front: AxleFound, rear: AxleFound, stagger: Stagger) -> Flags:
    if stagger == "any":
        return np.ones((front.wheels.size, rear.wheels.size), np.bool_)
    if stagger == "square":
        same: Flags = np.equal(front.wheels.size_at[:, None], rear.wheels.size_at[None, :])
        return same
    now_front, now_rear = case.vehicle.front.fitted, case.vehicle.rear.fitted
    wider = now_rear.tyre.designation.section_width_mm - now_front.tyre.designation.section_width_mm
    larger = now_rear.rim.designation.diameter_code - now_front.rim.designation.diameter_code
    front_table, rear_table = front.wheels.table, rear.wheels.table
    as_wide: Flags = np.equal(rear_table[WIDTH][None, :] - front_table[WIDTH][:, None], wider)
    as_large: Flags = np.equal(rear_table[CODE][None, :] - front_table[CODE][:, None], larger)
    return as_wide & as_large
