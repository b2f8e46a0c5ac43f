"""The sizes that a search goes through: a grid of all that could be made, or the caller's own stock."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import product
from typing import NamedTuple

from service.assessment.case import Axle, Case
from service.assessment.view.facts import tyre_facts
from service.assessment.view.load_at_speed import service_facts
from service.assessment.view.wheel_facts import ServiceFacts, TyreFacts, group_table
from service.core.numeric import FloatArray
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
    """Shape (facts of `TyreFacts`, sizes)."""
    is_grid: bool


@cache
def grid(marking: str) -> Sizes:
    """Return every size of the grid with this marking, without a service description."""
    designations = tuple(
        parse_tyre(f"{width}/{aspect} R{code} {marking}".strip())
        for code, width, aspect in product(GRID_RIM_CODES, GRID_WIDTHS_MM, GRID_ASPECTS_PERCENT)
    )
    return Sizes(designations, _facts(designations), is_grid=True)


def of_widths(aspect_percent: float, rim_code: float) -> FloatArray:
    """Return what the designations of one aspect ratio say: shape (facts of `TyreFacts`, `GRID_WIDTHS_MM`)."""
    if aspect_percent in GRID_ASPECTS_PERCENT and rim_code in GRID_RIM_CODES:
        step, widths = len(GRID_ASPECTS_PERCENT), len(GRID_WIDTHS_MM)
        first = GRID_RIM_CODES.index(int(rim_code)) * widths * step + GRID_ASPECTS_PERCENT.index(int(aspect_percent))
        return grid("").facts[:, first : first + widths * step : step]
    return _facts([parse_tyre(f"{width}/{aspect_percent:g} R{rim_code:g}") for width in GRID_WIDTHS_MM])


def marking_for(case: Case) -> str:
    """Return the marking of a tyre that is only supposed: one for winter is supposed to be made for it."""
    return WINTER_MARKING if case.season == "winter" else ""


def stock(designations: Sequence[TyreDesignation]) -> Sizes:
    """Return the sizes of a stock."""
    return Sizes(
        tuple(designations), group_table(TyreFacts, [tyre_facts(each) for each in designations]), is_grid=False
    )


def service_table(sizes: Sizes, axle: Axle, max_speed_kmh: float, law_speed_kmh: float) -> FloatArray:
    """Return what each size of a stock carries and how fast it may go on an axle.

    Shape (facts of `ServiceFacts`, sizes).
    """
    return group_table(
        ServiceFacts,
        [service_facts(each, axle.wheels_per_side, max_speed_kmh, law_speed_kmh) for each in sizes.designations],
    )


def _facts(designations: Sequence[TyreDesignation]) -> FloatArray:
    return group_table(TyreFacts, [tyre_facts(each) for each in designations])
