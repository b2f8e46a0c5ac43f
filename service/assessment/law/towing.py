"""What may the tyres of a towing car carry beyond their load, and does that carry the axle?"""

from __future__ import annotations

from collections.abc import Iterator

from service.assessment.case import Case
from service.assessment.checks.grade import LAST_BIT, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, Finding, Remedy, is_open, worst
from service.core.numeric import unknown

CODE = "load.towing"
# The relief concerns the rear axle of these categories.
TOWING_CATEGORIES = ("M1", "M1G", "N1")


def grades(case: Case, car: CarView) -> Iterator[tuple[AxleView, Grade]]:
    """Return the grade of the axle that the towing relief speaks of, when the vehicle tows."""
    if case.vehicle.towing and case.vehicle.category in TOWING_CATEGORIES:
        yield car.rear, _grade(car.rear)


def _grade(view: AxleView) -> Grade:
    excess = view.limits.towing_load_excess_percent.value
    capacity = view.then.load.axle_capacity_kg * (1.0 + excess / 100.0)
    mass = view.axle.max_axle_mass_kg
    # What towing asks is always worth a word.
    outcome = worst(not_met=capacity < mass - LAST_BIT, open_question=unknown(capacity), advisory=True)
    return Grade(outcome, capacity, mass)


def findings(case: Case, car: CarView) -> list[Finding]:
    """Return what towing allows and asks, when the vehicle tows."""
    return [_explain(view, grade) for view, grade in grades(case, car)]


def _explain(view: AxleView, grade: Grade) -> Finding:
    limits = view.limits
    speed, gain = plain(limits.towing_speed_kmh.value), plain(limits.towing_pressure_gain_kpa.value)
    excess = plain(limits.towing_load_excess_percent.value)
    ask = f"no more than {speed} km/h with {gain} kPa more in them"
    remedy = Remedy(
        f"with the trailer no more than {speed} km/h, and {gain} kPa more in the rear tyres",
        f"/candidate/{view.name}/pressure_kpa",
        "pressure_kpa",
        unit="kPa",
    )
    if is_open(grade.outcome):
        message = "What the rear tyres carry with a trailer is not known without load index and speed symbol."
        text = f"state load index and speed symbol of candidate.{view.name}.tyre"
        remedy = Remedy(text, tyre_pointer(view.name), "service_description")
    elif grade.outcome == ADVISORY:
        message = f"With a trailer the rear tyres may carry {excess} % more ({plain(grade.measured)} kg), at {ask}, "
        message += "if the vehicle's handbook says so."
    else:
        message = f"Even the {excess} % more that towing allows ({plain(grade.measured)} kg) does not carry the axle."
        remedy = index_remedy(view, grade.limit / (1.0 + limits.towing_load_excess_percent.value / 100.0))
    measured = finite(grade.measured)
    return Finding(
        CODE,
        view.name,
        grade.outcome,
        message,
        measured,
        grade.limit,
        "kg",
        limits.towing_load_excess_percent.basis,
        remedy,
    )
