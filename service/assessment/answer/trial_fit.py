"""Where the wheel is tried on the car before it runs: room is scarce or unknown, or an edge comes much nearer."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, NOT_ASSESSED, Finding

TOWARDS = {"clearance.inboard": "strut", "clearance.outboard": "wing edge", "clearance.radial": "wheel arch"}


def trial_fit(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    """Return the trial fit with what to look at on each axle, empty where it stands about as the present one."""
    scarce = [
        each
        for each in findings
        if each.code in TOWARDS and each.outcome in (ADVISORY, NOT_ASSESSED) and not each.already
    ]
    places = [_place(view, [each for each in scarce if each.axle == view.name]) for view in (car.front, car.rear)]
    where = " and ".join(place for place in places if place)
    if not where:
        return []
    # Only the front wheels of a vehicle that is driven are turned.
    turned = "full lock and " if places[0] and not car.vehicle.is_trailer else ""
    text = f"Trial fit on the {where}, at {turned}full bump, before the {_what(car)} goes on the road."
    return [answering(Action("trial_fit", text), scarce)]


def _what(car: CarView) -> str:
    return "trailer" if car.vehicle.is_trailer else "car" if car.vehicle.category.startswith("M1") else "vehicle"


def _place(view: AxleView, scarce: Sequence[Finding]) -> str:
    """Return the axle and the sides to look at, empty where no side is scarce or unknown, or much nearer than now."""
    change, stays_mm = view.change, view.limits.unmeasured_shift_met_mm.value
    shifts = zip(TOWARDS, (change.inboard_edge_mm, change.outboard_edge_mm, change.radial_edge_mm), strict=True)
    nearer = {code for code, shift in shifts if shift > stays_mm}
    sides = [towards for code, towards in TOWARDS.items() if code in nearer or code in {each.code for each in scarce}]
    return f"{view.name} axle ({', '.join(sides)})" if sides else ""
