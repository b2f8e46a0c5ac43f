"""Are radial and diagonal tyres kept apart?"""

from __future__ import annotations

from service.assessment.checks.grade import CarCheck, Grade
from service.assessment.checks.words import tyre_pointer
from service.assessment.view.views import CarView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, worst
from service.core.numeric import Num
from service.core.saying import Said, say
from service.core.sources import basis

SAME = basis("EU-MI0081", "all tyres of the same structure")


def _grade(car: CarView[Num]) -> Grade[Num]:
    front, rear = car.front.then.facts, car.rear.then.facts
    # A temporary spare is excepted; that it is no regular fitment is a finding of its own.
    regular = (front.temporary_spare == 0.0) & (rear.temporary_spare == 0.0)
    mixed = front.radial != rear.radial
    # A car that is mixed now can only gain.
    was_alike = car.front.now.facts.radial == car.rear.now.facts.radial
    changed = ((front.radial != car.front.now.facts.radial) | (rear.radial != car.rear.now.facts.radial)) & was_alike
    return Grade(worst(not_met=mixed & regular, advisory=changed & regular), front.radial, rear.radial)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    radial = car.front.then.facts.radial == 1.0
    if grade.outcome == NOT_MET:
        message = say("Radial tyres on one axle and diagonal ones on the other make the car unpredictable.")
        axle, kind = _odd_one(car)
        remedy = Remedy(_too(axle, kind), tyre_pointer(axle), "construction", equals=kind)
    elif grade.outcome == ADVISORY:
        axle = "front" if car.front.then.facts.radial != car.front.now.facts.radial else "rear"
        if radial:
            message = say("The tyres become radial where they were diagonal: the car will steer differently.")
            text, was = say("keep to diagonal tyres"), "diagonal"
        else:
            message = say("The tyres become diagonal where they were radial: the car will steer differently.")
            text, was = say("keep to radial tyres"), "radial"
        remedy = Remedy(text, tyre_pointer(axle), "construction", equals=was)
    else:
        message = say("All tyres are radial.") if radial else say("All tyres are diagonal.")
    return Finding("tyre.structure", "vehicle", grade.outcome, message, None, None, None, SAME, remedy)


def _too(axle: str, kind: str) -> Said:
    if kind == "radial":
        return say("fit radial tyres at the front too") if axle == "front" else say("fit radial tyres at the rear too")
    return say("fit diagonal tyres at the front too") if axle == "front" else say("fit diagonal tyres at the rear too")


def _odd_one(car: CarView) -> tuple[str, str]:
    """Return which axle to change, and to what: to what it has now where that matches the other, else to radial."""
    for view, other in ((car.front, car.rear), (car.rear, car.front)):
        if view.now.facts.radial == other.then.facts.radial != view.then.facts.radial:
            return view.name, "radial" if view.now.facts.radial else "diagonal"
    return "rear" if car.front.then.facts.radial else "front", "radial"


STRUCTURE = CarCheck("tyre.structure", _grade, _explain)
