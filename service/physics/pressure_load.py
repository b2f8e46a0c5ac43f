"""What a tyre carries at a pressure, and the pressure it needs for a load."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num, larger, smaller

LOAD_EXPONENT: Final = 0.8
"""Load goes with this power of pressure; reproduces every cell of the printed table (derived)."""
LOWEST_TABULATED_KPA: Final = 150.0
"""The printed table begins here; below it the law is not backed by anything."""
ADDITION_BEGINS_KMH: Final = 160.0
ADDITION_ENDS_KMH: Final = 210.0
GREATEST_ADDITION_KPA: Final = 30.0


def load_at_pressure_kg(rated_kg: Num, pressure_kpa: Num, reference_kpa: Num, exponent: float = LOAD_EXPONENT) -> Num:
    """Return what a tyre carries at a pressure; above the reference pressure it carries no more.

    F = F_rated (P / P_ref)^0.8.

    Parameters
    ----------
    rated_kg : float or array
        Load of the load index [kg].
    pressure_kpa : float or array
        Inflation pressure, cold [kPa].
    reference_kpa : float or array
        Pressure at which the tyre carries its load index: 250 standard load, 290 extra load [kPa].
    exponent : float
        0.8; North American P-metric tables use 0.5 [1].

    Returns
    -------
    float or array
        Load of one tyre [kg].

    References
    ----------
    .. [ETRTO pressure-load] derived from all 190 cells of the printed table.
    """
    share: Num = (smaller(pressure_kpa, reference_kpa) / reference_kpa) ** exponent
    return rated_kg * share


def pressure_for_load_kpa(load_kg: Num, rated_kg: Num, reference_kpa: Num, exponent: float = LOAD_EXPONENT) -> Num:
    """Return the pressure at which a tyre carries a load, the inverse of `load_at_pressure_kg`.

    P = P_ref (F / F_rated)^1.25. A load above the rated one gives a pressure above the reference:
    that is the sign of a tyre too weak, not a pressure to set.

    Parameters
    ----------
    load_kg : float or array
        Load of one tyre [kg].
    rated_kg : float or array
        Load of the load index [kg].
    reference_kpa : float or array
        Reference pressure [kPa].
    exponent : float
        As for `load_at_pressure_kg` [1].

    Returns
    -------
    float or array
        Inflation pressure, cold [kPa].

    References
    ----------
    .. [ETRTO pressure-load] derived.
    """
    share: Num = (load_kg / rated_kg) ** (1.0 / exponent)
    return reference_kpa * share


def speed_pressure_addition_kpa(speed_kmh: Num) -> Num:
    """Return the pressure that speed adds for tyres of symbols R to V.

    None to 160 km/h, then linear to 30 kPa at 210 km/h, constant above: from there the load is cut instead.

    Parameters
    ----------
    speed_kmh : float or array
        Greatest speed of the vehicle [km/h].

    Returns
    -------
    float or array
        Addition to the pressure for the load [kPa].

    References
    ----------
    .. [HANDBOOK] p. 291 (read).
    """
    none = speed_kmh - speed_kmh
    share = (speed_kmh - ADDITION_BEGINS_KMH) / (ADDITION_ENDS_KMH - ADDITION_BEGINS_KMH)
    return GREATEST_ADDITION_KPA * smaller(larger(share, none), none + 1.0)
