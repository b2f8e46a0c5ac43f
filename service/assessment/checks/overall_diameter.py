"""Does the overall diameter stay near the present one?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import apart, plain, signed, signed_apart, span, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, magnitude, pick, unknown


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
        message = (
            "The overall diameter is not known: the size has no aspect ratio, and the table for such sizes no row."
        )
        remedy = diameter_remedy(view)
    else:
        now, then = view.now.geometry.overall_diameter_mm, view.then.geometry.overall_diameter_mm
        goes = f"The overall diameter goes from {plain(now)} to {plain(then)} mm"
        if grade.outcome == MET:
            message = f"{goes} ({signed(grade.measured)} %), within {plain(near.value, 1)} % either way."
            if now == then:
                message = f"The overall diameter stays at {plain(now)} mm."
        else:
            room = near.value / 100.0
            low, high = now * (1.0 - room), now * (1.0 + room)
            size, most = apart(abs(grade.measured), limit.value, 1), plain(limit.value, 1)
            beyond = signed_apart(grade.measured, limit.value, 1, "%")
            just = "just " if size == most else ""
            what = "that a replacement size may differ by" if grade.outcome == NOT_MET else "that goes unnoticed"
            if view.vehicle.is_trailer:
                what = "that goes unnoticed: check that the trailer stands level behind the car"
            message = f"{goes} ({beyond}), {just}more than the {most} % {what}."
            text = f"an overall diameter of {span(low, high, 'mm')}"
            remedy = Remedy(text, tyre_pointer(view.name), "overall_diameter_mm", low, high, unit="mm")
    measured = finite(grade.measured)
    return Finding(
        "diameter.deviation", view.name, grade.outcome, message, measured, limit.value, "%", limit.basis, remedy
    )


DEVIATION = AxleCheck("diameter.deviation", _grade, _explain)
