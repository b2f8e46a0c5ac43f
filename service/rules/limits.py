"""The limits that the service's own checks use, each with its unit and its basis.

The numbers live in `common_practice.toml` and, where a regulation gives them, in `packs/unece.toml`;
a pack may replace any of them. This file holds their names and units alone.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from types import MappingProxyType

from service.rules.provenance import Provenance
from service.rules.written import Number


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit(Provenance):
    """One limit: value, unit and what it rests on."""

    value: Number
    unit: str


@dataclass(frozen=True, slots=True)
class Limits:
    """Every limit of the service's own checks, in force for one rule pack."""

    overall_diameter_met_percent: Limit
    overall_diameter_advisory_percent: Limit
    axle_ratio_met_percent: Limit
    axle_ratio_advisory_percent: Limit
    rim_width_edge_in: Limit
    centre_bore_tolerance_mm: Limit
    tread_depth_least_mm: Limit
    tread_depth_advisory_mm: Limit
    diameter_per_tread_depth: Limit
    service_width_growth_percent: Limit
    clearance_inboard_met_mm: Limit
    clearance_outboard_met_mm: Limit
    clearance_radial_met_mm: Limit
    clearance_least_mm: Limit
    clearance_twin_met_mm: Limit
    track_change_met_percent: Limit
    track_change_met_mm: Limit
    balance_negligible_deg_per_g: Limit
    balance_strong_deg_per_g: Limit
    grip_order_change_advisory_percent: Limit
    aquaplaning_onset_change_advisory_percent: Limit
    wet_order_change_advisory_percent: Limit
    wet_reserve_fall_front_percent: Limit
    wet_reserve_fall_rear_percent: Limit
    wet_reserve_least_percent: Limit
    least_pressure_kpa: Limit
    pressure_above_reference_met_kpa: Limit
    speedometer_gain: Limit
    speedometer_constant_kmh: Limit
    load_share_single: Limit
    load_share_twin_passenger: Limit
    load_share_twin_commercial: Limit
    load_share_trailer_single: Limit
    load_share_trailer_twin: Limit
    trailer_speed_kmh: Limit
    winter_speed_floor_kmh: Limit
    temporary_spare_speed_kmh: Limit
    towing_load_excess_percent: Limit
    towing_speed_kmh: Limit
    towing_pressure_gain_kpa: Limit
    unmeasured_shift_met_mm: Limit
    unmeasured_shift_most_mm: Limit
    unmeasured_radius_most_mm: Limit
    service_height_growth_percent: Limit
    snow_diameter_growth_percent: Limit
    speedometer_unread_least_percent: Limit
    speedometer_unread_most_percent: Limit
    tread_winter_advisory_mm: Limit
    tread_deeper_front_met_mm: Limit


LIMIT_NAMES: tuple[str, ...] = tuple(field.name for field in fields(Limits))

# A name without a unit at its end has none; "1" is the unit of a plain ratio.
_UNIT_BY_ENDING: tuple[tuple[str, str], ...] = (
    ("_percent", "%"),
    ("_deg_per_g", "deg/g"),
    ("_kmh", "km/h"),
    ("_kpa", "kPa"),
    ("_mm", "mm"),
    ("_in", "in"),
)


def unit_of(name: str) -> str:
    """Return the unit in which the limit of this name is written."""
    return next((unit for ending, unit in _UNIT_BY_ENDING if name.endswith(ending)), "1")


# A pack writes these in the section of their subject: `[twin.passenger_share]`, `[towing.speed_kmh]`.
SECTION_LIMITS: Mapping[str, Mapping[str, str]] = MappingProxyType(
    {
        "twin": {
            "passenger_share": "load_share_twin_passenger",
            "commercial_share": "load_share_twin_commercial",
        },
        "trailer": {
            "single_share": "load_share_trailer_single",
            "twin_share": "load_share_trailer_twin",
            "speed_kmh": "trailer_speed_kmh",
        },
        "towing": {
            "load_excess_percent": "towing_load_excess_percent",
            "speed_kmh": "towing_speed_kmh",
            "pressure_gain_kpa": "towing_pressure_gain_kpa",
        },
        "temporary_spare": {"speed_kmh": "temporary_spare_speed_kmh"},
    }
)
SECTION_OF: Mapping[str, tuple[str, str]] = MappingProxyType(
    {name: (section, key) for section, keys in SECTION_LIMITS.items() for key, name in keys.items()}
)
