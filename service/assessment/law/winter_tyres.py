"""Does the tyre count as a winter tyre here, on the day of the request?"""

from __future__ import annotations

from collections.abc import Iterator

from service.assessment.case import Case
from service.assessment.checks.grade import Grade
from service.assessment.checks.words import tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.dates import day_in_words
from service.core.findings import MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, Num, known, pick, unknown
from service.core.saying import say

CODE = "law.winter_tyre"


def grades(case: Case[Num], car: CarView[Num]) -> Iterator[tuple[AxleView[Num], Grade[Num]]]:
    """Return the grade of each axle when the request is about winter and the place has winter rules."""
    if case.season == "winter" and case.pack.winter is not None:
        can_forbid = any(marking.status == "read" for marking in case.pack.winter.markings)
        for view in (car.front, car.rear):
            yield view, _grade(view, can_forbid=can_forbid)


def _grade(view: AxleView[Num], *, can_forbid: bool) -> Grade[Num]:
    counts = view.conditions.winter_tyre(view.then.facts.winter_mark)
    broken = counts == 0.0
    outcome = worst(not_met=broken & can_forbid, open_question=unknown(counts), advisory=broken)
    return Grade(outcome, counts, pick(known(counts), 0.0, UNKNOWN))


def findings(case: Case, car: CarView) -> list[Finding]:
    """Return a finding for each axle when the request is about winter and the place has winter rules."""
    return [_explain(view, grade) for view, grade in grades(case, car)]


def _explain(view: AxleView, grade: Grade) -> Finding:
    winter = view.pack.winter
    basis = view.limits.winter_speed_floor_kmh.basis if winter is None else winter.basis
    marks = () if winter is None else winter.markings
    mark = next((each for each in marks if each.marking == "M+S"), None)
    remedy: Remedy | None = Remedy(say("tyres marked 3PMSF"), tyre_pointer(view.name), "marking", equals="3PMSF")
    if grade.outcome == MET:
        message, remedy = say("The tyre counts as a winter tyre here."), None
    elif is_open(grade.outcome):
        message = say(
            "M+S alone counts here only for tyres built up to a certain day, and a request does not say when."
        )
    elif view.then.facts.winter_mark == 0.0:
        message = say("The tyre has no winter mark (3PMSF, or M+S where that counts).")
    else:
        message = say("M+S alone does not make a winter tyre here.")
        if mark is not None and mark.used_to is not None:
            day = day_in_words(mark.used_to)
            message = say("M+S alone does not make a winter tyre here after {day}.", day=day)
        basis = basis if mark is None else mark.basis
    return Finding(CODE, view.name, grade.outcome, message, None, None, None, basis, remedy)
