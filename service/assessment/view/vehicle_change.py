"""What changes for the whole vehicle from the present to the proposed fitment.

An identical fitment gives exactly zero everywhere; floats or arrays alike.
"""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.view.axle_view import AxleView
from service.assessment.view.change import new_onset_kmh, percent
from service.core.findings import Estimate
from service.core.numeric import Num
from service.physics.drivetrain import axle_ratio_change_percent, engine_speed_change_percent, odometer_change_percent
from service.physics.understeer import axle_compliance_deg_per_g, understeer_gradient_change_band_deg_per_g


class CarChange(NamedTuple, Generic[Num]):
    """Changes of the whole vehicle."""

    driven_circumference_ratio: Num
    axle_ratio_percent: Num
    engine_speed_percent: Num
    odometer_percent: Num
    front_compliance_deg_per_g: Num
    rear_compliance_deg_per_g: Num
    gradient_deg_per_g: Estimate[Num]
    grip_order_percent: Num
    rear_onset_lead_percent_present: Num
    rear_onset_lead_percent: Num


def car_change(front: AxleView[Num], rear: AxleView[Num], weights_n: tuple[Num, Num], driven: str) -> CarChange[Num]:
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


def _driven(front: Num, rear: Num, driven: str) -> Num:
    return front if driven == "front" else rear if driven == "rear" else 0.5 * (front + rear)
