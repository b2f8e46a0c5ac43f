"""What a tyre may carry at the vehicle's top speed, and how fast it may go, by its service description.

References
----------
.. [UN-R30 2.31] passenger tyres.
.. [UN-R54] annex 8, commercial tyres.
"""

from __future__ import annotations

from math import isnan
from typing import NamedTuple

from service.assessment.view.wheel_facts import ServiceFacts
from service.core.numeric import UNKNOWN
from service.designation.tyre import TyreDesignation
from service.standards import commercial_speed_load, load_index, passenger_speed_load, speed_symbol

# ZR without a service description is "above 240 km/h", VR "above 210 km/h": common practice, from memory.
Z_RATED_ABOVE_KMH, V_INSIDE_ABOVE_KMH = 240.0, 210.0


class _Description(NamedTuple):
    load_index: int | None
    load_index_twin: int | None
    speed_symbol: str | None


class _Load(NamedTuple):
    """What one service description says at a speed."""

    load_index: float
    rated_kg: float
    load_factor: float
    speed_capability_kmh: float
    left_to_maker: bool = False


def service_facts(
    designation: TyreDesignation, wheels_per_side: int, max_speed_kmh: float, law_speed_kmh: float
) -> ServiceFacts:
    """Return load and speed by the service description, the additional one where that carries more.

    `law_speed_kmh` is the speed at which the law of the place reads the load, NaN where it is the top speed.
    """
    found = _at_top_speed(designation, wheels_per_side, max_speed_kmh)
    return ServiceFacts(
        load_index=found.load_index,
        rated_kg=found.rated_kg,
        load_factor=found.load_factor,
        speed_capability_kmh=found.speed_capability_kmh,
        left_to_maker=float(found.left_to_maker),
        law_load_factor=UNKNOWN if isnan(law_speed_kmh) else load_factor_at(designation, law_speed_kmh),
    )


def _at_top_speed(designation: TyreDesignation, wheels_per_side: int, max_speed_kmh: float) -> _Load:
    main = _Description(designation.load_index, designation.load_index_twin, designation.speed_symbol)
    facts = _by_description(designation, main, wheels_per_side, max_speed_kmh)
    point = designation.additional
    if point is None:
        return facts
    unique = _Description(point.load_index, point.load_index_twin, point.speed_symbol)
    other = _by_description(designation, unique, wheels_per_side, max_speed_kmh)
    enough = other.speed_capability_kmh >= max_speed_kmh or facts.speed_capability_kmh < max_speed_kmh
    better = other.rated_kg * other.load_factor > facts.rated_kg * facts.load_factor
    return other if enough and better else facts


def _by_description(
    designation: TyreDesignation, description: _Description, wheels_per_side: int, max_speed_kmh: float
) -> _Load:
    index, symbol = description.load_index, description.speed_symbol
    if wheels_per_side > 1 and description.load_index_twin is not None:
        index = description.load_index_twin
    rated = UNKNOWN if index is None else load_index.load_kg(index)
    shown = UNKNOWN if index is None else float(index)
    if symbol is None:
        least = _open_upwards_from_kmh(designation)
        return _Load(shown, rated, UNKNOWN, least if max_speed_kmh <= least else UNKNOWN)
    if designation.is_commercial:
        single = description.load_index if description.load_index is not None else 0
        reach = commercial_speed_load.speed_reach_kmh(symbol, single)
        factor = commercial_speed_load.load_factor(symbol, single, min(max_speed_kmh, reach))
        # The table's bonus below the symbol's speed is lawful in named cases only, so it is not counted.
        return _Load(shown, rated, min(factor, 1.0) if factor > 0.0 else UNKNOWN, reach)
    reach = speed_symbol.speed_kmh(symbol)
    if designation.bracketed and max_speed_kmh > reach:
        return _Load(shown, rated, UNKNOWN, UNKNOWN, left_to_maker=True)
    # A tyre that is too slow is told so by its own finding; its load is then taken at its own speed.
    factor = passenger_speed_load.load_factor(symbol, min(max_speed_kmh, reach))
    return _Load(shown, rated, factor, reach)


def _open_upwards_from_kmh(designation: TyreDesignation) -> float:
    """Return the speed that letters inside the size say is exceeded [km/h]; NaN where they say none.

    V inside a diagonal size stands for a speed that depends on the size, so it says none here.
    """
    if designation.z_rated:
        return Z_RATED_ABOVE_KMH
    open_v = designation.speed_letter == "V" and designation.construction == "radial"
    return V_INSIDE_ABOVE_KMH if open_v else UNKNOWN


def speed_symbol_kmh(designation: TyreDesignation) -> float:
    """Return the speed of the fastest symbol on a tyre [km/h], NaN where it has none; letters in the size are open."""
    point = designation.additional
    symbols = (designation.speed_symbol, None if point is None else point.speed_symbol)
    reaches = [
        commercial_speed_load.speed_reach_kmh(symbol, designation.load_index or 0)
        if designation.is_commercial
        else speed_symbol.speed_kmh(symbol)
        for symbol in symbols
        if symbol is not None
    ]
    return max(reaches, default=UNKNOWN)


def load_factor_at(designation: TyreDesignation, speed_kmh: float) -> float:
    """Return the share of the load index at a speed, the commercial table's bonus for slow driving included."""
    symbol = designation.speed_symbol
    if symbol is None:
        return UNKNOWN
    if designation.is_commercial:
        return commercial_speed_load.load_factor(symbol, designation.load_index or 0, speed_kmh)
    return passenger_speed_load.load_factor(symbol, speed_kmh)
