"""How does the track change? Whether that is lawful is the rule pack's question (`law.*`)."""

from __future__ import annotations

from service.assessment.comparison import AxleView
from service.assessment.grade import Check, Grade, finite, unknown
from service.assessment.missing import offset_remedy
from service.assessment.words import plain, signed
from service.core.findings import NOT_ASSESSED, Finding
from service.core.sources import basis

GEOMETRY = basis("COMMON-PRACTICE", "geometry: the track changes by twice the change of offset, whatever the widths")


def _grade(view: AxleView) -> Grade:
    track = view.change.track_mm
    return Grade(unknown(track), track, track - track)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = "The change of track is not known: a rim states no offset (ET)."
        remedy = offset_remedy(view)
    elif grade.measured == 0.0:
        message = "The track does not change."
    else:
        scrub = signed(view.change.scrub_radius_mm)
        message = f"The track changes by {signed(grade.measured)} mm and the scrub radius by {scrub} mm."
        if view.axle.track_mm == view.axle.track_mm:
            share = plain(100.0 * abs(grade.measured) / view.axle.track_mm, 1)
            message = f"{message[:-1]} ({share} % of the track)."
    return Finding(
        "track.change", view.name, grade.outcome, message, finite(grade.measured), None, "mm", GEOMETRY, remedy
    )


TRACK = Check("track.change", _grade, _explain)
