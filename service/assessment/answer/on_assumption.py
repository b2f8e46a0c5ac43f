"""A finding that rests on an assumed top speed or axle mass: its words, and up to which number it is enough."""

from __future__ import annotations

from collections.abc import Iterator
from math import floor

from service.assessment.answer.as_present import enough_mass_kg, enough_speed_kmh
from service.assessment.case import Axle, Case, Vehicle
from service.assessment.checks.grade import LAST_BIT
from service.assessment.checks.missing import mass_remedy
from service.assessment.checks.words import apart, plain
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, Finding, Remedy
from service.core.numeric import UNKNOWN, unknown
from service.core.ranges import AXLE_MASS_KG, SPEED_KMH
from service.core.saying import Amount, Said, say, sentences

_OF_MASS = ("load.capacity", "load.pressure", "load.towing", "rim.load_rating")
BY_TODAY = say("The pressure goes by today's, since the axle's mass or the top speed is not given.")


def speed_taken(vehicle: Vehicle) -> Said:
    """Return what is taken for a top speed that nobody gave."""
    if vehicle.speed_unbounded:
        return say("The top speed is not given, and the present tyres do not tell it.")
    return say(
        "The top speed is not given; the vehicle is taken to be no faster than the {speed} that the present tyres "
        "allow.",
        speed=plain(vehicle.max_speed_kmh, 0, "km/h"),
    )


def mass_taken(axle: Axle) -> Said:
    """Return what is taken for the maximum mass of an axle that nobody gave."""
    at_front = axle.name == "front"
    if axle.mass_unbounded:
        if at_front:
            return say("The maximum mass of the front axle is not given, and the present wheels do not tell it.")
        return say("The maximum mass of the rear axle is not given, and the present wheels do not tell it.")
    mass = plain(axle.max_axle_mass_kg, 0, "kg")
    if at_front:
        return say(
            "The maximum mass of the front axle is not given; it is taken to be no more than the {mass} that the "
            "present wheels carry.",
            mass=mass,
        )
    return say(
        "The maximum mass of the rear axle is not given; it is taken to be no more than the {mass} that the present "
        "wheels carry.",
        mass=mass,
    )


def taken(vehicle: Vehicle) -> Iterator[Said]:
    """Yield what is assumed of a vehicle, in sentences."""
    if vehicle.speed_assumed:
        yield speed_taken(vehicle)
    for axle in (vehicle.front, vehicle.rear):
        if axle.mass_assumed:
            yield mass_taken(axle)


def on_assumption(case: Case, car: CarView, finding: Finding, outcome: int) -> Finding:
    """Return a finding as it is where something is assumed of the vehicle.

    Parameters
    ----------
    case : Case
        With the candidate of which the finding speaks.
    car : CarView
        The same, seen.
    finding : Finding
        As it would be were the assumption a fact.
    outcome : int
        As `every_question.graded` has it.
    """
    rests, vehicle = outcome != finding.outcome, car.vehicle
    told = finding._replace(outcome=outcome)
    if finding.axle == "vehicle":
        return _with_speed(vehicle, told, speed_remedy()) if rests else finding
    view = car.front if finding.axle == "front" else car.rear
    return _on_an_axle(case, view, finding, told)


def _on_an_axle(case: Case, view: AxleView, finding: Finding, told: Finding) -> Finding:
    rests, vehicle, by_mass = told.outcome != finding.outcome, view.vehicle, view.axle.mass_assumed
    if finding.code == "speed.capability" and vehicle.speed_assumed:
        return _speed(case, view, told, rests=rests)
    if finding.code == "load.pressure" and not rests and (by_mass or vehicle.speed_assumed):
        return _pressure(view, told)
    if finding.code in _OF_MASS and by_mass:
        return _load(view, told, rests=rests)
    if not rests:
        return finding
    if by_mass and finding.unit != "km/h":
        message = sentences(finding.message, mass_taken(view.axle))
        return told._replace(message=message, remedy=_up_to_mass(view))
    return _with_speed(vehicle, told, speed_remedy(enough_speed_kmh(case)))


def speed_remedy(enough_kmh: float = UNKNOWN) -> Remedy:
    """Return that the top speed is to be stated, and up to which one is enough (NaN: not known)."""
    pointer, field = "/vehicle/max_speed_kmh", "max_speed_kmh"
    if unknown(enough_kmh) or enough_kmh < SPEED_KMH[0]:
        return Remedy(say("state the top speed"), pointer, field, unit="km/h")
    text = say("state the top speed: up to {speed} is enough", speed=plain(enough_kmh, 0, "km/h"))
    return Remedy(text, pointer, field, at_most=enough_kmh, unit="km/h")


