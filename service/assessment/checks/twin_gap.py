"""Do the two tyres of a twin stand far enough apart?"""

from __future__ import annotations

from service.assessment.checks.clearance import millimetres
from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.missing import offset_remedy, width_remedy
from service.assessment.checks.offset_window import offset_advice
from service.assessment.checks.words import apart, plain, rim_pointer, span
from service.assessment.view.views import AxleView
from service.core.findings import MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, pick, unknown
from service.core.saying import say
from service.physics.dimensions import service_width_mm

# No tyre of a car, van or lorry is narrower: common practice, no source.
NARROWEST_MM = 105.0


def _grade(view: AxleView[Num]) -> Grade[Num]:
    gap, limits = view.then.geometry.twin_gap_mm, view.limits
    least, enough = limits.clearance_least_mm.value, limits.clearance_twin_met_mm.value
    if view.axle.wheels_per_side == 1:
        return Grade(MET, gap, gap)
    # The same rims with a tyre no wider stand apart as they do today, however far that is.
    as_today = (view.change.same_rim == 1.0) & (view.change.half_width_mm <= 0.0)
    touches = gap < least - LAST_BIT
    outcome = worst(
        not_met=touches,
        not_assessed=unknown(gap) & (pick(as_today, 0.0, 1.0) == 1.0),
        open_question=unknown(gap),
        advisory=gap < enough - LAST_BIT,
    )
    return Grade(outcome, gap, pick(touches, least, enough))


def _explain(view: AxleView, grade: Grade) -> Finding:
    enough = view.limits.clearance_twin_met_mm
    remedy: Remedy | None = None
    if view.axle.wheels_per_side == 1:
        message = say("There is one wheel on each side.")
    elif is_open(grade.outcome):
        message = say("Whether the twin tyres touch is not known without the offset (ET).")
        remedy = offset_remedy(view)
        if remedy is None:
            message = say("Whether the twin tyres touch is not known without their section width.")
            remedy = width_remedy(view)
    elif grade.outcome == MET:
        message = say("The twin tyres stand {gap} apart.", gap=plain(grade.measured, 0, "mm"))
    else:
        remedy = _remedy(view, grade)
        message = say(
            "The twin tyres stand {gap} apart; {advised} is advised.",
            gap=apart(grade.measured, enough.value, 0, "mm"),
            advised=plain(enough.value, 0, "mm"),
        )
        if grade.outcome == NOT_MET:
            lacking = millimetres(-grade.measured)
            message = say("The twin tyres touch: {lacking} are lacking between them.", lacking=lacking)
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("clearance.twin", view.name, grade.outcome, message, measured, limit, "mm", enough.basis, remedy)


def _remedy(view: AxleView, grade: Grade) -> Remedy:
    limits = view.limits
    widest = 2.0 * view.then.facts.offset_mm - limits.clearance_twin_met_mm.value
    most = widest / (1.0 + limits.service_width_growth_percent.value / 100.0)
    # A narrower wheel is no help where the present one touches as well.
    lost = grade.outcome == NOT_MET and view.now.geometry.twin_gap_mm < limits.clearance_least_mm.value
    if view.change.same_rim == 0.0:
        advice = offset_advice(view)
        return _further_out(view) if lost and advice.quantity != "offset_mm" else advice
    if most < NARROWEST_MM:
        return _further_out(view)
    text = say("narrower tyres, their section {width} wide", width=span(None, most, "mm"))
    pointer = f"/candidate/{view.name}/tyre/section_width_mm"
    return Remedy(text, pointer, "section_width_mm", at_most=most, unit="mm")


def _further_out(view: AxleView) -> Remedy:
    """Return the offset that holds these two tyres apart: no tyre is narrow enough for the present one."""
    limits = view.limits
    width = service_width_mm(view.then.geometry.section_width_mm, limits.service_width_growth_percent.value)
    least = 0.5 * (limits.clearance_twin_met_mm.value + width)
    text = say("fit rims for twin wheels, with ET {offset}", offset=span(least, None, ""))
    return Remedy(text, rim_pointer(view.name), "offset_mm", at_least=least, unit="mm")


TWIN = AxleCheck("clearance.twin", _grade, _explain)
