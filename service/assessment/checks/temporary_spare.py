"""Is a temporary spare kept off regular use?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import MET, NOT_MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num, pick
from service.core.saying import say


def _grade(view: AxleView[Num]) -> Grade[Num]:
    spare = view.then.facts.temporary_spare
    most = pick(spare == 1.0, view.limits.temporary_spare_speed_kmh.value, UNKNOWN)
    return Grade(worst(not_met=spare == 1.0), view.then.facts.speed_capability_kmh, most)


def _explain(view: AxleView, grade: Grade) -> Finding:
    limit = view.limits.temporary_spare_speed_kmh
    if grade.outcome == MET:
        message, remedy = say("The tyre is made for regular use."), None
        return Finding("tyre.temporary_spare", view.name, MET, message, None, None, None, limit.basis, remedy)
    message = say(
        "A temporary spare (T) takes the car to the next workshop, at {speed} at most. The speed symbol on it is the "
        "tyre's own rating, not the speed allowed.",
        speed=plain(limit.value, 0, "km/h"),
    )
    remedy = Remedy(say("fit a tyre for regular use"), tyre_pointer(view.name), "system", equals="regular")
    measured = finite(grade.measured)
    return Finding(
        "tyre.temporary_spare", view.name, NOT_MET, message, measured, limit.value, "km/h", limit.basis, remedy
    )


SPARE = AxleCheck("tyre.temporary_spare", _grade, _explain)
