"""Where the wheel is tried on the car before it runs: room is scarce or unknown, or an edge comes much nearer."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, NOT_ASSESSED, Finding
from service.core.saying import Said, joined, listed, say

TOWARDS = {
    "clearance.inboard": say("strut"),
    "clearance.outboard": say("wing edge"),
    "clearance.radial": say("wheel arch"),
}


def trial_fit(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    """Return the trial fit with what to look at on each axle, empty where it stands about as the present one."""
    scarce = [
        each
        for each in findings
        if each.code in TOWARDS and each.outcome in (ADVISORY, NOT_ASSESSED) and not each.already
    ]
    places = [_place(view, [each for each in scarce if each.axle == view.name]) for view in (car.front, car.rear)]
    named = [place for place in places if place]
    if not named:
        return []
    return [answering(Action("trial_fit", _sentence(car, listed(named), turned=bool(places[0]))), scarce)]


def _sentence(car: CarView, where: Said, *, turned: bool) -> Said:
    """Return what to try; only the front wheels of a vehicle that is driven are turned."""
    if car.vehicle.is_trailer:
        return say("Trial fit on the {place}, at full bump, before the trailer goes on the road.", place=where)
    if car.vehicle.category.startswith("M1"):
        if turned:
            return say(
                "Trial fit on the {place}, at full lock and full bump, before the car goes on the road.", place=where
            )
        return say("Trial fit on the {place}, at full bump, before the car goes on the road.", place=where)
    if turned:
        return say(
            "Trial fit on the {place}, at full lock and full bump, before the vehicle goes on the road.", place=where
        )
    return say("Trial fit on the {place}, at full bump, before the vehicle goes on the road.", place=where)


def _place(view: AxleView, scarce: Sequence[Finding]) -> str:
    """Return the axle and the sides to look at, empty where no side is scarce or unknown, or much nearer than now."""
    change, stays_mm = view.change, view.limits.unmeasured_shift_met_mm.value
    shifts = zip(TOWARDS, (change.inboard_edge_mm, change.outboard_edge_mm, change.radial_edge_mm), strict=True)
    nearer = {code for code, shift in shifts if shift > stays_mm}
    sides = [towards for code, towards in TOWARDS.items() if code in nearer or code in {each.code for each in scarce}]
    if not sides:
        return ""
    if view.name == "front":
        return say("front axle ({sides})", sides=joined(sides))
    return say("rear axle ({sides})", sides=joined(sides))
