"""The figures of an answer: wheels, their changes, speedometer and balance, by name, rounded, the unknown left out."""

from __future__ import annotations

from itertools import chain
from operator import attrgetter

from service.api.render.numbers import Json, Layout, rounded
from service.assessment.case import Fitment
from service.assessment.checks.balance import balance
from service.assessment.checks.speedometer_lead import lawful_lead_percent, present_lead, r39, readings
from service.assessment.view.change import AxleChange, Wheel
from service.assessment.view.estimates import WheelEstimates, wheel_estimates
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, Num

_WHEEL = Layout(
    {
        "section_width_mm": 0,
        "section_height_mm": 0,
        "overall_diameter_mm": 1,
        "rolling_circumference_mm": 1,
        "revolutions_per_km": 1,
        "load_capacity_kg": 1,
        "load_required_kg": 1,
        "speed_capability_kmh": 0,
        "minimum_pressure_kpa": 0,
        "pressure_kpa": 0,
    },
    {
        "static_loaded_radius_mm": 1,
        "cornering_stiffness_n_per_deg": 0,
        "aquaplaning_onset_kmh": 0,
        "wheel_mass_kg": 1,
        "wheel_inertia_kg_m2": 2,
    },
)
_ESTIMATES_OF = attrgetter(*_WHEEL.estimates)
_PATCH = Layout({}, {"length_mm": 0, "width_mm": 0, "area_cm2": 0})
_BAND = Layout({"low": 1, "high": 1}, {})
_CHANGE = Layout(
    {
        "overall_diameter_percent": 2,
        "overall_diameter_mm": 1,
        "rolling_circumference_percent": 2,
        "section_width_mm": 1,
        "inboard_edge_mm": 1,
        "outboard_edge_mm": 1,
        "track_mm": 1,
        "scrub_radius_mm": 1,
        "ride_height_mm": 1,
        "load_capacity_percent": 1,
    },
    {"cornering_stiffness_percent": 1, "aquaplaning_onset_percent": 1},
)
_AXLE_SCALE = 2 * (_WHEEL.scale + _PATCH.scale + _BAND.scale) + _CHANGE.scale
_PATCH_AT = len(_WHEEL.scale)
_BAND_AT = len(_WHEEL.scale + _PATCH.scale)
_THEN_AT = len(_WHEEL.scale + _PATCH.scale + _BAND.scale)
_CHANGE_AT = 2 * _THEN_AT


def axle_figures(view: AxleView, proposed: Fitment, front_patch_mm: float) -> Json:
    """Return the figures of one axle; the patch of the present front wheel measures all onsets."""
    now, then, change = view.now, view.then, view.change
    stiffness = change.cornering_stiffness.value * now.behaviour.cornering_stiffness_n_per_deg
    numbers = rounded(
        (
            *_wheel_numbers(view, now, wheel_estimates(now, front_patch_mm, None)),
            *_wheel_numbers(view, then, wheel_estimates(then, front_patch_mm, stiffness)),
            *_change_numbers(change),
        ),
        _AXLE_SCALE,
    )
    return {
        "present": _wheel(view.axle.fitted, numbers[:_THEN_AT]),
        "proposed": _wheel(proposed, numbers[_THEN_AT:_CHANGE_AT]),
        "change": _CHANGE.named(numbers[_CHANGE_AT:]),
    }


_KEY = Layout(
    {
        "set_pressure_kpa": 0,
        "overall_diameter_percent": 2,
        "section_width_mm": 1,
        "inboard_edge_mm": 1,
        "outboard_edge_mm": 1,
        "track_mm": 1,
    },
    {},
)


def key_figures(view: AxleView, proposed: Fitment) -> Json:
    """Return the few figures of one axle that a shop shows."""
    change = view.change
    numbers = (
        view.ordered_pressure_kpa,
        change.overall_diameter_percent,
        change.section_width_mm,
        change.inboard_edge_mm,
        change.outboard_edge_mm,
        change.track_mm,
    )
    shown = _KEY.named(rounded(numbers, _KEY.scale))
    pressure = {"set_pressure_kpa": shown.pop("set_pressure_kpa")} if "set_pressure_kpa" in shown else {}
    return {"proposed": _named(proposed) | pressure, "change": shown}


def _named(fitment: Fitment) -> Json:
    shown: Json = {"tyre": fitment.tyre.designation.canonical, "rim": fitment.rim.designation.canonical}
    return shown | ({"spacer_mm": fitment.spacer_mm} if fitment.spacer_mm else {})


