"""Which axle floats first on standing water, all tyres new?"""

from __future__ import annotations

from service.assessment.checks.aquaplaning_onset import ONSET
from service.assessment.checks.grade import CarCheck, Grade, finite
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import apart
from service.assessment.view.views import CarView
from service.core.findings import ADVISORY, MET, Finding, is_open, worst
from service.core.numeric import Num, unknown
from service.core.saying import Said, say

# A lead of less than this reads as "at the same speed".
WORTH_A_WORD_PERCENT = 0.5


def _grade(car: CarView[Num]) -> Grade[Num]:
    then, now = car.change.rear_onset_lead_percent, car.change.rear_onset_lead_percent_present
    if car.vehicle.is_trailer:
        return Grade(MET, then, 0.0)
    first_and_worse = (then < 0.0) & (then < now + car.limits.wet_order_change_advisory_percent.value)
    return Grade(worst(open_question=unknown(then - now), advisory=first_and_worse), then, 0.0)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message = say("Which axle floats first cannot be estimated from what is known of the tyres.")
        remedy = deflection_remedy(car.front, car.rear)
    elif grade.outcome == ADVISORY:
        message = say(
            "On standing water the rear floats first, from {speed}. Now it floats from {speed_now}. Slow down sooner "
            "in heavy rain.",
            speed=_beside_front(grade.measured),
            speed_now=_beside_front(car.change.rear_onset_lead_percent_present),
        )
    elif grade.measured < -WORTH_A_WORD_PERCENT:
        speed = _beside_front(grade.measured)
        message = say("The rear axle floats from {speed}, which is no worse than now.", speed=speed)
    elif grade.measured > WORTH_A_WORD_PERCENT:
        speed = _beside_front(grade.measured)
        message = say("The rear axle floats from {speed}: the front floats first, the safer order.", speed=speed)
    else:
        message = say("Both axles float from about the same speed.")
    measured = finite(grade.measured)
    return Finding("wet.axle_order", "vehicle", grade.outcome, message, measured, grade.limit, "%", ONSET, remedy)


def _beside_front(lead_percent: float) -> Said:
    share = apart(abs(lead_percent), 0.0, 0, "%")
    if share == "0 %":
        # Say: behind "the rear floats from"
        return say("the same speed as the front")
    if lead_percent < 0.0:
        # Say: behind "the rear floats from"
        return say("a speed about {share} below the front's", share=share)
    # Say: behind "the rear floats from"
    return say("a speed about {share} above the front's", share=share)


AXLE_ORDER = CarCheck("wet.axle_order", _grade, _explain)
