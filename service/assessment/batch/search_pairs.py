"""The second half of a search: front and rear wheels joined by circumference, stagger, season and class."""

from __future__ import annotations

from collections import Counter
from typing import Any, Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.search_axle import AxleFound, first_reasons
from service.assessment.batch.sizes import Sizes
from service.assessment.batch.wheel_table import CODE, COMMERCIAL, RIM_WIDTH, WIDTH, Places
from service.assessment.case import Axle, Case, Vehicle
from service.assessment.checks.grade import LAST_BIT
from service.assessment.view.axle_view import fitted, present_wheel
from service.core.numeric import FloatArray
from service.designation.tyre import TyreDesignation
from service.physics.drivetrain import axle_ratio_change_percent

Stagger = Literal["keep", "square", "any"]

# What sends a pair away, as it is counted.
RATIO, STAGGER = "limits.axle_ratio_percent", "limits.stagger"
RIM_WIDTH_MIX, SEASON_MIX, CLASS_MIX = "search.rim_width_mix", "search.season_mix", "search.class_mix"
NOT_JOINED, NOT_GRADED = "search.not_joined", "search.not_graded"

# Of each axle only the best go on to be joined, and of the pairs only the best are graded: what is left out is counted.
MOST_WHEELS = 600
MOST_PAIRS = 10_000


class PairAsks(NamedTuple):
    """What is asked of a front and a rear wheel together."""

    stagger: Stagger
    axle_ratio_percent: float
    mixed: bool
    """Whether summer may be paired with winter tyres and passenger car with commercial tyres."""


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
        removed=found.removed + Counter({NOT_JOINED: found.wheels.size - MOST_WHEELS}),
    )


def stagger_of(vehicle: Vehicle) -> Stagger:
    """Return how the axles may differ where the caller says nothing: a square car stays square."""
    return "square" if is_square(vehicle) else "keep"


def is_square(vehicle: Vehicle) -> bool:
    """Return whether a vehicle has tyres of one size all round."""
    front, rear = (axle.fitted.tyre.designation for axle in (vehicle.front, vehicle.rear))
    return _size(front) == _size(rear)


def _size(tyre: TyreDesignation) -> tuple[object, ...]:
    return tyre.section_width_mm, tyre.aspect_ratio, tyre.overall_diameter_in, tyre.rim_code, tyre.construction


def join(case: Case, front: AxleFound, rear: AxleFound, sizes: Sizes, asks: PairAsks) -> Pairs:
    """Return the pairs whose axles turn nearly as now and that are as much alike as asked."""
    tried = front.wheels.size * rear.wheels.size
    change = _ratio_change_percent(case, front, rear)
    # What nobody would fit comes last: a pair is only counted there when it is sound otherwise.
    broken = {RATIO: np.abs(change) > asks.axle_ratio_percent + LAST_BIT}
    if not asks.mixed:
        broken[CLASS_MIX] = _differs(front.wheels.table[COMMERCIAL], rear.wheels.table[COMMERCIAL])
        season = np.array([_season(each) for each in sizes.designations])
        broken[SEASON_MIX] = _differs(season[front.wheels.size_at], season[rear.wheels.size_at])
    broken[STAGGER] = ~_staggered(case, front, rear, asks.stagger)
    if asks.stagger != "any" and _rims_alike(case.vehicle):
        broken[RIM_WIDTH_MIX] = _differs(front.wheels.table[RIM_WIDTH], rear.wheels.table[RIM_WIDTH])
    removed, left = first_reasons({name: flags.ravel() for name, flags in broken.items()}, tried)
    front_at, rear_at = np.divmod(left, max(rear.wheels.size, 1))
    if len(left) > MOST_PAIRS:
        merit = np.minimum(front.merit[front_at], rear.merit[rear_at])
        order = np.sort(np.argsort(-merit, kind="stable")[:MOST_PAIRS])
        removed[NOT_GRADED] = len(left) - MOST_PAIRS
        front_at, rear_at = front_at[order], rear_at[order]
    return Pairs(front_at, rear_at, tried, removed)


def _differs(front: NDArray[Any], rear: NDArray[Any]) -> Flags:
    """Return front wheels down and rear wheels across: whether what is said of the two differs."""
    flags: Flags = front[:, None] != rear[None, :]
    return flags


def _season(tyre: TyreDesignation) -> int:
    """Return summer, mud and snow, winter and all-season as four numbers."""
    return 2 * ("3PMSF" in tyre.markings) + ("M+S" in tyre.markings)


def _rims_alike(vehicle: Vehicle) -> bool:
    front, rear = (axle.fitted.rim.designation for axle in (vehicle.front, vehicle.rear))
    return front.width_in == rear.width_in


def _present_circumference_mm(case: Case, axle: Axle) -> float:
    facts = fitted(axle, case.vehicle.max_speed_kmh).wheel
    return present_wheel(facts, axle, case.vehicle, case.pack.limits).geometry.rolling_circumference_mm


def _ratio_change_percent(case: Case, front: AxleFound, rear: AxleFound) -> FloatArray:
    """Return the change of the ratio of circumferences, front wheels down and rear wheels across."""
    now_front, now_rear = (
        np.full(1, _present_circumference_mm(case, axle)) for axle in (case.vehicle.front, case.vehicle.rear)
    )
    return np.asarray(
        axle_ratio_change_percent(now_front, now_rear, front.circumference_mm[:, None], rear.circumference_mm[None, :])
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
