"""Which offsets serve a wheel: one window for room, twin tyres, track and law, so that no two remedies contradict."""

from __future__ import annotations

from math import inf

from service.assessment.checks.grade import LAST_BIT
from service.assessment.checks.lawful_track import lawful_track_mm
from service.assessment.checks.words import rim_pointer, span, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import Remedy
from service.core.numeric import Num, known, known_or, unknown
from service.core.saying import say
from service.physics.dimensions import service_width_mm


def usual_track_mm(view: AxleView[Num]) -> Num:
    """Return by how much the track may change before it deserves a second look."""
    limits, track = view.limits, view.axle.sure_track_mm
    return known_or(limits.track_change_met_percent.value / 100.0 * track, limits.track_change_met_mm.value)


def _shifts_mm(view: AxleView) -> tuple[float, float]:
    """Return by how much the offset may shrink (negative) and grow against the present one."""
    single = view.axle.wheels_per_side == 1
    half_track = 0.5 * usual_track_mm(view) if single else inf
    inboard, outboard = half_track, half_track
    axle, limits = view.axle, view.limits
    if known(view.change.half_width_mm):
        inboard = min(inboard, _way_mm(view, axle.sure_inboard_mm, limits.clearance_inboard_met_mm.value))
        outboard = min(outboard, _way_mm(view, axle.sure_outboard_mm, limits.clearance_outboard_met_mm.value))
    least, most = -outboard, inboard
    if not single:
        # Both edges of a twin move out with the offset, and the two tyres come together without it.
        least, most = _together_mm(view), min(inboard, outboard)
    narrower, wider = lawful_track_mm(view)
    return max(least, -0.5 * wider), min(most, -0.5 * narrower)


def _way_mm(view: AxleView, room_mm: float, enough_mm: float) -> float:
    """Return how far the middle of the wheel may move towards one side."""
    if unknown(room_mm):
        return view.limits.unmeasured_shift_met_mm.value - view.change.half_width_mm
    # Standing no further than the present wheel is always enough.
    return max(room_mm - enough_mm, 0.0) - view.change.half_width_mm - view.change.growth_sideways_mm


def _together_mm(view: AxleView) -> float:
    now, then = view.now, view.then
    enough = view.limits.clearance_twin_met_mm.value
    width = service_width_mm(then.geometry.section_width_mm, view.limits.service_width_growth_percent.value)
    # What the present offset is says nothing of the proposed twins.
    if unknown(width) or unknown(now.facts.offset_mm):
        return -inf
    # A gap is twice the offset less the width.
    return 0.5 * (enough + width) - now.facts.offset_mm


def offset_window_mm(view: AxleView) -> tuple[float, float]:
    """Return the least and the greatest offset, as marked on a rim, with which no side is in want of room.

    Least above greatest: there is none. A side that was not measured allows what needs no measuring.
    """
    least, most = _shifts_mm(view)
    marked = view.now.facts.offset_mm + view.then.facts.spacer_mm
    return marked + least, marked + most


def unread_offset_mm(view: AxleView) -> tuple[float | None, float | None]:
    """Return between which values the one offset that is not known is enough; None, None where no value is."""
    now, then = view.now.facts, view.then.facts
    least, most = _shifts_mm(view)
    ends = then.offset_mm - most + now.spacer_mm, then.offset_mm - least + now.spacer_mm
    if known(now.offset_mm):
        ends = now.offset_mm + least + then.spacer_mm, now.offset_mm + most + then.spacer_mm
    if not ends[0] <= ends[1] + LAST_BIT:
        return None, None
    return _bound(ends[0]), _bound(ends[1])


def _bound(end: float) -> float | None:
    return end if -inf < end < inf else None


def offset_advice(view: AxleView) -> Remedy:
    """Return the offsets that serve all sides, or a narrower wheel where none does."""
    low, high = offset_window_mm(view)
    if not low <= high + LAST_BIT:
        text = say("fit a narrower wheel, since no offset leaves enough room on both sides")
        return Remedy(text, tyre_pointer(view.name), "nominal_width_mm")
    ends = _bound(low), _bound(high)
    text = say("fit rims with ET {offset}", offset=span(*ends, ""))
    if view.then.facts.spacer_mm:
        text = say("fit rims with ET {offset} on these spacers", offset=span(*ends, ""))
    return Remedy(text, rim_pointer(view.name), "offset_mm", *ends, unit="mm")
