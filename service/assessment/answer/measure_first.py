"""Which missing fact would settle or narrow the most, found by varying each between what is plausible.

Nothing is ranked by a fixed list: every fact that the caller did not give is set to its two plausible ends, the
questions are asked again, and what comes out differently is what the fact decides.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType
from typing import Any, NamedTuple, TypeVar

from service.assessment.answer.already import grades_of
from service.assessment.answer.keep_present import has_present
from service.assessment.case import Axle, Candidate, Case, Fitment, Vehicle
from service.assessment.view.views import CarView, candidate_facts, weigh
from service.core.findings import AxleName, Estimate, Where
from service.core.numeric import known, unknown

Change = Callable[[Case, float], Case]
Part = TypeVar("Part", Vehicle, Axle, Candidate)

MOST_ROWS = 8
ESTIMATES: Mapping[str, Callable[[CarView], Estimate[float]]] = MappingProxyType(
    {
        "balance": lambda car: car.change.gradient_deg_per_g,
        "braking_distance_percent": lambda car: car.driving.braking_distance_percent,
        "front_wet_reserve_percent": lambda car: car.driving.front.wet_reserve_proposed,
        "rear_wet_reserve_percent": lambda car: car.driving.rear.wet_reserve_proposed,
        "front_peak_grip_percent": lambda car: car.driving.front.peak_grip_percent,
        "rear_peak_grip_percent": lambda car: car.driving.rear.peak_grip_percent,
    }
)
# A number that moves by less than this share of its band is not worth a measurement: project's judgement.
WORTH_A_SHARE = 0.02


AROUND_THE_WHEEL = (
    "clearance_inboard_mm",
    "clearance_outboard_mm",
    "clearance_radial_mm",
    "hub_centre_bore_mm",
)


class Missing(NamedTuple):
    """A fact that the caller did not give, its two plausible ends, and how to put it into the case."""

    pointer: str
    text: str
    low: float
    high: float
    put: Change


class MeasureFirst(NamedTuple):
    """A fact worth measuring: where it goes, what it settles (codes of findings) and what it narrows (names)."""

    pointer: str
    text: str
    settles: tuple[str, ...]
    narrows: tuple[str, ...]
    effect: float
    """What the list is ordered by: the weight of the outcomes that differ, then the shares of the bands."""


def measure_first(case: Case) -> list[MeasureFirst]:
    """Return what to measure first, the most telling first; empty where every fact that matters is given."""
    found = [_effect(case, each) for each in missing_facts(case)]
    telling = [each for each in found if each.settles or each.narrows]
    return sorted(telling, key=lambda each: -each.effect)[:MOST_ROWS]


def missing_facts(case: Case) -> Iterator[Missing]:
    """Yield the facts that the caller did not give; the plausible ends are the project's own."""
    vehicle = case.vehicle
    if unknown(vehicle.displayed_kmh) or unknown(vehicle.true_kmh):
        yield Missing("/vehicle/speedometer", "the speed shown against the true speed", 100.0, 110.0, _put_speed)
    if unknown(vehicle.wheelbase_mm):
        yield Missing("/vehicle/wheelbase_mm", "the wheelbase", 2400.0, 3000.0, _vehicle_put("wheelbase_mm"))
    if unknown(vehicle.centre_of_gravity_height_mm):
        put = _vehicle_put("centre_of_gravity_height_mm")
        yield Missing("/vehicle/centre_of_gravity_height_mm", "the height of the centre of gravity", 450.0, 750.0, put)
    pairs = ((vehicle.front, case.candidate.front), (vehicle.rear, case.candidate.rear))
    for axle, then in pairs:
        yield from _on_axle(axle, then)
    for axle, then in pairs:
        yield from _on_wheels(axle, then)


