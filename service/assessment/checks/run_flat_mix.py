"""Are run-flat tyres on both axles or on neither, and is that what the car has now?

Only the designation tells (RF or ZRF before the rim code): a run-flat tyre that is not so marked counts as ordinary.
"""

from __future__ import annotations

from service.assessment.checks.grade import CarCheck, Grade
from service.assessment.checks.words import tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num
from service.core.saying import Said, say
from service.core.sources import basis

BOTH = basis("COMMON-PRACTICE", "run-flat tyres on both axles or on neither")


def _grade(car: CarView[Num]) -> Grade[Num]:
    if car.vehicle.is_trailer:
        return Grade(MET, UNKNOWN, UNKNOWN)
    front, rear = car.front.then.facts, car.rear.then.facts
    regular = (front.temporary_spare == 0.0) & (rear.temporary_spare == 0.0)
    # Both ways of leaving what the car was built for are lawful, and neither goes without a word.
    other_kind = (front.run_flat != car.front.now.facts.run_flat) & (rear.run_flat != car.rear.now.facts.run_flat)
    return Grade(worst(advisory=((front.run_flat != rear.run_flat) | other_kind) & regular), UNKNOWN, UNKNOWN)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    marked = car.front.then.facts.run_flat == 1.0
    both = car.front.then.facts.run_flat == car.rear.then.facts.run_flat
    if grade.outcome == ADVISORY and both:
        message, remedy = _other_kind(car, marked=marked)
    elif grade.outcome == ADVISORY:
        message, remedy = _on_one_axle(at_front=marked), _remedy(car)
    elif car.vehicle.is_trailer:
        message = say("A trailer is not steered, so one axle may have run-flat tyres.")
    elif marked:
        message = say("Both axles have run-flat tyres.")
    else:
        message = say("Neither axle is marked to have run-flat tyres.")
    return Finding("tyre.run_flat_mix", "vehicle", grade.outcome, message, None, None, None, BOTH, remedy)


def _on_one_axle(*, at_front: bool) -> Said:
    if at_front:
        return say(
            "Run-flat tyres are at the front only. Their stiff sidewalls make the car steer differently, and a "
            "puncture at the rear still stops it."
        )
    return say(
        "Run-flat tyres are at the rear only. Their stiff sidewalls make the car steer differently, and a "
        "puncture at the front still stops it."
    )


def _other_kind(car: CarView, *, marked: bool) -> tuple[Said, Remedy]:
    """Return what it means to go from run-flat tyres to ordinary ones, or the other way, and what helps."""
    pointer = tyre_pointer(car.front.name)
    if marked:
        message = say(
            "The proposed tyres are run-flat, the present ones are not. The driver does not feel that one has gone "
            "flat, so they need tyre pressure monitoring; they also ride harder."
        )
        text = say("fit ordinary tyres, or check that tyre pressure monitoring is there and works")
        return message, Remedy(text, pointer, "run_flat", equals="ordinary")
    message = say(
        "The present tyres are run-flat, the proposed ones are not. A puncture stops the car then, and a car built for "
        "run-flat tyres usually carries no spare wheel."
    )
    text = say("fit run-flat tyres, or put a spare wheel or a repair kit in the car")
    return message, Remedy(text, pointer, "run_flat", equals="run-flat")


def _remedy(car: CarView) -> Remedy:
    """Return the axle to change: to run-flat tyres on a car that has them all round now, else to ordinary ones."""
    wanted = all(view.now.facts.run_flat == 1.0 for view in (car.front, car.rear))
    odd: AxleView = next(view for view in (car.front, car.rear) if (view.then.facts.run_flat == 1.0) != wanted)
    if wanted:
        at_front, at_rear = say("fit run-flat tyres at the front too"), say("fit run-flat tyres at the rear too")
    else:
        at_front, at_rear = say("fit ordinary tyres at the front too"), say("fit ordinary tyres at the rear too")
    text = at_front if odd.name == "front" else at_rear
    return Remedy(text, tyre_pointer(odd.name), "run_flat", equals="run-flat" if wanted else "ordinary")


RUN_FLAT_MIX = CarCheck("tyre.run_flat_mix", _grade, _explain)
