"""From which speed does the tyre float on standing water, both tyres new?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Estimate, Finding, is_open, worst
from service.core.numeric import Num, unknown
from service.core.saying import Amount, Said, say, sentences
from service.core.sources import SOURCES, basis

LEVEL = f"level after {SOURCES['GALLAWAY-1979'].title} (a quotation was read)"
ONSET = basis("PROJECT", f"{LEVEL}, effect of width its own; tread pattern and compound are not in it")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    change = view.change.aquaplaning_onset_percent.value
    limit = view.limits.aquaplaning_onset_change_advisory_percent.value
    return Grade(worst(open_question=unknown(change), advisory=change < limit), change, limit)


def _explain(view: AxleView, grade: Grade) -> Finding:
    if is_open(grade.outcome):
        message = say("The onset of aquaplaning cannot be estimated from what is known of the tyres.")
        remedy = deflection_remedy(view)
        return Finding("wet.aquaplaning", view.name, grade.outcome, message, None, None, "%", ONSET, remedy)
    message = _words(view.change.aquaplaning_onset_percent)
    if grade.outcome == ADVISORY:
        # No size is named: which one settles it is for load, rim and room to say.
        message = sentences(message, say("Slow down sooner in heavy rain."))
    return Finding("wet.aquaplaning", view.name, grade.outcome, message, grade.measured, grade.limit, "%", ONSET)


def _words(change: Estimate[float]) -> Said:
    share = plain(abs(change.value), 0, "%")
    if plain(abs(change.value)) == "0":
        if change.value == 0.0:
            return say("The speed from which the tyre floats on standing water does not change.")
        return say("The speed from which the tyre floats on standing water hardly changes.")
    if (change.low < 0.0) != (change.high < 0.0):
        return _either_way(change, share)
    return _one_way(change, share)


def _one_way(change: Estimate[float], share: Amount) -> Said:
    near, far = sorted((abs(change.low), abs(change.high)))
    if plain(near) == plain(far):
        if change.value < 0.0:
            return say("The tyre floats on standing water from a speed about {share} lower.", share=share)
        return say("The tyre floats on standing water from a speed about {share} higher.", share=share)
    low, high = Amount(near, "%", bare=True), plain(far, 0, "%")
    if change.value < 0.0:
        return say(
            "The tyre floats on standing water from a speed about {share} lower ({low} to {high}).",
            share=share,
            low=low,
            high=high,
        )
    return say(
        "The tyre floats on standing water from a speed about {share} higher ({low} to {high}).",
        share=share,
        low=low,
        high=high,
    )


def _either_way(change: Estimate[float], share: Amount) -> Said:
    """Return the words where the tread pattern may turn the change round."""
    low, high = plain(abs(change.low), 0, "%"), plain(abs(change.high), 0, "%")
    if change.value < 0.0:
        return say(
            "The tyre floats on standing water from a speed about {share} lower "
            "(by pattern and wear anything from {low} lower to {high} higher).",
            share=share,
            low=low,
            high=high,
        )
    return say(
        "The tyre floats on standing water from a speed about {share} higher "
        "(by pattern and wear anything from {low} lower to {high} higher).",
        share=share,
        low=low,
        high=high,
    )


AQUAPLANING = AxleCheck("wet.aquaplaning", _grade, _explain)
