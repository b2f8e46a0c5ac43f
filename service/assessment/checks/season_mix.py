"""Are winter tyres on both axles or on neither?"""

from __future__ import annotations

from service.assessment.checks.grade import CarCheck, Grade
from service.assessment.checks.words import tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.assessment.view.wheel_facts import ALPINE
from service.core.findings import MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num
from service.core.saying import say
from service.core.sources import basis

BOTH = basis("COMMON-PRACTICE", "winter tyres on both axles or on neither")
NOT_STEERED = say("A trailer follows the vehicle that tows it.")


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
    if car.vehicle.is_trailer:
        message = NOT_STEERED
    elif grade.outcome == MET and _is_winter(car.front):
        message = say("Both axles have winter tyres (3PMSF).")
    elif grade.outcome == MET:
        message = say("Neither axle has winter tyres (3PMSF).")
    elif _is_winter(car.front):
        message = say("Winter tyres are at the front only: on snow and ice the rear slides first.")
        text = say("fit winter tyres (3PMSF) at the rear too, or on neither axle")
        remedy = Remedy(text, tyre_pointer("rear"), "marking", equals="3PMSF")
    else:
        message = say("Winter tyres are at the rear only: on snow and ice the front does not steer.")
        text = say("fit winter tyres (3PMSF) at the front too, or on neither axle")
        remedy = Remedy(text, tyre_pointer("front"), "marking", equals="3PMSF")
    return Finding("tyre.season_mix", "vehicle", grade.outcome, message, None, None, None, BOTH, remedy)


def _is_winter(view: AxleView) -> bool:
    return view.then.facts.winter_mark == ALPINE


SEASON_MIX = CarCheck("tyre.season_mix", _grade, _explain)
