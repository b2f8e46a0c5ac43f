"""Which rims would do: for each tyre on an axle the widths and offsets, and the fewest rims that serve them all."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product
from typing import Literal, NamedTuple

from service.assessment.answer.verdict import VERDICTS, Verdict
from service.assessment.batch.axle_needs import AxleNeeds, axle_needs
from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.batch.rim_grid import Grid, grid_of, rim_designation, wanted_rim
from service.assessment.batch.rim_windows import RimWindows, windows_of
from service.assessment.batch.shared_rims import (
    ChosenRim,
    Demand,
    RimSet,
    SharedRims,
    cells_of,
    demands_of,
    shared_rims,
    smallest_set,
)
from service.assessment.case import Axle, Candidate, Case, Fitment, Tyre
from service.core.saying import say

ApprovedBy = Literal["table", "maker", "estimate"]
CoverMethod = Literal["exact", "greedy"]

NO_MARGIN_PERCENT = 0.0

AXLE_NOTE = say(
    "A window tells what a check finds of this axle alone; what it finds of the vehicle, the other axle staying as it "
    "is, stands in `besides`. The rims are taken to have the bolt circle, the bore and the load rating that the axle "
    "needs."
)


class TyrePair(NamedTuple):
    """A front and a rear tyre to be driven together; None: that axle stays as it is."""

    front: Tyre | None
    rear: Tyre | None
    label: str = ""


class RimsAsked(NamedTuple):
    """The tyres of interest on each axle, and those that belong together; nothing at all: the present tyres."""

    front: tuple[Tyre, ...] = ()
    rear: tuple[Tyre, ...] = ()
    combinations: tuple[TyrePair, ...] = ()


class Combined(NamedTuple):
    """What becomes of a combination on the rims of the smallest set."""

    asked: TyrePair
    tyres_at: tuple[int | None, int | None]
    """The places of the tyres among those of their axles; None where the axle stays as it is."""
    rims: tuple[ChosenRim | None, ChosenRim | None] = (None, None)
    candidate: Candidate | None = None
    """None where a tyre has no rim that does."""
    verdict: Verdict | None = None
    """What a check says of that candidate."""


class RimsFound(NamedTuple):
    """What was found."""

    needs: tuple[AxleNeeds, AxleNeeds]
    grids: tuple[Grid, Grid]
    windows: tuple[list[RimWindows], list[RimWindows]]
    shared: list[SharedRims]
    smallest: RimSet
    combinations: list[Combined]


def rims_for(case: Case, asked: RimsAsked) -> RimsFound:
    """Return the rims for the tyres asked about on the vehicle of a case, whose own candidate does not count."""
    vehicle = case.vehicle
    fronts = _tyres(asked.front, [each.front for each in asked.combinations], vehicle.front)
    rears = _tyres(asked.rear, [each.rear for each in asked.combinations], vehicle.rear)
    grids = grid_of(case, vehicle.front, fronts), grid_of(case, vehicle.rear, rears)
    demands, cells = demands_of(grids), cells_of(grids)
    smallest = smallest_set(cells, demands)
    return RimsFound(
        axle_needs(case, NO_MARGIN_PERCENT),
        grids,
        (windows_of(grids[0]), windows_of(grids[1])),
        shared_rims(cells, demands),
        smallest,
        _combined(case, asked.combinations, grids, smallest),
    )


def _tyres(asked: Sequence[Tyre], combined: Sequence[Tyre | None], axle: Axle) -> tuple[Tyre, ...]:
    """Return each tyre asked about once, in their order; the present one where none is."""
    found = dict.fromkeys([*asked, *(each for each in combined if each is not None)])
    return tuple(found) or (axle.fitted.tyre,)


def fitted_on(axle: Axle, tyre: Tyre, width_in: float, offset_mm: float) -> Fitment:
    """Return a tyre on a rim of this width and offset that has all that the axle asks of one."""
    return Fitment(tyre, wanted_rim(axle, rim_designation(axle, tyre, width_in, offset_mm)))


class _Side(NamedTuple):
    """What one axle of a combination may have."""

    tyre_at: int | None
    choices: list[tuple[ChosenRim | None, Fitment]]


def _combined(case: Case, asked: Sequence[TyrePair], grids: tuple[Grid, Grid], smallest: RimSet) -> list[Combined]:
    """Return each combination on the pair of rims of the smallest set that a check likes best."""
    sides = [(_side(grids[0], each.front, smallest), _side(grids[1], each.rear, smallest)) for each in asked]
    found = [Combined(each, (front.tyre_at, rear.tyre_at)) for each, (front, rear) in zip(asked, sides, strict=True)]
    pairs = [
        (at, front, rear)
        for at, (one, other) in enumerate(sides)
        for front, rear in product(one.choices, other.choices)
    ]
    if not pairs:
        return found
    candidates = [Candidate(front[1], rear[1], asked[at].label) for at, front, rear in pairs]
    verdicts = grade_all(case, *stack_candidates(case, candidates)).verdicts.tolist()
    # The best comes last and stays; of those alike, the first.
    for place in sorted(range(len(pairs)), key=lambda place: (verdicts[place], place), reverse=True):
        at, front, rear = pairs[place]
        found[at] = found[at]._replace(
            rims=(front[0], rear[0]), candidate=candidates[place], verdict=VERDICTS[verdicts[place]]
        )
    return found


def _side(grid: Grid, tyre: Tyre | None, smallest: RimSet) -> _Side:
    axle = grid.axle
    if tyre is None:
        return _Side(None, [(None, axle.fitted)])
    demand = Demand(axle.name, grid.tyres.index(tyre))
    return _Side(
        demand.tyre_at,
        [(rim, fitted_on(axle, tyre, rim.width_in, rim.offset_mm)) for rim in smallest.rims if demand in rim.serves],
    )
