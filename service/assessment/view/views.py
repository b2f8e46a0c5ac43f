"""Present against proposed: everything the checks look at, computed once.

`weigh` takes rows of facts; each proposed row may hold numbers (one candidate) or arrays (many), the present
one always holds numbers. All formulas are called from here and from nowhere else in the assessment.
"""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.case import Axle, Candidate, Case, Vehicle
from service.assessment.view.change import AxleChange, CarChange, Wheel, axle_change, car_change
from service.assessment.view.conditions import Conditions, conditions_of
from service.assessment.view.facts import WheelFacts, wheel_facts
from service.assessment.view.figures import (
    behaviour,
    equivalent_pressure_kpa,
    geometry,
    load,
    present_pressure_kpa,
)
from service.core.findings import AxleName
from service.core.numeric import known_or
from service.core.units import STANDARD_GRAVITY_M_S2
from service.rules.limits import Limits
from service.rules.pack import RulePack


class AxleView(NamedTuple):
    """One axle as the checks see it."""

    name: AxleName
    axle: Axle
    vehicle: Vehicle
    limits: Limits
    pack: RulePack
    now: Wheel
    then: Wheel
    change: AxleChange
    proposed_pressure_kpa: float
    conditions: Conditions


class CarView(NamedTuple):
    """The whole vehicle as the checks see it."""

    vehicle: Vehicle
    limits: Limits
    pack: RulePack
    front: AxleView
    rear: AxleView
    change: CarChange


def present_wheel(axle: Axle, vehicle: Vehicle, limits: Limits) -> Wheel:
    """Return the wheel fitted now on an axle."""
    facts = wheel_facts(axle.fitted, axle, vehicle.max_speed_kmh)
    shape = geometry(facts, limits, axle)
    carried = load(facts, axle, limits, vehicle)
    pressure = present_pressure_kpa(facts, carried)
    height = vehicle.centre_of_gravity_height_mm
    return Wheel(facts, shape, carried, behaviour(facts, shape, pressure, axle, height))


def proposed_wheel(facts: WheelFacts, now: Wheel, axle: Axle, vehicle: Vehicle, limits: Limits) -> tuple[Wheel, float]:
    """Return the wheel to be fitted, and the pressure proposed for it."""
    shape = geometry(facts, limits, axle)
    carried = load(facts, axle, limits, vehicle)
    proposed = known_or(
        equivalent_pressure_kpa(now.facts, now.behaviour.pressure_kpa, facts), now.behaviour.pressure_kpa
    )
    pressure = known_or(facts.pressure_kpa, proposed)
    height = vehicle.centre_of_gravity_height_mm
    return Wheel(facts, shape, carried, behaviour(facts, shape, pressure, axle, height)), proposed


def weigh(case: Case, front: WheelFacts, rear: WheelFacts) -> CarView:
    """Return present against proposed for the vehicle of a case and the rows of the proposed wheels."""
    vehicle, pack = case.vehicle, case.pack
    conditions = conditions_of(case)
    views = _axle_view(case, vehicle.front, front, conditions), _axle_view(case, vehicle.rear, rear, conditions)
    weights = (
        vehicle.front.estimate_mass_kg * STANDARD_GRAVITY_M_S2,
        vehicle.rear.estimate_mass_kg * STANDARD_GRAVITY_M_S2,
    )
    change = car_change(*views, weights, vehicle.driven_axle or "all")
    return CarView(vehicle, pack.limits, pack, *views, change)


def _axle_view(case: Case, axle: Axle, facts: WheelFacts, conditions: Conditions) -> AxleView:
    """Return present against proposed on one axle."""
    vehicle, pack = case.vehicle, case.pack
    limits = pack.limits
    now = present_wheel(axle, vehicle, limits)
    then, pressure = proposed_wheel(facts, now, axle, vehicle, limits)
    change = axle_change(now, then, axle)
    return AxleView(axle.name, axle, vehicle, limits, pack, now, then, change, pressure, conditions)


def candidate_facts(case: Case, candidate: Candidate) -> tuple[WheelFacts, WheelFacts]:
    """Return the rows of a candidate's front and rear wheel on the vehicle of a case."""
    vehicle = case.vehicle
    top, law = vehicle.max_speed_kmh, conditions_of(case).law_speed_kmh
    return (
        wheel_facts(candidate.front, vehicle.front, top, law),
        wheel_facts(candidate.rear, vehicle.rear, top, law),
    )
