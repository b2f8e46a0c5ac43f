"""The windows of offsets in a grid of rims: from where to where, what bounds each end, and the best offset.

A window is read off the grades, so it is what a check of each of its offsets says. Where a rule of a place leaves a
gap, the window is the run nearest to the present wheel, and the other runs are told beside it.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.rim_grid import Grid, Layer, Row
from service.assessment.batch.wheel_table import Places
from service.core.findings import ADVISORY, OPEN, Where

# The worst outcome in each kind of window.
SUITABLE_AT_MOST, CONDITIONS_AT_MOST = OPEN, ADVISORY
# Further than any offset stands from another.
FAR_MM = 1000.0


class Reason(NamedTuple):
    """A question that is not met, with its number and limit; NaN where it has none."""

    code: str
    where: Where
    outcome: int
    measured: float
    limit: float


class Window(NamedTuple):
    """The offsets from and to which a rim does, both included."""

    from_mm: float
    to_mm: float
    from_bound: Reason | None
    """What comes out worse one millimetre further; None where no question does."""
    to_bound: Reason | None
    further: tuple[tuple[float, float], ...] = ()
    """Other runs, where there are any."""


class RimWindows(NamedTuple):
    """What one tyre on one width of rim may have."""

    row: Row
    suitable: Window | None
    """None where no offset is."""
    with_conditions: Window | None
    """The suitable offsets and those with conditions."""
    best_mm: float
    """The offset that comes out best, and of those the one nearest to the present wheel's centre line."""
    outcome: int
    reasons: tuple[Reason, ...]
    """What is not met there, worst first: its conditions, or why no offset does."""
    besides: tuple[Reason, ...]
    """What is not met on the vehicle and on the other axle, which stays as it is."""


def run_around(allowed: Flags, places: Places) -> tuple[Places, Places]:
    """Return for each row the first and the last place of the run of allowed ones around a place."""
    columns = np.arange(allowed.shape[1])
    before = np.maximum.accumulate(np.where(allowed, -1, columns), axis=1)
    after = np.minimum.accumulate(np.where(allowed, len(columns), columns)[:, ::-1], axis=1)[:, ::-1]
    rows = np.arange(len(allowed))
    return before[rows, places] + 1, after[rows, places] - 1


def windows_of(grid: Grid) -> list[RimWindows]:
    """Return the windows of every row of a grid."""
    if not grid.rows:
        return []
    away = np.abs(grid.offsets_mm - grid.view.now.facts.offset_mm)
    distance = np.where(np.isnan(away), 0.0, away)
    # The outcome weighs more than any distance.
    best = (np.maximum(grid.outcomes, OPEN) * FAR_MM + distance).argmin(axis=1)
    inner, outer = (_Runs(grid, best, most) for most in (SUITABLE_AT_MOST, CONDITIONS_AT_MOST))
    return [
        RimWindows(
            row,
            inner.window(at),
            outer.window(at),
            float(grid.offsets_mm[best[at]]),
            int(grid.outcomes[at, best[at]]),
            _reasons(grid, at, int(best[at])),
            _not_met(grid.besides, at, 0),
        )
        for at, row in enumerate(grid.rows)
    ]


def _reasons(grid: Grid, row: int, column: int) -> tuple[Reason, ...]:
    found = _not_met(grid.moving, row, column) + _not_met(grid.fixed, row, 0)
    return tuple(sorted(found, key=lambda each: -each.outcome))


def _not_met(layer: Layer, row: int, column: int, at_least: int = ADVISORY) -> tuple[Reason, ...]:
    places = np.flatnonzero(layer.outcomes[:, row, column] >= at_least).tolist()
    return tuple(_reason(layer, place, row, column) for place in places)


def _reason(layer: Layer, place: int, row: int, column: int) -> Reason:
    question, at = layer.questions[place], (place, row, column)
    return Reason(*question, int(layer.outcomes[at]), float(layer.measured[at]), float(layer.limits[at]))


class _Runs:
    """The runs of offsets of every row that come out no worse than this, each around the best offset."""

    __slots__ = ("_allowed", "_first", "_grid", "_last", "_most")

    def __init__(self, grid: Grid, best: Places, most: int) -> None:
        self._grid, self._most = grid, most
        self._allowed = grid.outcomes <= most
        self._first, self._last = run_around(self._allowed, best)

    def window(self, row: int) -> Window | None:
        """Return the window of a row, None where no offset is in it."""
        first, last, offsets = int(self._first[row]), int(self._last[row]), self._grid.offsets_mm
        # Around a place that is not allowed there is no run.
        if first > last:
            return None
        return Window(
            float(offsets[first]),
            float(offsets[last]),
            self._bound(row, first - 1),
            self._bound(row, last + 1),
            self._further(row, first),
        )

    def _bound(self, row: int, column: int) -> Reason | None:
        """Return the question that is worst at the first offset outside, the first of those that are alike."""
        if not 0 <= column < len(self._grid.offsets_mm):
            return None
        return max(
            _not_met(self._grid.moving, row, column, self._most + 1), key=lambda each: each.outcome, default=None
        )

    def _further(self, row: int, first: int) -> tuple[tuple[float, float], ...]:
        flags = np.concatenate(([False], self._allowed[row], [False]))
        edges = np.flatnonzero(flags[1:] != flags[:-1])
        offsets = self._grid.offsets_mm
        return tuple(
            (float(offsets[start]), float(offsets[end - 1]))
            for start, end in zip(edges[::2], edges[1::2], strict=True)
            if start != first
        )
