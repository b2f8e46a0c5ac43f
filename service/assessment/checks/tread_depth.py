"""Is there tread enough?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import ALPINE
from service.core.findings import ADVISORY, MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, pick, unknown
from service.core.saying import say


def _grade(view: AxleView[Num]) -> Grade[Num]:
    facts, limits = view.then.facts, view.limits
    depth, least = facts.tread_depth_mm, limits.tread_depth_least_mm.value
    is_winter = facts.winter_mark == ALPINE
    enough = pick(is_winter, limits.tread_winter_advisory_mm.value, limits.tread_depth_advisory_mm.value)
    outcome = worst(not_met=depth < least, open_question=unknown(depth), advisory=depth < enough)
    return Grade(outcome, depth, pick(outcome == NOT_MET, least, enough))


def _explain(view: AxleView, grade: Grade) -> Finding:
    limits, is_winter = view.limits, view.then.facts.winter_mark == ALPINE
    least, enough = limits.tread_depth_least_mm, limits.tread_depth_advisory_mm
    if is_winter:
        enough = limits.tread_winter_advisory_mm
    limit = least if grade.outcome == NOT_MET else enough
    depth, advised = plain(grade.measured, 1, "mm"), plain(enough.value, 1, "mm")
    remedy: Remedy | None = None
    if is_open(grade.outcome):
        message = say("The tread depth is not given; the tyre is taken as new.")
        remedy = _remedy(view, say("measure the tread where the tyres are not new"), None)
    elif grade.outcome == MET:
        message = say("The tread is {depth} deep.", depth=depth)
    else:
        message = say(
            "The tread is {depth} deep, less than the usual legal {least}.",
            depth=depth,
            least=plain(least.value, 1, "mm"),
        )
        if grade.outcome == ADVISORY and is_winter:
            message = say(
                "The tread is {depth} deep. Below {advised} a winter tyre loses its hold on snow.",
                depth=depth,
                advised=advised,
            )
        elif grade.outcome == ADVISORY:
            message = say(
                "The tread is {depth} deep. Below {advised} a tyre is poor on a wet road.", depth=depth, advised=advised
            )
        remedy = _remedy(view, say("fit tyres with {advised} of tread or more", advised=advised), enough.value)
    measured = finite(grade.measured)
    return Finding(
        "tyre.tread_depth", view.name, grade.outcome, message, measured, limit.value, "mm", limit.basis, remedy
    )


def _remedy(view: AxleView, text: str, least_mm: float | None) -> Remedy:
    return Remedy(text, f"/candidate/{view.name}/tyre/tread_depth_mm", "tread_depth_mm", least_mm, unit="mm")


DEPTH = AxleCheck("tyre.tread_depth", _grade, _explain)
