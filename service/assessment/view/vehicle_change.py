"""What changes for the whole vehicle from the present to the proposed fitment.

An identical fitment gives exactly zero everywhere; floats or arrays alike.
"""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.view.axle_view import AxleView
from service.assessment.view.change import new_onset_kmh, percent
from service.core.findings import Estimate
from service.physics.drivetrain import axle_ratio_change_percent, engine_speed_change_percent, odometer_change_percent
from service.physics.understeer import axle_compliance_deg_per_g, understeer_gradient_change_band_deg_per_g


class CarChange(NamedTuple):
    """Changes of the whole vehicle."""

    driven_circumference_ratio: float
    axle_ratio_percent: float
    engine_speed_percent: float
    odometer_percent: float
    front_compliance_deg_per_g: float
    rear_compliance_deg_per_g: float
    gradient_deg_per_g: Estimate[float]
    grip_order_percent: float
    rear_onset_lead_percent_present: float
    rear_onset_lead_percent: float


def car_change(front: AxleView, rear: AxleView, weights_n: tuple[float, float], driven: str) -> CarChange:
    """Return what changes for the whole vehicle."""
    now_front, then_front = front.now.geometry.rolling_circumference_mm, front.then.geometry.rolling_circumference_mm
    now_rear, then_rear = rear.now.geometry.rolling_circumference_mm, rear.then.geometry.rolling_circumference_mm
    now, then = _driven(now_front, now_rear, driven), _driven(then_front, then_rear, driven)
    front_compliance = axle_compliance_deg_per_g(weights_n[0], front.now.behaviour.axle_stiffness_n_per_deg)
    rear_compliance = axle_compliance_deg_per_g(weights_n[1], rear.now.behaviour.axle_stiffness_n_per_deg)
    gradient = understeer_gradient_change_band_deg_per_g(
        front_compliance, rear_compliance, front.change.stiffness_ratios, rear.change.stiffness_ratios
    )
    patch_mm = front.now.behaviour.patch_width_mm
    return CarChange(
        driven_circumference_ratio=then / now,
        axle_ratio_percent=axle_ratio_change_percent(now_front, now_rear, then_front, then_rear),
        engine_speed_percent=engine_speed_change_percent(now, then),
        odometer_percent=odometer_change_percent(now, then),
        front_compliance_deg_per_g=front_compliance,
        rear_compliance_deg_per_g=rear_compliance,
        gradient_deg_per_g=gradient,
        grip_order_percent=percent(front.change.cornering_stiffness.value, rear.change.cornering_stiffness.value),
        rear_onset_lead_percent_present=percent(new_onset_kmh(front.now, patch_mm), new_onset_kmh(rear.now, patch_mm)),
        rear_onset_lead_percent=percent(new_onset_kmh(front.then, patch_mm), new_onset_kmh(rear.then, patch_mm)),
    )


def _driven(front: float, rear: float, driven: str) -> float:
    return front if driven == "front" else rear if driven == "rear" else 0.5 * (front + rear)
