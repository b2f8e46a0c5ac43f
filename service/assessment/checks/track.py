"""How does the track change, and is that usual? Whether it is lawful is the rule pack's question (`law.*`)."""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.missing import offset_remedy
from service.assessment.checks.offset_window import offset_advice, usual_track_mm
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, is_open, worst
from service.core.numeric import Num, known, magnitude, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import basis

GEOMETRY = basis("COMMON-PRACTICE", "the track changes by twice the change of offset, whatever the widths (geometry)")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    track, usual = view.change.track_mm, usual_track_mm(view)
    return Grade(worst(not_assessed=unknown(track), advisory=magnitude(track) > usual + LAST_BIT), track, usual)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message = say("The change of track is not known without the offset (ET) of both rims.")
        remedy = offset_remedy(view)
    elif grade.measured == 0.0:
        message = say("The track does not change.")
    else:
        message = _changes(view, grade.measured)
    if grade.outcome == ADVISORY:
        message = sentences(message, say("Steering, wheel bearings and approval want a second look."))
        remedy = offset_advice(view)
    limit = view.limits.track_change_met_percent.basis if grade.outcome == ADVISORY else GEOMETRY
    measured, shown = finite(grade.measured), finite(grade.limit)
    return Finding("track.change", view.name, grade.outcome, message, measured, shown, "mm", limit, remedy)


def _changes(view: AxleView, change_mm: float) -> Said:
    by: str = plain(abs(change_mm), 1, "mm")
    each = plain(0.5 * abs(change_mm), 1, "mm")
    if known(view.axle.track_mm):
        share = plain(100.0 * abs(change_mm) / view.axle.track_mm, 1, "%")
        by = say("{length} ({share})", length=by, share=share)
    if change_mm > 0.0:
        return say("The track grows by {length}: each wheel stands {each} further out.", length=by, each=each)
    return say("The track shrinks by {length}: each wheel stands {each} further in.", length=by, each=each)


TRACK = AxleCheck("track.change", _grade, _explain)
