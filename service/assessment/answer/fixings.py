"""How the wheels go on: spigot rings, bolts and their seats, torque, sensors."""

from __future__ import annotations

from collections.abc import Sequence
from math import isnan
from operator import attrgetter

from service.assessment.answer.action import Action, answering
from service.assessment.answer.spacers import spacers
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, Finding
from service.core.saying import say, sentences

# Tightened again after so far: common practice, no source.
TORQUE = Action("torque", say("Tighten the wheel bolts to the vehicle maker's figure, and again after 50 to 100 km."))
SENSORS = Action(
    "pressure_sensors", say("Move the tyre pressure sensors over, or teach in new ones, where the vehicle has them.")
)

OF_THE_RIM = attrgetter("rim_width_in", "rim_code", "offset_mm", "centre_bore_mm")


def fixings(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    """Return what is done to fix the wheels; bolts are looked at where the rims are not those of today."""
    views = (car.front, car.rear)
    other = [view.name for view in views if differ(OF_THE_RIM(view.now.facts), OF_THE_RIM(view.then.facts))]
    first = [*_spigot_rings(findings), *spacers(views, findings)]
    if not other:
        return [*first, TORQUE]
    # A trailer or a caravan has no pressure monitoring of its own to be moved over.
    return [*first, _bolt_seat(other, views), TORQUE, *([] if car.vehicle.is_trailer else [SENSORS])]


def _bolt_seat(axles: Sequence[str], views: Sequence[AxleView]) -> Action:
    if len(axles) > 1:
        text = say("Check on both axles that the bolts belong to these rims: seat (cone or ball) and length.")
    elif axles[0] == "front":
        text = say("Check on the front axle that the bolts belong to these rims: seat (cone or ball) and length.")
    else:
        text = say("Check on the rear axle that the bolts belong to these rims: seat (cone or ball) and length.")
    if not any(view.then.facts.spacer_mm for view in views):
        text = sentences(text, say("Spacers are not reckoned with: fit none."))
    return Action("bolt_seat", text)


def differ(now: tuple[float, ...], then: tuple[float, ...]) -> bool:
    """Return whether two rows of numbers differ; two that are both not known count as alike."""
    return any(one != other and not (isnan(one) and isnan(other)) for one, other in zip(now, then, strict=True))


def _spigot_rings(findings: Sequence[Finding]) -> list[Action]:
    wide = [each for each in findings if each.code == "rim.centre_bore" and each.outcome == ADVISORY]
    return [_rings(each, each.measured) for each in wide if each.measured is not None]


def _rings(finding: Finding, outer_mm: float) -> Action:
    """Return the rings of one axle; where nobody measured the hub, their inner diameter is found there."""
    axle, inner_mm = finding.axle, finding.limit
    # A ring is ordered by its millimetres, whatever units the answer is in.
    outer, at_front = plain(outer_mm, 1), axle == "front"
    if inner_mm is None:
        text = (
            say("Fit spigot rings on the front axle: {outer} mm outside, inside as the hub is measured.", outer=outer)
            if at_front
            else say(
                "Fit spigot rings on the rear axle: {outer} mm outside, inside as the hub is measured.", outer=outer
            )
        )
    else:
        inner = plain(inner_mm, 1)
        text = (
            say("Fit spigot rings {outer} to {inner} mm on the front axle.", outer=outer, inner=inner)
            if at_front
            else say("Fit spigot rings {outer} to {inner} mm on the rear axle.", outer=outer, inner=inner)
        )
    line = Action(f"spigot_rings_{axle}", text, ring_outer_mm=outer_mm, ring_inner_mm=inner_mm)
    return answering(line, (finding,))
