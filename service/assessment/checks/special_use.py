"""Is a temporary spare kept off regular use, does a winter tyre count as one here, and what does towing allow?"""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.case import Case
from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.load import index_remedy
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, Finding, Remedy
from service.core.numeric import UNKNOWN, pick
from service.rules.pack import RulePack

# Towing relief concerns the driven-by-cargo axle of these categories.
TOWING_CATEGORIES = ("M1", "M1G", "N1")


def _grade_spare(view: AxleView) -> Grade:
    spare = view.then.facts.temporary_spare
    most = pick(spare == 1.0, view.limits.temporary_spare_speed_kmh.value, UNKNOWN)
    return Grade(NOT_MET * (spare == 1.0), view.then.facts.speed_capability_kmh, most)


def _explain_spare(view: AxleView, grade: Grade) -> Finding:
    limit = view.limits.temporary_spare_speed_kmh
    if grade.outcome == MET:
        message, remedy = "The tyre is made for regular use.", None
        return Finding("tyre.temporary_spare", view.name, MET, message, None, None, None, limit.basis, remedy)
    message = (
        f"A temporary spare (T) is no regular fitment: {plain(limit.value)} km/h at most, to the next workshop; "
        "the speed symbol on it is the tyre's own rating, not the speed allowed."
    )
    remedy = Remedy("a tyre for regular use", tyre_pointer(view.name), "system", equals="regular")
    measured = finite(grade.measured)
    return Finding(
        "tyre.temporary_spare", view.name, NOT_MET, message, measured, limit.value, "km/h", limit.basis, remedy
    )


SPARE = Check("tyre.temporary_spare", _grade_spare, _explain_spare)


def _winter_can_forbid(pack: RulePack) -> bool:
    return pack.winter is not None and any(marking.status == "read" for marking in pack.winter.markings)


def grade_winter(view: AxleView) -> Grade:
    """Return whether the tyre counts as a winter tyre here and on the day of the request."""
    counts = view.conditions.winter_tyre(view.then.facts.winter_mark)
    broken = NOT_MET if _winter_can_forbid(view.pack) else ADVISORY
    return Grade(broken * (counts == 0.0) + NOT_ASSESSED * (counts != counts), counts, counts - counts)


def winter_findings(case: Case, car: CarView) -> list[Finding]:
    """Return a finding for each axle when the request is about winter and the place has winter rules."""
    if case.season != "winter" or case.pack.winter is None:
        return []
    return [_explain_winter(view, grade_winter(view)) for view in (car.front, car.rear)]


def _explain_winter(view: AxleView, grade: Grade) -> Finding:
    winter = view.pack.winter
    basis = view.limits.winter_speed_floor_kmh.basis if winter is None else winter.basis
    marks = () if winter is None else winter.markings
    mark = next((each for each in marks if each.marking == "M+S"), None)
    remedy: Remedy | None = Remedy("tyres marked 3PMSF", tyre_pointer(view.name), "marking", equals="3PMSF")
    if grade.outcome == MET:
        message, remedy = "The tyre counts as a winter tyre here.", None
    elif grade.outcome == NOT_ASSESSED:
        message = "M+S alone counts here only for tyres built up to a certain day, and a request does not say when."
    elif view.then.facts.winter_mark == 0.0:
        message = "The tyre has no winter mark (3PMSF, or M+S where that counts)."
    else:
        until = f" after {mark.used_to}" if mark is not None and mark.used_to is not None else ""
        message = f"M+S alone does not make a winter tyre here{until}."
        basis = basis if mark is None else mark.basis
    return Finding("law.winter_tyre", view.name, grade.outcome, message, None, None, None, basis, remedy)


def grade_towing(view: AxleView) -> Grade:
    """Return whether the tyres carry the axle with what towing allows beyond their load."""
    excess = view.limits.towing_load_excess_percent.value
    capacity = view.then.load.axle_capacity_kg * (1.0 + excess / 100.0)
    mass = view.axle.max_axle_mass_kg
    outcome = ADVISORY + (NOT_MET - ADVISORY) * (capacity < mass - LAST_BIT)
    return Grade(outcome + (NOT_ASSESSED - ADVISORY) * (capacity != capacity), capacity, mass)


def towing_views(case: Case, car: CarView) -> Sequence[AxleView]:
    """Return the axles that the towing relief speaks of: the rear one of a car or van with passenger tyres."""
    vehicle = case.vehicle
    if not vehicle.towing or vehicle.category not in TOWING_CATEGORIES:
        return ()
    return (car.rear,)


def towing_findings(case: Case, car: CarView) -> list[Finding]:
    """Return what towing allows and asks, when the vehicle tows."""
    return [_explain_towing(view, grade_towing(view)) for view in towing_views(case, car)]


def _explain_towing(view: AxleView, grade: Grade) -> Finding:
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
    if grade.outcome == NOT_ASSESSED:
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
        "load.towing",
        view.name,
        grade.outcome,
        message,
        measured,
        grade.limit,
        "kg",
        limits.towing_load_excess_percent.basis,
        remedy,
    )
