"""Rolling circumference of a tyre."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num

RADIAL_FACTOR: Final = 3.05
"""Rolling circumference over design overall diameter, radial tyres [CO2MPAS] (read)."""
DIAGONAL_FACTOR: Final = 2.99
"""The same for diagonal and bias-belted tyres [COMMON-PRACTICE] (from memory)."""
BAND: Final = 0.01
"""Half-width of the band as a share of the circumference."""
TOLERANCE_DOWN_PERCENT: Final = 2.5
"""By how much a tyre may roll less than its nominal circumference [WDK-107] (from memory) [%]."""
TOLERANCE_UP_PERCENT: Final = 1.5
"""By how much it may roll more, likewise [%]."""
MM_PER_KM: Final = 1.0e6


def rolling_circumference_mm(overall_diameter_mm: Num, factor: Num = RADIAL_FACTOR) -> Num:
    """Return the distance rolled in one turn of the wheel at rated load and pressure and 60 km/h.

    U = F D. Less than pi D: a loaded tyre rolls on a smaller radius than its free one. In a ratio
    of two tyres the factor cancels only if both have the same structure.

    Parameters
    ----------
    overall_diameter_mm : float or array
        D, the design overall diameter [mm].
    factor : float
        F, `RADIAL_FACTOR` or `DIAGONAL_FACTOR` [1].

    Returns
    -------
    float or array
        U [mm], within plus or minus `BAND`.

    References
    ----------
    .. [CO2MPAS] co2mpas/defaults.py, tyre_dynamic_rolling_coefficient = 3.05 / 3.14 (read).
    """
    return factor * overall_diameter_mm


def revolutions_per_km(circumference_mm: Num) -> Num:
    """Return how often a wheel turns in one kilometre.

    Parameters
    ----------
    circumference_mm : float or array
        Rolling circumference [mm].

    Returns
    -------
    float or array
        Turns [1/km].
    """
    return MM_PER_KM / circumference_mm
