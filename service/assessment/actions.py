"""What the workshop must do when the candidate is fitted, and what the answer never replaces."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.checks.pressure import proposed_pressure_kpa
from service.assessment.comparison import AxleView, CarView
from service.assessment.verdict import Verdict
from service.assessment.words import plain, signed
from service.core.findings import ADVISORY, Finding

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
    """One thing for the workshop to do."""

    code: str
    text: str


def actions(car: CarView, findings: list[Finding], verdict: Verdict) -> list[Action]:
    """Return what the workshop must do; nothing is to be done for a fitment that must not be fitted."""
    if verdict == "unsuitable":
        return [Action("do_not_fit", "Do not fit this combination; the findings that are not met say why.")]
    return [
        *(_pressure(view) for view in (car.front, car.rear)),
        *_spigot_rings(findings),
        Action("torque", "Tighten the bolts to the maker's torque, and again after 50 to 100 km."),
        *_recalibration(car),
        *_trial_fit(car),
        *_papers(car),
    ]


def _pressure(view: AxleView) -> Action:
    pressure = view.then.facts.pressure_kpa
    # The caller's own pressure stands when it carries the axle; an unfit one is replaced.
    if pressure != pressure or pressure < view.then.load.required_pressure_kpa:
        pressure = proposed_pressure_kpa(view)
    text = f"Set the {view.name} tyres to {plain(pressure)} kPa ({plain(pressure / 100.0, 2)} bar), cold."
    return Action(f"set_pressure_{view.name}", text)


def _spigot_rings(findings: list[Finding]) -> list[Action]:
    return [
        Action(f"spigot_rings_{each.axle}", f"Fit {each.remedy.text.split(',')[0]} on the {each.axle} axle.")
        for each in findings
        if each.code == "rim.centre_bore" and each.outcome == ADVISORY and each.remedy is not None
    ]


def _recalibration(car: CarView) -> list[Action]:
    found = []
    change = 100.0 * (car.change.driven_circumference_ratio - 1.0)
    if abs(change) > RECALIBRATE_PERCENT:
        text = f"Have the speedometer checked, and recalibrated where needed: circumference {signed(change)} %."
        found.append(Action("speedometer", text))
    if abs(change) > RECALIBRATE_PERCENT or abs(car.change.axle_ratio_percent) > RECALIBRATE_PERCENT:
        found.append(
            Action("stability_control", "Reset or recalibrate stability control and tyre pressure monitoring.")
        )
    return found


def _trial_fit(car: CarView) -> list[Action]:
    sides = {
        view.name
        for view in (car.front, car.rear)
        for shift in (view.change.inboard_edge_mm, view.change.outboard_edge_mm, view.change.radial_edge_mm)
        if not shift <= 0.0
    }
    if not sides:
        return []
    where = " and ".join(sorted(sides))
    return [Action("trial_fit", f"Trial fit on the {where} axle{'s' if len(sides) > 1 else ''}: full lock, full bump.")]


def _papers(car: CarView) -> list[Action]:
    unchanged = all(
        view.now.facts[:13] == view.then.facts[:13] and view.now.facts[23:26] == view.then.facts[23:26]
        for view in (car.front, car.rear)
    )
    if unchanged:
        return []
    return [
        Action("papers", "Check whether the change must be inspected or entered in the vehicle's papers."),
        Action("insurer", "Tell the insurer of the change."),
    ]
