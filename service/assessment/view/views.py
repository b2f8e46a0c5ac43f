"""Present against proposed: everything the checks look at, computed once.

`weigh` takes rows of facts; each may hold numbers (one candidate, one vehicle) or arrays (many), and so may the
numbers of the vehicle. What more than one question needs is computed here, and here alone.
"""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.case import Candidate, Case, Vehicle
from service.assessment.view.axle_view import AxleView, Fitted, axle_view, fitted
from service.assessment.view.conditions import conditions_of, law_speed_kmh
from service.assessment.view.driving import Driving, Reserve, driving, reserves
from service.assessment.view.facts import wheel_facts
from service.assessment.view.vehicle_change import CarChange, car_change
from service.assessment.view.wheel_facts import WheelFacts
from service.core.numeric import Num
from service.core.units import STANDARD_GRAVITY_M_S2
from service.rules.limits import Limits
from service.rules.pack import RulePack

# The checks look at one axle or at the whole vehicle; both views are had from here.
__all__ = ["AxleView", "CarView", "Fitted", "candidate_facts", "car_view", "now_fitted", "weigh"]


class CarView(NamedTuple, Generic[Num]):
    """The whole vehicle as the checks see it."""

    vehicle: Vehicle[Num]
    limits: Limits
    pack: RulePack
    front: AxleView[Num]
    rear: AxleView[Num]
    change: CarChange[Num]
    front_reserve: Reserve[Num]
    rear_reserve: Reserve[Num]

    @property
    def driving(self) -> Driving[Num]:
        """Return what changes on the road: reckoned when asked for, since it is told and nothing is held against it."""
        return driving(self.vehicle, self.front, self.rear)


def now_fitted(vehicle: Vehicle) -> tuple[Fitted, Fitted]:
    """Return what the front and the rear axle of one vehicle have now."""
    return fitted(vehicle.front, vehicle.max_speed_kmh), fitted(vehicle.rear, vehicle.max_speed_kmh)


def weigh(
    case: Case[Num], present: tuple[Fitted[Num], Fitted[Num]], front: WheelFacts[Num], rear: WheelFacts[Num]
) -> CarView[Num]:
    """Return present against proposed for the vehicle of a case and the rows of the present and proposed wheels."""
    vehicle, conditions = case.vehicle, conditions_of(case)
    on_front = axle_view(case, vehicle.front, present[0], front, conditions)
    on_rear = axle_view(case, vehicle.rear, present[1], rear, conditions)
    return car_view(vehicle, on_front, on_rear)


def car_view(vehicle: Vehicle[Num], on_front: AxleView[Num], on_rear: AxleView[Num]) -> CarView[Num]:
    """Return what both axles together do to the vehicle."""
    weights = (
        vehicle.front.estimate_mass_kg * STANDARD_GRAVITY_M_S2,
        vehicle.rear.estimate_mass_kg * STANDARD_GRAVITY_M_S2,
    )
    front_reserve, rear_reserve = reserves(on_front, on_rear)
    change = car_change(on_front, on_rear, weights, vehicle.driven_axle or "all")
    return CarView(
        vehicle=vehicle,
        limits=on_front.limits,
        pack=on_front.pack,
        front=on_front,
        rear=on_rear,
        change=change,
        front_reserve=front_reserve,
        rear_reserve=rear_reserve,
    )


def candidate_facts(case: Case, candidate: Candidate) -> tuple[WheelFacts, WheelFacts]:
    """Return the rows of a candidate's front and rear wheel on the vehicle of a case."""
    vehicle = case.vehicle
    top, law = vehicle.max_speed_kmh, law_speed_kmh(case)
    return (
        wheel_facts(candidate.front, vehicle.front, top, law),
        wheel_facts(candidate.rear, vehicle.rear, top, law),
    )
