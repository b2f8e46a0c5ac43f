"""Does the tyre's bead diameter match the rim's?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade
from service.assessment.checks.words import inches, plain, rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, worst
from service.core.numeric import Num
from service.core.saying import say
from service.core.sources import basis

BEAD = basis("ISO-4000-2", "nominal rim diameter code")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    rim, tyre = view.then.facts.rim_code, view.then.facts.tyre_rim_code
    return Grade(worst(not_met=rim != tyre), rim, tyre)


def _explain(view: AxleView, grade: Grade) -> Finding:
    rim, tyre = inches(grade.measured), inches(grade.limit)
    if grade.outcome == NOT_MET:
        message = say(
            "The tyre is for a rim of {tyre_code}; this rim has {rim_code}. It must not be mounted.",
            tyre_code=tyre,
            rim_code=rim,
        )
        remedy = Remedy(
            say("a rim of {tyre_code}, or a tyre for {rim_code}", tyre_code=tyre, rim_code=rim),
            rim_pointer(view.name),
            "rim_diameter_in",
            grade.limit,
            grade.limit,
            plain(grade.limit, 2),
            "in",
        )
    else:
        message, remedy = say("Tyre and rim are both {rim_code}.", rim_code=rim), None
    return Finding("rim.diameter", view.name, grade.outcome, message, grade.measured, grade.limit, "in", BEAD, remedy)


DIAMETER = AxleCheck("rim.diameter", _grade, _explain)
