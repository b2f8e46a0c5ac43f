"""The estimates of one wheel with their bands; the bands are those of the formulas' own files."""

from __future__ import annotations

from math import isnan
from typing import NamedTuple

from service.assessment.view.change import Wheel, onset_kmh
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, known_or
from service.physics.bands import symmetric
from service.physics.contact_patch import WIDTH_BAND, area_band, length_band
from service.physics.cornering_stiffness import LEVEL_BAND
from service.physics.inertia import (
    tyre_mass_estimate_kg,
    tyre_mass_kg,
    wheel_inertia_estimate_kg_m2,
    wheel_mass_estimate_kg,
)
from service.physics.rolling import BAND as CIRCUMFERENCE_BAND
from service.physics.vertical_stiffness import LOADED_RADIUS_BAND_MM
from service.physics.wet_reserve import onset_band_kmh


class WheelEstimates(NamedTuple):
    """What is estimated of one wheel, each with its band; NaN where it is not known."""

    rolling_circumference_mm: Estimate[float]
    """NaN where it was measured: what is measured is no estimate."""
    static_loaded_radius_mm: Estimate[float]
    """NaN for carcasses that the model was not made for."""
    patch_length_mm: Estimate[float]
    patch_width_mm: Estimate[float]
    patch_area_cm2: Estimate[float]
    cornering_stiffness_n_per_deg: Estimate[float]
    aquaplaning_onset_kmh: Estimate[float]
    wheel_mass_kg: Estimate[float]
    wheel_inertia_kg_m2: Estimate[float]


def loaded_radius_mm(wheel: Wheel) -> Estimate[float]:
    """Return the static loaded radius of a radial passenger tyre; that of other carcasses is not known.

    The model was made for belted passenger tyres. A commercial or diagonal carcass is off by more than any band that
    is known of it.
    """
    made_for = wheel.facts.radial and not wheel.facts.commercial
    value = wheel.behaviour.static_loaded_radius_mm if made_for else UNKNOWN
    return Estimate(value, value - LOADED_RADIUS_BAND_MM, value + LOADED_RADIUS_BAND_MM)


def wheel_estimates(wheel: Wheel, front_patch_mm: float, stiffness: float | None) -> WheelEstimates:
    """Return the estimates of one wheel.

    `stiffness` is the cornering stiffness of a proposed wheel: the present level times the change; None: the level
    of this wheel itself. The onset is measured against the patch of the present front wheel.
    """
    found, facts = wheel.behaviour, wheel.facts
    level = found.cornering_stiffness_n_per_deg if stiffness is None else stiffness
    outer, width, rim_mm = facts.overall_diameter_mm, facts.nominal_width_mm, facts.rim_diameter_mm
    tyre = tyre_mass_estimate_kg(facts.tyre_mass_kg, tyre_mass_kg(outer, width, rim_mm))
    depth = known_or(facts.tread_depth_mm, NEW_TREAD_DEPTH_MM)
    computed = wheel.geometry.rolling_circumference_mm if isnan(facts.measured_circumference_mm) else UNKNOWN
    return WheelEstimates(
        rolling_circumference_mm=symmetric(computed, CIRCUMFERENCE_BAND),
        static_loaded_radius_mm=loaded_radius_mm(wheel),
        patch_length_mm=symmetric(found.patch_length_mm, length_band(found.load_share)),
        patch_width_mm=symmetric(found.patch_width_mm, WIDTH_BAND),
        patch_area_cm2=symmetric(found.patch_area_cm2, area_band(found.load_share)),
        cornering_stiffness_n_per_deg=symmetric(level, LEVEL_BAND),
        aquaplaning_onset_kmh=onset_band_kmh(onset_kmh(wheel, front_patch_mm), depth),
        wheel_mass_kg=wheel_mass_estimate_kg(tyre, facts.rim_mass_kg),
        wheel_inertia_kg_m2=wheel_inertia_estimate_kg_m2(tyre, facts.rim_mass_kg, outer, rim_mm),
    )
