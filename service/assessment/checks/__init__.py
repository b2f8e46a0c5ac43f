"""One file per question; the order here is the order of findings that came out alike."""

from __future__ import annotations

from service.assessment.checks import (
    axle_ratio,
    balance,
    clearance,
    load,
    overall_diameter,
    pressure,
    rim_contour,
    rim_diameter,
    rim_fixing,
    rim_load,
    rim_width,
    speed,
    speedometer_lead,
    structure,
    temporary_spare,
    track,
    tread_depth,
    wet_grip,
)
from service.assessment.checks.grade import Check
from service.assessment.view.views import AxleView, CarView

AXLE_CHECKS: tuple[Check[AxleView], ...] = (
    rim_diameter.DIAMETER,
    rim_width.WIDTH,
    rim_fixing.BOLT_CIRCLE,
    rim_fixing.CENTRE_BORE,
    rim_diameter.BRAKE_CLEARANCE,
    rim_load.LOAD_RATING,
    rim_contour.CONTOUR,
    load.CAPACITY,
    speed.SPEED,
    pressure.PRESSURE,
    load.BELOW_PRESENT,
    overall_diameter.DEVIATION,
    clearance.INBOARD,
    clearance.OUTBOARD,
    clearance.RADIAL,
    clearance.TWIN,
    track.TRACK,
    tread_depth.DEPTH,
    temporary_spare.SPARE,
    wet_grip.AQUAPLANING,
)
CAR_CHECKS: tuple[Check[CarView], ...] = (
    speedometer_lead.SPEEDOMETER,
    axle_ratio.AXLE_RATIO,
    structure.STRUCTURE,
    tread_depth.DIFFERENCE,
    balance.CHANGE,
    balance.GRIP_ORDER,
    wet_grip.AXLE_ORDER,
)
REQUIRED = frozenset(
    [check.code for check in AXLE_CHECKS if check.required] + [check.code for check in CAR_CHECKS if check.required]
)
