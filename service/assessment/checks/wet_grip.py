"""From which speed does the tyre float on standing water, and which axle floats first?"""

from __future__ import annotations

from service.assessment.comparison import AxleView, CarView
from service.assessment.grade import Check, Grade, finite, unknown
from service.assessment.missing import deflection_remedy
from service.assessment.words import plain, signed, tyre_pointer
from service.core.findings import ADVISORY, NOT_ASSESSED, Basis, Finding, Remedy
from service.core.sources import basis

ONSET = Basis(
    "project_estimate",
    f"level: {basis('GALLAWAY-1979').reference}; width factor: this project's, pattern and compound not modelled",
    "own",
)
# An order that worsens by less than this is well within the estimate: no change to be alarmed at.
ORDER_TOLERANCE_PERCENT = 2.0
# A lead of less than this reads as "at the same speed".
WORTH_A_WORD_PERCENT = 0.5


def _grade_onset(view: AxleView) -> Grade:
    change = view.change.aquaplaning_onset_percent.value
    limit = view.limits.aquaplaning_onset_change_advisory_percent.value
    return Grade(ADVISORY * (change < limit) + unknown(change), change, limit)


def _explain_onset(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = "The onset of aquaplaning cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(view)
        return Finding("wet.aquaplaning", view.name, grade.outcome, message, None, None, "%", ONSET, remedy)
    _, low, high = view.change.aquaplaning_onset_percent
    if grade.measured == 0.0:
        message = "The speed at which the tyre floats on standing water does not change."
    else:
        way = "earlier" if grade.measured < 0.0 else "later"
        near, far = sorted((abs(low), abs(high)))
        message = (
            f"The tyre floats on standing water at a speed about {plain(abs(grade.measured))} % {way} "
            f"(band {plain(near)} to {plain(far)} %)."
        )
    if grade.outcome == ADVISORY:
        message = f"{message} Slow down sooner in heavy rain."
        remedy = _remedy(view, grade.limit)
    return Finding(
        "wet.aquaplaning", view.name, grade.outcome, message, grade.measured, grade.limit, "%", ONSET, remedy
    )


def _remedy(view: AxleView, limit_percent: float) -> Remedy:
    # The onset goes with the inverse square root of the patch's width, which goes with the nominal width.
    now, then = view.now.facts.nominal_width_mm, view.then.facts.nominal_width_mm
    width = now * (then / now) * ((100.0 + view.change.aquaplaning_onset_percent.value) / (100.0 + limit_percent)) ** 2
    text = f"a tyre about {plain(width - 5.0)} mm wide or narrower, or deeper tread"
    return Remedy(text, tyre_pointer(view.name), "nominal_width_mm", at_most=width - 5.0, unit="mm")


def _grade_order(car: CarView) -> Grade:
    then, now = car.change.rear_onset_lead_percent, car.change.rear_onset_lead_percent_present
    first_and_worse = (then < 0.0) & (then < now - ORDER_TOLERANCE_PERCENT)
    outcome = ADVISORY * first_and_worse + unknown(then - now)
    return Grade(outcome * (not car.vehicle.is_trailer), then, 0.0)


def _explain_order(car: CarView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = "Which axle floats first cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(car.front, car.rear)
    elif grade.outcome == ADVISORY:
        message = (
            f"The rear axle floats about {plain(-grade.measured)} % before the front, more than now "
            f"({signed(car.change.rear_onset_lead_percent_present, 0)} %): the rear is lost first in standing water."
        )
        remedy = _order_remedy(car)
    elif grade.measured < -WORTH_A_WORD_PERCENT:
        message = f"The rear axle floats about {plain(-grade.measured)} % before the front, about as now or less so."
    elif grade.measured > WORTH_A_WORD_PERCENT:
        message = f"The front axle floats about {plain(grade.measured)} % before the rear, which is the safer order."
    else:
        message = "Both axles float at about the same speed."
    measured = finite(grade.measured)
    return Finding("wet.axle_order", "vehicle", grade.outcome, message, measured, grade.limit, "%", ONSET, remedy)


def _order_remedy(car: CarView) -> Remedy:
    # As for one axle: the rear must float no earlier, against the front, than now or than at the same speed.
    lead, allowed = car.change.rear_onset_lead_percent, min(car.change.rear_onset_lead_percent_present, 0.0)
    width = car.rear.then.facts.nominal_width_mm * ((100.0 + lead) / (100.0 + allowed)) ** 2 - 5.0
    text = f"rear tyres about {plain(width)} mm wide or narrower with these front ones, or deeper tread at the rear"
    return Remedy(text, tyre_pointer("rear"), "nominal_width_mm", at_most=width, unit="mm")


AQUAPLANING = Check("wet.aquaplaning", _grade_onset, _explain_onset)
AXLE_ORDER = Check("wet.axle_order", _grade_order, _explain_order)
