"""The job card, in the order of work: what is dangerous first, then what is set and fixed, then what is passed on."""

from __future__ import annotations

from collections.abc import Sequence
from operator import attrgetter

from service.assessment.answer.action import Action, answering
from service.assessment.answer.danger import (
    do_not_fit,
    measure_before_order,
    of_outcome,
    settle_first,
    would_not_fit,
)
from service.assessment.answer.fixings import differ, fixings
from service.assessment.answer.on_assumption import BY_TODAY
from service.assessment.answer.said_once import with_echoes
from service.assessment.answer.told import asked_of_the_place, told
from service.assessment.answer.trial_fit import trial_fit
from service.assessment.answer.verdict import Verdict
from service.assessment.checks.pressure import in_words
from service.assessment.checks.words import plain, signed
from service.assessment.view.views import AxleView, CarView
from service.core.findings import ADVISORY, MET, OPEN, Finding
from service.core.numeric import known
from service.core.saying import Said, say, sentences

# Beyond this change of circumference electronic systems may need to be told: common practice, no source.
RECALIBRATE_PERCENT = 0.5

STABILITY_CONTROL = Action(
    "stability_control",
    say("Reset or recalibrate stability control and tyre pressure monitoring, where the vehicle has them."),
)
PAPERS = (
    Action("papers", say("Check whether the change must be inspected or entered in the vehicle's papers.")),
    Action("insurer", say("Tell the insurer of the change.")),
)
UNLIKE_SIZES = Action(
    "tell_unlike_sizes",
    say(
        "Tell the customer: Front and rear would have different sizes. The wheels can no longer change places, and a "
        "spare fits one axle only."
    ),
)
OF_A_SET = attrgetter("nominal_width_mm", "aspect_percent", "tyre_rim_code", "rim_width_in", "rim_code")
OF_CARS = ("M1", "M1G", "N1")

# A speedometer, a distance counter and a tachograph count the same turns of the driven wheels.
OF_THE_SPEEDOMETER = ("diameter.speedometer", "law.speedometer", "law.distance_counter", "law.driven_circumference")
IN_THE_PAPERS = attrgetter(
    "nominal_width_mm", "overall_diameter_mm", "tyre_rim_code", "rim_width_in", "rim_code", "offset_mm"
)


def _set_pressure(view: AxleView) -> Action:
    """Return the pressure to set; where none can be named, who names it."""
    code, at_front, ordered = f"set_pressure_{view.name}", view.name == "front", view.ordered_pressure_kpa
    if known(ordered):
        pressure = in_words(ordered)
        text = (
            say("Set the front tyres to {pressure}, cold.", pressure=pressure)
            if at_front
            else say("Set the rear tyres to {pressure}, cold.", pressure=pressure)
        )
        if known(view.axle.todays_mass_kg):
            text = sentences(text, BY_TODAY)
        return Action(code, text, ordered)
    if view.then.facts.commercial:
        text = (
            say("Set the front tyres to their maker's pressure for the load, never above what the sidewall states.")
            if at_front
            else say("Set the rear tyres to their maker's pressure for the load, never above what the sidewall states.")
        )
        return Action(code, text)
    text = (
        say("Set the front tyres to the pressure that their maker states for the load.")
        if at_front
        else say("Set the rear tyres to the pressure that their maker states for the load.")
    )
    return Action(code, text)


def actions(car: CarView, findings: Sequence[Finding], verdict: Verdict) -> list[Action]:
    """Return the job card in the order of work; nothing is set or tightened on what must not be fitted."""
    if verdict == "unsuitable":
        return with_echoes(do_not_fit(findings), findings)
    found = would_not_fit(findings) + settle_first(findings) + measure_before_order(findings)
    found += _pressures(car, findings) + fixings(car, findings)
    found += _speed_label(car, findings)
    if not car.vehicle.is_trailer:
        found += _recalibration(car, findings)
    found += trial_fit(car, findings)
    answered = {code for each in found for code in each.findings}
    rest = [each for each in of_outcome(findings, ADVISORY) if each.code not in answered]
    found += told(rest) + _unlike_sizes(car) + asked_of_the_place(rest)
    found += PAPERS if any(map(_differs, (car.front, car.rear))) else ()
    return with_echoes(found, findings)


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
    speed = plain(kmh, 0, "km/h")
    if winter is None or not winter.label_required:
        text = say("Tell the driver to keep to {speed}.", speed=speed)
        return [answering(Action("keep_to_speed", text, speed_kmh=kmh), slow)]
    text = say("Put a label of {speed} into the driver's view, and tell the driver to keep to it.", speed=speed)
    return [answering(Action("speed_label", text, speed_kmh=kmh), slow)]


def _differs(view: AxleView) -> bool:
    """Return whether anything differs that the vehicle's papers may tell of."""
    return differ(IN_THE_PAPERS(view.now.facts), IN_THE_PAPERS(view.then.facts))


def _unlike_sizes(car: CarView) -> list[Action]:
    """Return what a second size means to whoever has one now: nothing in numbers, and yet a fitter says it."""
    unlike_now, unlike = (
        differ(OF_A_SET(front), OF_A_SET(rear))
        for front, rear in ((car.front.now.facts, car.rear.now.facts), (car.front.then.facts, car.rear.then.facts))
    )
    return [UNLIKE_SIZES] if unlike and not unlike_now else []


def _recalibration(car: CarView, findings: Sequence[Finding]) -> list[Action]:
    change, found = car.change, []
    percent = 100.0 * (change.driven_circumference_ratio - 1.0)
    told = [each for each in findings if each.code in OF_THE_SPEEDOMETER and each.outcome not in (MET, OPEN)]
    if told:
        text, number = _have_checked(car, percent), percent if known(percent) else None
        found.append(answering(Action("speedometer", text, circumference_percent=number), told))
    if abs(percent) > RECALIBRATE_PERCENT or abs(change.axle_ratio_percent) > RECALIBRATE_PERCENT:
        found.append(STABILITY_CONTROL)
    return found


def _have_checked(car: CarView, percent: float) -> Said:
    """Return the order to the workshop; goods vehicles and buses may have a tachograph."""
    is_car = car.vehicle.category in OF_CARS
    if not known(percent):
        if is_car:
            return say("Have the speedometer checked and, where needed, recalibrated.")
        return say("Have the speedometer or tachograph checked and, where needed, recalibrated.")
    change = signed(percent, 1, "%")
    if is_car:
        return say(
            "Have the speedometer checked and, where needed, recalibrated: the circumference changes by {change}.",
            change=change,
        )
    return say(
        "Have the speedometer or tachograph checked and, where needed, recalibrated: the circumference changes by "
        "{change}.",
        change=change,
    )
