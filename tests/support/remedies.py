"""Doing what a remedy says: the request as it would be sent again."""

from __future__ import annotations

import contextlib
import math
import re
from collections.abc import Callable, Iterator

from service.api.render import assessment_answer as render
from service.core.findings import ADVISORY, MET, Finding, Remedy, is_open
from service.designation.rim import parse_rim
from tests.support.cases import ABSENT, Json, at, changed, check
from tests.support.designations import (
    constructed,
    measuring_rim_in,
    rim_with,
    service_of,
    sizes_around,
    with_aspect,
    with_service,
    with_width,
)

MOST_ROUNDS = 4
FAST = "Y"
STRONG = 110
# The least that a request may state.
LEAST_RATING_KG = 50.0
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


def settles(request: Json, finding: Finding) -> bool:
    """Return whether doing what the remedy says, and asking again, settles the finding.

    Where several facts are lacking, the answer asks for one after the other, never twice for the same.
    """
    asked: set[str] = set()
    for _ in range(MOST_ROUNDS):
        assert finding.remedy is not None, finding
        if finding.remedy.pointer in asked:
            return False
        asked.add(finding.remedy.pointer)
        request = apply_remedy(request, finding)
        again = [each for each in check(request).findings if each[:2] == finding[:2]]
        # A rule whose conditions are now known may turn out not to apply.
        if not again or _is_settled(finding, again[0]):
            return bool(again) or is_open(finding.outcome)
        # A tyre that carries too little at any pressure has to be replaced before its pressure is a question, and
        # a structure is changed on one axle after the other.
        if not is_open(finding.outcome) and finding.code not in ("load.pressure", "tyre.structure"):
            return False
        finding = again[0]
    return False


def _is_settled(finding: Finding, again: Finding) -> bool:
    if is_open(finding.outcome):
        return not is_open(again.outcome)
    # What the car has today no change of the fitment takes away; towing is never without its conditions.
    as_today = again.already and not finding.already
    return as_today or again.outcome == (ADVISORY if finding.code == "load.towing" else MET)


def apply_remedy(request: Json, finding: Finding) -> Json:
    """Return the request with the finding's remedy done: the least of it, and nothing else changed."""
    remedy = _as_shown(finding)
    do = _SPECIAL.get(remedy.quantity)
    if do is not None:
        return do(request, remedy)
    return changed(request, {remedy.pointer: _value(request, remedy)})


def _as_shown(finding: Finding) -> Remedy:
    """Return the remedy with the numbers that the answer shows."""
    assert finding.remedy is not None
    shown = render.finding(finding)["remedy"]
    return finding.remedy._replace(at_least=shown.get("at_least"), at_most=shown.get("at_most"))


def _value(request: Json, remedy: Remedy) -> object:
    if remedy.equals is not None:
        return remedy.equals
    if remedy.at_least is None and remedy.at_most is None:
        return PLAUSIBLE[remedy.quantity]
    if remedy.quantity == "load_rating_kg":
        return max(remedy.at_least or 0.0, LEAST_RATING_KG)
    low = -math.inf if remedy.at_least is None else remedy.at_least
    high = math.inf if remedy.at_most is None else remedy.at_most
    assert low <= high, remedy
    present = math.nan
    # A field that is absent, or that holds a part, has no present value to stay near to.
    with contextlib.suppress(KeyError, ValueError, TypeError):
        present = float(at(request, remedy.pointer))
    return nearest(low, high, present)


def nearest(low: float, high: float, present: float = math.nan) -> float:
    """Return the value of the range that is nearest to the present one, else one of its ends."""
    if present < low or math.isnan(present):
        return low if low > -math.inf else high
    return min(present, high)


def _stepped(remedy: Remedy, step: float, present: float, bounds: tuple[float, float]) -> float:
    """Return the nearest value of the range that a designation can spell."""
    low = bounds[0] if remedy.at_least is None else max(remedy.at_least, bounds[0])
    high = bounds[1] if remedy.at_most is None else min(remedy.at_most, bounds[1])
    first, last = math.ceil(low / step - 1e-9) * step, math.floor(high / step + 1e-9) * step
    if first > last:
        raise NotApplicable(remedy)
    return nearest(first, last, present)


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
    index = service_of(text)[0]
    if index is None:
        index = STRONG
    return changed(request, {remedy.pointer: with_service(text, index, remedy.equals or FAST)})


def _service_description(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: with_service(_text(request, remedy), STRONG, FAST)})


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
    return changed(request, {remedy.pointer: constructed(_text(request, remedy), str(remedy.equals))})


