"""Does the overall diameter stay near the present one?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import apart, plain, signed, signed_apart, span, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, magnitude, pick, unknown
from service.core.saying import Amount, Said, say


def _grade(view: AxleView[Num]) -> Grade[Num]:
    change = view.change.overall_diameter_percent
    size, limits = magnitude(change), view.limits
    near, far = limits.overall_diameter_met_percent.value, limits.overall_diameter_advisory_percent.value
    # A trailer has no speedometer, no stability control and no gearing: it stands higher or lower, and no more.
    outcome = worst(
        not_met=(size > far + LAST_BIT) & (not view.vehicle.is_trailer),
        not_assessed=unknown(size),
        advisory=size > near + LAST_BIT,
    )
    return Grade(outcome, change, pick(outcome == NOT_MET, far, near))


def _explain(view: AxleView, grade: Grade) -> Finding:
    limits = view.limits
    near, far = limits.overall_diameter_met_percent, limits.overall_diameter_advisory_percent
    limit = far if grade.outcome == NOT_MET else near
    remedy = None
    if is_open(grade.outcome):
        message = say(
            "The overall diameter is not known: the size has no aspect ratio, and the table for such sizes no row."
        )
        remedy = diameter_remedy(view)
    elif grade.outcome == MET:
        message = _kept(view, grade)
    else:
        message = _beyond(view, grade, limit.value)
        now, room = view.now.geometry.overall_diameter_mm, near.value / 100.0
        low, high = now * (1.0 - room), now * (1.0 + room)
        text = say("an overall diameter of {size}", size=span(low, high, "mm"))
        remedy = Remedy(text, tyre_pointer(view.name), "overall_diameter_mm", low, high, unit="mm")
    measured = finite(grade.measured)
    return Finding(
        "diameter.deviation", view.name, grade.outcome, message, measured, limit.value, "%", limit.basis, remedy
    )


def _kept(view: AxleView, grade: Grade) -> Said:
    now, then = view.now.geometry.overall_diameter_mm, view.then.geometry.overall_diameter_mm
    if now == then:
        return say("The overall diameter stays at {diameter}.", diameter=plain(now, 0, "mm"))
    return say(
        "The overall diameter goes from {now} to {then} ({change}), within {limit} either way.",
        now=Amount(now, "mm", bare=True),
        then=plain(then, 0, "mm"),
        change=signed(grade.measured, 1, "%"),
        limit=plain(view.limits.overall_diameter_met_percent.value, 1, "%"),
    )


def _beyond(view: AxleView, grade: Grade, limit_percent: float) -> Said:
    goes = say(
        "The overall diameter goes from {now} to {then} ({change})",
        now=Amount(view.now.geometry.overall_diameter_mm, "mm", bare=True),
        then=plain(view.then.geometry.overall_diameter_mm, 0, "mm"),
        change=signed_apart(grade.measured, limit_percent, 1, "%"),
    )
    most = plain(limit_percent, 1, "%")
    just = apart(abs(grade.measured), limit_percent, 1, "%") == most
    if grade.outcome == NOT_MET:
        if just:
            return say("{goes}, just more than the {most} that a replacement size may differ by.", goes=goes, most=most)
        return say("{goes}, more than the {most} that a replacement size may differ by.", goes=goes, most=most)
    unnoticed = say("{goes}, more than the {most} that goes unnoticed", goes=goes, most=most)
    if just:
        unnoticed = say("{goes}, just more than the {most} that goes unnoticed", goes=goes, most=most)
    if view.vehicle.is_trailer:
        return say("{unnoticed}: check that the trailer stands level behind the car.", unnoticed=unnoticed)
    return say("{unnoticed}.", unnoticed=unnoticed)


DEVIATION = AxleCheck("diameter.deviation", _grade, _explain)
