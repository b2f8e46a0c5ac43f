"""Is the rim's width approved for the tyre?

A row of a table, or the maker's own data, decides; the design guide's rule is an estimate, so just outside of it
the answer is to ask the maker.
"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain, rim_pointer, span
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import BY_MAKER, BY_RULE, BY_TABLE
from service.core.findings import ADVISORY, MET, Basis, Finding, Remedy, is_open, worst
from service.core.numeric import Num, larger, pick, unknown
from service.core.saying import say
from service.core.sources import basis

BASES: dict[float, Basis] = {
    BY_RULE: basis("ETRTO", "approved rim widths estimated by the design guide's rule"),
    BY_TABLE: basis("ETRTO", "approved rim widths, table row of this size"),
    BY_MAKER: basis("COMMON-PRACTICE", "approved rim widths as the request gives them from the tyre maker's data"),
}


def _grade(view: AxleView[Num]) -> Grade[Num]:
    facts = view.then.facts
    width, low, high = facts.rim_width_in, facts.approved_min_in, facts.approved_max_in
    outside = larger(low - width, width - high)
    blurred = pick(facts.approval == BY_RULE, view.limits.rim_width_edge_in.value, 0.0)
    outcome = worst(not_met=outside > blurred, not_assessed=unknown(outside), advisory=outside > 0.0)
    return Grade(outcome, width, pick(width < 0.5 * (low + high), low, high))


def _explain(view: AxleView, grade: Grade) -> Finding:
    facts = view.then.facts
    where = BASES[facts.approval]
    if is_open(grade.outcome):
        message = say("No approved rim widths are known for this size.")
        ask = _ask(view)
        return Finding("rim.width", view.name, grade.outcome, message, grade.measured, None, "in", where, ask)
    width, ends = plain(grade.measured, 2, "in"), (facts.approved_min_in, facts.approved_max_in)
    approved = span(*ends, "in", 2)
    remedy = None
    if grade.outcome == ADVISORY:
        # Another rim would have to be judged anew; the estimate is what is uncertain.
        remedy = _ask(view)
    elif grade.outcome != MET:
        words = say("a rim {approved} wide, or a tyre that is approved on {width}", approved=approved, width=width)
        remedy = Remedy(words, rim_pointer(view.name), "rim_width_in", *ends, unit="in")
    if grade.outcome == MET:
        message = say("The rim is {width} wide; the tyre takes {approved}.", width=width, approved=approved)
        if facts.approval == BY_RULE:
            message = say(
                "The rim is {width} wide, within the {approved} estimated for this size.",
                width=width,
                approved=approved,
            )
    elif grade.outcome == ADVISORY:
        message = say(
            "The rim is {width} wide, just outside the {approved} estimated for this size.",
            width=width,
            approved=approved,
        )
    else:
        message = say("The rim is {width} wide; the tyre takes {approved} only.", width=width, approved=approved)
        if facts.approval == BY_RULE:
            message = say(
                "The rim is {width} wide, far outside the {approved} estimated for this size.",
                width=width,
                approved=approved,
            )
    limit = finite(grade.limit)
    return Finding("rim.width", view.name, grade.outcome, message, grade.measured, limit, "in", where, remedy)


def _ask(view: AxleView) -> Remedy:
    width = plain(view.then.facts.rim_width_in, 2, "in")
    return Remedy(
        say("ask the tyre's maker which rim widths are approved: a range that includes {width} is enough", width=width),
        f"/candidate/{view.name}/tyre/approved_rim_widths_in",
        "approved_rim_widths_in",
    )


WIDTH = AxleCheck("rim.width", _grade, _explain)
