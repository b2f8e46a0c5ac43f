"""Are radial and diagonal tyres kept apart?"""

from __future__ import annotations

from service.assessment.comparison import CarView
from service.assessment.grade import Check, Grade
from service.assessment.words import tyre_pointer
from service.core.findings import NOT_MET, Finding, Remedy
from service.core.sources import basis

SAME = basis("EU-MI0081", "all tyres of the same structure")


def _grade(car: CarView) -> Grade:
    front, rear = car.front.then.facts.radial, car.rear.then.facts.radial
    return Grade(NOT_MET * (front != rear), front, rear)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_MET:
        message = "Radial tyres on one axle and diagonal ones on the other make the car unpredictable."
        other = "rear" if car.front.then.facts.radial else "front"
        remedy = Remedy(f"radial tyres at the {other} too", tyre_pointer(other), "construction", equals="radial")
    else:
        kind = "radial" if car.front.then.facts.radial else "diagonal"
        message = f"All tyres are {kind}."
    return Finding("tyre.structure", "vehicle", grade.outcome, message, None, None, None, SAME, remedy)


STRUCTURE = Check("tyre.structure", _grade, _explain)
