"""Every question to one case or to many, graded; what rests on an assumption alone is never called not met.

Where the top speed or an axle mass is assumed, each question is also asked of the slowest and lightest vehicle there
may be. What is not met of the assumed one and is of that one waits until somebody states the number.
"""

from __future__ import annotations

from collections.abc import Container, Iterator
from dataclasses import replace

from service.assessment.case import Axle, Case
from service.assessment.checks import AXLE_CHECKS, CAR_CHECKS
from service.assessment.checks.grade import EVERYWHERE, Grade, Place
from service.assessment.law import law_findings as law
from service.assessment.view.axle_view import Fitted
from service.assessment.view.views import CarView, weigh
from service.assessment.view.wheel_facts import WheelFacts
from service.core.findings import NOT_ASSESSED, NOT_MET, Where
from service.core.numeric import Num, known, pick
from service.core.ranges import AXLE_MASS_KG, SPEED_KMH

Asked = Iterator[tuple[str, Where, Grade[Num]]]


def graded(case: Case[Num], car: CarView[Num], among: Container[Place] = EVERYWHERE) -> Asked[Num]:
    """Yield every question `among` these with its code, its place and how it came out, for floats or arrays alike.

    The place's rules on winter, towing and the speedometer come in any case.
    """
    if not case.vehicle.assumes:
        yield from _graded(case, car, among)
        return
    least = _at_least(case)
    pairs = zip(_graded(case, car, among), _graded(least, _seen_at_least(least, car), among), strict=True)
    for (code, where, grade), (_, _, mildest) in pairs:
        rests = (grade.outcome == NOT_MET) & (mildest.outcome < NOT_MET)
        yield code, where, grade._replace(outcome=pick(rests, NOT_ASSESSED, grade.outcome))


def _graded(case: Case[Num], car: CarView[Num], among: Container[Place]) -> Asked[Num]:
    for check in AXLE_CHECKS:
        for view in (car.front, car.rear):
            if (check.code, view.name) in among:
                yield check.code, view.name, check.grade(view)
    for car_check in CAR_CHECKS:
        if (car_check.code, car_check.where) in among:
            yield car_check.code, car_check.where, car_check.grade(car)
    yield from law.grades(case, car, among)


def _at_least(case: Case[Num]) -> Case[Num]:
    vehicle = case.vehicle
    if vehicle.speed_assumed:
        vehicle = vehicle._replace(max_speed_kmh=SPEED_KMH[0])
    return case._replace(vehicle=vehicle._replace(front=_lightest(vehicle.front), rear=_lightest(vehicle.rear)))


def _lightest(axle: Axle[Num]) -> Axle[Num]:
    return axle._replace(max_axle_mass_kg=AXLE_MASS_KG[0]) if axle.mass_assumed else axle


def _seen_at_least(least: Case[Num], car: CarView[Num]) -> CarView[Num]:
    # Nothing is not met for what the present wheels carry, so they stay as they are.
    present = Fitted(car.front.now.facts, car.front.hub), Fitted(car.rear.now.facts, car.rear.hub)
    front, rear = car.front.then.facts, car.rear.then.facts
    if least.vehicle.speed_assumed:
        front, rear = _unhurried(front), _unhurried(rear)
    return weigh(least, present, front, rear)


def _unhurried(facts: WheelFacts[Num]) -> WheelFacts[Num]:
    """Return a wheel that carries its load index, as it does where no speed takes anything from it."""
    return replace(facts, load_factor=pick(known(facts.load_factor), 1.0, facts.load_factor))
