"""One file per question; the order here is the order of findings that came out alike."""

from __future__ import annotations

from service.assessment.checks import (
    aquaplaning_onset,
    axle_ratio,
    balance,
    bead_diameter,
    brake_clearance,
    clearance,
    grip_order,
    hub_bolts,
    hub_bore,
    load_below_present,
    load_capacity,
    overall_diameter,
    pressure,
    rim_contour,
    rim_load,
    rim_width_for_tyre,
    speed,
    speedometer_lead,
    structure,
    temporary_spare,
    track,
    tread_depth,
    tread_difference,
    twin_gap,
    wet_order,
    wet_reserve,
)
from service.assessment.checks.grade import Check
from service.assessment.view.views import AxleView, CarView

AXLE_CHECKS: tuple[Check[AxleView], ...] = (
    bead_diameter.DIAMETER,
    rim_width_for_tyre.WIDTH,
    hub_bolts.BOLT_CIRCLE,
    hub_bore.CENTRE_BORE,
    brake_clearance.BRAKE_CLEARANCE,
    rim_load.LOAD_RATING,
    rim_contour.CONTOUR,
    load_capacity.CAPACITY,
    speed.SPEED,
    pressure.PRESSURE,
    load_below_present.BELOW_PRESENT,
    overall_diameter.DEVIATION,
    clearance.INBOARD,
    clearance.OUTBOARD,
    clearance.RADIAL,
    twin_gap.TWIN,
    track.TRACK,
    tread_depth.DEPTH,
    temporary_spare.SPARE,
    aquaplaning_onset.AQUAPLANING,
)
CAR_CHECKS: tuple[Check[CarView], ...] = (
    speedometer_lead.SPEEDOMETER,
    axle_ratio.AXLE_RATIO,
    structure.STRUCTURE,
    tread_difference.DIFFERENCE,
    balance.CHANGE,
    grip_order.GRIP_ORDER,
    wet_order.AXLE_ORDER,
    wet_reserve.FRONT,
    wet_reserve.REAR,
)
