"""The windows of `rims` against a scan: every width at every offset, each asked as a check of its own.

Reference: the check. A cell of the grid is what a check finds of the axle, and with what it finds besides, it is the
verdict, when the other axle stays as it is. The bolt circle and the bore are left out of a window, so they are here.
"""

from random import Random

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import FitmentRequest, Tyre
from service.assessment.answer.assess import assess
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.rim_grid import OF_THE_HUB, Grid, grid_of
from service.assessment.batch.rim_search import fitted_on
from service.assessment.batch.rim_windows import windows_of
from service.assessment.case import Candidate, Case, Fitment
from service.core.findings import ADVISORY, OPEN
from tests.support import many_cases
from tests.support.effort import cases

VEHICLES = range(cases(6, 60))
PACKS = ("unece", "de", "nz", "au-nsw")
AXLES = ("front", "rear")
TYRES_BESIDES = 2
# One of so many cells of a grid is put to a check.
SHARE = cases(5, 1)


def _case(seed: int, pack: str) -> Case:
    return translate.question(
        FitmentRequest.model_validate({"vehicle": many_cases.vehicle(Random(seed)), "rule_pack": pack})
    )


def _grid(case: Case, name: str, seed: int) -> Grid:
    """Return the grid of the present tyre and some others."""
    axle, chance = getattr(case.vehicle, name), Random(1000 + seed)
    others = [many_cases.wheel(chance)["tyre"] for _ in range(TYRES_BESIDES)]
    return grid_of(case, axle, [axle.fitted.tyre, *(translate.tyre(Tyre.model_validate(each)) for each in others)])


def _alone(case: Case, name: str, fitted: Fitment) -> Candidate:
    """Return a candidate that changes this axle alone."""
    present = Candidate(case.vehicle.front.fitted, case.vehicle.rear.fitted)
    return present._replace(**{name: fitted})


def _candidates(case: Case, grid: Grid) -> list[Candidate]:
    return [
        _alone(case, grid.axle.name, fitted_on(grid.axle, grid.tyres[row.tyre_at], row.width_in, offset))
        for row in grid.rows
        for offset in grid.offsets_mm.tolist()
    ]


def _scanned(graded: Graded, grid: Grid) -> tuple[np.ndarray, np.ndarray]:
    """Return the worst outcome on the axle and elsewhere, of each cell that was asked by itself."""
    mine = [each.where == grid.axle.name for each in graded.questions]
    hub = [each.where == grid.axle.name and each.code in OF_THE_HUB for each in graded.questions]
    on_axle = graded.outcomes[np.array(mine) & ~np.array(hub)].max(axis=0)
    return on_axle.reshape(grid.shape), graded.outcomes[~np.array(mine)].max(axis=0).reshape(grid.shape)


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("seed", VEHICLES)
def test_every_cell_is_what_it_is_when_asked_by_itself(seed, pack):
    case = _case(seed, pack)
    for name in AXLES:
        grid = _grid(case, name, seed)
        if not grid.rows:
            continue
        on_axle, elsewhere = _scanned(grade_all(case, *stack_candidates(case, _candidates(case, grid))), grid)
        assert np.array_equal(grid.outcomes, on_axle)
        assert np.array_equal(np.broadcast_to(grid.besides.outcomes.max(axis=0), grid.shape), elsewhere)


@pytest.mark.parametrize(("seed", "pack"), [(3, "unece"), (9, "de"), (11, "nz"), (12, "au-nsw")])
def test_every_cell_is_what_a_check_finds(seed, pack):
    case = _case(seed, pack)
    for name in AXLES:
        grid = _grid(case, name, seed)
        worst = np.maximum(grid.outcomes, grid.besides.outcomes.max(axis=0)).ravel().tolist()
        asked = list(zip(_candidates(case, grid), worst, strict=True))
        for candidate, outcome in Random(seed).sample(asked, len(asked) // SHARE):
            findings = assess(case._replace(candidate=candidate)).findings
            counted = [each for each in findings if each.axle != name or each.code not in OF_THE_HUB]
            assert max(each.outcome for each in counted) == outcome


@pytest.mark.parametrize("pack", PACKS)
@pytest.mark.parametrize("seed", VEHICLES)
def test_a_window_holds_what_is_in_it_and_nothing_else(seed, pack):
    case = _case(seed, pack)
    for name in AXLES:
        grid = _grid(case, name, seed)
        for outcomes, found in zip(grid.outcomes, windows_of(grid), strict=True):
            for window, most in ((found.suitable, OPEN), (found.with_conditions, ADVISORY)):
                runs = () if window is None else ((window.from_mm, window.to_mm), *window.further)
                inside = {offset for low, high in runs for offset in np.arange(low, high + 1.0).tolist()}
                assert inside == set(grid.offsets_mm[outcomes <= most].tolist())


@pytest.mark.parametrize("seed", VEHICLES)
def test_no_offset_beyond_the_grid_does(seed):
    """The columns end where the room does: a little further on nothing fits either."""
    case = _case(seed, "unece")
    for name in AXLES:
        grid = _grid(case, name, seed)
        ends = [float(grid.offsets_mm[0]), float(grid.offsets_mm[-1])]
        beyond = [each for end, step in zip(ends, (-1.0, 1.0), strict=True) for each in (end + step, end + 8.0 * step)]
        candidates = [
            _alone(case, name, fitted_on(grid.axle, grid.tyres[row.tyre_at], row.width_in, offset))
            for row in grid.rows
            for offset in beyond
            if abs(offset) <= 190.0 and len(grid.offsets_mm) > 1
        ]
        if candidates:
            graded = grade_all(case, *stack_candidates(case, candidates))
            mine = np.array([each.where == name for each in graded.questions])
            assert (graded.outcomes[mine].max(axis=0) > ADVISORY).all()


def test_the_vehicles_have_windows_of_both_kinds_and_of_none():
    found = [
        each for seed in VEHICLES for name in AXLES for each in windows_of(_grid(_case(seed, "unece"), name, seed))
    ]
    assert sum(each.suitable is not None for each in found) > 10
    assert sum(each.with_conditions is not None for each in found) > 20
    assert sum(each.with_conditions is None for each in found) > 20
    assert {each.outcome for each in found} >= {OPEN, ADVISORY}
