"""What the workshop must do when the candidate is fitted, and what the answer never replaces."""

from __future__ import annotations

from collections.abc import Sequence
from math import inf, isnan
from operator import attrgetter
from typing import NamedTuple

from service.assessment.answer.verdict import Verdict
from service.assessment.checks.pressure import in_words
from service.assessment.checks.words import plain, signed
from service.assessment.view.change import AxleChange
from service.assessment.view.vehicle_change import CarChange
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, Finding
from service.core.numeric import known
from service.rules.pack import RulePack

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


def _set_pressure(view: AxleView) -> Action:
    """Return the pressure to set; where none can be named, who names it."""
    code, axle, ordered = f"set_pressure_{view.name}", f"the {view.name} tyres", view.ordered_pressure_kpa
    if known(ordered):
        return Action(code, f"Set {axle} to {in_words(ordered)}, cold.", ordered)
    if view.then.facts.commercial:
        return Action(code, f"Set {axle} to their maker's pressure for the load, never above what the sidewall states.")
    return Action(code, f"Set {axle} to the pressure that their maker states for the load.")


def _spigot_rings(findings: Sequence[Finding]) -> list[Action]:
    return [
        Action(
            f"spigot_rings_{each.axle}",
            f"Fit {each.remedy.text.split(',')[0]} on the {each.axle} axle.",
            ring_outer_mm=each.measured,
            ring_inner_mm=each.limit,
        )
        for each in findings
        if each.code == "rim.centre_bore" and each.outcome == ADVISORY and each.remedy is not None
    ]


def _label_kmh(pack: RulePack, findings: Sequence[Finding]) -> float:
    """Return the speed that a winter tyre's label must state; infinite where none is needed."""
    if pack.winter is None or not pack.winter.label_required:
        return inf
    # A slow tyre is no more than advisory only as a winter tyre.
    slow = (each.measured for each in findings if each.code == "speed.capability" and each.outcome == ADVISORY)
    return min((speed for speed in slow if speed is not None), default=inf)


def _is_roomy(change: AxleChange) -> bool:
    """Return whether the wheel surely needs no more room than the present one."""
    return change.inboard_edge_mm <= 0.0 and change.outboard_edge_mm <= 0.0 and change.radial_edge_mm <= 0.0


def _differs(view: AxleView) -> bool:
    """Return whether anything differs that the vehicle's papers may tell of."""
    pairs = zip(IN_THE_PAPERS(view.now.facts), IN_THE_PAPERS(view.then.facts), strict=True)
    # Two offsets that are both not known count as alike.
    return any(now != then and not (isnan(now) and isnan(then)) for now, then in pairs)


def actions(car: CarView, findings: Sequence[Finding], verdict: Verdict) -> list[Action]:
    """Return what the workshop must do; nothing is to be done for a fitment that must not be fitted."""
    if verdict == "unsuitable":
        return [DO_NOT_FIT]
    views = (car.front, car.rear)
    found = [SETTLE_FIRST] if verdict == "undetermined" else []
    found += map(_set_pressure, views)
    found += [*_spigot_rings(findings), TORQUE]
    label_kmh = _label_kmh(car.pack, findings)
    if label_kmh < inf:
        text = f"Put a label of {plain(label_kmh)} km/h into the driver's view, and tell the driver to keep to it."
        found.append(Action("speed_label", text, speed_kmh=label_kmh))
    if not car.vehicle.is_trailer:
        found += _recalibration(car.change)
    sides = [view.name for view in views if not _is_roomy(view.change)]
    if sides:
        axles = f"{' and '.join(sides)} axle{'s' if len(sides) > 1 else ''}"
        found.append(Action("trial_fit", f"Trial fit on the {axles}, at full lock and full bump."))
    if any(map(_differs, views)):
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
