"""Do the tyres carry as much as the present ones do?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known, unknown
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
        side = "present" if unknown(grade.limit) else "proposed"
        pointer = f"/vehicle/{view.name}/fitted/tyre/size" if side == "present" else tyre_pointer(view.name)
        facts = view.now.facts if side == "present" else view.then.facts
        if known(facts.rated_kg) and unknown(facts.speed_capability_kmh):
            message = f"The loads cannot be compared: at this speed that of the {side} tyre is for its maker to state."
            ask = Remedy("the tyre maker's statement for this speed", pointer, "speed_symbol")
            return Finding("load.below_present", view.name, grade.outcome, message, None, None, "kg", PRESENT, ask)
        message = f"Present and proposed load cannot be compared: the {side} tyre states no load index or speed symbol."
        remedy = Remedy(f"state load index and speed symbol of the {side} tyre", pointer, "service_description")
    elif grade.outcome == ADVISORY:
        less = apart(grade.limit - grade.measured, 0.0)
        message = f"The axle's tyres carry {less} kg less than the present ones.{_still_enough(view)}"
        remedy = index_remedy(view, grade.limit)
    elif grade.measured < grade.limit:
        message = "The load index is no lower than the present one; at top speed the speed symbol keeps less of it."
    else:
        more = plain(view.change.load_capacity_percent, 1)
        message = f"The axle's tyres carry {more} % more than the present ones."
        if more == "0":
            message = "The axle's tyres carry as much as the present ones."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("load.below_present", view.name, grade.outcome, message, measured, limit, "kg", PRESENT, remedy)


def _still_enough(view: AxleView) -> str:
    carried, mass = view.then.load.axle_capacity_kg, view.axle.max_axle_mass_kg
    return f" They still carry the axle: {plain(carried)} kg for {plain(mass)} kg." if carried >= mass else ""


BELOW_PRESENT = AxleCheck("load.below_present", _grade, _explain)
