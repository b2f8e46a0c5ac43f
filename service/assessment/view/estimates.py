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
from service.physics.inertia import MASS_BAND, tyre_mass_kg, wheel_inertia_kg_m2
from service.physics.rolling import BAND as CIRCUMFERENCE_BAND
from service.physics.vertical_stiffness import LOADED_RADIUS_BAND_MM
from service.physics.wet_reserve import onset_band_kmh


class WheelEstimates(NamedTuple):
    """What is estimated of one wheel, each with its band; NaN where it is not known."""

    rolling_circumference_mm: Estimate[float]
    """NaN where it was measured: what is measured is no estimate."""
    static_loaded_radius_mm: Estimate[float]
    patch_length_mm: Estimate[float]
    patch_width_mm: Estimate[float]
    patch_area_cm2: Estimate[float]
    cornering_stiffness_n_per_deg: Estimate[float]
    aquaplaning_onset_kmh: Estimate[float]
    wheel_mass_kg: Estimate[float]
    wheel_inertia_kg_m2: Estimate[float]


def wheel_estimates(wheel: Wheel, front_patch_mm: float, stiffness: float | None) -> WheelEstimates:
    """Return the estimates of one wheel.

    `stiffness` is the cornering stiffness of a proposed wheel: the present level times the change; None: the level
    of this wheel itself. The onset is measured against the patch of the present front wheel.
    """
    found, facts = wheel.behaviour, wheel.facts
    radius = found.static_loaded_radius_mm
    level = found.cornering_stiffness_n_per_deg if stiffness is None else stiffness
    tyre = known_or(
        facts.tyre_mass_kg, tyre_mass_kg(facts.overall_diameter_mm, facts.nominal_width_mm, facts.rim_diameter_mm)
    )
    inertia = wheel_inertia_kg_m2(tyre, facts.rim_mass_kg, facts.overall_diameter_mm, facts.rim_diameter_mm)
    depth = known_or(facts.tread_depth_mm, NEW_TREAD_DEPTH_MM)
    computed = wheel.geometry.rolling_circumference_mm if isnan(facts.measured_circumference_mm) else UNKNOWN
    return WheelEstimates(
        rolling_circumference_mm=symmetric(computed, CIRCUMFERENCE_BAND),
        static_loaded_radius_mm=Estimate(radius, radius - LOADED_RADIUS_BAND_MM, radius + LOADED_RADIUS_BAND_MM),
        patch_length_mm=symmetric(found.patch_length_mm, length_band(found.load_share)),
        patch_width_mm=symmetric(found.patch_width_mm, WIDTH_BAND),
        patch_area_cm2=symmetric(found.patch_area_cm2, area_band(found.load_share)),
        cornering_stiffness_n_per_deg=symmetric(level, LEVEL_BAND),
        aquaplaning_onset_kmh=onset_band_kmh(onset_kmh(wheel, front_patch_mm), depth),
        wheel_mass_kg=symmetric(tyre + facts.rim_mass_kg, MASS_BAND),
        wheel_inertia_kg_m2=symmetric(inertia, MASS_BAND),
    )
