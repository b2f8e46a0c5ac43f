"""What changes on one axle from the present to the proposed fitment.

An identical fitment gives exactly zero everywhere; floats or arrays alike.
"""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.case import Axle
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM, Behaviour, Geometry, Load
from service.assessment.view.wheel_facts import WheelFacts, same_rim
from service.core.findings import Estimate, Holds
from service.core.numeric import UNKNOWN, Num, Num_co, known, known_or, pick, unknown
from service.physics.aquaplaning import width_factor
from service.physics.cornering_stiffness import StiffnessRatios, relative_cornering_stiffness_band, stiffness_ratios
from service.physics.wet_reserve import onset_change_band_percent
from service.physics.wheel_position import ride_height_change_mm, scrub_radius_change_mm, track_change_mm


class Wheel(NamedTuple, Generic[Num_co]):
    """One wheel, present or proposed: the row of facts and the figures made of it."""

    facts: WheelFacts[Num_co]
    geometry: Geometry[Num_co]
    load: Load[Num_co]
    behaviour: Behaviour[Num_co]


class AxleChange(NamedTuple, Generic[Num]):
    """Changes on one axle, proposed minus present; edges as designed, positive where there is less room."""

    overall_diameter_percent: Num
    overall_diameter_mm: Num
    rolling_circumference_percent: Num
    section_width_mm: Num
    inboard_edge_mm: Num
    outboard_edge_mm: Num
    radial_edge_mm: Num
    offset_mm: Num
    track_mm: Num
    scrub_radius_mm: Num
    ride_height_mm: Num
    load_capacity_percent: Num
    cornering_stiffness: Estimate[Num]
    aquaplaning_onset_percent: Estimate[Num]
    stiffness_ratios: StiffnessRatios[Num]
    half_width_mm: Num
    """By how much half the wheel's width grows, as designed; where it stands left out."""
    growth_sideways_mm: Num
    """What a measured room must leave for growth on either side; the same tyre needs what it has."""
    growth_radial_mm: Num
    same_rim: Num
    """1 where the proposed rim is one that the axle has now, else 0."""


def percent(now: Num, then: Num) -> Num:
    """Return by how many per cent a quantity grows."""
    return 100.0 * (then / now - 1.0)


def axle_change(now: Wheel[Num], then: Wheel[Num], axle: Axle[Num]) -> AxleChange[Num]:
    """Return what changes on one axle; the track of twin wheels lies between them, whatever their offset."""
    single = axle.wheels_per_side == 1
    same = same_rim(now.facts, then.facts)
    # What is marked on a rim that stays does not change, whatever it is: the wheel moves by the spacer alone.
    spaced = now.facts.spacer_mm - then.facts.spacer_mm
    offset = pick((same == 1.0) & unknown(then.facts.offset_mm), spaced, then.facts.offset_mm - now.facts.offset_mm)
    half_width = _half_width_mm(now, then)
    diameter = then.geometry.overall_diameter_mm - now.geometry.overall_diameter_mm
    ratios = _stiffness_ratios(now, then)
    return AxleChange(
        overall_diameter_percent=percent(now.geometry.overall_diameter_mm, then.geometry.overall_diameter_mm),
        overall_diameter_mm=diameter,
        rolling_circumference_percent=percent(
            now.geometry.rolling_circumference_mm, then.geometry.rolling_circumference_mm
        ),
        section_width_mm=then.geometry.section_width_mm - now.geometry.section_width_mm,
        inboard_edge_mm=half_width + offset,
        outboard_edge_mm=half_width - offset if single else half_width + offset,
        radial_edge_mm=pick(_same_unknown_size(now, then), 0.0, 0.5 * diameter),
        offset_mm=offset,
        track_mm=track_change_mm(0.0, offset) if single else 0.0,
        scrub_radius_mm=scrub_radius_change_mm(0.0, offset) if single else 0.0,
        ride_height_mm=ride_height_change_mm(
            now.behaviour.static_loaded_radius_mm, then.behaviour.static_loaded_radius_mm
        ),
        load_capacity_percent=percent(now.load.axle_capacity_kg, then.load.axle_capacity_kg),
        cornering_stiffness=relative_cornering_stiffness_band(ratios),
        aquaplaning_onset_percent=_onset_change_percent(now, then),
        stiffness_ratios=ratios,
        half_width_mm=half_width,
        growth_sideways_mm=_growth_sideways_mm(now, then),
        growth_radial_mm=_growth_radial_mm(now, then),
        same_rim=same,
    )


