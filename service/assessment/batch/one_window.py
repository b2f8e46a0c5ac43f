"""The window of offsets of one wheel: its tyre on its width of rim, as `rims` finds it."""

from __future__ import annotations

from service.assessment.batch.rim_grid import grid_of
from service.assessment.batch.rim_windows import RimWindows, windows_of
from service.assessment.case import Axle, Case, Fitment


def window_of(case: Case, axle: Axle, fitted: Fitment) -> RimWindows | None:
    """Return the window of a wheel on an axle, the other axle staying as it is.

    None where the tyre does not take the width of its rim, or where that is no step of half an inch.
    """
    found = windows_of(grid_of(case, axle, (fitted.tyre,)))
    if fitted.tyre.designation.rim_code != fitted.rim.designation.diameter_code:
        return None
    return next((each for each in found if each.row.width_in == fitted.rim.designation.width_in), None)