def _on_axle(axle: Axle, then: Fitment) -> Iterator[Missing]:
    name, most = axle.name, axle.max_axle_mass_kg
    facts = (
        ("kerb_axle_mass_kg", "kerb_axle_mass_kg", f"the kerb mass on the {name} axle", 0.65 * most, 0.95 * most),
        ("track_mm", "track_mm", f"the {name} track", 1400.0, 1650.0),
        ("clearance_inboard_mm", "clearance/inboard_mm", f"the room to the strut, {name}", 0.0, 60.0),
        ("clearance_outboard_mm", "clearance/outboard_mm", f"the room to the wing edge, {name}", 0.0, 60.0),
        ("clearance_radial_mm", "clearance/radial_mm", f"the room to the wheel arch, {name}", 0.0, 60.0),
        ("min_rim_diameter_in", "min_rim_diameter_in", f"the least rim over the {name} brake", 8.0, 30.0),
        ("hub_centre_bore_mm", "hub/centre_bore_mm", f"the {name} hub's centre bore", 50.0, 80.0),
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
    if unknown(axle.fitted.pressure_kpa):
        pointer = f"/vehicle/{name}/fitted/pressure_kpa"
        yield Missing(pointer, f"the present {name} pressure", 200.0, 300.0, _present_pressure(name))
    if unknown(then.tyre.tread_depth_mm):
        pointer = f"/candidate/{name}/tyre/tread_depth_mm"
        yield Missing(pointer, f"the tread depth of the proposed {name} tyres", 2.0, 8.0, _proposed_tread(name))
    if unknown(then.rim.load_rating_kg) and not has_present(axle, then):
        share = axle.max_axle_mass_kg / axle.tyres
        pointer = f"/candidate/{name}/rim/load_rating_kg"
        yield Missing(pointer, f"the load rating of the {name} rims", 0.8 * share, 1.3 * share, _rating(name))


def _effect(case: Case, missing: Missing) -> MeasureFirst:
    low, high = (missing.put(case, end) for end in (missing.low, missing.high))
    at_low, at_high = _outcomes(low), _outcomes(high)
    differing = {
        (code, where): abs(at_low[code, where] - at_high[code, where])
        for code, where in at_low
        if at_low[code, where] != at_high.get((code, where), at_low[code, where])
    }
    shares = _shares(_car(case), _car(low), _car(high))
    narrows = tuple(name for name, share in shares.items() if share > WORTH_A_SHARE)
    return MeasureFirst(
        pointer=missing.pointer,
        text=missing.text,
        settles=tuple(dict.fromkeys(code for code, _ in differing)),
        narrows=narrows,
        effect=sum(differing.values()) + 0.1 * sum(shares[name] for name in narrows),
    )


def _car(case: Case) -> CarView:
    return weigh(case, *candidate_facts(case, case.candidate))


def _outcomes(case: Case) -> dict[tuple[str, Where], int]:
    return {(code, where): int(grade.outcome) for code, where, grade in grades_of(case)}


def _shares(now: CarView, low: CarView, high: CarView) -> Mapping[str, float]:
    """Return by how large a share of its band each estimate moves between the two ends."""
    found: dict[str, float] = {}
    for name, estimate in ESTIMATES.items():
        band = estimate(now).high - estimate(now).low
        moved = abs(estimate(high).value - estimate(low).value)
        if known(moved) and band > 0.0:
            found[name] = moved / band
    return found


def _with(part: Part, field: str, value: object) -> Part:
    changed: dict[str, Any] = {field: value}
    return part._replace(**changed)


def _put_speed(case: Case, displayed_kmh: float) -> Case:
    return case._replace(vehicle=case.vehicle._replace(displayed_kmh=displayed_kmh, true_kmh=100.0))


def _vehicle_put(field: str) -> Change:
    def put(case: Case, value: float) -> Case:
        return case._replace(vehicle=_with(case.vehicle, field, value))

    return put


def _axle_put(name: AxleName, field: str) -> Change:
    def put(case: Case, value: float) -> Case:
        axle = _with(getattr(case.vehicle, name), field, value)
        return case._replace(vehicle=_with(case.vehicle, name, axle))

    return put


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
    return _proposed(name, lambda each, value: each._replace(rim=each.rim._replace(load_rating_kg=value)))
