"""The job card, in the order of work: what is dangerous first, then what is set and fixed, then what is passed on."""

from __future__ import annotations

from collections.abc import Sequence
from operator import attrgetter

from service.assessment.answer.action import Action, answering
from service.assessment.answer.danger import do_not_fit, of_outcome, settle_first, would_not_fit
from service.assessment.answer.fixings import differ, fixings
from service.assessment.answer.told import asked_of_the_place, told
from service.assessment.answer.trial_fit import trial_fit
from service.assessment.answer.verdict import Verdict
from service.assessment.checks.pressure import in_words
from service.assessment.checks.words import plain, signed
from service.assessment.view.vehicle_change import CarChange
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, OPEN, Finding
from service.core.numeric import known

# Beyond this change of circumference electronic systems may need to be told: common practice, no source.
RECALIBRATE_PERCENT = 0.5

STABILITY_CONTROL = Action(
    "stability_control",
    "Reset or recalibrate stability control and tyre pressure monitoring, where the vehicle has them.",
)
PAPERS = (
    Action("papers", "Check whether the change must be inspected or entered in the vehicle's papers."),
    Action("insurer", "Tell the insurer of the change."),
)

# A speedometer, a distance counter and a tachograph count the same turns of the driven wheels.
OF_THE_SPEEDOMETER = ("diameter.speedometer", "law.speedometer", "law.distance_counter", "law.driven_circumference")
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


def actions(car: CarView, findings: Sequence[Finding], verdict: Verdict) -> list[Action]:
    """Return the job card in the order of work; nothing is set or tightened on what must not be fitted."""
    if verdict == "unsuitable":
        return do_not_fit(findings)
    found = would_not_fit(findings) + settle_first(findings)
    found += _pressures(car, findings) + fixings(car, findings)
    found += _speed_label(car, findings)
    if not car.vehicle.is_trailer:
        found += _recalibration(car.change, findings)
    found += trial_fit(car, findings)
    answered = {code for each in found for code in each.findings}
    rest = [each for each in of_outcome(findings, ADVISORY) if each.code not in answered]
    found += told(rest) + asked_of_the_place(rest)
    return found + (list(PAPERS) if any(map(_differs, (car.front, car.rear))) else [])


def _pressures(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    advised = [each for each in of_outcome(findings, ADVISORY) if each.code == "load.pressure"]
    views = (car.front, car.rear)
    return [answering(_set_pressure(view), (each for each in advised if each.axle == view.name)) for view in views]


def _speed_label(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    """Return how the driver of a car with a slower winter tyre is told: no other tyre is advisory for its speed."""
    slow = [each for each in of_outcome(findings, ADVISORY) if each.code == "speed.capability"]
    speeds = [each.measured for each in slow if each.measured is not None]
    if not speeds:
        return []
    kmh, winter = min(speeds), car.front.pack.winter
    if winter is None or not winter.label_required:
        return [
            answering(Action("keep_to_speed", f"Tell the driver to keep to {plain(kmh)} km/h.", speed_kmh=kmh), slow)
        ]
    text = f"Put a label of {plain(kmh)} km/h into the driver's view, and tell the driver to keep to it."
    return [answering(Action("speed_label", text, speed_kmh=kmh), slow)]


def _differs(view: AxleView) -> bool:
    """Return whether anything differs that the vehicle's papers may tell of."""
    return differ(IN_THE_PAPERS(view.now.facts), IN_THE_PAPERS(view.then.facts))


def _recalibration(change: CarChange, findings: Sequence[Finding]) -> list[Action]:
    percent, found = 100.0 * (change.driven_circumference_ratio - 1.0), []
    told = [each for each in findings if each.code in OF_THE_SPEEDOMETER and each.outcome not in (MET, OPEN)]
    if told:
        changes = f": the circumference changes by {signed(percent)} %" if known(percent) else ""
        text = f"Have the speedometer checked and, where needed, set anew{changes}."
        number = percent if known(percent) else None
        found.append(answering(Action("speedometer", text, circumference_percent=number), told))
    if abs(percent) > RECALIBRATE_PERCENT or abs(change.axle_ratio_percent) > RECALIBRATE_PERCENT:
        found.append(STABILITY_CONTROL)
    return found
