"""Does the rim's contour hold a tubeless tyre: a one-piece drop centre with a hump on the bead seat?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade
from service.assessment.checks.words import rim_pointer
from service.assessment.view.views import AxleView
from service.core.findings import MET, Finding, Remedy, worst
from service.core.numeric import Num
from service.core.saying import say
from service.core.sources import basis

HUMP = basis("ISO-4000-2", "note on humps for tubeless tyres")

# Diameter codes with a half (17.5, 22.5) are of rims with a seat of 15 degrees: common practice, from memory.
TAPERED = 0.5


def _grade(view: AxleView[Num]) -> Grade[Num]:
    facts = view.then.facts
    humpless = (facts.hump != 1.0) & (facts.rim_code % 1.0 != TAPERED)
    return Grade(worst(open_question=humpless, advisory=facts.one_piece != 1.0), facts.hump, 1.0)


def _explain(view: AxleView, grade: Grade) -> Finding:
    if grade.outcome == MET and view.then.facts.hump != 1.0:
        message, remedy = say("The rim is of one piece with a steep bead seat, which needs no hump."), None
    elif grade.outcome == MET:
        message, remedy = say("The rim is of one piece and has a hump, as a tubeless tyre needs."), None
    elif view.then.facts.one_piece != 1.0 and view.change.same_rim == 1.0:
        message = say("The rim is of several pieces; a tubeless tyre needs a sealed one.")
        remedy = Remedy(say("a tube, or the seal that the rim's maker names"), rim_pointer(view.name), "hump")
    elif view.then.facts.one_piece != 1.0:
        message = say("The rim is of several pieces; a tubeless tyre needs a one-piece drop-centre rim.")
        remedy = Remedy(
            say("a one-piece rim (x in its designation) with a hump, such as H2"),
            rim_pointer(view.name),
            "hump",
            equals="H2",
        )
    else:
        message = say("No hump is stated for the rim.")
        remedy = Remedy(
            say("look for the hump beside the bead seat: H2 or the like is enough"),
            rim_pointer(view.name),
            "hump",
            equals="H2",
        )
    return Finding("rim.contour", view.name, grade.outcome, message, None, None, None, HUMP, remedy)


CONTOUR = AxleCheck("rim.contour", _grade, _explain)
