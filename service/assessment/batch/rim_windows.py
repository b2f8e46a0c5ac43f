"""The windows of offsets in a grid of rims: from where to where, what bounds each end, and the best offset.

A window is read off the grades, so it is what a check of each of its offsets says. Where a rule of a place leaves a
gap, the window is the run nearest to the present wheel, and the other runs are told beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
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
    best: Places = (np.maximum(grid.outcomes, OPEN) * FAR_MM + distance).argmin(axis=1)
    suitable, allowed = (_windows(grid, best, most) for most in (SUITABLE_AT_MOST, CONDITIONS_AT_MOST))
    first = np.zeros_like(best)
    moving, fixed, besides = (
        _not_met(layer, columns, ADVISORY)
        for layer, columns in ((grid.moving, best), (grid.fixed, first), (grid.besides, first))
    )
    offsets, outcomes = grid.offsets_mm[best].tolist(), grid.outcomes[np.arange(len(best)), best].tolist()
    return [
        RimWindows(
            row,
            suitable[at],
            allowed[at],
            offsets[at],
            outcomes[at],
            tuple(sorted(moving[at] + fixed[at], key=lambda each: -each.outcome)),
            tuple(besides[at]),
        )
        for at, row in enumerate(grid.rows)
    ]


def _not_met(layer: Layer, columns: Places, at_least: int) -> list[list[Reason]]:
    """Return for each row the questions that come out so or worse at its column, in their order."""
    rows = np.arange(len(columns))
    picked = (layer.outcomes[:, rows, columns], layer.measured[:, rows, columns], layer.limits[:, rows, columns])
    found: list[list[Reason]] = [[] for _ in rows]
    places, at = np.nonzero(picked[0] >= at_least)
    numbers = (each[places, at].tolist() for each in picked)
    for place, row, *rest in zip(places.tolist(), at.tolist(), *numbers, strict=True):
        found[row].append(Reason(*layer.questions[place], *rest))
    return found


def _windows(grid: Grid, best: Places, most: int) -> list[Window | None]:
    """Return the window of each row: the run around the best offset of those that come out no worse than `most`."""
    allowed, offsets = grid.outcomes <= most, grid.offsets_mm.tolist()
    first, last = run_around(allowed, best)
    below, above = (_bounds(grid, column, most) for column in (first - 1, last + 1))
    ends = list(zip(first.tolist(), last.tolist(), strict=True))
    # Around a place that is not allowed there is no run. The runs are counted, since there is hardly ever a second one.
    runs = (np.diff(allowed, axis=1, prepend=False) & allowed).sum(axis=1).tolist()
    return [
        None
        if low > high
        else Window(
            offsets[low],
            offsets[high],
            below[at],
            above[at],
            _further(offsets, allowed[at], low) if runs[at] > 1 else (),
        )
        for at, (low, high) in enumerate(ends)
    ]


def _bounds(grid: Grid, columns: Places, most: int) -> list[Reason | None]:
    """Return for each row the question that is worst at the column outside, the first of those that are alike."""
    inside = (columns >= 0) & (columns < len(grid.offsets_mm))
    found = _not_met(grid.moving, np.where(inside, columns, 0), most + 1)
    return [
        max(reasons, key=lambda each: each.outcome, default=None) if is_inside else None
        for reasons, is_inside in zip(found, inside.tolist(), strict=True)
    ]


def _further(offsets: Sequence[float], allowed: Flags, first: int) -> tuple[tuple[float, float], ...]:
    """Return the runs of allowed offsets but for the one that begins here."""
    flags = np.concatenate(([False], allowed, [False]))
    edges = np.flatnonzero(flags[1:] != flags[:-1]).tolist()
    return tuple(
        (offsets[start], offsets[end - 1]) for start, end in zip(edges[::2], edges[1::2], strict=True) if start != first
    )
