"""From which speed does the tyre float on standing water?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, Check, Grade
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import plain, span, tyre_pointer
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM, standing_water_onset_kmh
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, Remedy, is_open, worst
from service.core.numeric import known_or, unknown
from service.core.sources import SOURCES, basis

LEVEL = f"level after {SOURCES['GALLAWAY-1979'].title} (a quotation was read)"
ONSET = basis("PROJECT", f"{LEVEL}, effect of width its own; tread pattern and compound are not in it")
WIDTH_STEP_MM = 5.0


def _grade(view: AxleView) -> Grade:
    change = view.change.aquaplaning_onset_percent.value
    limit = view.limits.aquaplaning_onset_change_advisory_percent.value
    # A worn tyre that stays as it is has its own finding, on its tread.
    warned = (change < limit) | (_worn(view) & (change < -LAST_BIT))
    return Grade(worst(open_question=unknown(change), advisory=warned), change, limit)


def _worn(view: AxleView) -> bool:
    """Return whether the tread is so low that the formula, which hardly minds it, is too kind."""
    return view.then.facts.tread_depth_mm < view.limits.tread_depth_advisory_mm.value


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
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
    """Return the one change that undoes the cause, deeper tread or less width; another finding orders the pressure."""
    facts, name = view.then.facts, view.name
    needed = (100.0 + limit_percent) / (100.0 + view.change.aquaplaning_onset_percent.value)
    pressure = view.then.behaviour.pressure_kpa
    depth, depth_now = (known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM) for wheel in (view.then, view.now))
    deep = max(depth_now, view.limits.tread_depth_advisory_mm.value)
    level = standing_water_onset_kmh(pressure, depth)
    if _worn(view) or standing_water_onset_kmh(pressure, deep) >= needed * level:
        text = f"a tread depth of {span(deep, None, 'mm', 1)}"
        return Remedy(text, f"/candidate/{name}/tyre/tread_depth_mm", "tread_depth_mm", deep, unit="mm")
    # The onset goes with the inverse square root of the patch's width, which goes with the nominal width.
    width = facts.nominal_width_mm / needed**2 - 5.0
    return Remedy(
        f"a tyre {narrower(width)}",
        tyre_pointer(name),
        "nominal_width_mm",
        at_most=width,
        unit="mm",
    )


def narrower(width_mm: float) -> str:
    """Return a greatest width in words, down to the steps that tyres come in."""
    return f"about {plain(WIDTH_STEP_MM * (width_mm // WIDTH_STEP_MM))} mm wide or narrower"


AQUAPLANING = Check("wet.aquaplaning", _grade, _explain)
