"""What a tyre carries at a pressure, and the pressure it needs for a load."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num, larger, pick, smaller

LOAD_EXPONENT: Final = 0.8
"""Load goes with this power of pressure; reproduces every cell of the printed table (derived)."""
LT_LOAD_EXPONENT: Final = 0.7
"""The same of light-truck (LT) tyres [TRADE-LT]."""
LOAD_RANGE_E_KPA: Final = 550.0
"""Reference pressure of an LT tyre of load range E [TRADE-LT]."""
WIDE_LOAD_RANGE_E_KPA: Final = 450.0
"""The same of one wider than `WIDE_LT_MM` [TRADE-LT]."""
WIDE_LT_MM: Final = 295.0
LOWEST_TABULATED_KPA: Final = 150.0
"""The printed table begins here; below it the law is not backed by anything."""
ADDITION_BEGINS_KMH: Final = 160.0
ADDITION_ENDS_KMH: Final = 210.0
GREATEST_ADDITION_KPA: Final = 30.0
FASTEST_WITHOUT_ADDITION_KMH: Final = 190.0
"""Symbol T: tyres of this and slower symbols have no addition of their own (project's reading)."""
FASTEST_BY_HANDBOOK_KMH: Final = 240.0
"""Symbol V: the last whose addition the handbook prints."""
HIGH_SPEED_BEGINS_KMH: Final = 190.0
"""Symbols W and Y keep the pressure for the load to this speed [HANDBOOK] p. 291 (read)."""
HIGH_SPEED_KPA_PER_KMH: Final = 1.0
"""From there on 10 kPa for each 10 km/h [COMMON-PRACTICE] (from memory)."""
HIGH_SPEED_ENDS_KMH: Final = 240.0
"""And no more from here on [COMMON-PRACTICE] (from memory)."""
_HIGH_SPEED_SPAN_KMH: Final = HIGH_SPEED_ENDS_KMH - HIGH_SPEED_BEGINS_KMH


def load_at_pressure_kg(rated_kg: Num, pressure_kpa: Num, reference_kpa: Num, exponent: Num = LOAD_EXPONENT) -> Num:
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
        0.8; North American P-metric tables use 0.5, those of LT tyres `LT_LOAD_EXPONENT` [1].

    Returns
    -------
    float or array
        Load of one tyre [kg].

    References
    ----------
    .. [ETRTO pressure-load] derived from all 190 cells of the printed table.
    .. [TRADE-LT] the exponent of LT tyres, derived.
    """
    share: Num = (smaller(pressure_kpa, reference_kpa) / reference_kpa) ** exponent
    return rated_kg * share


def pressure_for_load_kpa(load_kg: Num, rated_kg: Num, reference_kpa: Num, exponent: Num = LOAD_EXPONENT) -> Num:
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


def speed_pressure_addition_by_symbol_kpa(speed_kmh: Num, symbol_speed_kmh: Num) -> Num:
    """Return the pressure that speed adds for a tyre of a given speed symbol.

    None for T and slower; U to V as `speed_pressure_addition_kpa`; W and Y none to 190 km/h, then 10 kPa for each
    10 km/h to 240 km/h. A tyre run faster than its symbol is not helped by pressure: another check refuses it.

    Parameters
    ----------
    speed_kmh : float or array
        Greatest speed of the vehicle [km/h].
    symbol_speed_kmh : float or array
        Speed of the tyre's symbol, 190 for T, 270 for W [km/h].

    Returns
    -------
    float or array
        Addition to the pressure for the load [kPa].

    References
    ----------
    .. [HANDBOOK] p. 291 to V, and where W begins (read).
    .. [COMMON-PRACTICE] rate and end of W and Y (from memory).
    """
    none = speed_kmh - speed_kmh + (symbol_speed_kmh - symbol_speed_kmh)
    above = smaller(larger(speed_kmh + none - HIGH_SPEED_BEGINS_KMH, none), none + _HIGH_SPEED_SPAN_KMH)
    by_handbook = speed_pressure_addition_kpa(speed_kmh + none)
    fast = pick(symbol_speed_kmh > FASTEST_BY_HANDBOOK_KMH, HIGH_SPEED_KPA_PER_KMH * above, by_handbook)
    return pick(symbol_speed_kmh > FASTEST_WITHOUT_ADDITION_KMH, fast, none)


def load_range_e_pressure_kpa(nominal_width_mm: Num) -> Num:
    """Return the reference pressure of a light-truck (LT) tyre of load range E.

    Parameters
    ----------
    nominal_width_mm : float or array
        Width in the size designation [mm].

    Returns
    -------
    float or array
        Pressure at which it carries its load index [kPa].

    References
    ----------
    .. [TRADE-LT] 550 kPa, 450 above 295 mm (read).
    """
    none = nominal_width_mm - nominal_width_mm
    return pick(nominal_width_mm > WIDE_LT_MM, none + WIDE_LOAD_RANGE_E_KPA, none + LOAD_RANGE_E_KPA)
