"""Are winter tyres on both axles or on neither?"""

from __future__ import annotations

from service.assessment.checks.grade import CarCheck, Grade
from service.assessment.checks.words import tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.assessment.view.wheel_facts import ALPINE
from service.core.findings import MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num
from service.core.sources import basis

BOTH = basis("COMMON-PRACTICE", "winter tyres on both axles or on neither")
NOT_STEERED = "A trailer follows the vehicle that tows it."


def _grade(car: CarView[Num]) -> Grade[Num]:
    if car.vehicle.is_trailer:
        return Grade(MET, UNKNOWN, UNKNOWN)
    front, rear = car.front.then.facts, car.rear.then.facts
    # A temporary spare is a finding of its own.
    regular = (front.temporary_spare == 0.0) & (rear.temporary_spare == 0.0)
    mixed = (front.winter_mark == ALPINE) != (rear.winter_mark == ALPINE)
    return Grade(worst(not_recommended=mixed & regular), UNKNOWN, UNKNOWN)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    with_winter, without = (car.front, car.rear) if _is_winter(car.front) else (car.rear, car.front)
    if car.vehicle.is_trailer:
        message = NOT_STEERED
    elif grade.outcome == MET:
        kind = "Both axles have" if _is_winter(car.front) else "Neither axle has"
        message = f"{kind} winter tyres (3PMSF)."
    else:
        first = "the rear slides first" if without.name == "rear" else "the front does not steer"
        message = f"Winter tyres are at the {with_winter.name} only: on snow and ice {first}."
        text = f"fit winter tyres (3PMSF) at the {without.name} too, or on neither axle"
        remedy = Remedy(text, tyre_pointer(without.name), "marking", equals="3PMSF")
    return Finding("tyre.season_mix", "vehicle", grade.outcome, message, None, None, None, BOTH, remedy)


def _is_winter(view: AxleView) -> bool:
    return view.then.facts.winter_mark == ALPINE


SEASON_MIX = CarCheck("tyre.season_mix", _grade, _explain)
