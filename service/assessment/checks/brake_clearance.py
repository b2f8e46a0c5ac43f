"""Does the rim clear the brake?"""

from __future__ import annotations

from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.words import plain, rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import unknown
from service.core.sources import basis

BRAKE = basis("COMMON-PRACTICE", "the vehicle's maker states the least rim diameter")


def _grade(view: AxleView) -> Grade:
    rim, least = view.then.facts.rim_code, view.axle.min_rim_diameter_in
    return Grade(worst(not_met=rim < least, open_question=unknown(least)), rim, least)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        field = f"/vehicle/{view.name}/min_rim_diameter_in"
        message = "Whether the rim clears the brake is not known: the least rim diameter is not given."
        remedy = Remedy(
            f"state vehicle.{view.name}.min_rim_diameter_in from the maker's data", field, "min_rim_diameter_in"
        )
    elif grade.outcome == NOT_MET:
        least = plain(grade.limit, 2)
        message = f"A rim of diameter code {plain(grade.measured, 2)} does not clear the brake, which needs {least}."
        remedy = Remedy(
            f"a rim of diameter code {least} or more, with a tyre to match",
            rim_pointer(view.name),
            "rim_diameter_in",
            grade.limit,
            unit="in",
        )
    else:
        least = plain(grade.limit, 2)
        message = f"The rim is no smaller than the diameter code {least} that the brake needs."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.brake_clearance", view.name, grade.outcome, message, measured, limit, "in", BRAKE, remedy)


BRAKE_CLEARANCE = Check("rim.brake_clearance", _grade, _explain)
