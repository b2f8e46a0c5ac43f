"""Does the rim clear the brake?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import inches, rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known_or, unknown
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
        message = f"The rim is smaller than the present one. Whether {size} clears the brake is not known."
        remedy = Remedy(
            f"look up the smallest rim for this brake, or measure over the caliper: {size} or less is enough; "
            f"otherwise fit rims of {inches(grade.limit)} or more",
            f"/vehicle/{view.name}/min_rim_diameter_in",
            "min_rim_diameter_in",
            at_most=grade.measured,
            unit="in",
        )
    elif grade.outcome == NOT_MET:
        least = inches(grade.limit)
        message = f"A rim of {inches(grade.measured)} does not clear the brake, which needs {least}."
        remedy = Remedy(
            f"a rim of {least} or more, with a tyre to match",
            rim_pointer(view.name),
            "rim_diameter_in",
            grade.limit,
            unit="in",
        )
    elif unknown(view.axle.min_rim_diameter_in):
        message = "The rim is no smaller than the present rim, which clears the brake."
    else:
        message = f"The rim is no smaller than the {inches(grade.limit)} that the brake needs."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.brake_clearance", view.name, grade.outcome, message, measured, limit, "in", BRAKE, remedy)


BRAKE_CLEARANCE = AxleCheck("rim.brake_clearance", _grade, _explain)
