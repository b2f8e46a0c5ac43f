"""From which speed does the tyre float on standing water, and which axle floats first?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import apart, plain, span, tyre_pointer
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM, standing_water_onset_kmh
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, Finding, Remedy, worst
from service.core.numeric import known_or, unknown
from service.core.sources import SOURCES, basis

LEVEL = f"level after {SOURCES['GALLAWAY-1979'].title} (a quotation was read)"
ONSET = basis("PROJECT", f"{LEVEL}, effect of width its own; tread pattern and compound are not in it")
# A lead of less than this reads as "at the same speed".
WORTH_A_WORD_PERCENT = 0.5
WIDTH_STEP_MM = 5.0


def _grade_onset(view: AxleView) -> Grade:
    change = view.change.aquaplaning_onset_percent.value
    limit = view.limits.aquaplaning_onset_change_advisory_percent.value
    # A worn tyre that stays as it is has its own finding, on its tread.
    warned = (change < limit) | (_worn(view) & (change < -LAST_BIT))
    return Grade(worst(not_assessed=unknown(change), advisory=warned), change, limit)


def _worn(view: AxleView) -> bool:
    """Return whether the tread is so low that the formula, which hardly minds it, is too kind."""
    return view.then.facts.tread_depth_mm < view.limits.tread_depth_advisory_mm.value


def _explain_onset(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = "The onset of aquaplaning cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(view)
        return Finding("wet.aquaplaning", view.name, grade.outcome, message, None, None, "%", ONSET, remedy)
    _, low, high = view.change.aquaplaning_onset_percent
    change = plain(abs(grade.measured))
    if change == "0":
        how = "does not change" if grade.measured == 0.0 else "hardly changes"
        message = f"The speed from which the tyre floats on standing water {how}."
    else:
        way = "lower" if grade.measured < 0.0 else "higher"
        near, far = (plain(end) for end in sorted((abs(low), abs(high))))
        band = "" if near == far else f" (band {near} to {far} %)"
        message = f"The tyre floats on standing water from a speed about {change} % {way}{band}."
    if _worn(view) and grade.measured < -LAST_BIT:
        message = f"{message} With so little tread more is lost than this estimate tells."
    if grade.outcome == ADVISORY:
        message = f"{message} Slow down sooner in heavy rain."
        remedy = _remedy(view, grade.limit)
    return Finding(
        "wet.aquaplaning", view.name, grade.outcome, message, grade.measured, grade.limit, "%", ONSET, remedy
    )


def _remedy(view: AxleView, limit_percent: float) -> Remedy:
    """Return the one change that undoes the cause: deeper tread, more pressure, or less width."""
    facts, name = view.then.facts, view.name
    needed = (100.0 + limit_percent) / (100.0 + view.change.aquaplaning_onset_percent.value)
    pressure, before = view.then.behaviour.pressure_kpa, view.now.behaviour.pressure_kpa
    depth, depth_now = (known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM) for wheel in (view.then, view.now))
    deep = max(depth_now, view.limits.tread_depth_advisory_mm.value)
    level = standing_water_onset_kmh(pressure, depth)
    if _worn(view) or standing_water_onset_kmh(pressure, deep) >= needed * level:
        text = f"a tread depth of {span(deep, None, 'mm', 1)}"
        return Remedy(text, f"/candidate/{name}/tyre/tread_depth_mm", "tread_depth_mm", deep, unit="mm")
    if standing_water_onset_kmh(before, depth) >= needed * level:
        text = f"{span(before, None, 'kPa')}, as at present"
        return Remedy(text, f"/candidate/{name}/pressure_kpa", "pressure_kpa", before, unit="kPa")
    # The onset goes with the inverse square root of the patch's width, which goes with the nominal width.
    width = facts.nominal_width_mm / needed**2 - 5.0
    return Remedy(
        f"a tyre {_narrower(width)}",
        tyre_pointer(name),
        "nominal_width_mm",
        at_most=width,
        unit="mm",
    )


def _grade_order(car: CarView) -> Grade:
    then, now = car.change.rear_onset_lead_percent, car.change.rear_onset_lead_percent_present
    if car.vehicle.is_trailer:
        return Grade(MET, then, 0.0)
    first_and_worse = (then < 0.0) & (then < now + car.limits.wet_order_change_advisory_percent.value)
    return Grade(worst(not_assessed=unknown(then - now), advisory=first_and_worse), then, 0.0)


def _explain_order(car: CarView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = "Which axle floats first cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(car.front, car.rear)
    elif grade.outcome == ADVISORY:
        message = (
            f"On standing water the rear axle floats from {_beside_front(grade.measured)}, now from "
            f"{_beside_front(car.change.rear_onset_lead_percent_present)}: the rear lets go first."
        )
        remedy = _order_remedy(car)
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


def _narrower(width_mm: float) -> str:
    """Return a greatest width in words, down to the steps that tyres come in."""
    return f"about {plain(WIDTH_STEP_MM * (width_mm // WIDTH_STEP_MM))} mm wide or narrower"


def _order_remedy(car: CarView) -> Remedy:
    """Return the one change at the rear that undoes the order: deeper tread, more pressure, or less width."""
    rear, front = car.rear.then, car.front.then
    # As for one axle: the rear must float no earlier, against the front, than now or than at the same speed.
    allowed = min(car.change.rear_onset_lead_percent_present, 0.0)
    needed = (100.0 + allowed) / (100.0 + car.change.rear_onset_lead_percent)
    pressure, before = rear.behaviour.pressure_kpa, car.rear.now.behaviour.pressure_kpa
    depth, other = (known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM) for wheel in (rear, front))
    level = standing_water_onset_kmh(pressure, depth)
    if standing_water_onset_kmh(pressure, other) >= needed * level:
        text = f"tread as deep at the rear as in front: {span(other, None, 'mm', 1)}"
        return Remedy(text, "/candidate/rear/tyre/tread_depth_mm", "tread_depth_mm", other, unit="mm")
    if standing_water_onset_kmh(before, depth) >= needed * level:
        text = f"{span(before, None, 'kPa')} at the rear, as at present"
        return Remedy(text, "/candidate/rear/pressure_kpa", "pressure_kpa", before, unit="kPa")
    width = rear.facts.nominal_width_mm / needed**2 - 5.0
    text = f"rear tyres {_narrower(width)} with these front ones"
    return Remedy(text, tyre_pointer("rear"), "nominal_width_mm", at_most=width, unit="mm")


AQUAPLANING = Check("wet.aquaplaning", _grade_onset, _explain_onset)
AXLE_ORDER = Check("wet.axle_order", _grade_order, _explain_order)
