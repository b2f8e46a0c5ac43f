"""Do the tyres carry as much as the present ones do?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import basis

PRESENT = basis("COMMON-PRACTICE", "the proposed tyres carry no less than the present ones")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    then, now = view.then.load.axle_capacity_kg, view.now.load.axle_capacity_kg
    # The speed takes from each tyre's load what its own symbol says, and whether enough is left is asked by
    # `load.capacity`. A tyre of the same index is no weaker for being slower.
    weaker = (then < now) & (view.then.facts.rated_kg < view.now.facts.rated_kg)
    return Grade(worst(open_question=unknown(then - now), advisory=weaker), then, now)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message, remedy = _not_comparable(view, grade)
    elif grade.outcome == ADVISORY:
        less = apart(grade.limit - grade.measured, 0.0, 0, "kg")
        message = say("The axle's tyres carry {less} less than the present ones.", less=less)
        message = sentences(message, _still_enough(view))
        remedy = index_remedy(view, grade.limit)
    elif grade.measured < grade.limit:
        message = say(
            "The load index is no lower than the present one; at top speed the speed symbol keeps less of it."
        )
    elif plain(view.change.load_capacity_percent, 1) == "0":
        message = say("The axle's tyres carry as much as the present ones.")
    else:
        more = plain(view.change.load_capacity_percent, 1, "%")
        message = say("The axle's tyres carry {more} more than the present ones.", more=more)
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("load.below_present", view.name, grade.outcome, message, measured, limit, "kg", PRESENT, remedy)


def _not_comparable(view: AxleView, grade: Grade) -> tuple[Said, Remedy]:
    present = unknown(grade.limit)
    pointer = f"/vehicle/{view.name}/fitted/tyre/size" if present else tyre_pointer(view.name)
    facts = view.now.facts if present else view.then.facts
    if known(facts.rated_kg) and unknown(facts.speed_capability_kmh):
        message = say(
            "The loads cannot be compared: at this speed that of the proposed tyre is for its maker to state."
        )
        if present:
            message = say(
                "The loads cannot be compared: at this speed that of the present tyre is for its maker to state."
            )
        return message, Remedy(say("the tyre maker's statement for this speed"), pointer, "speed_symbol")
    if present:
        message = say(
            "Present and proposed load cannot be compared: the present tyre states no load index or speed symbol."
        )
        text = say("state load index and speed symbol of the present tyre")
        return message, Remedy(text, pointer, "service_description")
    message = say(
        "Present and proposed load cannot be compared: the proposed tyre states no load index or speed symbol."
    )
    text = say("state load index and speed symbol of the proposed tyre")
    return message, Remedy(text, pointer, "service_description")


def _still_enough(view: AxleView) -> str:
    carried, mass = view.then.load.axle_capacity_kg, view.axle.max_axle_mass_kg
    if carried < mass or view.axle.mass_assumed:
        return ""
    return say(
        "They still carry the axle: {carried} for {mass}.", carried=plain(carried, 0, "kg"), mass=plain(mass, 0, "kg")
    )


BELOW_PRESENT = AxleCheck("load.below_present", _grade, _explain)
