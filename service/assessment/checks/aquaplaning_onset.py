"""From which speed does the tyre float on standing water, both tyres new?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Estimate, Finding, is_open, worst
from service.core.numeric import Num, unknown
from service.core.sources import SOURCES, basis

LEVEL = f"level after {SOURCES['GALLAWAY-1979'].title} (a quotation was read)"
ONSET = basis("PROJECT", f"{LEVEL}, effect of width its own; tread pattern and compound are not in it")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    change = view.change.aquaplaning_onset_percent.value
    limit = view.limits.aquaplaning_onset_change_advisory_percent.value
    return Grade(worst(open_question=unknown(change), advisory=change < limit), change, limit)


def _explain(view: AxleView, grade: Grade) -> Finding:
    if is_open(grade.outcome):
        message = "The onset of aquaplaning cannot be estimated from what is known of the tyres."
        remedy = deflection_remedy(view)
        return Finding("wet.aquaplaning", view.name, grade.outcome, message, None, None, "%", ONSET, remedy)
    message = _words(view.change.aquaplaning_onset_percent)
    if grade.outcome == ADVISORY:
        # No size is named: which one settles it is for load, rim and room to say.
        message = f"{message} Slow down sooner in heavy rain."
    return Finding("wet.aquaplaning", view.name, grade.outcome, message, grade.measured, grade.limit, "%", ONSET)


def _words(change: Estimate[float]) -> str:
    if plain(abs(change.value)) == "0":
        how = "does not change" if change.value == 0.0 else "hardly changes"
        return f"The speed from which the tyre floats on standing water {how}."
    return f"The tyre floats on standing water from a speed about {_way(change.value)}{_band(change)}."


def _way(percent: float) -> str:
    return f"{plain(abs(percent))} % {'lower' if percent < 0.0 else 'higher'}"


def _band(change: Estimate[float]) -> str:
    """Return the band in words: `(6 to 20 %)`, or with both ways where the tread pattern may turn it round."""
    if (change.low < 0.0) != (change.high < 0.0):
        return f" (by pattern and wear anything from {_way(change.low)} to {_way(change.high)})"
    near, far = (plain(end) for end in sorted((abs(change.low), abs(change.high))))
    return "" if near == far else f" ({near} to {far} %)"


AQUAPLANING = AxleCheck("wet.aquaplaning", _grade, _explain)
