"""The estimates of one wheel with their bands; the bands are those of the formulas' own files."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.view.change import Wheel, onset_kmh
from service.core.findings import Estimate
from service.core.numeric import known_or
from service.physics.aquaplaning import ONSET_BAND
from service.physics.bands import symmetric
from service.physics.contact_patch import AREA_BAND, LENGTH_BAND, WIDTH_BAND
from service.physics.cornering_stiffness import LEVEL_BAND
from service.physics.inertia import MASS_BAND, tyre_mass_kg, wheel_inertia_kg_m2
from service.physics.vertical_stiffness import LOADED_RADIUS_BAND_MM


class WheelEstimates(NamedTuple):
    """What is estimated of one wheel, each with its band; NaN where it is not known."""

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
    return WheelEstimates(
        Estimate(radius, radius - LOADED_RADIUS_BAND_MM, radius + LOADED_RADIUS_BAND_MM),
        symmetric(found.patch_length_mm, LENGTH_BAND),
        symmetric(found.patch_width_mm, WIDTH_BAND),
        symmetric(found.patch_area_cm2, AREA_BAND),
        symmetric(level, LEVEL_BAND),
        symmetric(onset_kmh(wheel, front_patch_mm), ONSET_BAND),
        symmetric(tyre + facts.rim_mass_kg, MASS_BAND),
        symmetric(inertia, MASS_BAND),
    )
