"""From the domain to the wire: rounding, and leaving out what is not known. Nothing is computed here."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from service.assessment.assess import Assessment
from service.assessment.change import AxleChange, Wheel
from service.assessment.checks.balance import balance
from service.assessment.checks.speedometer import lawful_lead_percent, present_lead, r39, readings
from service.assessment.comparison import AxleView, CarView
from service.assessment.estimates import wheel_estimates
from service.assessment.trade_offs import PRACTICE
from service.core.findings import OUTCOME_NAMES, Basis, Estimate, Finding, Remedy

Json = dict[str, Any]


def assessment(found: Assessment) -> Json:
    """Return the answer to a check as plain data."""
    case, car = found.case, found.car
    pack = case.pack
    return {
        "verdict": found.verdict,
        "summary": found.summary,
        "label": case.candidate.label,
        "rule_pack": {"id": pack.id, "edition": pack.edition},
        "findings": [finding(each) for each in found.findings],
        "axles": {"front": _axle(found, car.front), "rear": _axle(found, car.rear)},
        "vehicle": _vehicle(car),
        "trade_offs": {"text": found.trade_offs, "basis": basis(PRACTICE)},
        "actions": [{"code": code, "text": text} for code, text in found.actions],
        "assumptions": found.assumptions,
        "cautions": found.cautions,
    }


def finding(each: Finding) -> Json:
    """Return one finding as plain data."""
    code, axle, outcome, message, measured, limit, unit, ground, remedy = each
    shown: Json = {"code": code, "axle": axle, "outcome": OUTCOME_NAMES[outcome], "message": message}
    if measured is not None:
        shown["measured"] = round(measured, 2)
    if limit is not None:
        shown["limit"] = round(limit, 2)
    if unit is not None and (measured is not None or limit is not None):
        shown["unit"] = unit
    shown["basis"] = basis(ground)
    if remedy is not None:
        shown["remedy"] = _remedy(remedy)
    return shown


def basis(ground: Basis) -> Json:
    """Return what something rests on as plain data."""
    kind, reference, status = ground
    return {"kind": kind, "reference": reference, "status": status}


def _remedy(remedy: Remedy) -> Json:
    words, pointer, quantity, at_least, at_most, equals, unit = remedy
    shown: Json = {"text": words, "pointer": pointer, "quantity": quantity}
    if at_least is not None:
        shown["at_least"] = round(at_least, 4)
    if at_most is not None:
        shown["at_most"] = round(at_most, 4)
    if equals is not None:
        shown["equals"] = equals
    if unit is not None:
        shown["unit"] = unit
    return shown


def known(values: Mapping[str, tuple[float, int]]) -> Json:
    """Return the numbers that are known, rounded to their decimals."""
    return {name: round(value, digits) for name, (value, digits) in values.items() if value == value}


def estimate(found: Estimate[float], digits: int) -> Json:
    """Return an estimate as plain data."""
    value, low, high = found
    return {"value": round(value, digits), "low": round(low, digits), "high": round(high, digits)}


def estimates(values: Mapping[str, tuple[Estimate[float], int]]) -> Json:
    """Return the estimates that are known."""
    return {name: estimate(found, digits) for name, (found, digits) in values.items() if found[0] == found[0]}


def percent_estimate(ratio: Estimate[float]) -> Estimate[float]:
    """Return a ratio with its band as a change in per cent."""
    return Estimate(*(100.0 * (end - 1.0) for end in ratio))


def _axle(found: Assessment, view: AxleView) -> Json:
    candidate = found.case.candidate
    proposed = candidate.front if view.name == "front" else candidate.rear
    fitted = view.axle.fitted
    front_now = found.car.front.now
    return {
        "present": {
            "tyre": fitted.tyre.designation.canonical,
            "rim": fitted.rim.designation.canonical,
            **_wheel(view.now, front_now, None),
        },
        "proposed": {
            "tyre": proposed.tyre.designation.canonical,
            "rim": proposed.rim.designation.canonical,
            **_wheel(
                view.then,
                front_now,
                view.change.cornering_stiffness.value * view.now.behaviour.cornering_stiffness_n_per_deg,
            ),
        },
        "change": axle_change(view.change),
    }


def _wheel(wheel: Wheel, front_now: Wheel, stiffness: float | None) -> Json:
    facts, shape, carried = wheel.facts, wheel.geometry, wheel.load
    shown = known(
        {
            "section_width_mm": (shape.section_width_mm, 0),
            "section_height_mm": (facts.section_height_mm, 0),
            "overall_diameter_mm": (shape.overall_diameter_mm, 1),
            "rolling_circumference_mm": (shape.rolling_circumference_mm, 1),
            "revolutions_per_km": (shape.revolutions_per_km, 1),
            "load_capacity_kg": (carried.capacity_kg, 1),
            "load_required_kg": (carried.required_kg, 1),
            "speed_capability_kmh": (facts.speed_capability_kmh, 0),
            "minimum_pressure_kpa": (carried.required_pressure_kpa, 0),
            "pressure_kpa": (wheel.behaviour.pressure_kpa, 0),
        }
    )
    bands = wheel_estimates(wheel, front_now, stiffness)
    shown |= estimates(
        {
            "static_loaded_radius_mm": (bands.static_loaded_radius_mm, 1),
            "cornering_stiffness_n_per_deg": (bands.cornering_stiffness_n_per_deg, 0),
            "aquaplaning_onset_kmh": (bands.aquaplaning_onset_kmh, 0),
            "wheel_mass_kg": (bands.wheel_mass_kg, 1),
            "wheel_inertia_kg_m2": (bands.wheel_inertia_kg_m2, 2),
        }
    )
    if bands.patch_length_mm.value == bands.patch_length_mm.value:
        shown["contact_patch"] = {
            "length_mm": estimate(bands.patch_length_mm, 0),
            "width_mm": estimate(bands.patch_width_mm, 0),
            "area_cm2": estimate(bands.patch_area_cm2, 0),
        }
    return shown


def axle_change(change: AxleChange) -> Json:
    """Return the changes of one axle as plain data."""
    shown = known(
        {
            "overall_diameter_percent": (change.overall_diameter_percent, 2),
            "overall_diameter_mm": (change.overall_diameter_mm, 1),
            "rolling_circumference_percent": (change.rolling_circumference_percent, 2),
            "section_width_mm": (change.section_width_mm, 1),
            "inboard_edge_mm": (change.inboard_edge_mm, 1),
            "outboard_edge_mm": (change.outboard_edge_mm, 1),
            "track_mm": (change.track_mm, 1),
            "scrub_radius_mm": (change.scrub_radius_mm, 1),
            "ride_height_mm": (change.ride_height_mm, 1),
            "load_capacity_percent": (change.load_capacity_percent, 1),
        }
    )
    return shown | estimates(
        {
            "cornering_stiffness_percent": (percent_estimate(change.cornering_stiffness), 1),
            "aquaplaning_onset_percent": (change.aquaplaning_onset_percent, 1),
        }
    )


def _vehicle(car: CarView) -> Json:
    change, found = car.change, balance(car)
    shown: Json = {
        "direction": found.direction,
        "degree": found.degree,
        "direction_certain": found.certain,
        "text": found.text,
    }
    if found.warning is not None:
        shown["warning"] = found.warning
    shown |= estimates({"understeer_gradient_change_deg_per_g": (change.gradient_deg_per_g, 2)})
    return {
        "speedometer": _speedometer(car),
        "balance": shown,
        **known(
            {
                "axle_circumference_ratio_change_percent": (change.axle_ratio_percent, 2),
                "engine_speed_change_percent": (change.engine_speed_percent, 2),
                "odometer_change_percent": (change.odometer_percent, 2),
            }
        ),
    }


def _speedometer(car: CarView) -> Json:
    least, greatest = lawful_lead_percent(car, r39())
    shown = known(
        {
            "circumference_ratio": (car.change.driven_circumference_ratio, 4),
            "lead_percent": (100.0 * (present_lead(car.vehicle) - 1.0), 2),
            "least_lead_percent": (least, 2),
            "greatest_lead_percent": (greatest, 2),
        }
    )
    shown["readings"] = [
        known(
            {
                "true_kmh": (each.true_kmh, 1),
                "displayed_before_kmh": (each.displayed_kmh_before, 1),
                "displayed_after_kmh": (each.displayed_kmh_after, 1),
                "least_lawful_kmh": (each.least_kmh, 1),
                "greatest_lawful_kmh": (each.most_kmh, 1),
            }
        )
        for each in readings(car, r39())
    ]
    return shown
