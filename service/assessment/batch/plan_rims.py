"""On which rims would the tyres of a plan stand, where the caller names none?

The rim that an axle has now serves every tyre that it takes, since nobody has to buy it. For the other tyres the fewest
rims are found that serve them all.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, NamedTuple

import numpy as np

from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.batch.rim_grid import Grid, grid_of
from service.assessment.batch.rim_search import fitted_on
from service.assessment.batch.rim_windows import windows_of
from service.assessment.batch.shared_rims import Demand, RimSet, cells_of, demands_of, smallest_set
from service.assessment.case import Axle, Candidate, Case, Fitment, Rim, Tyre
from service.core.findings import ADVISORY, AxleName

RimOrigin = Literal["given", "present", "found"]


class PlannedRim(NamedTuple):
    """A rim, and where it comes from."""

    rim: Rim
    origin: RimOrigin


class RimsToBuy(NamedTuple):
    """The fewest rims for the tyres of an axle that its present one does not take, and those tyres."""

    axle: AxleName
    smallest: RimSet
    tyres: tuple[Tyre, ...]


class PlannedRims(NamedTuple):
    """A rim for each tyre, per axle."""

    front: dict[Tyre, PlannedRim]
    rear: dict[Tyre, PlannedRim]
    to_buy: tuple[RimsToBuy, RimsToBuy]


def rims_of(case: Case, fronts: Sequence[Tyre], rears: Sequence[Tyre]) -> PlannedRims:
    """Return a rim for each tyre on its axle; one that does where any does.

    Each axle has its own: one rim for both would put the front tyre on a wide one, and the balance would pay for it.
    """
    front, front_to_buy = _on_axle(case, case.vehicle.front, fronts)
    rear, rear_to_buy = _on_axle(case, case.vehicle.rear, rears)
    return PlannedRims(front, rear, (front_to_buy, rear_to_buy))


def _on_axle(case: Case, axle: Axle, tyres: Sequence[Tyre]) -> tuple[dict[Tyre, PlannedRim], RimsToBuy]:
    kept = _on_present(case, axle, tyres)
    wanting = tuple(each for each in dict.fromkeys(tyres) if each not in kept)
    grid = grid_of(case, axle, wanting)
    smallest = smallest_set(cells_of([grid]), demands_of([grid]))
    return kept | _chosen(grid, smallest), RimsToBuy(axle.name, smallest, wanting)


def _on_present(case: Case, axle: Axle, tyres: Sequence[Tyre]) -> dict[Tyre, PlannedRim]:
    """Return the tyres that an axle takes on the rim that it has now."""
    wanted = list(dict.fromkeys(tyres))
    if not wanted:
        return {}
    present = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    wheels = [axle.fitted._replace(tyre=each) for each in wanted]
    tried = [present._replace(**{axle.name: each}) for each in wheels]  # type: ignore[arg-type] # the axle's own field
    graded = grade_all(case, *stack_candidates(case, tried))
    # What the other axle or the whole vehicle says is a matter of the combination, not of this rim.
    mine = [at for at, each in enumerate(graded.questions) if each.where == axle.name]
    # A tyre may stand half an inch beside its approved widths with a condition: where a rim is bought, it shall not.
    of_rim = [at for at in mine if graded.questions[at].code.startswith("rim.")]
    does = (graded.outcomes[mine].max(axis=0) <= ADVISORY) & (graded.outcomes[of_rim].max(axis=0) < ADVISORY)
    rim = PlannedRim(axle.fitted.rim, "present")
    return {tyre: rim for tyre, serves in zip(wanted, does.tolist(), strict=True) if serves}


def _chosen(grid: Grid, smallest: RimSet) -> dict[Tyre, PlannedRim]:
    """Return for each tyre of a grid its rim of the smallest set; where none serves it, the one that comes closest."""
    closest: dict[int, Fitment] = {}
    away = abs(np.ravel(grid.facts.measuring_rim_in) - [each.width_in for each in grid.rows])
    ranked = sorted(zip(windows_of(grid), away.tolist(), strict=True), key=lambda each: (each[0].outcome, each[1]))
    for each, _ in ranked:
        at, tyre = each.row.tyre_at, grid.tyres[each.row.tyre_at]
        if at not in closest:
            closest[at] = fitted_on(grid.axle, tyre, each.row.width_in, each.best_mm)
    found = {}
    for at, tyre in enumerate(grid.tyres):
        serving = [rim for rim in smallest.rims if Demand(grid.axle.name, at) in rim.serves]
        if serving:
            # Of several the one that needs no condition.
            rim = min(serving, key=lambda each: Demand(grid.axle.name, at) in each.with_conditions)
            made = fitted_on(grid.axle, tyre, rim.width_in, rim.offset_mm).rim
            found[tyre] = PlannedRim(made, "found")
        elif at in closest:
            found[tyre] = PlannedRim(closest[at].rim, "found")
        else:
            found[tyre] = PlannedRim(grid.axle.fitted.rim, "present")
    return found
