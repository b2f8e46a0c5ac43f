"""Vertical stiffness of a belted radial tyre and the radius it stands on."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num
from service.core.units import STANDARD_GRAVITY_M_S2

STIFFNESS_BAND: Final = 0.10
"""Half-width of the band of the stiffness, car sizes."""
STIFFNESS_BAND_OTHER: Final = 0.15
"""The same outside car sizes."""
LOADED_RADIUS_BAND_MM: Final = 1.5
"""Half-width of the band of the static loaded radius at normal load [mm]."""


def vertical_stiffness_n_per_mm(
    pressure_kpa: Num, aspect_percent: Num, nominal_width_mm: Num, rim_diameter_mm: Num
) -> Num:
    """Return the vertical stiffness of one tyre.

    Kz [kg/mm] = 0.00028 P sqrt((1.03 - 0.004 AR) SN (SN AR / 50 + D)) + 3.45, times 9.80665.
    Not made for commercial (C), run-flat and bias tyres, nor near the rated load.

    Parameters
    ----------
    pressure_kpa : float or array
        P, inflation pressure [kPa].
    aspect_percent : float or array
        AR, nominal aspect ratio [%].
    nominal_width_mm : float or array
        SN, width in the size designation [mm].
    rim_diameter_mm : float or array
        D, nominal rim diameter [mm].

    Returns
    -------
    float or array
        Kz [N/mm], within plus or minus `STIFFNESS_BAND`.

    References
    ----------
    .. [RHYNE-2005] formula from memory, units confirmed against published data.
    """
    shape = (1.03 - 0.004 * aspect_percent) * nominal_width_mm
    size = nominal_width_mm * aspect_percent / 50.0 + rim_diameter_mm
    root: Num = (shape * size) ** 0.5
    return (0.00028 * pressure_kpa * root + 3.45) * STANDARD_GRAVITY_M_S2


def deflection_mm(load_n: Num, stiffness_n_per_mm: Num) -> Num:
    """Return how far a tyre yields under its load, F / Kz.

    Parameters
    ----------
    load_n : float or array
        F, load on one tyre [N].
    stiffness_n_per_mm : float or array
        Kz [N/mm].

    Returns
    -------
    float or array
        Deflection [mm].
    """
    return load_n / stiffness_n_per_mm


def static_loaded_radius_mm(overall_diameter_mm: Num, load_n: Num, stiffness_n_per_mm: Num) -> Num:
    """Return the height of the wheel centre over the ground at a standstill, R0 - F / Kz.

    Parameters
    ----------
    overall_diameter_mm : float or array
        2 R0, overall diameter [mm].
    load_n : float or array
        F, load on one tyre [N].
    stiffness_n_per_mm : float or array
        Kz [N/mm].

    Returns
    -------
    float or array
        Radius [mm], within plus or minus `LOADED_RADIUS_BAND_MM` at normal load.

    References
    ----------
    .. [RHYNE-2005]
    """
    return 0.5 * overall_diameter_mm - deflection_mm(load_n, stiffness_n_per_mm)
