"""Do front and rear still turn at the ratio that stability control and all-wheel drive expect?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, CarCheck, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import plain, signed, signed_apart, span
from service.assessment.view.views import CarView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, magnitude, pick, unknown

NOT_DRIVEN = "A trailer has no drive or stability control of its own that unlike circumferences could mislead."


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
        message = "The ratio of the front to the rear circumference cannot be judged without all overall diameters."
        remedy = diameter_remedy(car.front, car.rear)
    elif grade.outcome == MET:
        within = f"within {plain(near.value, 1)} % either way"
        message = f"The ratio of the front to the rear circumference changes by {signed(grade.measured)} %, {within}."
        if plain(grade.measured, 1) == "0":
            message = "The ratio of the front to the rear circumference stays as it is."
    else:
        reason = "stability control may take it for a slipping wheel"
        if car.vehicle.driven_axle == "all":
            reason = "this strains the all-wheel drive"
        change = signed_apart(grade.measured, limit.value, 1)
        message = f"The ratio of the front to the rear circumference changes by {change} %: {reason}."
        remedy = _remedy(car, near.value)
    measured = finite(grade.measured)
    return Finding(
        "diameter.axle_ratio", "vehicle", grade.outcome, message, measured, limit.value, "%", limit.basis, remedy
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
    words = f"a rolling circumference of {span(low, high, 'mm')}"
    return Remedy(
        f"fit {view.name} tyres with {words} beside these {other.name} tyres",
        f"/candidate/{view.name}/tyre/rolling_circumference_mm",
        "rolling_circumference_mm",
        low,
        high,
        unit="mm",
    )


AXLE_RATIO = CarCheck("diameter.axle_ratio", _grade, _explain)
