"""Doing what a remedy says: the request as it would be sent again."""

from __future__ import annotations

import math
from collections.abc import Callable

from service.core.findings import Finding, Remedy
from service.designation.rim import parse_rim
from tests.support.cases import Json, at, changed, check
from tests.support.designations import (
    measuring_rim_in,
    radial,
    rim_with,
    service_of,
    sizes_around,
    with_aspect,
    with_service,
    with_width,
)

FAST = "Y"
STRONG = 110
# What a caller measures or looks up where the remedy only asks for a field.
PLAUSIBLE: dict[str, float | str | Json] = {
    "min_rim_diameter_in": 8.0,
    "bolt_circle": "5x112",
    "overall_diameter_mm": 640.0,
    "section_width_mm": 210.0,
    "centre_bore_mm": 66.6,
    "tread_depth_mm": 8.0,
    "reference_pressure_kpa": 475.0,
    "approved_rim_widths_in": {"min": 3.0, "max": 16.0},
    "track_mm": 1500.0,
    "max_mass_kg": 2000.0,
    "driven_axle": "rear",
    "built": "2019-05-20",
}


class NotApplicable(Exception):
    """The remedy leads out of what a request can say, such as a rim wider than any designation."""


def apply_remedy(request: Json, finding: Finding) -> Json:
    """Return the request with the finding's remedy done: the least of it, and nothing else changed."""
    remedy = finding.remedy
    assert remedy is not None
    do = _SPECIAL.get(remedy.quantity)
    if do is not None:
        return do(request, remedy)
    return changed(request, {remedy.pointer: _value(request, remedy)})


def _value(request: Json, remedy: Remedy) -> object:
    if remedy.equals is not None:
        return remedy.equals
    if remedy.at_least is None and remedy.at_most is None:
        return PLAUSIBLE[remedy.quantity]
    low = -math.inf if remedy.at_least is None else remedy.at_least
    high = math.inf if remedy.at_most is None else remedy.at_most
    assert low <= high, remedy
    present = math.nan
    try:
        present = float(at(request, remedy.pointer))
    except (KeyError, ValueError, TypeError):
        pass
    return nearest(low, high, present)


def nearest(low: float, high: float, present: float = math.nan) -> float:
    """Return the value of the range that is nearest to the present one, by a hair inside of it."""
    hair = 1e-7
    if present < low or not present == present:
        return min(low + hair, high) if low > -math.inf else high - hair
    return max(high - hair, low) if present > high else present


def _stepped(remedy: Remedy, step: float, present: float, bounds: tuple[float, float]) -> float:
    """Return the nearest value of the range that a designation can spell."""
    low = bounds[0] if remedy.at_least is None else max(remedy.at_least, bounds[0])
    high = bounds[1] if remedy.at_most is None else min(remedy.at_most, bounds[1])
    first, last = math.ceil(low / step - 1e-9) * step, math.floor(high / step + 1e-9) * step
    if first > last:
        raise NotApplicable(remedy)
    return min(max(present, first), last)


def _text(request: Json, remedy: Remedy) -> str:
    text = at(request, remedy.pointer)
    assert isinstance(text, str)
    return text


def _load_index(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    if remedy.at_least is None:
        raise NotApplicable(remedy)
    _, symbol = service_of(text)
    return changed(request, {remedy.pointer: with_service(text, remedy.at_least, symbol or FAST)})


def _speed_symbol(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    if remedy.equals is None and remedy.at_least is None:
        raise NotApplicable(remedy)
    index, _ = service_of(text)
    return changed(request, {remedy.pointer: with_service(text, index if index is not None else STRONG, remedy.equals or FAST)})


def _service_description(request: Json, remedy: Remedy) -> Json:
    pointers = [remedy.pointer]
    return changed(request, {pointer: with_service(at(request, pointer), STRONG, FAST) for pointer in pointers})


def _offset(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    present = parse_rim(text).offset_mm
    if remedy.at_least is None and remedy.at_most is None:
        return changed(request, {remedy.pointer: rim_with(text, offset_mm=40.0)})
    value = _stepped(remedy, 0.01, math.nan if present is None else present, (-150.0, 150.0))
    return changed(request, {remedy.pointer: rim_with(text, offset_mm=value)})


def _rim_width(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    width = _stepped(remedy, 0.25, parse_rim(text).width_in, (3.0, 16.0))
    return changed(request, {remedy.pointer: rim_with(text, width_in=width)})


def _rim_diameter(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    code = _stepped(remedy, 0.5, parse_rim(text).diameter_code, (8.0, 30.0))
    return changed(request, {remedy.pointer: rim_with(text, diameter_code=code)})


def _hump(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    return changed(request, {remedy.pointer: rim_with(text, hump=remedy.equals, one_piece=True)})


def _construction(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: radial(_text(request, remedy))})


def _nominal_width(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    low = remedy.at_most if remedy.at_least is None else remedy.at_least
    high = remedy.at_least if remedy.at_most is None else remedy.at_most
    assert low is not None
    assert high is not None
    return changed(request, {remedy.pointer: with_width(text, 0.5 * (low + high))})


def _stiffness(request: Json, remedy: Remedy) -> Json:
    """Look for a size on this axle whose change of cornering stiffness lies in the range, as a caller would search."""
    where = remedy.pointer.split("/")[2]
    size, rim = (at(request, f"/candidate/{where}/{part}/size") for part in ("tyre", "rim"))
    measuring = measuring_rim_in(size)
    for made in sizes_around(size):
        suited = round(4.0 * parse_rim(rim).width_in * measuring_rim_in(made) / measuring) / 4.0
        tried = changed(
            request,
            {
                remedy.pointer: made,
                f"/candidate/{where}/rim/size": rim_with(rim, width_in=min(max(suited, 3.0), 16.0)),
            },
        )
        view = getattr(check(tried).car, where)
        found = 100.0 * (view.change.cornering_stiffness.value - 1.0)
        if remedy.at_least is not None and found >= remedy.at_least:
            if remedy.at_most is None or found <= remedy.at_most:
                return tried
    raise NotApplicable(remedy)


def _aspect(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: with_aspect(_text(request, remedy), remedy.at_least or remedy.at_most)})


def _overall_diameter(request: Json, remedy: Remedy) -> Json:
    pointer = remedy.pointer.removesuffix("/size").removesuffix("/overall_diameter_mm") + "/overall_diameter_mm"
    return changed(request, {pointer: _value(request, remedy._replace(pointer=pointer))})


def _speedometer(request: Json, remedy: Remedy) -> Json:
    assert remedy.at_least is not None
    assert remedy.at_most is not None
    lead = 0.5 * (remedy.at_least + remedy.at_most)
    return changed(request, {remedy.pointer: {"displayed_kmh": 100.0 + lead, "true_kmh": 100.0}})


def _marking(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: f"{_text(request, remedy)} {remedy.equals}"})


def _regular(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: "205/55 R16 110Y XL"})


_SPECIAL: dict[str, Callable[[Json, Remedy], Json]] = {
    "load_index": _load_index,
    "speed_symbol": _speed_symbol,
    "service_description": _service_description,
    "offset_mm": _offset,
    "rim_width_in": _rim_width,
    "rim_diameter_in": _rim_diameter,
    "hump": _hump,
    "construction": _construction,
    "nominal_width_mm": _nominal_width,
    "cornering_stiffness_percent": _stiffness,
    "aspect_percent": _aspect,
    "system": _regular,
    "marking": _marking,
    "overall_diameter_mm": _overall_diameter,
    "speedometer_lead_percent": _speedometer,
}
