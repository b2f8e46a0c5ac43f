"""The facts that a caller did not give, each with its two plausible ends; the ends are the project's own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import Any, NamedTuple, TypeVar

from service.assessment.answer import missing_words
from service.assessment.answer.keep_present import has_present
from service.assessment.case import Axle, Candidate, Case, Fitment, Vehicle
from service.core.findings import AxleName
from service.core.numeric import known, unknown
from service.designation.bolt_circle import BoltCircle, parse_bolt_circle

Change = Callable[[Case, float], Case]
Part = TypeVar("Part", Vehicle, Axle, Candidate)

# Two circles that no wheel has both of, and service descriptions of a weak and of a strong tyre.
CIRCLES = (parse_bolt_circle("5x112"), parse_bolt_circle("4x100"))
WEAK, STRONG = (50, "L"), (120, "Y")
BORE_MM = 65.0
# The least of the share of an assumed top speed or axle mass that a vehicle has.
MUCH_LESS = 0.6
AROUND_THE_WHEEL = ("clearance_inboard_mm", "clearance_outboard_mm", "clearance_radial_mm")


class Missing(NamedTuple):
    """A fact that the caller did not give, its two plausible ends, and how to put it into the case."""

    pointer: str
    text: str
    low: float
    high: float
    put: Change


def missing_facts(case: Case) -> Iterator[Missing]:
    """Yield the facts that the caller did not give."""
    vehicle = case.vehicle
    yield from _assumed(vehicle)
    if unknown(vehicle.displayed_kmh) or unknown(vehicle.true_kmh):
        yield Missing("/vehicle/speedometer", missing_words.SPEEDOMETER, 100.0, 110.0, _put_speed)
    if unknown(vehicle.wheelbase_mm):
        yield Missing("/vehicle/wheelbase_mm", missing_words.WHEELBASE, 2400.0, 3000.0, _vehicle_put("wheelbase_mm"))
    if unknown(vehicle.centre_of_gravity_height_mm):
        put = _vehicle_put("centre_of_gravity_height_mm")
        yield Missing("/vehicle/centre_of_gravity_height_mm", missing_words.CENTRE_OF_GRAVITY, 450.0, 750.0, put)
    pairs = ((vehicle.front, case.candidate.front), (vehicle.rear, case.candidate.rear))
    for axle, then in pairs:
        yield from _on_axle(axle, then)
    for axle, then in pairs:
        yield from _on_wheels(axle, then)


def _assumed(vehicle: Vehicle) -> Iterator[Missing]:
    """Yield top speed and axle masses where they are assumed: they are no more than that, and may be less."""
    if vehicle.speed_assumed:
        most = vehicle.max_speed_kmh
        yield Missing("/vehicle/max_speed_kmh", missing_words.TOP_SPEED, MUCH_LESS * most, most, _put_top_speed)
    for axle in (vehicle.front, vehicle.rear):
        if axle.mass_assumed:
            most, pointer = axle.max_axle_mass_kg, f"/vehicle/{axle.name}/max_axle_mass_kg"
            text = missing_words.MAX_MASS.of(axle.name)
            yield Missing(pointer, text, MUCH_LESS * most, most, _put_mass(axle.name))


def _on_axle(axle: Axle, then: Fitment) -> Iterator[Missing]:
    name, most = axle.name, axle.max_axle_mass_kg
    facts = (
        ("kerb_axle_mass_kg", "kerb_axle_mass_kg", missing_words.KERB_MASS.of(name), 0.65 * most, 0.95 * most),
        ("track_mm", "track_mm", missing_words.TRACK.of(name), 1400.0, 1650.0),
        ("clearance_inboard_mm", "clearance/inboard_mm", missing_words.INBOARD.of(name), 0.0, 60.0),
        ("clearance_outboard_mm", "clearance/outboard_mm", missing_words.OUTBOARD.of(name), 0.0, 60.0),
        ("clearance_radial_mm", "clearance/radial_mm", missing_words.RADIAL.of(name), 0.0, 60.0),
        ("min_rim_diameter_in", "min_rim_diameter_in", missing_words.LEAST_RIM.of(name), 8.0, 30.0),
    )
    # Where the wheels of today go on again nobody measures the room that they have, nor the brake that they clear.
    idle = AROUND_THE_WHEEL if has_present(axle, then) else ()
    if not then.rim.designation.diameter_code < axle.fitted.rim.designation.diameter_code:
        idle = (*idle, "min_rim_diameter_in")
    for field, path, text, low, high in facts:
        if unknown(getattr(axle, field)) and field not in idle:
            yield Missing(f"/vehicle/{name}/{path}", text, low, high, _axle_put(name, field))


def _on_wheels(axle: Axle, then: Fitment) -> Iterator[Missing]:
    name = axle.name
    yield from _bolt_circle(axle, then)
    yield from _centre_bore(axle, then)
    if then.tyre.designation.load_index is None:
        pointer = f"/candidate/{name}/tyre/load_index"
        yield Missing(pointer, missing_words.SERVICE.of(name), 0.0, 1.0, _service(name))
    if unknown(axle.fitted.pressure_kpa):
        pointer = f"/vehicle/{name}/fitted/pressure_kpa"
        yield Missing(pointer, missing_words.PRESENT_PRESSURE.of(name), 200.0, 300.0, _present_pressure(name))
    if unknown(then.tyre.tread_depth_mm):
        pointer = f"/candidate/{name}/tyre/tread_depth_mm"
        yield Missing(pointer, missing_words.TREAD.of(name), 2.0, 8.0, _proposed_tread(name))
    if unknown(then.rim.load_rating_kg) and not has_present(axle, then):
        share = axle.max_axle_mass_kg / axle.tyres
        pointer = f"/candidate/{name}/rim/load_rating_kg"
        yield Missing(pointer, missing_words.RATING.of(name), 0.8 * share, 1.3 * share, _rating(name))


def _bolt_circle(axle: Axle, then: Fitment) -> Iterator[Missing]:
    """Yield the circle that tells whether another rim than the present one goes on the hub."""
    name, rim, now = axle.name, then.rim, axle.fitted.rim
    if rim.designation == now.designation:
        return
    if axle.hub_bolt_circle is None and now.bolt_circle is None:
        pointer = f"/vehicle/{name}/hub/bolt_circle"
        yield Missing(pointer, missing_words.HUB_CIRCLE.of(name), 0.0, 1.0, _hub_circle(name))
    elif rim.bolt_circle is None:
        pointer = f"/candidate/{name}/rim/bolt_circle"
        yield Missing(pointer, missing_words.RIM_CIRCLE.of(name), 0.0, 1.0, _rim_circle(name))


def _centre_bore(axle: Axle, then: Fitment) -> Iterator[Missing]:
    """Yield the bore that tells whether the rim is centred on the hub."""
    name, rim, now = axle.name, then.rim, axle.fitted.rim
    if has_present(axle, then):
        return
    other_rim, hub_known = rim.designation != now.designation, known(axle.hub_centre_bore_mm)
    if unknown(rim.centre_bore_mm) and other_rim and (hub_known or known(now.centre_bore_mm)):
        pointer = f"/candidate/{name}/rim/centre_bore_mm"
        yield Missing(pointer, missing_words.RIM_BORE.of(name), 50.0, 80.0, _rim_bore(name))
    elif not hub_known and (other_rim or known(rim.centre_bore_mm)):
        pointer = f"/vehicle/{name}/hub/centre_bore_mm"
        yield Missing(pointer, missing_words.HUB_BORE.of(name), 50.0, 80.0, _hub_bore(name))


def _other_than(circle: BoltCircle, at: float) -> BoltCircle:
    """Return this circle at 0 and another at 1."""
    return circle if at < 1.0 else next(each for each in CIRCLES if each != circle)


def _hub_circle(name: AxleName) -> Change:
    """Vary the hub's circle against the rim's, which is put in too where nobody stated it."""

    def put(case: Case, at: float) -> Case:
        rim = getattr(case.candidate, name).rim.bolt_circle or CIRCLES[0]
        on_hub = _axle_with(name, "hub_bolt_circle", _other_than(rim, at))(case)
        return _rim_with(name, "bolt_circle", rim)(on_hub)

    return put


def _rim_circle(name: AxleName) -> Change:
    def put(case: Case, at: float) -> Case:
        axle = getattr(case.vehicle, name)
        hub = axle.hub_bolt_circle or axle.fitted.rim.bolt_circle
        return _rim_with(name, "bolt_circle", _other_than(hub, at))(case)

    return put


def _hub_bore(name: AxleName) -> Change:
    """Vary the hub's bore against the rim's, which is put in too where nobody stated it."""

    def put(case: Case, bore_mm: float) -> Case:
        stated = getattr(case.candidate, name).rim.centre_bore_mm
        on_hub = _axle_with(name, "hub_centre_bore_mm", bore_mm)(case)
        return on_hub if known(stated) else _rim_with(name, "centre_bore_mm", BORE_MM)(on_hub)

    return put


def _rim_bore(name: AxleName) -> Change:
    return lambda case, bore_mm: _rim_with(name, "centre_bore_mm", bore_mm)(case)


def _service(name: AxleName) -> Change:
    """Vary load index and speed symbol together: both stand in one place on the sidewall."""

    def put(case: Case, at: float) -> Case:
        tyre = getattr(case.candidate, name).tyre
        index, symbol = STRONG if at >= 1.0 else WEAK
        told = replace(tyre.designation, load_index=index, speed_symbol=symbol)
        return _proposed(name, lambda each, _: each._replace(tyre=each.tyre._replace(designation=told)))(case, at)

    return put


def _axle_with(name: AxleName, field: str, value: object) -> Callable[[Case], Case]:
    def put(case: Case) -> Case:
        axle = _with(getattr(case.vehicle, name), field, value)
        return case._replace(vehicle=_with(case.vehicle, name, axle))

    return put


def _rim_with(name: AxleName, field: str, value: object) -> Callable[[Case], Case]:
    def put(case: Case) -> Case:
        fitment = getattr(case.candidate, name)
        changed: dict[str, Any] = {field: value}
        return case._replace(
            candidate=_with(case.candidate, name, fitment._replace(rim=fitment.rim._replace(**changed)))
        )

    return put


def _with(part: Part, field: str, value: object) -> Part:
    changed: dict[str, Any] = {field: value}
    return part._replace(**changed)


def _put_speed(case: Case, displayed_kmh: float) -> Case:
    return case._replace(vehicle=case.vehicle._replace(displayed_kmh=displayed_kmh, true_kmh=100.0))


def _put_top_speed(case: Case, speed_kmh: float) -> Case:
    return case._replace(vehicle=case.vehicle._replace(max_speed_kmh=speed_kmh, speed_assumed=False))


def _put_mass(name: AxleName) -> Change:
    def put(case: Case, mass_kg: float) -> Case:
        axle = getattr(case.vehicle, name)._replace(max_axle_mass_kg=mass_kg, mass_assumed=False)
        return case._replace(vehicle=_with(case.vehicle, name, axle))

    return put


def _vehicle_put(field: str) -> Change:
    def put(case: Case, value: float) -> Case:
        return case._replace(vehicle=_with(case.vehicle, field, value))

    return put


def _axle_put(name: AxleName, field: str) -> Change:
    return lambda case, value: _axle_with(name, field, value)(case)


def _present_pressure(name: AxleName) -> Change:
    def put(case: Case, value: float) -> Case:
        axle = getattr(case.vehicle, name)
        fitted = axle.fitted._replace(pressure_kpa=value)
        return case._replace(vehicle=_with(case.vehicle, name, axle._replace(fitted=fitted)))

    return put


def _proposed(name: AxleName, change: Callable[[Fitment, float], Fitment]) -> Change:
    def put(case: Case, value: float) -> Case:
        fitment = change(getattr(case.candidate, name), value)
        return case._replace(candidate=_with(case.candidate, name, fitment))

    return put


def _proposed_tread(name: AxleName) -> Change:
    return _proposed(name, lambda each, value: each._replace(tyre=each.tyre._replace(tread_depth_mm=value)))


def _rating(name: AxleName) -> Change:
    return lambda case, value: _rim_with(name, "load_rating_kg", value)(case)
