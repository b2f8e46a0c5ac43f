"""Is there tread enough?"""

from __future__ import annotations

from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import pick, unknown


def _grade(view: AxleView) -> Grade:
    depth, limits = view.then.facts.tread_depth_mm, view.limits
    least, enough = limits.tread_depth_least_mm.value, limits.tread_depth_advisory_mm.value
    outcome = worst(not_met=depth < least, open_question=unknown(depth), advisory=depth < enough)
    return Grade(outcome, depth, pick(outcome == NOT_MET, least, enough))


def _explain(view: AxleView, grade: Grade) -> Finding:
    least, enough = view.limits.tread_depth_least_mm, view.limits.tread_depth_advisory_mm
    field = f"/candidate/{view.name}/tyre/tread_depth_mm"
    limit = least if grade.outcome == NOT_MET else enough
    depth = plain(grade.measured, 1)
    words = f"a tread depth of {plain(enough.value, 1)} mm or more"
    remedy: Remedy | None = Remedy(words, field, "tread_depth_mm", enough.value, unit="mm")
    if is_open(grade.outcome):
        message = "The tread depth is not given; the estimates take the tyre as new."
        text = f"measure candidate.{view.name}.tyre.tread_depth_mm"
        remedy = Remedy(text, field, "tread_depth_mm", enough.value, unit="mm")
    elif grade.outcome == NOT_MET:
        message = f"The tread is {depth} mm deep, less than the usual legal {plain(least.value, 1)} mm."
    elif grade.outcome == ADVISORY:
        wet = f"below {plain(enough.value, 1)} mm it is poor on a wet road"
        message = f"The tread is {depth} mm deep, more than the usual legal minimum; {wet}."
    else:
        message, remedy = f"The tread is {depth} mm deep.", None
    measured = finite(grade.measured)
    return Finding(
        "tyre.tread_depth", view.name, grade.outcome, message, measured, limit.value, "mm", limit.basis, remedy
    )


DEPTH = Check("tyre.tread_depth", _grade, _explain)
