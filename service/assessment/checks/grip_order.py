"""Does the rear axle lose cornering stiffness for its load against the front?"""

from __future__ import annotations

from service.assessment.checks.balance import NOT_STEERED
from service.assessment.checks.grade import CarCheck, Grade, finite
from service.assessment.checks.missing import stiffness_remedy
from service.assessment.checks.words import apart, signed
from service.assessment.view.views import CarView
from service.core.findings import MET, Finding, is_open, worst
from service.core.numeric import Num, unknown
from service.core.saying import Said, say
from service.core.sources import basis

ORDER = basis("PROJECT", "cornering stiffness over load, rear against front")


def _grade(car: CarView[Num]) -> Grade[Num]:
    change = car.change.grip_order_percent
    least = car.limits.grip_order_change_advisory_percent.value
    if car.vehicle.is_trailer:
        return Grade(MET, change, least)
    return Grade(worst(open_question=unknown(change), advisory=change < least), change, least)


def _explain(car: CarView, grade: Grade) -> Finding:
    if car.vehicle.is_trailer:
        return Finding("balance.grip_order", "vehicle", MET, NOT_STEERED, None, None, None, ORDER)
    remedy = None
    if is_open(grade.outcome):
        message = say("Which axle slides first in the dry cannot be estimated from what is known of the tyres.")
        remedy = stiffness_remedy(car.front, car.rear)
    elif grade.outcome == MET and grade.measured == 0.0:
        message = say("Front and rear share the cornering stiffness as they do now.")
    elif grade.outcome == MET:
        message = _hardly(grade.measured)
    else:
        message = say(
            "In the dry the rear loses {share} of cornering stiffness against the front: it may slide earlier.",
            share=apart(-grade.measured, -grade.limit, 1, "%"),
        )
    measured = finite(grade.measured)
    return Finding("balance.grip_order", "vehicle", grade.outcome, message, measured, grade.limit, "%", ORDER, remedy)


def _hardly(change_percent: float) -> Said:
    change = signed(change_percent, 1, "%")
    if change_percent < 0.0:
        return say(
            "The rear's cornering stiffness changes by {change} against the front's, which is hardly a change.",
            change=change,
        )
    return say(
        "The rear's cornering stiffness changes by {change} against the front's, so the rear is no worse off.",
        change=change,
    )


GRIP_ORDER = CarCheck("balance.grip_order", _grade, _explain)
