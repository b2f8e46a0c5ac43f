"""How does the track change, and is that usual? Whether it is lawful is the rule pack's question (`law.*`)."""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.missing import offset_remedy
from service.assessment.checks.words import plain, rim_pointer, signed, span
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding, Remedy, is_open, worst
from service.core.numeric import known, known_or, unknown
from service.core.sources import basis

GEOMETRY = basis("COMMON-PRACTICE", "the track changes by twice the change of offset, whatever the widths (geometry)")


def _usual_mm(view: AxleView) -> float:
    """Return by how much the track may change before it deserves a second look."""
    limits, track = view.limits, view.axle.track_mm
    return known_or(limits.track_change_met_percent.value / 100.0 * track, limits.track_change_met_mm.value)


def _grade(view: AxleView) -> Grade:
    track, usual = view.change.track_mm, _usual_mm(view)
    return Grade(worst(open_question=unknown(track), advisory=abs(track) > usual + LAST_BIT), track, usual)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    if is_open(grade.outcome):
        message = "The change of track is not known: a rim states no offset (ET)."
        remedy = offset_remedy(view)
    elif grade.measured == 0.0:
        message = "The track does not change."
    else:
        scrub = signed(view.change.scrub_radius_mm)
        share = ""
        if known(view.axle.track_mm):
            share = f" ({plain(100.0 * abs(grade.measured) / view.axle.track_mm, 1)} %)"
        message = f"The track changes by {signed(grade.measured)} mm{share} and the scrub radius by {scrub} mm."
    if grade.outcome == ADVISORY:
        message = f"{message} Steering, wheel bearings and approval want a second look."
        # The track moves by twice the offset.
        now, half = view.now.facts.offset_mm, 0.5 * grade.limit
        low, high = now - half, now + half
        remedy = Remedy(f"ET {span(low, high, '')}", rim_pointer(view.name), "offset_mm", low, high, unit="mm")
    limit = view.limits.track_change_met_percent.basis if grade.outcome == ADVISORY else GEOMETRY
    measured, shown = finite(grade.measured), finite(grade.limit)
    return Finding("track.change", view.name, grade.outcome, message, measured, shown, "mm", limit, remedy)


TRACK = Check("track.change", _grade, _explain)