def _same_unknown_size(now: Wheel[Num], then: Wheel[Num]) -> Holds:
    """Return whether two tyres have one size whose dimensions no table gives."""
    one, other = now.facts, then.facts
    named = (one.nominal_width_mm == other.nominal_width_mm) & (one.tyre_rim_code == other.tyre_rim_code)
    return named & unknown(one.overall_diameter_mm) & unknown(other.overall_diameter_mm)


def _half_width_mm(now: Wheel[Num], then: Wheel[Num]) -> Num:
    same_rim_width = now.facts.rim_width_in == then.facts.rim_width_in
    unknown_widths = unknown(now.geometry.widest_mm) & unknown(then.geometry.widest_mm)
    alike = _same_unknown_size(now, then) & same_rim_width & unknown_widths
    return pick(alike, 0.0, 0.5 * (then.geometry.widest_mm - now.geometry.widest_mm))


def _growth_sideways_mm(now: Wheel[Num], then: Wheel[Num]) -> Num:
    """Return how far a tyre that is wider than the present one may outgrow its design on either side."""
    width, present = then.geometry.section_width_mm, now.geometry.section_width_mm
    # Beside a present tyre that was measured, one of which only the design is known may turn out wider.
    like_with_like = unknown(now.facts.measured_width_mm) | known(then.facts.measured_width_mm)
    alike = (width == present) | ((width < present) & like_with_like) | (unknown(width) & unknown(present))
    return pick(alike, 0.0, 0.5 * (then.geometry.grown_widest_mm - then.geometry.widest_mm))


def _growth_radial_mm(now: Wheel[Num], then: Wheel[Num]) -> Num:
    """Return how far a tyre that is larger than the present one may outgrow its design radius."""
    diameter, present = then.geometry.overall_diameter_mm, now.geometry.overall_diameter_mm
    alike = (diameter <= present) | (unknown(diameter) & unknown(present))
    return pick(alike, 0.0, 0.5 * (then.geometry.grown_diameter_mm - diameter))


def _stiffness_ratios(now: Wheel[Num], then: Wheel[Num]) -> StiffnessRatios[Num]:
    rim_now = now.facts.rim_width_in / now.facts.measuring_rim_in
    # No model here speaks of both a radial and a diagonal tyre.
    alike = pick(then.facts.radial == now.facts.radial, 1.0, UNKNOWN)
    return stiffness_ratios(
        alike * then.facts.nominal_width_mm / now.facts.nominal_width_mm,
        then.facts.section_height_mm / now.facts.section_height_mm,
        then.facts.rim_width_in / then.facts.measuring_rim_in / rim_now,
        then.behaviour.pressure_kpa / now.behaviour.pressure_kpa,
    )


def _onset_change_percent(now: Wheel[Num], then: Wheel[Num]) -> Estimate[Num]:
    """Return by how much the onset changes, both tyres new; the band alone minds how far they are worn."""
    patch = now.behaviour.patch_width_mm
    change = percent(new_onset_kmh(now, patch), new_onset_kmh(then, patch))
    depths = (known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM) for wheel in (now, then))
    return onset_change_band_percent(change, *depths)


def onset_kmh(wheel: Wheel[Num], front_patch_mm: Num) -> Num:
    """Return the aquaplaning onset of a wheel [km/h], its width counted.

    The level formula has no width term, so the patch of the present front wheel is the measure of all four.
    """
    width = width_factor(front_patch_mm, wheel.behaviour.patch_width_mm)
    return wheel.behaviour.aquaplaning_onset_kmh * width


def new_onset_kmh(wheel: Wheel[Num], front_patch_mm: Num) -> Num:
    """Return the same for a new tyre: axles and fitments are compared as new."""
    width = width_factor(front_patch_mm, wheel.behaviour.patch_width_mm)
    return wheel.behaviour.onset_as_new_kmh * width
