"""Present against proposed on one axle: everything that its checks look at, computed once."""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.case import Axle, Case, Vehicle
from service.assessment.view.change import AxleChange, Wheel, axle_change
from service.assessment.view.conditions import Conditions
from service.assessment.view.facts import wheel_facts
from service.assessment.view.figures import behaviour, geometry, load
from service.assessment.view.ordered_pressure import estimate_pressure_kpa, ordered_pressure_kpa, present_pressure_kpa
from service.assessment.view.wheel_facts import WheelFacts
from service.core.findings import AxleName
from service.core.numeric import UNKNOWN, Num, Num_co
from service.rules.limits import Limits
from service.rules.pack import RulePack


class Hub(NamedTuple, Generic[Num_co]):
    """The bolts of a hub and their circle; NaN where nobody looked."""

    bolts: Num_co
    circle_mm: Num_co


class Fitted(NamedTuple, Generic[Num_co]):
    """What an axle has now, its designations as numbers: the wheel and the hub."""

    wheel: WheelFacts[Num_co]
    hub: Hub[Num_co]


class AxleView(NamedTuple, Generic[Num]):
    """One axle as the checks see it."""

    name: AxleName
    axle: Axle[Num]
    vehicle: Vehicle[Num]
    limits: Limits
    pack: RulePack
    hub: Hub[Num]
    now: Wheel[Num]
    then: Wheel[Num]
    change: AxleChange[Num]
    ordered_pressure_kpa: Num
    """The cold pressure to set, the only one that any text orders; NaN where none can be named."""
    conditions: Conditions


def fitted(axle: Axle, max_speed_kmh: float) -> Fitted:
    """Return what an axle of a vehicle with this top speed has now."""
    circle = axle.hub_bolt_circle
    hub = Hub(UNKNOWN, UNKNOWN) if circle is None else Hub(float(circle.bolts), circle.diameter_mm)
    return Fitted(wheel_facts(axle.fitted, axle, max_speed_kmh), hub)


def present_wheel(facts: WheelFacts[Num], axle: Axle[Num], vehicle: Vehicle[Num], limits: Limits) -> Wheel[Num]:
    """Return the wheel fitted now on an axle."""
    shape = geometry(facts, limits, axle)
    carried = load(facts, axle, limits, vehicle)
    pressure = present_pressure_kpa(facts, carried, limits)
    height = vehicle.centre_of_gravity_height_mm
    return Wheel(facts, shape, carried, behaviour(facts, shape, pressure, axle, height))


def proposed_wheel(
    facts: WheelFacts[Num], now: Wheel[Num], axle: Axle[Num], vehicle: Vehicle[Num], limits: Limits
) -> tuple[Wheel[Num], Num]:
    """Return the wheel to be fitted, and the pressure to set in it."""
    if facts is now.facts:
        # A wheel that stays is as it was; its pressure may not stay.
        shape, carried = now.geometry, now.load
    else:
        shape, carried = geometry(facts, limits, axle), load(facts, axle, limits, vehicle)
    ordered = ordered_pressure_kpa(facts, carried, now.facts.pressure_kpa, limits)
    pressure = estimate_pressure_kpa(facts, ordered, now.behaviour.pressure_kpa, limits)
    height = vehicle.centre_of_gravity_height_mm
    return Wheel(facts, shape, carried, behaviour(facts, shape, pressure, axle, height)), ordered


def axle_view(
    case: Case[Num], axle: Axle[Num], now_fitted: Fitted[Num], facts: WheelFacts[Num], conditions: Conditions
) -> AxleView[Num]:
    """Return present against proposed on one axle."""
    vehicle, pack = case.vehicle, case.pack
    limits = pack.limits
    now = present_wheel(now_fitted.wheel, axle, vehicle, limits)
    then, ordered = proposed_wheel(facts, now, axle, vehicle, limits)
    return AxleView(
        name=axle.name,
        axle=axle,
        vehicle=vehicle,
        limits=limits,
        pack=pack,
        hub=now_fitted.hub,
        now=now,
        then=then,
        change=axle_change(now, then, axle),
        ordered_pressure_kpa=ordered,
        conditions=conditions,
    )


def with_wheel(view: AxleView[Num], facts: WheelFacts[Num]) -> AxleView[Num]:
    """Return the same axle with another wheel proposed; what it has now is not reckoned again."""
    then, ordered = proposed_wheel(facts, view.now, view.axle, view.vehicle, view.limits)
    return view._replace(then=then, change=axle_change(view.now, then, view.axle), ordered_pressure_kpa=ordered)
