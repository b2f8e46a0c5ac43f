"""Does the rim's load rating cover its share of the axle's maximum mass?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, Num, known_or, pick, unknown
from service.core.saying import say
from service.core.sources import basis

SHARE = basis("COMMON-PRACTICE", "each wheel carries its equal share of the maximum axle mass")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    same = view.change.same_rim == 1.0
    rating = known_or(view.then.facts.rim_rating_kg, pick(same, view.now.facts.rim_rating_kg, UNKNOWN))
    share = view.axle.max_axle_mass_kg / view.axle.tyres
    outcome = worst(
        not_met=rating < share,
        not_assessed=unknown(rating) & (view.change.same_rim == 0.0),
        open_question=unknown(rating),
    )
    return Grade(outcome, rating, share)


def _explain(view: AxleView, grade: Grade) -> Finding:
    field = f"/candidate/{view.name}/rim/load_rating_kg"
    # Rounded up: what is short of it by less than a kilogram is short of it.
    share = plain(grade.limit + 0.5 - LAST_BIT, 0, "kg")
    remedy = None
    if is_open(grade.outcome):
        message = say("The rim's load rating is not known. Each wheel has to carry {share}.", share=share)
        remedy = Remedy(
            say("read the load rating on the back of the wheel: {share} is enough", share=share),
            field,
            "load_rating_kg",
            grade.limit,
            unit="kg",
        )
    elif grade.outcome == NOT_MET:
        rated = plain(grade.measured, 0, "kg")
        message = say("The rim is rated for {rated} only; each wheel has to carry {share}.", rated=rated, share=share)
        text = say("other rims, rated for {share} or more", share=share)
        remedy = Remedy(text, field, "load_rating_kg", grade.limit, unit="kg")
    else:
        rated = plain(grade.measured, 0, "kg")
        message = say("The rim is rated for {rated}; each wheel has to carry {share}.", rated=rated, share=share)
    measured = finite(grade.measured)
    return Finding("rim.load_rating", view.name, grade.outcome, message, measured, grade.limit, "kg", SHARE, remedy)


LOAD_RATING = AxleCheck("rim.load_rating", _grade, _explain)
