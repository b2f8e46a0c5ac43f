"""Are new tyres kept apart from worn ones?"""

from __future__ import annotations

from service.assessment.checks.axle_ratio import NOT_DRIVEN, grade_ratio
from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import apart, plain, span
from service.assessment.view.views import CarView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open
from service.core.numeric import known, unknown


def _grade(car: CarView) -> Grade:
    front, rear, limits = car.front.then, car.rear.then, car.limits
    worn = limits.diameter_per_tread_depth.value * abs(front.facts.tread_depth_mm - rear.facts.tread_depth_mm)
    share = 100.0 * worn / front.geometry.overall_diameter_mm
    return grade_ratio(car, share)


def _explain(car: CarView, grade: Grade) -> Finding:
    near, far = car.limits.axle_ratio_met_percent, car.limits.axle_ratio_advisory_percent
    limit = far if grade.outcome == NOT_MET else near
    front, rear = car.front.then.facts.tread_depth_mm, car.rear.then.facts.tread_depth_mm
    remedy: Remedy | None = None
    if car.vehicle.is_trailer:
        return Finding("tyre.tread_difference", "vehicle", MET, NOT_DRIVEN, None, None, None, limit.basis)
    if is_open(grade.outcome):
        missing = "front" if unknown(front) else "rear"
        message = "Whether new tyres meet worn ones is not known: the tread depth is not given on both axles."
        field = f"/candidate/{missing}/tyre/tread_depth_mm"
        remedy = Remedy(f"measure candidate.{missing}.tyre.tread_depth_mm", field, "tread_depth_mm", unit="mm")
        if known(front) and known(rear):
            message = "What wear makes of the diameter is not known without the overall diameter."
            remedy = diameter_remedy(car.front)
    else:
        depths = f"{plain(front, 1)} mm of tread in front and {plain(rear, 1)} mm at the rear"
        if front == rear:
            message = f"All tyres have {plain(front, 1)} mm of tread."
        elif grade.outcome == MET:
            share = plain(grade.measured, 1)
            message = f"With {depths}, wear sets the diameters apart by {share} %, within {plain(near.value, 1)} %."
        else:
            strain = "may unsettle stability control"
            if car.vehicle.driven_axle == "all":
                strain = "strains the all-wheel drive"
            share = apart(grade.measured, limit.value, 1)
            message = f"With {depths}, wear alone sets the diameters apart by {share} %, which {strain}."
            remedy = _even_remedy(car, near.value)
    measured = finite(grade.measured)
    return Finding(
        "tyre.tread_difference", "vehicle", grade.outcome, message, measured, limit.value, "%", limit.basis, remedy
    )


def _even_remedy(car: CarView, near_percent: float) -> Remedy:
    front, rear = car.front.then.facts.tread_depth_mm, car.rear.then.facts.tread_depth_mm
    shallow, deep = ("front", rear) if front < rear else ("rear", front)
    outer = car.front.then.geometry.overall_diameter_mm
    room = near_percent / 100.0 * outer / car.limits.diameter_per_tread_depth.value
    least = max(deep - room, 0.0)
    text = f"{shallow} tyres with {span(least, deep + room, 'mm', 1)} of tread, nearer to those of the other axle"
    return Remedy(text, f"/candidate/{shallow}/tyre/tread_depth_mm", "tread_depth_mm", least, deep + room, unit="mm")


DIFFERENCE = Check("tyre.tread_difference", _grade, _explain)