def percent_estimate(ratio: Estimate[Num]) -> Estimate[Num]:
    """Return a ratio with its band as a change in per cent."""
    value, low, high = ratio
    return Estimate(100.0 * (value - 1.0), 100.0 * (low - 1.0), 100.0 * (high - 1.0))


def _wheel(fitment: Fitment, numbers: list[float]) -> Json:
    shown = _named(fitment)
    shown |= _WHEEL.named(numbers)
    band = _BAND.named(numbers[_BAND_AT:])
    if band:
        shown["rolling_circumference_band_mm"] = band
    patch = _PATCH.named(numbers[_PATCH_AT:_BAND_AT])
    if patch:
        shown["contact_patch"] = patch
    return shown


def _wheel_numbers(view: AxleView, wheel: Wheel, bands: WheelEstimates) -> tuple[float, ...]:
    facts, shape, carried = wheel.facts, wheel.geometry, wheel.load
    return (
        shape.section_width_mm,
        facts.section_height_mm,
        shape.overall_diameter_mm,
        shape.rolling_circumference_mm,
        shape.revolutions_per_km,
        carried.capacity_kg,
        # What nobody stated is no figure of the axle.
        UNKNOWN if view.axle.mass_assumed else carried.required_kg,
        facts.speed_capability_kmh,
        carried.required_pressure_kpa,
        wheel.behaviour.pressure_kpa,
        *chain.from_iterable(_ESTIMATES_OF(bands)),
        *bands.patch_length_mm,
        *bands.patch_width_mm,
        *bands.patch_area_cm2,
        bands.rolling_circumference_mm.low,
        bands.rolling_circumference_mm.high,
    )


def _change_numbers(change: AxleChange) -> tuple[float, ...]:
    return (
        change.overall_diameter_percent,
        change.overall_diameter_mm,
        change.rolling_circumference_percent,
        change.section_width_mm,
        change.inboard_edge_mm,
        change.outboard_edge_mm,
        change.track_mm,
        change.scrub_radius_mm,
        change.ride_height_mm,
        change.load_capacity_percent,
        *percent_estimate(change.cornering_stiffness),
        *change.aquaplaning_onset_percent,
    )


_SPEEDOMETER = Layout(
    {"circumference_ratio": 4, "lead_percent": 2, "least_lead_percent": 2, "greatest_lead_percent": 2}, {}
)
_GRADIENT = Layout({}, {"understeer_gradient_change_deg_per_g": 2})
_VEHICLE = Layout(
    {
        "axle_circumference_ratio_change_percent": 2,
        "engine_speed_change_percent": 2,
        "odometer_change_percent": 2,
    },
    {},
)
_VEHICLE_SCALE = _GRADIENT.scale + _VEHICLE.scale
_READING = Layout(
    {
        "true_kmh": 1,
        "displayed_before_kmh": 1,
        "displayed_after_kmh": 1,
        "least_lawful_kmh": 1,
        "greatest_lawful_kmh": 1,
    },
    {},
)


def vehicle_figures(car: CarView) -> Json:
    """Return the figures of the whole vehicle."""
    change, found = car.change, balance(car)
    lead, ratio = present_lead(car.vehicle), change.driven_circumference_ratio
    numbers = rounded(
        (
            *change.gradient_deg_per_g,
            change.axle_ratio_percent,
            change.engine_speed_percent,
            change.odometer_percent,
        ),
        _VEHICLE_SCALE,
    )
    shown: Json = {
        "direction": found.direction,
        "degree": found.degree,
        "direction_certain": found.certain,
        "text": found.text,
    }
    if found.warning is not None:
        shown["warning"] = found.warning
    shown |= _GRADIENT.named(numbers[:3])
    return {
        "speedometer": _speedometer(car.vehicle.max_speed_kmh, lead, ratio),
        "balance": shown,
        **_VEHICLE.named(numbers[3:]),
    }


def _speedometer(max_speed_kmh: float, lead: float, ratio: float) -> Json:
    least, most = lawful_lead_percent(r39(), max_speed_kmh, ratio)
    shown = _SPEEDOMETER.named(rounded((ratio, 100.0 * (lead - 1.0), least, most), _SPEEDOMETER.scale))
    found = readings(r39(), max_speed_kmh, lead, ratio)
    shown["readings"] = [_READING.named(rounded(each, _READING.scale)) for each in found]
    return shown
