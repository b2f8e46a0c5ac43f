"""From designations and what the caller says to the facts of one wheel."""

from __future__ import annotations

import math
from dataclasses import replace

from service.assessment.case import Axle, Fitment, Measured, Rim
from service.assessment.view.load_at_speed import service_facts
from service.assessment.view.reference_pressure import pressure_exponent, reference_pressure_kpa
from service.assessment.view.wheel_facts import (
    ALPINE,
    BY_MAKER,
    BY_RULE,
    BY_TABLE,
    MUD_AND_SNOW,
    NO_MARK,
    RimFacts,
    StateFacts,
    TyreFacts,
    WheelFacts,
    one_wheel,
)
from service.core.numeric import UNKNOWN
from service.core.units import MM_PER_INCH
from service.designation.tyre import TyreDesignation
from service.physics.dimensions import overall_diameter_mm, section_height_mm
from service.physics.rolling import DIAGONAL_FACTOR, RADIAL_FACTOR
from service.standards import approved_rim_width, old_series, rim_diameter, rim_width

NOT_MEASURED = Measured()


def wheel_facts(fitment: Fitment, axle: Axle, max_speed_kmh: float, law_speed_kmh: float = UNKNOWN) -> WheelFacts:
    """Return the row of one wheel on this axle of a vehicle with this top speed.

    `law_speed_kmh` is the speed at which the law of the place reads the load, NaN where it is the top speed.
    """
    tyre, facts = fitment.tyre, tyre_facts(fitment.tyre.designation)
    measured = NOT_MEASURED
    if tyre.measured is not None:
        measured = tyre.measured
        facts = _with_measured(facts, measured)
    state = StateFacts(
        tread_depth_mm=tyre.tread_depth_mm,
        measured_width_mm=measured.section_width_mm,
        measured_circumference_mm=measured.rolling_circumference_mm,
        tyre_mass_kg=measured.mass_kg,
        pressure_kpa=fitment.pressure_kpa,
    )
    service = service_facts(tyre.designation, axle.wheels_per_side, max_speed_kmh, law_speed_kmh)
    return one_wheel(facts, service, rim_facts(fitment.rim), state)


def tyre_facts(designation: TyreDesignation) -> TyreFacts:
    """Return what the designation alone says, NaN where it says nothing."""
    code = designation.rim_code
    nominal = rim_diameter.nominal_mm(code)
    width, aspect, height, outer, design_rim, design_width = _section(designation, nominal)
    low, measuring, high, approval = _approved(designation, width, aspect)
    marks = designation.markings
    mark = ALPINE if "3PMSF" in marks else MUD_AND_SNOW if "M+S" in marks else NO_MARK
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
        reference_pressure_kpa=reference_pressure_kpa(designation),
        pressure_exponent=pressure_exponent(designation),
        circumference_factor=RADIAL_FACTOR if designation.construction == "radial" else DIAGONAL_FACTOR,
        radial=float(designation.construction == "radial"),
        commercial=float(designation.is_commercial),
        temporary_spare=float(designation.system == "temporary_spare"),
        winter_mark=mark,
        run_flat=float(designation.run_flat),
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


def rim_facts(rim: Rim) -> RimFacts:
    """Return the numbers of one rim."""
    designation, circle = rim.designation, rim.bolt_circle
    return RimFacts(
        rim_width_in=designation.width_in,
        rim_code=designation.diameter_code,
        offset_mm=UNKNOWN if designation.offset_mm is None else designation.offset_mm,
        hump=UNKNOWN if designation.hump is None else 1.0,
        one_piece=float(designation.one_piece),
        bolts=UNKNOWN if circle is None else float(circle.bolts),
        bolt_circle_mm=UNKNOWN if circle is None else circle.diameter_mm,
        centre_bore_mm=rim.centre_bore_mm,
        rim_rating_kg=rim.load_rating_kg,
        rim_mass_kg=rim.mass_kg,
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
    return replace(facts, **changed)
