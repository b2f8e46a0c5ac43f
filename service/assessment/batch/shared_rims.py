"""Rims that serve several of the tyres asked about, and the fewest rims that serve them all.

A rim is a diameter, a width and an offset. It serves a tyre on an axle where that fits, be it with conditions; the
bolt circle, the bore and the rating are those that the axle asks for anyway.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.batch.rim_grid import Grid, Row
from service.assessment.batch.set_cover import Cost, smallest_cover
from service.core.findings import ADVISORY, AxleName
from service.core.numeric import known_or

# Ranges of rims listed at most: those that serve more come first.
MOST_SHARED = 40


class Demand(NamedTuple):
    """A tyre that shall find a rim on an axle."""

    axle: AxleName
    tyre_at: int


class SharedRims(NamedTuple):
    """Rims of one width with neighbouring offsets that serve the same tyres."""

    diameter_code: float
    width_in: float
    from_mm: float
    to_mm: float
    best_mm: float
    serves: tuple[Demand, ...]


class ChosenRim(NamedTuple):
    """One rim of the smallest set."""

    diameter_code: float
    width_in: float
    offset_mm: float
    serves: tuple[Demand, ...]
    with_conditions: tuple[Demand, ...]
    """Those of them that it serves with conditions only."""


class RimSet(NamedTuple):
    """The fewest rims that serve every tyre that any rim serves."""

    rims: tuple[ChosenRim, ...]
    unserved: tuple[Demand, ...]
    exact: bool


class _Cell(NamedTuple):
    """One rim: what it serves, and how well."""

    serves: int
    """As bits."""
    conditions: int
    """Those of them that it serves with conditions only, as bits."""
    advice: int
    """How many conditions that are, added up over what it serves."""
    distance_mm: float
    """From the present wheels' centre lines, added up over what it serves."""
    width_away_in: float
    """The same from the rims that the tyres are on now, or from their measuring rims."""


_NONE = _Cell(0, 0, 0, 0.0, 0.0)
_Rim = tuple[float, float, float]
Cells = dict[_Rim, _Cell]


def demands_of(grids: Sequence[Grid]) -> tuple[Demand, ...]:
    """Return each tyre on its axle once."""
    return tuple(Demand(grid.axle.name, at) for grid in grids for at in range(len(grid.tyres)))


def cells_of(grids: Sequence[Grid]) -> Cells:
    """Return every rim that serves anything, by diameter code, width and offset."""
    places = {each: bit for bit, each in enumerate(demands_of(grids))}
    found: dict[_Rim, _Cell] = {}
    for grid in grids:
        distances = np.abs(grid.offsets_mm - grid.view.now.facts.offset_mm).tolist()
        offsets = grid.offsets_mm.tolist()
        measuring = np.ravel(grid.facts.measuring_rim_in).tolist()
        advice = sum((layer.outcomes == ADVISORY).sum(axis=0) for layer in (grid.moving, grid.fixed))
        for row, outcomes, told, middle in zip(grid.rows, grid.outcomes, advice, measuring, strict=True):
            code = grid.tyres[row.tyre_at].designation.rim_code
            bit = 1 << places[Demand(grid.axle.name, row.tyre_at)]
            away = abs(row.width_in - known_or(_usual_width_in(grid, row, middle), row.width_in))
            for at in np.flatnonzero(outcomes <= ADVISORY).tolist():
                rim = code, row.width_in, offsets[at]
                some = bit if outcomes[at] == ADVISORY else 0
                cell = found.get(rim, _NONE)
                found[rim] = _Cell(
                    cell.serves | bit,
                    cell.conditions | some,
                    cell.advice + int(told[at]),
                    cell.distance_mm + distances[at],
                    cell.width_away_in + away,
                )
    return found


def _usual_width_in(grid: Grid, row: Row, measuring_in: float) -> float:
    """Return the width of a tyre's present rim, which nobody has to buy; of another tyre that of its measuring rim."""
    present = grid.axle.fitted
    same = grid.tyres[row.tyre_at].designation == present.tyre.designation
    return present.rim.designation.width_in if same else measuring_in


def shared_rims(cells: Cells, demands: Sequence[Demand]) -> list[SharedRims]:
    """Return the rims that serve several tyres, none of whose neighbours of that width serves more, most first."""
    runs: list[list[_Rim]] = []
    for rim in sorted(rim for rim, cell in cells.items() if cell.serves.bit_count() > 1):
        last = runs[-1][-1] if runs else None
        follows = last is not None and last[:2] == rim[:2] and rim[2] - last[2] == 1.0
        if follows and last is not None and cells[last].serves == cells[rim].serves:
            runs[-1].append(rim)
        else:
            runs.append([rim])
    kept = [run for run in runs if not _outdone(run, runs, cells)]
    kept.sort(key=lambda run: (-cells[run[0]].serves.bit_count(), _least(run, cells), run[0]))
    return [_shared(run, cells, demands) for run in kept[:MOST_SHARED]]


def _outdone(run: list[_Rim], runs: list[list[_Rim]], cells: Cells) -> bool:
    mine, size = cells[run[0]].serves, run[0][:2]
    return any(
        other[0][:2] == size and cells[other[0]].serves != mine and cells[other[0]].serves & mine == mine
        for other in runs
    )


def _least(run: list[_Rim], cells: Cells) -> Cost:
    return min(_cost(cells[rim]) for rim in run)


def _cost(cell: _Cell) -> Cost:
    return float(cell.advice), cell.distance_mm, cell.width_away_in


def _shared(run: list[_Rim], cells: Cells, demands: Sequence[Demand]) -> SharedRims:
    best = min(run, key=lambda rim: _cost(cells[rim]))
    code, width, first = run[0]
    return SharedRims(code, width, first, run[-1][2], best[2], _named(cells[best].serves, demands))


def _named(bits: int, demands: Sequence[Demand]) -> tuple[Demand, ...]:
    return tuple(each for bit, each in enumerate(demands) if bits >> bit & 1)


def smallest_set(cells: Cells, demands: Sequence[Demand]) -> RimSet:
    """Return the fewest rims; of as few, those with the fewest conditions and nearest to the present wheels."""
    best: dict[int, _Rim] = {}
    for rim, cell in sorted(cells.items()):
        if cell.serves not in best or _cost(cell) < _cost(cells[best[cell.serves]]):
            best[cell.serves] = rim
    cover = smallest_cover({bits: _cost(cells[rim]) for bits, rim in best.items()})
    rims = tuple(
        ChosenRim(
            *best[bits],
            _named(bits, demands),
            _named(cells[best[bits]].conditions, demands),
        )
        for bits in cover.chosen
    )
    return RimSet(rims, _named(~cover.covered, demands), cover.exact)
