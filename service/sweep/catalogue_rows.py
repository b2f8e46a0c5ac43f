"""From rows of the tables to what the assessment takes: vehicles and candidates as plain data."""

from __future__ import annotations

from collections.abc import Mapping

import pandas as pd

from service.assessment.case import Axle, Candidate, Fitment, Measured, Rim, Tyre, Vehicle
from service.core.findings import AxleName
from service.core.numeric import UNKNOWN, known, known_or, unknown
from service.designation.bolt_circle import parse_bolt_circle
from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre

Row = Mapping[str, object]


def records(frame: pd.DataFrame) -> list[Row]:
    """Return the rows as mappings in which what is not given is None."""
    names = list(frame.columns)
    values = [[_plain(each) for each in frame[name].tolist()] for name in names]
    return [dict(zip(names, row, strict=True)) for row in zip(*values, strict=True)]


def _plain(value: object) -> object:
    return None if value is pd.NA or (isinstance(value, float) and unknown(value)) else value


def _number(row: Row, name: str) -> float:
    value = row.get(name)
    return UNKNOWN if value is None else float(value)  # type: ignore[arg-type] # the reader made it a number


def _text(row: Row, name: str) -> str | None:
    value = row.get(name)
    return None if value is None else str(value)


def _flag(row: Row, name: str) -> bool | None:
    value = row.get(name)
    return None if value is None else bool(value)


def fitment(row: Row, axle: str) -> Fitment:
    """Return the wheel that a row describes for an axle."""

    def number(name: str) -> float:
        return _number(row, f"{axle}_{name}")

    measured = Measured(
        overall_diameter_mm=number("overall_diameter_mm"),
        section_width_mm=number("section_width_mm"),
        rolling_circumference_mm=number("rolling_circumference_mm"),
        approved_min_in=number("approved_min_in"),
        approved_max_in=number("approved_max_in"),
        reference_pressure_kpa=number("reference_pressure_kpa"),
        mass_kg=number("tyre_mass_kg"),
    )
    given = any(map(known, measured))
    circle = _text(row, f"{axle}_bolt_circle")
    return Fitment(
        Tyre(
            parse_tyre(str(row[f"{axle}_tyre"])),
            tread_depth_mm=number("tread_depth_mm"),
            measured=measured if given else None,
        ),
        Rim(
            parse_rim(str(row[f"{axle}_rim"])),
            bolt_circle=None if circle is None else parse_bolt_circle(circle),
            centre_bore_mm=number("centre_bore_mm"),
            load_rating_kg=number("load_rating_kg"),
            mass_kg=number("rim_mass_kg"),
        ),
        pressure_kpa=number("pressure_kpa"),
    )


def _axle(row: Row, axle: AxleName) -> Axle:
    circle = _text(row, f"{axle}_hub_bolt_circle")
    wheels = row.get(f"{axle}_wheels_per_side")
    return Axle(
        name=axle,
        max_axle_mass_kg=_number(row, f"{axle}_max_axle_mass_kg"),
        fitted=fitment(row, axle),
        kerb_axle_mass_kg=_number(row, f"{axle}_kerb_axle_mass_kg"),
        track_mm=_number(row, f"{axle}_track_mm"),
        wheels_per_side=1 if wheels is None else int(wheels),  # type: ignore[call-overload] # the reader made it a number
        hub_bolt_circle=None if circle is None else parse_bolt_circle(circle),
        hub_centre_bore_mm=_number(row, f"{axle}_hub_centre_bore_mm"),
        clearance_inboard_mm=_number(row, f"{axle}_clearance_inboard_mm"),
        clearance_outboard_mm=_number(row, f"{axle}_clearance_outboard_mm"),
        clearance_radial_mm=_number(row, f"{axle}_clearance_radial_mm"),
        min_rim_diameter_in=_number(row, f"{axle}_min_rim_diameter_in"),
        clearance_tolerance_mm=known_or(_number(row, f"{axle}_clearance_tolerance_mm"), 0.0),
        track_tolerance_mm=known_or(_number(row, f"{axle}_track_tolerance_mm"), 0.0),
    )


def candidate(row: Row) -> Candidate:
    """Return the candidate that a row describes."""
    return Candidate(fitment(row, "front"), fitment(row, "rear"))


def vehicle(row: Row) -> Vehicle:
    """Return the vehicle that a row describes."""
    return Vehicle(
        max_speed_kmh=_number(row, "max_speed_kmh"),
        front=_axle(row, "front"),
        rear=_axle(row, "rear"),
        category=_text(row, "category") or "M1",
        driven_axle=_text(row, "driven_axle"),  # type: ignore[arg-type] # the reader made it one of these words
        wheelbase_mm=_number(row, "wheelbase_mm"),
        centre_of_gravity_height_mm=_number(row, "centre_of_gravity_height_mm"),
        displayed_kmh=_number(row, "displayed_kmh"),
        true_kmh=_number(row, "true_kmh"),
        built=_text(row, "built"),
        max_mass_kg=_number(row, "max_mass_kg"),
        seats_standing=_flag(row, "seats_standing"),
        speed_limited_kmh=_number(row, "speed_limited_kmh"),
        towing=_flag(row, "towing"),
        speedometer_tolerance_percent=known_or(_number(row, "speedometer_tolerance_percent"), 0.0),
    )
