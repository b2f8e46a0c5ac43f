"""How does the track change, and is that usual? Whether it is lawful is the rule pack's question (`law.*`)."""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.missing import offset_remedy
from service.assessment.checks.offset_window import offset_advice, usual_track_mm
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, is_open, worst
from service.core.numeric import Num, known, magnitude, unknown
from service.core.sources import basis

GEOMETRY = basis("COMMON-PRACTICE", "the track changes by twice the change of offset, whatever the widths (geometry)")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    track, usual = view.change.track_mm, usual_track_mm(view)
    return Grade(worst(not_assessed=unknown(track), advisory=magnitude(track) > usual + LAST_BIT), track, usual)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message = "The change of track is not known without the offset (ET) of both rims."
        remedy = offset_remedy(view)
    elif grade.measured == 0.0:
        message = "The track does not change."
    else:
        share = ""
        if known(view.axle.track_mm):
            share = f" ({plain(100.0 * abs(grade.measured) / view.axle.track_mm, 1)} %)"
        how, way = ("grows", "out") if grade.measured > 0.0 else ("shrinks", "in")
        each = plain(0.5 * abs(grade.measured), 1)
        message = (
            f"The track {how} by {plain(abs(grade.measured), 1)} mm{share}: each wheel stands {each} mm further {way}."
        )
    if grade.outcome == ADVISORY:
        message = f"{message} Steering, wheel bearings and approval want a second look."
        remedy = offset_advice(view)
    limit = view.limits.track_change_met_percent.basis if grade.outcome == ADVISORY else GEOMETRY
    measured, shown = finite(grade.measured), finite(grade.limit)
    return Finding("track.change", view.name, grade.outcome, message, measured, shown, "mm", limit, remedy)


TRACK = AxleCheck("track.change", _grade, _explain)
