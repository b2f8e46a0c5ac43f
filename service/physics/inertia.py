"""Mass and moment of inertia of a wheel: project estimates for when nothing is measured."""

from __future__ import annotations

import math
from typing import Final

from service.core.findings import Estimate
from service.core.numeric import Num, known_or
from service.physics.bands import symmetric

MASS_BAND: Final = 0.20
"""Half-width of the band of the tyre's mass."""
TYRE_GYRATION_SHARE: Final = 0.90
"""Radius of gyration of a tyre over half its overall diameter."""
RIM_GYRATION_SHARE: Final = 0.75
"""Radius of gyration of a wheel disc and rim over half its nominal rim diameter (own, no source)."""
SHAPE_BAND: Final = 0.10
"""Half-width of what these two shares add to the band of the inertia, weighed masses or not (own, no source)."""

_MM_PER_M: Final = 1000.0


def tyre_mass_kg(overall_diameter_mm: Num, nominal_width_mm: Num, rim_diameter_mm: Num) -> Num:
    """Return the mass of a car tyre: tread and belt, two sidewalls, two beads.

    m = 18.2 pi OD 0.8 SN + 8.0 (2 pi / 4) (OD^2 - D^2) + D / 0.381, lengths in metres.

    Parameters
    ----------
    overall_diameter_mm : float or array
        OD [mm].
    nominal_width_mm : float or array
        SN [mm].
    rim_diameter_mm : float or array
        D [mm].

    Returns
    -------
    float or array
        Mass [kg], within plus or minus `MASS_BAND`; a measured mass always overrides it.

    References
    ----------
    .. [PROJECT] own estimate.
    """
    outer_m = overall_diameter_mm / _MM_PER_M
    rim_m = rim_diameter_mm / _MM_PER_M
    tread_kg = 18.2 * math.pi * outer_m * 0.8 * nominal_width_mm / _MM_PER_M
    sidewalls_kg = 8.0 * 0.5 * math.pi * (outer_m**2 - rim_m**2)
    return tread_kg + sidewalls_kg + rim_m / 0.381


def radius_of_gyration_mm(overall_diameter_mm: Num) -> Num:
    """Return the radius at which a tyre's mass would have the same inertia, 0.90 R0.

    Parameters
    ----------
    overall_diameter_mm : float or array
        2 R0 [mm].

    Returns
    -------
    float or array
        Radius of gyration [mm].
    """
    return TYRE_GYRATION_SHARE * 0.5 * overall_diameter_mm


def tyre_inertia_kg_m2(mass_kg: Num, overall_diameter_mm: Num) -> Num:
    """Return a tyre's moment of inertia about its axle.

    Parameters
    ----------
    mass_kg : float or array
        Mass of the tyre [kg].
    overall_diameter_mm : float or array
        2 R0 [mm].

    Returns
    -------
    float or array
        Moment of inertia [kg m2].
    """
    return mass_kg * (radius_of_gyration_mm(overall_diameter_mm) / _MM_PER_M) ** 2


def wheel_inertia_kg_m2(tyre_mass_kg: Num, rim_mass_kg: Num, overall_diameter_mm: Num, rim_diameter_mm: Num) -> Num:
    """Return the moment of inertia of rim and tyre together about the axle.

    Parameters
    ----------
    tyre_mass_kg : float or array
        Mass of the tyre [kg].
    rim_mass_kg : float or array
        Mass of the rim with its disc [kg].
    overall_diameter_mm : float or array
        Overall diameter of the tyre [mm].
    rim_diameter_mm : float or array
        Nominal rim diameter [mm].

    Returns
    -------
    float or array
        Moment of inertia [kg m2].
    """
    rim_radius_m = RIM_GYRATION_SHARE * 0.5 * rim_diameter_mm / _MM_PER_M
    return tyre_inertia_kg_m2(tyre_mass_kg, overall_diameter_mm) + rim_mass_kg * rim_radius_m**2


def tyre_mass_estimate_kg(weighed_kg: Num, estimated_kg: Num) -> Estimate[Num]:
    """Return a tyre's mass: as weighed, without a band, where it was weighed, else the estimate with its band.

    Parameters
    ----------
    weighed_kg : float or array
        Mass on the scales, NaN where nobody weighed it [kg].
    estimated_kg : float or array
        Mass by `tyre_mass_kg` [kg].

    Returns
    -------
    Estimate
        Mass [kg].

    References
    ----------
    .. [PROJECT] the estimate and its band.
    """
    value, low, high = symmetric(estimated_kg, MASS_BAND)
    return Estimate(known_or(weighed_kg, value), known_or(weighed_kg, low), known_or(weighed_kg, high))


def wheel_mass_estimate_kg(tyre_kg: Estimate[Num], rim_mass_kg: Num) -> Estimate[Num]:
    """Return the mass of tyre and rim together; the band is the tyre's, a rim is weighed or not known.

    Parameters
    ----------
    tyre_kg : Estimate
        Mass of the tyre [kg].
    rim_mass_kg : float or array
        Mass of the rim, NaN where nobody weighed it [kg].

    Returns
    -------
    Estimate
        Mass [kg], NaN where the rim's is not known.
    """
    value, low, high = (each + rim_mass_kg for each in tyre_kg)
    return Estimate(value, low, high)


def wheel_inertia_estimate_kg_m2(
    tyre_kg: Estimate[Num], rim_mass_kg: Num, overall_diameter_mm: Num, rim_diameter_mm: Num
) -> Estimate[Num]:
    """Return the moment of inertia of tyre and rim together, with the bands of the tyre's mass and of the shape.

    Scales do not show how far from the axle the mass lies, so weighed parts leave `SHAPE_BAND`.

    Parameters
    ----------
    tyre_kg : Estimate
        Mass of the tyre [kg].
    rim_mass_kg : float or array
        Mass of the rim, NaN where nobody weighed it [kg].
    overall_diameter_mm : float or array
        Overall diameter of the tyre [mm].
    rim_diameter_mm : float or array
        Nominal rim diameter [mm].

    Returns
    -------
    Estimate
        Moment of inertia [kg m2], NaN where the rim's mass is not known.

    References
    ----------
    .. [PROJECT] own estimate.
    """
    value, low, high = (
        wheel_inertia_kg_m2(each, rim_mass_kg, overall_diameter_mm, rim_diameter_mm) for each in tyre_kg
    )
    return Estimate(value, low * (1.0 - SHAPE_BAND), high * (1.0 + SHAPE_BAND))
