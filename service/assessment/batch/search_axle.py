"""The first half of a search: which wheels suit an axle by itself, and how many each question sent away."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from service.assessment.batch.closeness import axle_distance
from service.assessment.batch.comparison_measures import Flags, RankBy, load_margin_percent, reserve_gain_percent
from service.assessment.batch.grading import Graded, as_column, grade_all
from service.assessment.batch.wheel_table import PRESSURE, Places, Wheels
from service.assessment.case import Case, Season
from service.assessment.checks.clearance import SIDES
from service.assessment.checks.grade import LAST_BIT
from service.assessment.view.driving import AxleDriving, Reserve
from service.assessment.view.views import AxleView, CarView
from service.assessment.view.wheel_facts import WheelFacts, columns
from service.core.findings import NOT_MET
from service.core.numeric import UNKNOWN, FloatArray, Number, magnitude

# Wheels graded at once: more would only take memory.
CHUNK = 8192


class AxleLimits(NamedTuple):
    """What the caller asks of each axle, beyond what the checks ask; NaN: nothing."""

    overall_diameter_percent: float = UNKNOWN
    min_section_width_mm: float = UNKNOWN
    max_section_width_mm: float = UNKNOWN
    load_margin_percent: float = UNKNOWN
    room_mm: float = UNKNOWN


class AxleFound(NamedTuple):
    """What is left for one axle."""

    wheels: Wheels
    """With the pressure to set in their table."""
    circumference_mm: FloatArray
    merit: FloatArray
    """What the axle alone says of the measure ranked by, the greater the better."""
    tried: int
    removed: Counter[str]


class _Asks(NamedTuple):
    limits: AxleLimits
    rank_by: RankBy
    season: Season | None


# What one axle alone says of a measure; of the balance, how near it keeps to the present stiffness.
_Merit = Callable[[AxleView[Number], AxleDriving[Number], Reserve[Number]], Number]
AXLE_MERITS: Mapping[RankBy, _Merit] = MappingProxyType(
    {
        "dry_grip": lambda _view, found, _reserve: found.peak_grip_percent.value,
        "wet_margin": lambda _view, _found, reserve: reserve_gain_percent(reserve),
        "load_margin": lambda view, _found, _reserve: load_margin_percent(view),
        "balance": lambda view, _found, _reserve: -magnitude(view.change.cornering_stiffness.value - 1.0),
        "braking": lambda _view, found, _reserve: found.peak_grip_percent.value,
    }
)


def filter_axles(
    case: Case, front: Wheels, rear: Wheels, limits: AxleLimits, rank_by: RankBy
) -> tuple[AxleFound, AxleFound]:
    """Return which wheels suit the front and the rear axle.

    Both axles go through the array path together, side by side and not as pairs: only what was graded of each axle by
    itself is looked at here.
    """
    found: tuple[list[AxleFound], list[AxleFound]] = ([], [])
    for start in range(0, max(front.size, rear.size), CHUNK):
        here = [wheels.at(slice(start, start + CHUNK)) for wheels in (front, rear)]
        graded = grade_all(case, *_side_by_side(*here))
        for mine, wheels, view in zip(found, here, (graded.car.front, graded.car.rear), strict=True):
            if wheels.size:
                mine.append(_keep(graded, view, wheels, _Asks(limits, rank_by, case.season)))
    return _joined(found[0], front), _joined(found[1], rear)


def _side_by_side(front: Wheels, rear: Wheels) -> tuple[WheelFacts[Number], WheelFacts[Number]]:
    """Return both tables as columns of one length; the shorter is filled up by repetition, or from the other."""
    size = max(front.size, rear.size)
    tables = (front.table if front.size else rear.table, rear.table if rear.size else front.table)
    one, other = (columns(table[:, np.arange(size) % table.shape[1]]) for table in tables)
    return one, other


def _keep(graded: Graded, view: AxleView[Number], wheels: Wheels, asks: _Asks) -> AxleFound:
    size = wheels.size
    mine = [place for place, each in enumerate(graded.questions) if each.where == view.name]
    broken = {graded.questions[place].code: graded.outcomes[place, :size] == NOT_MET for place in mine}
    broken |= {name: flags[:size] for name, flags in _beyond(view, asks.limits).items()}
    removed, kept = first_reasons(broken, size)
    merit = _merit(graded.car, view, asks)[:size]
    table = wheels.table.copy()
    table[PRESSURE] = as_column(view.ordered_pressure_kpa, view_size(view))[:size]
    circumference = as_column(view.then.geometry.rolling_circumference_mm, view_size(view))[:size]
    return AxleFound(
        Wheels(table, wheels.size_at, wheels.rim_at).at(kept),
        circumference[kept],
        np.where(np.isnan(merit), -np.inf, merit)[kept],
        size,
        removed,
    )


def _merit(car: CarView[Number], view: AxleView[Number], asks: _Asks) -> FloatArray:
    if asks.rank_by == "closest_to_present":
        return -axle_distance(view, asks.season, view_size(view))
    road, at_front = car.driving, view.name == "front"
    found = (road.front, car.front_reserve) if at_front else (road.rear, car.rear_reserve)
    return as_column(AXLE_MERITS[asks.rank_by](view, *found), view_size(view))


def view_size(view: AxleView[Number]) -> tuple[int, ...]:
    """Return the shape of the arrays in a view."""
    return np.shape(view.then.facts.rim_code)


def first_reasons(broken: Mapping[str, Flags], size: int) -> tuple[Counter[str], Places]:
    """Return how many each reason sent away, the first one of each counted, and the places of those left."""
    flags = np.array(list(broken.values()), np.bool_).reshape(len(broken), size)
    sent_away = flags.any(axis=0)
    counts = np.bincount(flags.argmax(axis=0)[sent_away], minlength=len(broken)).tolist()
    return Counter(dict(zip(broken, counts, strict=True))), np.flatnonzero(~sent_away)


def _beyond(view: AxleView[Number], limits: AxleLimits) -> dict[str, Flags]:
    """Return what goes beyond the caller's limits; what is not known, and a limit that is not set, do not."""
    size = view_size(view)
    width = as_column(view.then.facts.nominal_width_mm, size)
    deviation = as_column(magnitude(view.change.overall_diameter_percent), size)
    margin = as_column(load_margin_percent(view), size)
    flags = {
        "limits.overall_diameter_percent": deviation > limits.overall_diameter_percent + LAST_BIT,
        "limits.section_width_mm": (width < limits.min_section_width_mm) | (width > limits.max_section_width_mm),
        "limits.load_margin_percent": margin < limits.load_margin_percent - LAST_BIT,
    }
    for side in SIDES:
        left = as_column(side.room(view) - side.shift(view), size)
        flags[f"limits.{side.name}_room_mm"] = left < limits.room_mm - LAST_BIT
    return flags


def _joined(parts: Sequence[AxleFound], wheels: Wheels) -> AxleFound:
    if len(parts) == 1:
        return parts[0]
    if not parts:
        return AxleFound(wheels, np.empty(0), np.empty(0), 0, Counter())
    return AxleFound(
        Wheels(
            np.concatenate([each.wheels.table for each in parts], axis=1),
            np.concatenate([each.wheels.size_at for each in parts]),
            np.concatenate([each.wheels.rim_at for each in parts]),
        ),
        np.concatenate([each.circumference_mm for each in parts]),
        np.concatenate([each.merit for each in parts]),
        sum(each.tried for each in parts),
        sum((each.removed for each in parts), Counter()),
    )
