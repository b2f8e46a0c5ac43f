"""What may the tyres of a towing car carry beyond their load, and does that carry the axle?"""

from __future__ import annotations

from collections.abc import Iterator

from service.assessment.case import Case
from service.assessment.checks.grade import LAST_BIT, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, pick, unknown
from service.core.saying import Said, say

CODE = "load.towing"
# The relief concerns the rear axle of these categories.
TOWING_CATEGORIES = ("M1", "M1G", "N1")


def grades(case: Case[Num], car: CarView[Num]) -> Iterator[tuple[AxleView[Num], Grade[Num]]]:
    """Return the grade of the axle that the towing relief speaks of, when the vehicle tows."""
    if case.vehicle.towing and case.vehicle.category in TOWING_CATEGORIES:
        yield car.rear, _grade(car.rear)


def _grade(view: AxleView[Num]) -> Grade[Num]:
    relief = view.limits.towing_load_excess_percent.value / 100.0
    # The relief is for passenger tyres (class C1) alone.
    gain = pick(view.then.facts.commercial == 1.0, 1.0, 1.0 + relief)
    own, mass = view.then.load.axle_capacity_kg, view.axle.max_axle_mass_kg
    # A trailer may load the axle by as much more as the tyres are let to carry: without that they have conditions.
    leans = own < gain * mass - LAST_BIT
    outcome = worst(not_met=gain * own < mass - LAST_BIT, open_question=unknown(own), advisory=leans)
    return Grade(outcome, gain * own, mass)


def findings(case: Case, car: CarView) -> list[Finding]:
    """Return what towing allows and asks, when the vehicle tows."""
    return [_explain(view, grade) for view, grade in grades(case, car)]


def _explain(view: AxleView, grade: Grade) -> Finding:
    limits, remedy = view.limits, None
    speed = plain(limits.towing_speed_kmh.value, 0, "km/h")
    gain = plain(limits.towing_pressure_gain_kpa.value, 0, "kPa")
    relief = 0.0 if view.then.facts.commercial else limits.towing_load_excess_percent.value
    if is_open(grade.outcome):
        message = say("What the rear tyres carry with a trailer is not known without load index and speed symbol.")
        text = say("state load index and speed symbol of the proposed rear tyre")
        remedy = Remedy(text, tyre_pointer(view.name), "service_description")
    elif grade.outcome == ADVISORY:
        message = say(
            "With a trailer the rear tyres may carry {share} more, {carried} in all, at no "
            "more than {speed} with {gain} more in them, if the vehicle's handbook says so.",
            share=plain(relief, 0, "%"),
            carried=plain(grade.measured, 0, "kg"),
            speed=speed,
            gain=gain,
        )
        text = say(
            "with the trailer drive no faster than {speed}, with {gain} more in the rear tyres", speed=speed, gain=gain
        )
        remedy = Remedy(text, f"/candidate/{view.name}/pressure_kpa", "pressure_kpa", unit="kPa")
    elif grade.outcome == NOT_MET:
        message = _too_heavy(grade, relief)
        remedy = index_remedy(view, grade.limit / (1.0 + relief / 100.0))
    else:
        message = say("With a trailer too the rear tyres carry the axle by their load index alone.")
    return Finding(
        CODE,
        view.name,
        grade.outcome,
        message,
        finite(grade.measured),
        grade.limit,
        "kg",
        limits.towing_load_excess_percent.basis,
        remedy,
    )


def _too_heavy(grade: Grade, relief_percent: float) -> Said:
    carried = apart(grade.measured, grade.limit, 0, "kg")
    if relief_percent:
        return say(
            "Even the {share} more that towing allows, {carried} in all, does not carry the axle.",
            share=plain(relief_percent, 0, "%"),
            carried=carried,
        )
    return say(
        "With a trailer commercial tyres carry no more than else: {carried}, and the axle needs {mass}.",
        carried=carried,
        mass=plain(grade.limit, 0, "kg"),
    )
