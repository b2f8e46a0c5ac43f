"""What the designations and the caller say of one wheel, as a flat row of numbers.

A row is what the arrays of many candidates are stacked from, so texts become numbers here and nowhere else:
yes is 1.0, no is 0.0, not known is NaN.
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from service.assessment.case import Axle, Fitment, Measured, Rim
from service.assessment.view.load_at_speed import load_factor_at, service_facts
from service.core.numeric import UNKNOWN, unknown
from service.core.units import MM_PER_INCH
from service.designation.rim import RimDesignation
from service.designation.tyre import TyreDesignation
from service.physics.dimensions import overall_diameter_mm, section_height_mm
from service.physics.pressure_load import LOAD_EXPONENT
from service.physics.rolling import DIAGONAL_FACTOR, RADIAL_FACTOR
from service.standards import approved_rim_width, old_series, rim_diameter, rim_width

# How the approved rim widths are known.
BY_RULE, BY_TABLE, BY_MAKER = 0.0, 1.0, 2.0
# What a tyre's markings say about winter use.
NO_MARK, MUD_AND_SNOW, ALPINE = 0.0, 1.0, 2.0

STANDARD_PRESSURE_KPA = 250.0
REINFORCED_PRESSURE_KPA = 290.0
P_METRIC_PRESSURE_KPA = 240.0
P_METRIC_REINFORCED_PRESSURE_KPA = 280.0
TEMPORARY_SPARE_PRESSURE_KPA = 420.0
# The load-pressure law of P-metric tyres, source TRA design guide (second hand).
P_METRIC_EXPONENT = 0.5


class TyreFacts(NamedTuple):
    """What the designation alone says of a tyre."""

    nominal_width_mm: float
    aspect_percent: float
    tyre_rim_code: float
    rim_diameter_mm: float
    section_height_mm: float
    overall_diameter_mm: float
    design_width_mm: float
    design_rim_mm: float
    measuring_rim_in: float
    approved_min_in: float
    approved_max_in: float
    approval: float
    reference_pressure_kpa: float
    pressure_exponent: float
    circumference_factor: float
    radial: float
    commercial: float
    temporary_spare: float
    winter_mark: float


class RimFacts(NamedTuple):
    """What the designation and the caller say of a rim."""

    rim_width_in: float
    rim_code: float
    offset_mm: float
    hump: float
    one_piece: float
    bolts: float
    bolt_circle_mm: float
    centre_bore_mm: float
    rim_rating_kg: float
    rim_mass_kg: float


class WheelFacts(NamedTuple):
    """One wheel as a row of numbers: the three groups above, then what belongs to the single tyre."""

    nominal_width_mm: float
    aspect_percent: float
    tyre_rim_code: float
    rim_diameter_mm: float
    section_height_mm: float
    overall_diameter_mm: float
    design_width_mm: float
    design_rim_mm: float
    measuring_rim_in: float
    approved_min_in: float
    approved_max_in: float
    approval: float
    reference_pressure_kpa: float
    pressure_exponent: float
    circumference_factor: float
    radial: float
    commercial: float
    temporary_spare: float
    winter_mark: float
    load_index: float
    rated_kg: float
    load_factor: float
    speed_capability_kmh: float
    rim_width_in: float
    rim_code: float
    offset_mm: float
    hump: float
    one_piece: float
    bolts: float
    bolt_circle_mm: float
    centre_bore_mm: float
    rim_rating_kg: float
    rim_mass_kg: float
    tread_depth_mm: float
    measured_width_mm: float
    measured_circumference_mm: float
    tyre_mass_kg: float
    pressure_kpa: float
    law_load_factor: float


def wheel_facts(fitment: Fitment, axle: Axle, max_speed_kmh: float, law_speed_kmh: float = UNKNOWN) -> WheelFacts:
    """Return the row of one wheel on this axle of a vehicle with this top speed.

    `law_speed_kmh` is the speed at which the law of the place reads the load, NaN where it is the top speed.
    """
    tyre = fitment.tyre
    designation = tyre.designation
    facts = tyre_facts(designation)
    width, circumference, mass = UNKNOWN, UNKNOWN, UNKNOWN
    if tyre.measured is not None:
        facts = _with_measured(facts, tyre.measured)
        width = tyre.measured.section_width_mm
        circumference = tyre.measured.rolling_circumference_mm
        mass = tyre.measured.mass_kg
    return WheelFacts._make(
        (
            *facts,
            *service_facts(designation, axle.wheels_per_side, max_speed_kmh),
            *rim_facts(fitment.rim),
            tyre.tread_depth_mm,
            width,
            circumference,
            mass,
            fitment.pressure_kpa,
            UNKNOWN if unknown(law_speed_kmh) else load_factor_at(designation, law_speed_kmh),
        )
    )


@lru_cache(maxsize=8192)
def tyre_facts(designation: TyreDesignation) -> TyreFacts:
    """Return what the designation alone says, NaN where it says nothing."""
    code = designation.rim_code
    nominal = rim_diameter.nominal_mm(code)
    width, aspect, height, outer, design_rim, design_width = _section(designation, nominal)
    low, measuring, high, approval = _approved(designation, width, aspect)
    marks = designation.markings
    mark = ALPINE if "3PMSF" in marks else MUD_AND_SNOW if "M+S" in marks else NO_MARK
    p_metric = designation.system == "p_metric"
    return TyreFacts(
        nominal_width_mm=width,
        aspect_percent=aspect,
        tyre_rim_code=code,
        rim_diameter_mm=nominal,
        section_height_mm=height,
        overall_diameter_mm=outer,
        design_width_mm=design_width,
        design_rim_mm=design_rim,
        measuring_rim_in=measuring,
        approved_min_in=low,
        approved_max_in=high,
        approval=approval,
        reference_pressure_kpa=_reference_pressure_kpa(designation),
        pressure_exponent=P_METRIC_EXPONENT if p_metric else LOAD_EXPONENT,
        circumference_factor=RADIAL_FACTOR if designation.construction == "radial" else DIAGONAL_FACTOR,
        radial=float(designation.construction == "radial"),
        commercial=float(designation.commercial != ""),
        temporary_spare=float(designation.system == "temporary_spare"),
        winter_mark=mark,
    )


def _section(designation: TyreDesignation, nominal: float) -> tuple[float, float, float, float, float, float]:
    width = designation.section_width_mm
    if designation.overall_diameter_in is not None:
        outer = designation.overall_diameter_in * MM_PER_INCH
        height = (outer - nominal) / 2.0
        if not height > 0.0:
            return width, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, width
        return width, 100.0 * height / width, height, outer, UNKNOWN, width
    if designation.aspect_ratio is None:
        row = old_series.row(width, designation.rim_code)
        if row is None:
            return width, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN
        height = (row.overall_diameter_mm - nominal) / 2.0
        rim_mm = row.measuring_rim_in * MM_PER_INCH
        return width, 100.0 * height / width, height, row.overall_diameter_mm, rim_mm, row.section_width_mm
    aspect = designation.aspect_ratio
    height = section_height_mm(width, aspect)
    theoretical = width * rim_width.theoretical_factor(aspect)
    return width, aspect, height, overall_diameter_mm(nominal, height), theoretical, width


def _approved(designation: TyreDesignation, width: float, aspect: float) -> tuple[float, float, float, float]:
    measuring = rim_width.measuring_rim_in(width, aspect)
    letter = "R" if designation.construction == "radial" else designation.construction
    known = approved_rim_width.from_table(width, designation.aspect_ratio or 0.0, designation.rim_code, letter)
    if known is not None:
        return known[0], known[1], known[2], BY_TABLE
    low, high = approved_rim_width.by_design_guide(width, aspect)
    return low, measuring, high, BY_RULE


def _reference_pressure_kpa(designation: TyreDesignation) -> float:
    reinforced = designation.load_version in ("extra_load", "high_load")
    if designation.system == "temporary_spare":
        return TEMPORARY_SPARE_PRESSURE_KPA
    if designation.commercial:
        return UNKNOWN
    if designation.system == "p_metric":
        return P_METRIC_REINFORCED_PRESSURE_KPA if reinforced else P_METRIC_PRESSURE_KPA
    return REINFORCED_PRESSURE_KPA if reinforced else STANDARD_PRESSURE_KPA


@lru_cache(maxsize=8192)
def _rim_designation_facts(designation: RimDesignation) -> tuple[float, float, float, float, float]:
    offset = UNKNOWN if designation.offset_mm is None else designation.offset_mm
    hump = UNKNOWN if designation.hump is None else 1.0
    return designation.width_in, designation.diameter_code, offset, hump, float(designation.one_piece)


def rim_facts(rim: Rim) -> RimFacts:
    """Return the numbers of one rim."""
    circle = rim.bolt_circle
    return RimFacts._make(
        (
            *_rim_designation_facts(rim.designation),
            UNKNOWN if circle is None else float(circle.bolts),
            UNKNOWN if circle is None else circle.diameter_mm,
            rim.centre_bore_mm,
            rim.load_rating_kg,
            rim.mass_kg,
        )
    )


def _shape_by_height(width: float, height: float) -> dict[str, float]:
    """Return the shape of a size that tells of no aspect ratio, once its height is measured."""
    aspect = 100.0 * height / width
    low, high = approved_rim_width.by_design_guide(width, aspect)
    return {
        "aspect_percent": aspect,
        "design_rim_mm": width * rim_width.theoretical_factor(aspect),
        "design_width_mm": width,
        "measuring_rim_in": rim_width.measuring_rim_in(width, aspect),
        "approved_min_in": low,
        "approved_max_in": high,
    }


def _with_measured(facts: TyreFacts, measured: Measured) -> TyreFacts:
    changed: dict[str, float] = {}
    outer = measured.overall_diameter_mm
    if not math.isnan(outer):
        height = (outer - facts.rim_diameter_mm) / 2.0
        # A tyre no larger than its rim is a slip of the pen: its diameter is then not known.
        believable = height > 0.0
        changed["overall_diameter_mm"] = outer if believable else UNKNOWN
        changed["section_height_mm"] = height if believable else UNKNOWN
        if believable and math.isnan(facts.aspect_percent):
            changed |= _shape_by_height(facts.nominal_width_mm, height)
    low, high = measured.approved_min_in, measured.approved_max_in
    if not math.isnan(low):
        low, high = (low, high) if low <= high else (UNKNOWN, UNKNOWN)
        changed.update(approved_min_in=low, approved_max_in=high, approval=BY_MAKER)
    if not math.isnan(measured.reference_pressure_kpa):
        changed["reference_pressure_kpa"] = measured.reference_pressure_kpa
    return facts._replace(**changed)
