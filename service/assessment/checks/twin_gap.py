"""Do the two tyres of a twin stand far enough apart?"""

from __future__ import annotations

from service.assessment.checks.clearance import millimetres, offset_window_mm
from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.missing import offset_remedy
from service.assessment.checks.words import apart, plain, rim_pointer, span
from service.assessment.view.views import AxleView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import pick, unknown


def _grade(view: AxleView) -> Grade:
    gap, limits = view.then.geometry.twin_gap_mm, view.limits
    least, enough = limits.clearance_least_mm.value, limits.clearance_twin_met_mm.value
    if view.axle.wheels_per_side == 1:
        return Grade(MET, gap, gap)
    touches = gap < least - LAST_BIT
    outcome = worst(not_met=touches, open_question=unknown(gap), advisory=gap < enough - LAST_BIT)
    return Grade(outcome, gap, pick(touches, least, enough))


def _explain(view: AxleView, grade: Grade) -> Finding:
    enough = view.limits.clearance_twin_met_mm
    remedy: Remedy | None = None
    if view.axle.wheels_per_side == 1:
        message = "There is one wheel on each side."
    elif is_open(grade.outcome):
        message, remedy = "Whether the twin tyres touch is not known: a rim states no offset (ET).", offset_remedy(view)
    elif grade.outcome == MET:
        message = f"The twin tyres stand {plain(grade.measured)} mm apart."
    else:
        low, high = offset_window_mm(view)
        most = high if low <= high else None
        narrower = "" if low <= high else ", or narrower tyres"
        text = f"ET {span(low, most, '')}{narrower}"
        remedy = Remedy(text, rim_pointer(view.name), "offset_mm", low, most, unit="mm")
        message = (
            f"The twin tyres stand {apart(grade.measured, enough.value)} mm apart; {plain(enough.value)} mm is advised."
        )
        if grade.outcome == NOT_MET:
            message = f"The twin tyres touch: {millimetres(-grade.measured)} are lacking between them."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("clearance.twin", view.name, grade.outcome, message, measured, limit, "mm", enough.basis, remedy)


TWIN = Check("clearance.twin", _grade, _explain)
