"""What the workshop must do when the candidate is fitted, and what the answer never replaces."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf
from operator import attrgetter
from typing import NamedTuple

from service.assessment.answer.verdict import Verdict
from service.assessment.checks.pressure import pressure_is_sound, proposed_pressure_kpa
from service.assessment.checks.words import plain, signed
from service.assessment.view.change import CarChange
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, Finding
from service.core.numeric import unknown

# Beyond this change of circumference electronic systems may need to be told: common practice, no source.
RECALIBRATE_PERCENT = 0.5

CAUTIONS = (
    (
        "This answer does not replace a trial fit by a qualified workshop: at full lock and full bump, with brakes, "
        "struts, lines and arches checked by eye."
    ),
    "The vehicle maker's and the tyre maker's data come first wherever they differ from this answer.",
    "Local law, inspection and insurance decide whether the change is allowed on the road.",
    (
        "Estimates of balance, contact patch and aquaplaning compare sizes only: tread pattern, compound, wear and "
        "suspension matter as much."
    ),
    "Camber is not taken into account in load and pressure.",
)


class Action(NamedTuple):
    """One thing for the workshop to do, in words and, where there are any, with its numbers."""

    code: str
    text: str
    pressure_kpa: float | None = None
    ring_outer_mm: float | None = None
    ring_inner_mm: float | None = None
    speed_kmh: float | None = None


DO_NOT_FIT = Action("do_not_fit", "Do not fit this combination; the findings that are not met say why.")
SETTLE_FIRST = Action("settle_first", "Before fitting, settle what is not known; the findings not assessed say how.")
TORQUE = Action("torque", "Tighten the bolts to the maker's torque, and again after 50 to 100 km.")
STABILITY_CONTROL = Action(
    "stability_control",
    "Reset or recalibrate stability control and tyre pressure monitoring, where the vehicle has them.",
)
PAPERS = (
    Action("papers", "Check whether the change must be inspected or entered in the vehicle's papers."),
    Action("insurer", "Tell the insurer of the change."),
)


IN_THE_PAPERS = attrgetter(
    "nominal_width_mm", "overall_diameter_mm", "tyre_rim_code", "rim_width_in", "rim_code", "offset_mm"
)


class AxleTasks(NamedTuple):
    """What one axle asks of the workshop."""

    set_pressure: Action
    spigot_rings: tuple[Action, ...]
    trial_fit: bool
    """Whether the wheel needs more room than the present one, or it is not known."""
    changed: bool
    """Whether anything differs that the vehicle's papers may tell of."""
    label_kmh: float
    """The speed that a winter tyre's label must state; infinite where it needs none."""


def axle_tasks(view: AxleView, findings: Sequence[Finding]) -> AxleTasks:
    """Return what an axle and the findings on it ask of the workshop."""
    now, then, change = view.now.facts, view.then.facts, view.change
    return AxleTasks(
        _set_pressure(view),
        _spigot_rings(findings),
        not (change.inboard_edge_mm <= 0.0 and change.outboard_edge_mm <= 0.0 and change.radial_edge_mm <= 0.0),
        # Tuples, so that two offsets that are both not known count as alike.
        IN_THE_PAPERS(now) != IN_THE_PAPERS(then),
        _label_kmh(view, findings),
    )


def _set_pressure(view: AxleView) -> Action:
    """Return the pressure to set: the caller's where it is sound, else the proposed one, else the maker's."""
    asked, needed = view.then.facts.pressure_kpa, view.then.load.required_pressure_kpa
    code, axle = f"set_pressure_{view.name}", f"the {view.name} tyres"
    if unknown(needed):
        known = "" if unknown(asked) else f"; whether {_bar(asked)} is enough is not known"
        return Action(code, f"Set {axle} to the pressure that their maker states for the load{known}.")
    if pressure_is_sound(view):
        return Action(code, f"Set {axle} to {_bar(asked)}, cold.", asked)
    proposed = proposed_pressure_kpa(view)
    text = f"Set {axle} to {_bar(proposed)} or more, cold; the vehicle maker's value comes first."
    return Action(code, text, proposed)


def _bar(pressure_kpa: float) -> str:
    return f"{plain(pressure_kpa)} kPa ({plain(pressure_kpa / 100.0, 2)} bar)"


def _spigot_rings(findings: Sequence[Finding]) -> tuple[Action, ...]:
    return tuple(
        Action(
            f"spigot_rings_{each.axle}",
            f"Fit {each.remedy.text.split(',')[0]} on the {each.axle} axle.",
            ring_outer_mm=each.measured,
            ring_inner_mm=each.limit,
        )
        for each in findings
        if each.code == "rim.centre_bore" and each.outcome == ADVISORY and each.remedy is not None
    )


def _label_kmh(view: AxleView, findings: Sequence[Finding]) -> float:
    winter = view.pack.winter
    if winter is None or not winter.label_required:
        return inf
    # A slow tyre is no more than advisory only as a winter tyre.
    slow = (each.measured for each in findings if each.code == "speed.capability" and each.outcome == ADVISORY)
    return min((speed for speed in slow if speed is not None), default=inf)


def actions(front: AxleTasks, rear: AxleTasks, car: CarView, verdict: Verdict) -> list[Action]:
    """Return what the workshop must do; nothing is to be done for a fitment that must not be fitted."""
    if verdict == "unsuitable":
        return [DO_NOT_FIT]
    found = [SETTLE_FIRST] if verdict == "undetermined" else []
    found += [front.set_pressure, rear.set_pressure, *front.spigot_rings, *rear.spigot_rings, TORQUE]
    label_kmh = min(front.label_kmh, rear.label_kmh)
    if label_kmh < inf:
        text = f"Put a label of {plain(label_kmh)} km/h into the driver's view, and tell the driver to keep to it."
        found.append(Action("speed_label", text, speed_kmh=label_kmh))
    if not car.vehicle.is_trailer:
        found += _recalibration(car.change)
    sides = [name for name, tasks in (("front", front), ("rear", rear)) if tasks.trial_fit]
    if sides:
        axles = f"{' and '.join(sides)} axle{'s' if len(sides) > 1 else ''}"
        found.append(Action("trial_fit", f"Trial fit on the {axles}, at full lock and full bump."))
    if front.changed or rear.changed:
        found += PAPERS
    return found


def _recalibration(change: CarChange) -> list[Action]:
    found = []
    percent = 100.0 * (change.driven_circumference_ratio - 1.0)
    if abs(percent) > RECALIBRATE_PERCENT:
        text = f"Have the speedometer checked and, where needed, set anew: circumference {signed(percent)} %."
        found.append(Action("speedometer", text))
    if abs(percent) > RECALIBRATE_PERCENT or abs(change.axle_ratio_percent) > RECALIBRATE_PERCENT:
        found.append(STABILITY_CONTROL)
    return found
