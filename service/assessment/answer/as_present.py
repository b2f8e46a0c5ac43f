"""What a fitter takes for granted where nobody gave the top speed or an axle's maximum mass: the present fitment.

The vehicle is no faster than the speed symbols of its present tyres allow, and an axle weighs no more than its present
wheels carry at that speed. The same two functions say of a candidate up to which speed and mass it is right.
"""

from __future__ import annotations

from math import floor

from service.assessment.case import Axle, Candidate, Case, Fitment, Vehicle
from service.assessment.checks.grade import LAST_BIT
from service.assessment.law.law_findings import masses_kept_kg
from service.assessment.view.conditions import conditions_of
from service.assessment.view.facts import wheel_facts
from service.assessment.view.figures import load
from service.assessment.view.load_at_speed import speed_symbol_kmh
from service.assessment.view.views import AxleView, CarView, candidate_facts, now_fitted, weigh
from service.core.numeric import UNKNOWN, known, known_or, pick, unknown
from service.core.ranges import AXLE_MASS_KG, SPEED_KMH
from service.physics.pressure_load import load_at_pressure_kg, speed_pressure_addition_by_symbol_kpa


def as_present(case: Case) -> Case:
    """Return the case with the top speed and the axle masses that nobody gave put in, and marked as assumed."""
    vehicle = case.vehicle
    no_speed, no_mass = unknown(vehicle.max_speed_kmh), [unknown(each.max_axle_mass_kg) for each in _axles(vehicle)]
    if not no_speed and not any(no_mass):
        return case
    # Until they are known the masses weigh nothing against a speed.
    masses = [known_or(each.max_axle_mass_kg, AXLE_MASS_KG[0]) for each in _axles(vehicle)]
    made = _with_masses(vehicle, masses, no_mass)
    fitted = case._replace(vehicle=made, candidate=Candidate(vehicle.front.fitted, vehicle.rear.fitted))
    if no_speed:
        # A tyre may be marked for less than any vehicle here runs.
        top = max(known_or(enough_speed_kmh(fitted, open_ended=False), SPEED_KMH[1]), SPEED_KMH[0])
        fitted = fitted._replace(vehicle=made._replace(max_speed_kmh=top, speed_assumed=True))
    car = weigh(fitted, now_fitted(fitted.vehicle), *candidate_facts(fitted, fitted.candidate))
    masses = [
        _within(known_or(enough_mass_kg(view), AXLE_MASS_KG[1])) if none else view.axle.max_axle_mass_kg
        for none, view in zip(no_mass, (car.front, car.rear), strict=True)
    ]
    done = _with_masses(fitted.vehicle, masses, no_mass)
    return case._replace(vehicle=_with_todays(done, car))


def enough_speed_kmh(case: Case, *, open_ended: bool = True) -> float:
    """Return up to which top speed the tyres of the candidate do [km/h], NaN where that is not known or none is.

    `open_ended` says whether letters inside the size, which stand for "above", count as the speed that is exceeded.
    """
    pairs = _pairs(case)
    reaches = [_reach_kmh(axle, fitment, open_ended=open_ended) for axle, fitment in pairs]
    top = min((each for each in reaches if known(each)), default=UNKNOWN)
    if unknown(top) or (open_ended and any(map(unknown, reaches))):
        return UNKNOWN
    stated = [(axle, fitment) for axle, fitment in pairs if not axle.mass_assumed]
    if _carry(case, stated, top):
        return top
    low, high = SPEED_KMH[0], top
    if not _carry(case, stated, low):
        # Too weak at any speed: that is no question of the speed. Of the present tyres their symbols tell all the same.
        return UNKNOWN if open_ended else top
    while high - low > 1.0:
        middle = floor(0.5 * (low + high))
        low, high = (middle, high) if _carry(case, stated, middle) else (low, middle)
    return float(low)


def enough_mass_kg(view: AxleView) -> float:
    """Return up to which mass of the axle the proposed wheels do [kg], NaN where that is not known."""
    same = view.change.same_rim == 1.0
    rating = known_or(view.then.facts.rim_rating_kg, pick(same, view.now.facts.rim_rating_kg, UNKNOWN))
    bounds = (view.then.load.axle_capacity_kg, view.axle.tyres * rating, *masses_kept_kg(view))
    return min(filter(known, bounds), default=UNKNOWN)


def _within(mass_kg: float) -> float:
    return min(max(mass_kg, AXLE_MASS_KG[0]), AXLE_MASS_KG[1])


def _reach_kmh(axle: Axle, fitment: Fitment, *, open_ended: bool) -> float:
    marked = speed_symbol_kmh(fitment.tyre.designation)
    if known(marked) or not open_ended:
        return marked
    return wheel_facts(fitment, axle, SPEED_KMH[0]).speed_capability_kmh


def _carry(case: Case, stated: list[tuple[Axle, Fitment]], speed_kmh: float) -> bool:
    vehicle, law = case.vehicle._replace(max_speed_kmh=speed_kmh), conditions_of(case).law_speed_kmh
    return not any(
        load(wheel_facts(fitment, axle, speed_kmh, law), axle, case.pack.limits, vehicle).axle_capacity_kg
        < axle.max_axle_mass_kg - LAST_BIT
        for axle, fitment in stated
    )


def _pairs(case: Case) -> list[tuple[Axle, Fitment]]:
    return [(case.vehicle.front, case.candidate.front), (case.vehicle.rear, case.candidate.rear)]


def _axles(vehicle: Vehicle) -> tuple[Axle, Axle]:
    return vehicle.front, vehicle.rear


def _with_masses(vehicle: Vehicle, masses_kg: list[float], assumed: list[bool]) -> Vehicle:
    front, rear = (
        axle._replace(max_axle_mass_kg=mass, mass_assumed=none)
        for axle, mass, none in zip(_axles(vehicle), masses_kg, assumed, strict=True)
    )
    return vehicle._replace(front=front, rear=rear)


def _with_todays(vehicle: Vehicle, car: CarView) -> Vehicle:
    front, rear = (
        axle._replace(todays_mass_kg=_todays_kg(view, axle, vehicle))
        if vehicle.speed_assumed or axle.mass_assumed
        else axle
        for axle, view in zip(_axles(vehicle), (car.front, car.rear), strict=True)
    )
    return vehicle._replace(front=front, rear=rear)


def _todays_kg(view: AxleView, axle: Axle, vehicle: Vehicle) -> float:
    """Return what the present tyres of an axle carry at today's pressure and the vehicle's top speed [kg]."""
    facts, carried = view.now.facts, view.now.load
    addition = speed_pressure_addition_by_symbol_kpa(vehicle.max_speed_kmh, facts.speed_capability_kmh)
    pressure = max(facts.pressure_kpa - addition, 0.0)
    at_pressure = load_at_pressure_kg(
        carried.axle_capacity_kg, pressure, facts.reference_pressure_kpa, facts.pressure_exponent
    )
    return UNKNOWN if unknown(at_pressure) else min(at_pressure, axle.max_axle_mass_kg)
