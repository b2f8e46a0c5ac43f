"""The sizes that a search goes through: a grid of all that could be made, or the caller's own stock."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import product
from typing import NamedTuple

import numpy as np

from service.assessment.case import Axle, Case
from service.assessment.view.facts import TyreFacts, tyre_facts
from service.assessment.view.load_at_speed import ServiceFacts, load_factor_at, service_facts
from service.core.numeric import UNKNOWN, FloatArray, unknown
from service.designation.tyre import TyreDesignation, parse_tyre

GRID_WIDTHS_MM = range(125, 356, 10)
GRID_ASPECTS_PERCENT = range(25, 86, 5)
GRID_RIM_CODES = range(12, 25)

WINTER_MARKING = "3PMSF"
# The grids that can be asked for.
GRID_MARKINGS = ("", WINTER_MARKING)


class Sizes(NamedTuple):
    """Sizes with what their designations say."""

    designations: tuple[TyreDesignation, ...]
    facts: FloatArray
    """Shape (fields of `TyreFacts`, sizes)."""
    is_grid: bool


@cache
def grid(marking: str) -> Sizes:
    """Return every size of the grid with this marking, without a service description."""
    # Past the readers' own caches: four thousand sizes would drive out what callers really ask for.
    designations = tuple(
        parse_tyre.__wrapped__(f"{width}/{aspect} R{code} {marking}".strip())
        for code, width, aspect in product(GRID_RIM_CODES, GRID_WIDTHS_MM, GRID_ASPECTS_PERCENT)
    )
    return Sizes(designations, _table([tyre_facts.__wrapped__(each) for each in designations]), is_grid=True)


def marking_for(case: Case) -> str:
    """Return the marking of a tyre that is only supposed: one for winter is supposed to be made for it."""
    return WINTER_MARKING if case.season == "winter" else ""


def stock(designations: Sequence[TyreDesignation]) -> Sizes:
    """Return the sizes of a stock."""
    return Sizes(tuple(designations), _table([tyre_facts(each) for each in designations]), is_grid=False)


def service_table(sizes: Sizes, axle: Axle, max_speed_kmh: float, law_speed_kmh: float) -> FloatArray:
    """Return what each size of a stock carries and how fast it may go on an axle.

    Shape (fields of `ServiceFacts` and the load factor at the law's speed, sizes).
    """
    rows = [service_row(each, axle, max_speed_kmh, law_speed_kmh) for each in sizes.designations]
    return np.array(rows, np.float64).reshape(len(rows), len(ServiceFacts._fields) + 1).T


def service_row(
    designation: TyreDesignation, axle: Axle, max_speed_kmh: float, law_speed_kmh: float
) -> tuple[float, ...]:
    """Return what a tyre carries and how fast it may go on an axle; at its end the load factor at the law's speed."""
    law = UNKNOWN if unknown(law_speed_kmh) else load_factor_at(designation, law_speed_kmh)
    return (*service_facts(designation, axle.wheels_per_side, max_speed_kmh), law)


def _table(rows: Sequence[TyreFacts]) -> FloatArray:
    return np.array(rows, np.float64).reshape(len(rows), len(TyreFacts._fields)).T
