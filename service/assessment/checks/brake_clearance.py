"""Does the rim clear the brake?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import inches, rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known_or, unknown
from service.core.saying import say
from service.core.sources import basis

BRAKE = basis("COMMON-PRACTICE", "the vehicle's maker states the least rim diameter")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    rim, present, least = view.then.facts.rim_code, view.now.facts.rim_code, view.axle.min_rim_diameter_in
    # A rim no smaller than the one that clears the brake today asks nobody to look.
    smaller = unknown(least) & (rim < present)
    return Grade(worst(not_met=rim < least, not_assessed=smaller), rim, known_or(least, present))


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        size = inches(grade.measured)
        message = say(
            "The rim is smaller than the present one. Whether {size} clears the brake is not known.", size=size
        )
        text = say(
            "look up the smallest rim for this brake, or measure over the caliper: {size} or less is enough; "
            "otherwise fit rims of {present} or more",
            size=size,
            present=inches(grade.limit),
        )
        pointer, most = f"/vehicle/{view.name}/min_rim_diameter_in", grade.measured
        remedy = Remedy(text, pointer, "min_rim_diameter_in", at_most=most, unit="in")
    elif grade.outcome == NOT_MET:
        size, least = inches(grade.measured), inches(grade.limit)
        message = say("A rim of {size} does not clear the brake, which needs {least}.", size=size, least=least)
        text = say("a rim of {least} or more, with a tyre to match", least=least)
        remedy = Remedy(text, rim_pointer(view.name), "rim_diameter_in", grade.limit, unit="in")
    elif unknown(view.axle.min_rim_diameter_in):
        message = say("The rim is no smaller than the present rim, which clears the brake.")
    else:
        message = say("The rim is no smaller than the {least} that the brake needs.", least=inches(grade.limit))
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.brake_clearance", view.name, grade.outcome, message, measured, limit, "in", BRAKE, remedy)


BRAKE_CLEARANCE = AxleCheck("rim.brake_clearance", _grade, _explain)