def _up_to_mass(view: AxleView) -> Remedy:
    enough = enough_mass_kg(view)
    # Less than an axle may weigh here is no number to name.
    return mass_remedy(view.name, float(floor(enough + LAST_BIT)) if enough >= AXLE_MASS_KG[0] else UNKNOWN)


def _with_speed(vehicle: Vehicle, finding: Finding, remedy: Remedy) -> Finding:
    return finding._replace(message=sentences(finding.message, speed_taken(vehicle)), remedy=remedy)


def _speed(case: Case, view: AxleView, finding: Finding, *, rests: bool) -> Finding:
    """Return what is said of the tyre's speed beside that of the present tyres."""
    vehicle, now, then = view.vehicle, view.now.facts, view.then.facts
    untold = now.winter_mark > then.winter_mark or now.temporary_spare > then.temporary_spare
    if finding.measured is None:
        if vehicle.speed_unbounded:
            return finding._replace(message=speed_taken(vehicle), remedy=speed_remedy())
        return finding
    if finding.outcome == ADVISORY or (finding.outcome != MET and not rests and not untold):
        return finding._replace(message=sentences(finding.message, speed_taken(vehicle)))
    message = say(
        "The tyre may run {speed}; the present tyres allow {top}.",
        speed=plain(finding.measured, 0, "km/h"),
        top=plain(vehicle.max_speed_kmh, 0, "km/h"),
    )
    if vehicle.speed_unbounded:
        message = speed_taken(vehicle)
    if untold:
        message = sentences(message, say("Winter tyres and spares may be slower than the vehicle that they are on."))
    remedy = None if finding.outcome == MET else speed_remedy(enough_speed_kmh(case))
    return finding._replace(message=message, remedy=remedy)


def _load(view: AxleView, finding: Finding, *, rests: bool) -> Finding:
    """Return what is said of the load beside what the present wheels carry."""
    if finding.code == "load.towing" and not rests:
        return finding
    is_rim = finding.code == "rim.load_rating"
    measured = view.then.load.axle_capacity_kg if finding.code == "load.pressure" else finding.measured
    waits = finding.outcome == NOT_ASSESSED and measured is not None
    remedy = _up_to_mass(view) if waits else finding.remedy
    if view.axle.mass_unbounded:
        return finding._replace(message=mass_taken(view.axle), remedy=remedy or mass_remedy(view.name))
    limit = view.axle.max_axle_mass_kg / (view.axle.tyres if is_rim else 1)
    message = _beside(measured, plain(limit, 0, "kg"), is_rim=is_rim)
    return finding._replace(message=message, remedy=remedy)


def _beside(measured: float | None, present: Amount, *, is_rim: bool) -> Said:
    if measured is None and is_rim:
        return say("The rim's load rating is not known. The present wheels carry {present} each.", present=present)
    if measured is None:
        return say("What the axle's tyres carry is not known. The present wheels carry {present}.", present=present)
    carried = apart(measured, float(present.value), 0, "kg") if measured < present.value else plain(measured, 0, "kg")
    if is_rim:
        return say(
            "The rim is rated for {rated}; the present wheels carry {present} each.", rated=carried, present=present
        )
    return say(
        "The axle's tyres carry {carried}; the present wheels carry {present}.", carried=carried, present=present
    )


def _pressure(view: AxleView, finding: Finding) -> Finding:
    """Return what is said of the pressure: it is held against that of today, at which the present tyres do."""
    if finding.measured is not None and finding.limit is not None:
        pressure, needed = plain(finding.measured, 0, "kPa"), plain(finding.limit, 0, "kPa")
        if finding.outcome == MET:
            message = say(
                "{pressure} is enough: at {needed} the tyres carry what the present ones carry at their pressure.",
                pressure=pressure,
                needed=needed,
            )
            return finding._replace(message=message)
        if finding.measured < finding.limit:
            message = say(
                "{pressure} is too little: at {needed} the tyres carry what the present ones carry at their pressure.",
                pressure=apart(finding.measured, finding.limit, 0, "kPa"),
                needed=needed,
            )
            return finding._replace(message=message)
        return finding
    if unknown(view.then.load.capacity_kg * view.then.facts.reference_pressure_kpa):
        return finding
    message = say("The least pressure is not known without today's, or the axle's mass and the top speed.")
    if unknown(view.now.facts.pressure_kpa):
        pointer = f"/vehicle/{view.name}/fitted/pressure_kpa"
        remedy = Remedy(say("state the pressure of the present tyres"), pointer, "pressure_kpa", unit="kPa")
    else:
        remedy = mass_remedy(view.name) if view.axle.mass_assumed else speed_remedy()
    return finding._replace(message=message, remedy=remedy)
