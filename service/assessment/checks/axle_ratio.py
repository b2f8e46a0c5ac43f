"""Do front and rear still turn at the ratio that stability control and all-wheel drive expect?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, CarCheck, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import plain, signed, signed_apart, span
from service.assessment.view.views import CarView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, magnitude, pick, unknown
from service.core.saying import Amount, Said, say

NOT_DRIVEN = say("A trailer has no drive or stability control of its own that unlike circumferences could mislead.")


def _grade(car: CarView[Num]) -> Grade[Num]:
    return grade_ratio(car, car.change.axle_ratio_percent)


def grade_ratio(car: CarView[Num], change: Num) -> Grade[Num]:
    """Return whether front and rear may be so many per cent apart; all-wheel drive forbids what else is an advisory."""
    size, limits = magnitude(change), car.limits
    near, far = limits.axle_ratio_met_percent.value, limits.axle_ratio_advisory_percent.value
    if car.vehicle.is_trailer:
        return Grade(MET, change, near)
    outcome = worst(
        not_met=(size > far + LAST_BIT) & (car.vehicle.driven_axle == "all"),
        open_question=unknown(size),
        advisory=size > near + LAST_BIT,
    )
    return Grade(outcome, change, pick(outcome == NOT_MET, far, near))


def _explain(car: CarView, grade: Grade) -> Finding:
    near, far = car.limits.axle_ratio_met_percent, car.limits.axle_ratio_advisory_percent
    limit = far if grade.outcome == NOT_MET else near
    remedy = None
    if car.vehicle.is_trailer:
        return Finding("diameter.axle_ratio", "vehicle", MET, NOT_DRIVEN, None, None, None, limit.basis)
    if is_open(grade.outcome):
        message = say(
            "The ratio of the front to the rear circumference cannot be judged without all overall diameters."
        )
        remedy = diameter_remedy(car.front, car.rear)
    elif grade.outcome == MET:
        message = say(
            "The ratio of the front to the rear circumference changes by {change}, within {limit} either way.",
            change=signed(grade.measured, 1, "%"),
            limit=plain(near.value, 1, "%"),
        )
        if plain(grade.measured, 1) == "0":
            message = say("The ratio of the front to the rear circumference stays as it is.")
    else:
        message = _beyond(car, signed_apart(grade.measured, limit.value, 1, "%"))
        remedy = _remedy(car, near.value)
    measured = finite(grade.measured)
    return Finding(
        "diameter.axle_ratio", "vehicle", grade.outcome, message, measured, limit.value, "%", limit.basis, remedy
    )


def _beyond(car: CarView, change: Amount) -> Said:
    if car.vehicle.driven_axle == "all":
        return say(
            "The ratio of the front to the rear circumference changes by {change}: this strains the all-wheel drive.",
            change=change,
        )
    return say(
        "The ratio of the front to the rear circumference changes by {change}: "
        "stability control may take it for a slipping wheel.",
        change=change,
    )


def _remedy(car: CarView, near_percent: float) -> Remedy:
    """Return the circumference that keeps step, on the axle that changes more: the other one is as it should be."""
    front, rear = (abs(view.change.rolling_circumference_percent) for view in (car.front, car.rear))
    view, other = (car.front, car.rear) if front > rear else (car.rear, car.front)
    present = view.now.geometry.rolling_circumference_mm / other.now.geometry.rolling_circumference_mm
    matched = other.then.geometry.rolling_circumference_mm * present
    room = near_percent / 100.0
    # The change is that of front over rear, so a rear one goes by the reciprocal.
    low, high = matched * (1.0 - room), matched * (1.0 + room)
    if view.name == "rear":
        low, high = matched / (1.0 + room), matched / (1.0 - room)
    size = span(low, high, "mm")
    if view.name == "front":
        words = say("fit front tyres with a rolling circumference of {size} beside these rear tyres", size=size)
    else:
        words = say("fit rear tyres with a rolling circumference of {size} beside these front tyres", size=size)
    return Remedy(
        words,
        f"/candidate/{view.name}/tyre/rolling_circumference_mm",
        "rolling_circumference_mm",
        low,
        high,
        unit="mm",
    )


AXLE_RATIO = CarCheck("diameter.axle_ratio", _grade, _explain)
