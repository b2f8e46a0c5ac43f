"""Does the car shift towards understeer or oversteer?

The absolute understeer gradient depends on the chassis as much as on the tyres, so only the change is reported.
"""

from __future__ import annotations

from typing import Literal, NamedTuple

from service.assessment.checks.grade import CarCheck, Grade
from service.assessment.checks.missing import level_remedy, stiffness_remedy
from service.assessment.checks.words import plain
from service.assessment.view.views import CarView
from service.core.findings import MET, Finding, Holds, is_open, worst
from service.core.numeric import Num, magnitude, pick, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import SOURCES, basis

Direction = Literal["towards_understeer", "towards_oversteer", "neutral"]
Degree = Literal["negligible", "noticeable", "strong"]
DIRECTIONS: tuple[Direction, ...] = ("neutral", "towards_understeer", "towards_oversteer")
DEGREES: tuple[Degree, ...] = ("negligible", "noticeable", "strong")
# Their places in these lists.
NEUTRAL, TOWARDS_UNDERSTEER, TOWARDS_OVERSTEER = 0, 1, 2
NEGLIGIBLE, NOTICEABLE, STRONG = 0, 1, 2
GRADIENT = basis("PROJECT", f"after {SOURCES['GILLESPIE'].title}, with the project's own tyre elasticities")
NOT_STEERED = say("A trailer is not steered, so it has no understeer or oversteer of its own.")


class Balance(NamedTuple):
    """The change of balance in words: direction, degree, whether the band leaves the direction open, texts."""

    direction: Direction
    degree: Degree
    certain: bool
    warning: Said | None
    text: Said


def degree_code(car: CarView[Num]) -> int:
    """Return how much the balance changes, an index into `DEGREES`; floats or arrays alike, 0 where not known."""
    size = magnitude(car.change.gradient_deg_per_g.value)
    small, strong = car.limits.balance_negligible_deg_per_g.value, car.limits.balance_strong_deg_per_g.value
    return pick(size > strong, STRONG, pick(size >= small, NOTICEABLE, NEGLIGIBLE))


def direction_code(car: CarView[Num]) -> int:
    """Return which way the balance goes, an index into `DIRECTIONS`; floats or arrays alike, 0 where not known."""
    value, small = car.change.gradient_deg_per_g.value, car.limits.balance_negligible_deg_per_g.value
    return pick(value >= small, TOWARDS_UNDERSTEER, pick(value <= -small, TOWARDS_OVERSTEER, NEUTRAL))


def balance(car: CarView) -> Balance:
    """Return the change of balance in words."""
    value, low, high = car.change.gradient_deg_per_g
    if car.vehicle.is_trailer:
        return Balance("neutral", "negligible", certain=True, warning=None, text=NOT_STEERED)
    if unknown(value):
        text = say("The balance cannot be estimated.")
        return Balance("neutral", "negligible", certain=False, warning=None, text=text)
    small = car.limits.balance_negligible_deg_per_g.value
    certain = not (low < -small and high > small)
    degree, direction = DEGREES[degree_code(car)], DIRECTIONS[direction_code(car)]
    if direction == "neutral":
        text = say("The balance in the dry stays as it is.")
        if not certain:
            text = say(
                "The balance in the dry probably stays as it is; the estimate is too wide to be sure of a direction."
            )
        return Balance("neutral", "negligible", certain, None, text)
    text = _shift(direction, degree, certain=certain)
    if not certain:
        warning = say("Try the car with care: it may behave differently near its limit.")
    elif direction == "towards_oversteer":
        warning = say("It turns in more readily, and the rear may slide before the driver can react.")
    else:
        warning = say("The front runs wide sooner, and the steering answers less readily.")
    return Balance(direction, degree, certain, warning, text)


def _shift(direction: Direction, degree: Degree, *, certain: bool) -> Said:
    if direction == "towards_oversteer":
        if not certain:
            return say("In the dry the car may shift towards oversteer; the direction is uncertain.")
        if degree == "strong":
            return say("In the dry the car shifts strongly towards oversteer.")
        return say("In the dry the car shifts noticeably towards oversteer.")
    if not certain:
        return say("In the dry the car may shift towards understeer; the direction is uncertain.")
    if degree == "strong":
        return say("In the dry the car shifts strongly towards understeer.")
    return say("In the dry the car shifts noticeably towards understeer.")


def _grade(car: CarView[Num]) -> Grade[Num]:
    value = car.change.gradient_deg_per_g.value
    small = car.limits.balance_negligible_deg_per_g.value
    if car.vehicle.is_trailer:
        return Grade(MET, value, small)
    dangerous = _is_dangerous(car) | _shifts_and_floats(car)
    return Grade(
        worst(not_recommended=dangerous, open_question=unknown(value), advisory=magnitude(value) >= small), value, small
    )


def _is_dangerous(car: CarView[Num]) -> Holds:
    """Return whether the car surely shifts strongly towards oversteer; floats or arrays alike."""
    value, _, high = car.change.gradient_deg_per_g
    small, strong = car.limits.balance_negligible_deg_per_g.value, car.limits.balance_strong_deg_per_g.value
    return (value < -strong) & (high <= small)


def _shifts_and_floats(car: CarView[Num]) -> Holds:
    """Return whether the car shifts noticeably, either way, and its rear loses wet reserve beyond what is minded."""
    shifts = magnitude(car.change.gradient_deg_per_g.value) >= car.limits.balance_negligible_deg_per_g.value
    return shifts & (car.rear_reserve.fall_percent > car.limits.wet_reserve_fall_rear_percent.value)


def _explain(car: CarView, grade: Grade) -> Finding:
    if car.vehicle.is_trailer:
        return Finding("balance.change", "vehicle", MET, NOT_STEERED, None, None, None, GRADIENT)
    if is_open(grade.outcome):
        message = say("The balance cannot be estimated from what is known of the present and proposed tyres.")
        ask = level_remedy(car.front, car.rear) or stiffness_remedy(car.front, car.rear)
        return Finding("balance.change", "vehicle", grade.outcome, message, None, None, "deg/g", GRADIENT, ask)
    found = balance(car)
    message = found.text
    if found.warning is not None:
        message = sentences(message, found.warning)
    if _shifts_and_floats(car):
        fall = plain(car.rear_reserve.fall_percent, 0, "%")
        floats = say("In standing water the rear loses some {fall} of its reserve as well.", fall=fall)
        message = sentences(message, floats)
    return Finding("balance.change", "vehicle", grade.outcome, message, grade.measured, grade.limit, "deg/g", GRADIENT)


CHANGE = CarCheck("balance.change", _grade, _explain)