def _nominal_width(request: Json, remedy: Remedy) -> Json:
    text = _text(request, remedy)
    if remedy.at_least is None and remedy.at_most is None:
        return _narrower_wheel(request, remedy)
    low = remedy.at_most if remedy.at_least is None else remedy.at_least
    high = remedy.at_least if remedy.at_most is None else remedy.at_most
    assert low is not None
    assert high is not None
    return changed(request, {remedy.pointer: with_width(text, 0.5 * (low + high))})


def _narrower_wheel(request: Json, remedy: Remedy) -> Json:
    """Choose the wheel anew, as a caller would whom no offset of this one helps: the one on the car is narrower."""
    where = remedy.pointer.split("/")[2]
    return changed(request, {f"/candidate/{where}": at(request, f"/vehicle/{where}/fitted")})


def _stiffness(request: Json, remedy: Remedy) -> Json:
    """Look for a size on this axle whose change of cornering stiffness lies in the range, as a caller would search."""
    where = remedy.pointer.split("/")[2]
    low = -math.inf if remedy.at_least is None else remedy.at_least
    high = math.inf if remedy.at_most is None else remedy.at_most
    for tried in _other_wheels(request, where):
        ratio = getattr(check(tried).car, where).change.cornering_stiffness.value
        if low <= 100.0 * (ratio - 1.0) <= high:
            return tried
    raise NotApplicable(remedy)


def _other_wheels(request: Json, where: str) -> Iterator[Json]:
    """Return the request with other sizes on an axle, each on a rim as suitable as now, then on other rims too."""
    size, rim = (at(request, f"/candidate/{where}/{part}/size") for part in ("tyre", "rim"))
    widest = min(16.0, parse_rim(rim).diameter_code)
    suits = parse_rim(rim).width_in / measuring_rim_in(size)
    # What was measured of one tyre does not hold for another size.
    measured = {f"/candidate/{where}/tyre/{field}": ABSENT for field in ("overall_diameter_mm", "section_width_mm")}
    for share in (suits, 1.0, 1.2, 1.4):
        for made in sizes_around(size):
            width = min(max(round(4.0 * share * measuring_rim_in(made)) / 4.0, 3.0), widest)
            wheel = {
                f"/candidate/{where}/tyre/size": made,
                f"/candidate/{where}/rim/size": rim_with(rim, width_in=width),
            }
            yield changed(request, measured | wheel)


def _aspect(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: with_aspect(_text(request, remedy), remedy.at_least or remedy.at_most)})


def _overall_diameter(request: Json, remedy: Remedy) -> Json:
    """Take the value of the range that is nearest to the size as it is: the least change."""
    base = remedy.pointer.removesuffix("/size").removesuffix("/overall_diameter_mm")
    pointer = f"{base}/overall_diameter_mm"
    if remedy.at_least is None or remedy.at_most is None or not base.startswith("/candidate"):
        return changed(request, {pointer: _value(request, remedy._replace(pointer=pointer))})
    now = getattr(check(request).car, base.split("/")[2]).then.geometry.overall_diameter_mm
    return changed(request, {pointer: nearest(remedy.at_least, remedy.at_most, now)})


def _speedometer(request: Json, remedy: Remedy) -> Json:
    assert remedy.at_least is not None
    lead = remedy.at_least if remedy.at_most is None else 0.5 * (remedy.at_least + remedy.at_most)
    return changed(request, {remedy.pointer: {"displayed_kmh": 100.0 + lead, "true_kmh": 100.0}})


def _marking(request: Json, remedy: Remedy) -> Json:
    return changed(request, {remedy.pointer: f"{_text(request, remedy)} {remedy.equals}"})


def _fitment(request: Json, remedy: Remedy) -> Json:
    """Keep what is on the axle, or fit what is proposed for the other one."""
    source = f"/vehicle/{remedy.pointer.split('/')[2]}/fitted"
    if remedy.equals != "present":
        source = f"/candidate/{remedy.equals}"
    return changed(request, {remedy.pointer: at(request, source)})


def _run_flat(request: Json, remedy: Remedy) -> Json:
    """Write the F before the rim code, or leave it out."""
    kind = {"run-flat": r"\1F\2", "ordinary": r"\1\2"}[str(remedy.equals)]
    return changed(request, {remedy.pointer: re.sub(r"( Z?R)F?([0-9])", kind, _text(request, remedy), count=1)})


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
    "fitment": _fitment,
    "run_flat": _run_flat,
    "marking": _marking,
    "overall_diameter_mm": _overall_diameter,
    "speedometer_lead_percent": _speedometer,
}
