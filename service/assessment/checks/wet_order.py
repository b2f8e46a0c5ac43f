"""Which axle floats first on standing water?"""

from __future__ import annotations

from service.assessment.checks.aquaplaning_onset import ONSET, narrower
from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import apart, span, tyre_pointer
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM, standing_water_onset_kmh
from service.assessment.view.views import CarView
from service.core.findings import ADVISORY, MET, Finding, Remedy, is_open, worst
from service.core.numeric import known_or, unknown

# A lead of less than this reads as "at the same speed".
WORTH_A_WORD_PERCENT = 0.5


def _grade(car: CarView) -> Grade:
    then, now = car.change.rear_onset_lead_percent, car.change.rear_onset_lead_percent_present
    if car.vehicle.is_trailer:
        return Grade(MET, then, 0.0)
    first_and_worse = (then < 0.0) & (then < now + car.limits.wet_order_change_advisory_percent.value)
    return Grade(worst(open_question=unknown(then - now), advisory=first_and_worse), then, 0.0)


def _explain(car: CarView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message = "Which axle floats first cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(car.front, car.rear)
    elif grade.outcome == ADVISORY:
        message = (
            f"On standing water the rear axle floats from {_beside_front(grade.measured)}, now from "
            f"{_beside_front(car.change.rear_onset_lead_percent_present)}: the rear lets go first."
        )
        remedy = _remedy(car)
    elif grade.measured < -WORTH_A_WORD_PERCENT:
        message = f"The rear axle floats from {_beside_front(grade.measured)}, which is no worse than now."
    elif grade.measured > WORTH_A_WORD_PERCENT:
        message = f"The rear axle floats from {_beside_front(grade.measured)}: the front floats first, the safer order."
    else:
        message = "Both axles float from about the same speed."
    measured = finite(grade.measured)
    return Finding("wet.axle_order", "vehicle", grade.outcome, message, measured, grade.limit, "%", ONSET, remedy)


def _beside_front(lead_percent: float) -> str:
    text = apart(abs(lead_percent), 0.0)
    if text == "0":
        return "the same speed as the front"
    return f"a speed about {text} % {'below' if lead_percent < 0.0 else 'above'} the front's"


def _remedy(car: CarView) -> Remedy:
    """Return the one change at the rear that undoes the order, deeper tread or less width; the pressure is ordered."""
    rear, front = car.rear.then, car.front.then
    # As for one axle: the rear must float no earlier, against the front, than now or than at the same speed.
    allowed = min(car.change.rear_onset_lead_percent_present, 0.0)
    needed = (100.0 + allowed) / (100.0 + car.change.rear_onset_lead_percent)
    pressure = rear.behaviour.pressure_kpa
    depth, other = (known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM) for wheel in (rear, front))
    level = standing_water_onset_kmh(pressure, depth)
    if standing_water_onset_kmh(pressure, other) >= needed * level:
        text = f"tread as deep at the rear as in front: {span(other, None, 'mm', 1)}"
        return Remedy(text, "/candidate/rear/tyre/tread_depth_mm", "tread_depth_mm", other, unit="mm")
    width = rear.facts.nominal_width_mm / needed**2 - 5.0
    text = f"rear tyres {narrower(width)} with these front ones"
    return Remedy(text, tyre_pointer("rear"), "nominal_width_mm", at_most=width, unit="mm")


AXLE_ORDER = Check("wet.axle_order", _grade, _explain)
