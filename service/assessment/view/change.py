"""What changes from the present to the proposed fitment: per axle, and for the whole vehicle.

An identical fitment gives exactly zero everywhere; floats or arrays alike.
"""

from __future__ import annotations

from typing import NamedTuple, Protocol

from service.assessment.case import Axle
from service.assessment.view.facts import WheelFacts
from service.assessment.view.figures import Behaviour, Geometry, Load
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, pick
from service.physics import bands
from service.physics.aquaplaning import CHANGE_BAND, width_factor
from service.physics.cornering_stiffness import StiffnessRatios, relative_cornering_stiffness_band, stiffness_ratios
from service.physics.drivetrain import axle_ratio_change_percent, engine_speed_change_percent, odometer_change_percent
from service.physics.understeer import axle_compliance_deg_per_g, understeer_gradient_change_band_deg_per_g
from service.physics.wheel_position import ride_height_change_mm, scrub_radius_change_mm, track_change_mm


class Wheel(NamedTuple):
    """One wheel, present or proposed: the row of facts and the figures made of it."""

    facts: WheelFacts
    geometry: Geometry
    load: Load
    behaviour: Behaviour


class AxleChange(NamedTuple):
    """Changes on one axle, proposed minus present; edges are positive where there is less room."""

    overall_diameter_percent: float
    overall_diameter_mm: float
    rolling_circumference_percent: float
    section_width_mm: float
    inboard_edge_mm: float
    outboard_edge_mm: float
    radial_edge_mm: float
    offset_mm: float
    track_mm: float
    scrub_radius_mm: float
    ride_height_mm: float
    load_capacity_percent: float
    cornering_stiffness: Estimate[float]
    aquaplaning_onset_percent: Estimate[float]
    stiffness_ratios: StiffnessRatios[float]


class Compared(Protocol):
    """One axle: present, proposed, and what changes between them."""

    @property
    def now(self) -> Wheel:
        """Return the present wheel."""

    @property
    def then(self) -> Wheel:
        """Return the proposed wheel."""

    @property
    def change(self) -> AxleChange:
        """Return what changes."""


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


def percent(now: float, then: float) -> float:
    """Return by how many per cent a quantity grows."""
    return 100.0 * (then / now - 1.0)


def axle_change(now: Wheel, then: Wheel, axle: Axle) -> AxleChange:
    """Return what changes on one axle; the track of twin wheels lies between them, whatever their offset."""
    single = 1.0 if axle.wheels_per_side == 1 else 0.0
    offset_now, offset_then = now.facts.offset_mm, then.facts.offset_mm
    diameter = then.geometry.overall_diameter_mm - now.geometry.overall_diameter_mm
    ratios = _stiffness_ratios(now, then)
    return AxleChange(
        percent(now.geometry.overall_diameter_mm, then.geometry.overall_diameter_mm),
        diameter,
        percent(now.geometry.rolling_circumference_mm, then.geometry.rolling_circumference_mm),
        then.geometry.section_width_mm - now.geometry.section_width_mm,
        then.geometry.inner_edge_mm - now.geometry.inner_edge_mm,
        then.geometry.outer_edge_mm - now.geometry.outer_edge_mm,
        0.5 * diameter,
        offset_then - offset_now,
        single * track_change_mm(offset_now, offset_then),
        single * scrub_radius_change_mm(offset_now, offset_then),
        ride_height_change_mm(now.behaviour.static_loaded_radius_mm, then.behaviour.static_loaded_radius_mm),
        percent(now.load.axle_capacity_kg, then.load.axle_capacity_kg),
        relative_cornering_stiffness_band(ratios),
        _onset_change_percent(now, then),
        ratios,
    )


def _stiffness_ratios(now: Wheel, then: Wheel) -> StiffnessRatios[float]:
    rim_now = now.facts.rim_width_in / now.facts.measuring_rim_in
    # No model here speaks of both a radial and a diagonal tyre.
    alike = pick(then.facts.radial == now.facts.radial, 1.0, UNKNOWN)
    return stiffness_ratios(
        alike * then.facts.nominal_width_mm / now.facts.nominal_width_mm,
        then.facts.section_height_mm / now.facts.section_height_mm,
        then.facts.rim_width_in / then.facts.measuring_rim_in / rim_now,
        then.behaviour.pressure_kpa / now.behaviour.pressure_kpa,
    )


def _onset_change_percent(now: Wheel, then: Wheel) -> Estimate[float]:
    level = then.behaviour.aquaplaning_onset_kmh / now.behaviour.aquaplaning_onset_kmh
    width = width_factor(now.behaviour.patch_width_mm, then.behaviour.patch_width_mm)
    return bands.multiple(100.0 * (level * width - 1.0), CHANGE_BAND)


def car_change(front: Compared, rear: Compared, weights_n: tuple[float, float], driven: str) -> CarChange:
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
        then / now,
        axle_ratio_change_percent(now_front, now_rear, then_front, then_rear),
        engine_speed_change_percent(now, then),
        odometer_change_percent(now, then),
        front_compliance,
        rear_compliance,
        gradient,
        percent(front.change.cornering_stiffness.value, rear.change.cornering_stiffness.value),
        percent(onset_kmh(front.now, patch_mm), onset_kmh(rear.now, patch_mm)),
        percent(onset_kmh(front.then, patch_mm), onset_kmh(rear.then, patch_mm)),
    )


def _driven(front: float, rear: float, driven: str) -> float:
    return front if driven == "front" else rear if driven == "rear" else 0.5 * (front + rear)


def onset_kmh(wheel: Wheel, front_patch_mm: float) -> float:
    """Return the aquaplaning onset of a wheel [km/h], its width counted.

    The level formula has no width term, so the patch of the present front wheel is the measure of all four.
    """
    width = width_factor(front_patch_mm, wheel.behaviour.patch_width_mm)
    return wheel.behaviour.aquaplaning_onset_kmh * width
