"""Does the tyre's bead diameter match the rim's?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade
from service.assessment.checks.words import plain, rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, worst
from service.core.numeric import Num
from service.core.sources import basis

BEAD = basis("ISO-4000-2", "nominal rim diameter code")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    rim, tyre = view.then.facts.rim_code, view.then.facts.tyre_rim_code
    return Grade(worst(not_met=rim != tyre), rim, tyre)


def _explain(view: AxleView, grade: Grade) -> Finding:
    rim, tyre = plain(grade.measured, 2), plain(grade.limit, 2)
    if grade.outcome == NOT_MET:
        message = f"The tyre is for a rim of {tyre} inch; this rim has {rim} inch. It must not be mounted."
        remedy = Remedy(
            f"a rim of {tyre} inch, or a tyre for {rim} inch",
            rim_pointer(view.name),
            "rim_diameter_in",
            grade.limit,
            grade.limit,
            tyre,
            "in",
        )
    else:
        message, remedy = f"Tyre and rim are both {rim} inch.", None
    return Finding("rim.diameter", view.name, grade.outcome, message, grade.measured, grade.limit, "in", BEAD, remedy)


DIAMETER = AxleCheck("rim.diameter", _grade, _explain)
