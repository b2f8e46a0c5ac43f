"""From designations and what the caller says to the facts of one wheel."""

from __future__ import annotations

import math
from dataclasses import replace

from service.assessment.case import Axle, Fitment, Measured, Rim
from service.assessment.view.load_at_speed import service_facts
from service.assessment.view.nominal_dimensions import dimensions
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
from service.core.numeric import UNKNOWN, known_or
from service.designation.tyre import TyreDesignation
from service.physics.rolling import DIAGONAL_FACTOR, RADIAL_FACTOR
from service.standards import approved_rim_width, rim_diameter, rim_width

NOT_MEASURED = Measured()


def wheel_facts(fitment: Fitment, axle: Axle, max_speed_kmh: float, law_speed_kmh: float = UNKNOWN) -> WheelFacts:
    """Return the row of one wheel on this axle of a vehicle with this top speed.

    `law_speed_kmh` is the speed at which the law of the place reads the load, NaN where it is the top speed.
    """
    tyre, facts = fitment.tyre, tyre_facts(fitment.tyre.designation)
    measured = NOT_MEASURED
    if tyre.measured is not None:
        measured = tyre.measured
        facts = with_measured(facts, measured)
    state = StateFacts(
        tread_depth_mm=tyre.tread_depth_mm,
        measured_width_mm=measured.section_width_mm,
        measured_circumference_mm=measured.rolling_circumference_mm,
        tyre_mass_kg=measured.mass_kg,
        pressure_kpa=fitment.pressure_kpa,
    )
    service = service_facts(tyre.designation, axle.wheels_per_side, max_speed_kmh, law_speed_kmh)
    return one_wheel(facts, service, rim_facts(fitment.rim, fitment.spacer_mm), state)


def tyre_facts(designation: TyreDesignation) -> TyreFacts:
    """Return what the designation alone says, NaN where it says nothing."""
    code = designation.rim_code
    made = dimensions(designation)
    width, aspect = made.width_mm, made.aspect_percent
    low, measuring, high, approval = _approved(designation, width, aspect, made.measuring_rim_in)
    marks = designation.markings
    mark = ALPINE if "3PMSF" in marks else MUD_AND_SNOW if "M+S" in marks else NO_MARK
    return TyreFacts(
        nominal_width_mm=width,
        aspect_percent=aspect,
        tyre_rim_code=code,
        rim_diameter_mm=rim_diameter.nominal_mm(code),
        section_height_mm=made.height_mm,
        overall_diameter_mm=made.overall_diameter_mm,
        design_width_mm=made.design_width_mm,
        design_rim_mm=made.design_rim_mm,
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


def _approved(
    designation: TyreDesignation, width: float, aspect: float, measuring: float
) -> tuple[float, float, float, float]:
    letter = "R" if designation.construction == "radial" else designation.construction
    known_widths = approved_rim_width.from_table(width, designation.aspect_ratio or 0.0, designation.rim_code, letter)
    if known_widths is not None:
        return *known_widths, BY_TABLE
    low, high = approved_rim_width.by_design_guide(width, aspect)
    return low, known_or(measuring, rim_width.measuring_rim_in(width, aspect)), high, BY_RULE


def rim_facts(rim: Rim, spacer_mm: float = 0.0) -> RimFacts:
    """Return the numbers of one rim on a spacer of this thickness."""
    designation, circle = rim.designation, rim.bolt_circle
    return RimFacts(
        rim_width_in=designation.width_in,
        rim_code=designation.diameter_code,
        offset_mm=UNKNOWN if designation.offset_mm is None else designation.offset_mm - spacer_mm,
        hump=UNKNOWN if designation.hump is None else 1.0,
        one_piece=float(designation.one_piece),
        bolts=UNKNOWN if circle is None else float(circle.bolts),
        bolt_circle_mm=UNKNOWN if circle is None else circle.diameter_mm,
        centre_bore_mm=rim.centre_bore_mm,
        rim_rating_kg=rim.load_rating_kg,
        rim_mass_kg=rim.mass_kg,
        spacer_mm=spacer_mm,
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


def with_measured(facts: TyreFacts, measured: Measured) -> TyreFacts:
    """Return what is said of a tyre once the maker or a measurement says more; each takes the place of the computed."""
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
