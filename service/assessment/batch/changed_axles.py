"""Which axles a candidate changes, and in words which tyres those are: all four, or two of four."""

from __future__ import annotations

from math import isnan

from service.assessment.case import Axle, Candidate, Fitment, Vehicle
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.core.findings import AxleName
from service.core.saying import Said, capital, say

# Two tyres whose tread differs by less are the same ones.
SAME_TREAD_MM = 0.05
_NUMBERS = {2: say("two"), 4: say("four"), 6: say("six"), 8: say("eight")}


def changed_axles(vehicle: Vehicle, candidate: Candidate) -> list[AxleName]:
    """Return the axles that get another tyre or rim than they have now, or tyres with another tread."""
    pairs = ((vehicle.front, candidate.front), (vehicle.rear, candidate.rear))
    return [axle.name for axle, proposed in pairs if _changes(axle.fitted, proposed)]


def renamed_axles(vehicle: Vehicle, candidate: Candidate) -> int:
    """Return on how many axles the tyre has another designation than now."""
    pairs = ((vehicle.front.fitted, candidate.front), (vehicle.rear.fitted, candidate.rear))
    return sum(now.tyre.designation.canonical != then.tyre.designation.canonical for now, then in pairs)


def change_in_words(vehicle: Vehicle, candidate: Candidate, changed: list[AxleName]) -> Said:
    """Return what a candidate changes in a sentence or two; an axle that stays is named."""
    if not changed:
        return say("As fitted now.")
    front, rear = vehicle.front, vehicle.rear
    every = front.tyres + rear.tyres
    if len(changed) == 1:
        if changed == ["rear"]:
            text = say(
                "{some} of {all}: rear {wheels}; the front stays as it is.",
                some=_NUMBERS[rear.tyres],
                all=_NUMBERS[every],
                wheels=_named(rear, candidate.rear),
            )
        else:
            text = say(
                "{some} of {all}: front {wheels}; the rear stays as it is.",
                some=_NUMBERS[front.tyres],
                all=_NUMBERS[every],
                wheels=_named(front, candidate.front),
            )
        return capital(text)
    one, other = _named(front, candidate.front), _named(rear, candidate.rear)
    if one == other:
        return say("All {count}: {wheels}.", count=_NUMBERS[every], wheels=one)
    return say("Front: {front}. Rear: {rear}.", front=one, rear=other)


def _changes(now: Fitment, then: Fitment) -> bool:
    same = now.tyre.designation.canonical == then.tyre.designation.canonical and now.rim_in_words == then.rim_in_words
    return not same or abs(_tread_mm(now) - _tread_mm(then)) > SAME_TREAD_MM


def _tread_mm(fitted: Fitment) -> float:
    """Return the tread depth; a tyre of which it is not told is a new one."""
    depth = fitted.tyre.tread_depth_mm
    return NEW_TREAD_DEPTH_MM if isnan(depth) else depth


def _named(axle: Axle, proposed: Fitment) -> str:
    tyre, rim = proposed.tyre.designation.canonical, proposed.rim_in_words
    return tyre if rim == axle.fitted.rim_in_words else say("{tyre} on {rim}", tyre=tyre, rim=rim)
