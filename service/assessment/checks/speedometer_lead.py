"""Does the speedometer stay lawful after the change (UN R39: never too low, not too high)?

The speedometer counts wheel turns, so its lead over the true speed is taken as proportional: measured once, it holds
at every speed and moves with the rolling circumference of the driven axle (of both axles when that is not given).
"""

from __future__ import annotations

import math
from functools import partial
from typing import NamedTuple

from service.assessment.case import Vehicle
from service.assessment.checks.grade import LAST_BIT, CarCheck, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.speedometer_tolerance import reading_tolerance_percent
from service.assessment.checks.speedometer_words import changes, reading
from service.assessment.checks.words import lawful_lead
from service.assessment.view.views import CarView
from service.core.findings import ADVISORY, MET, NOT_MET, Finding, Holds, Remedy, worst
from service.core.numeric import UNKNOWN, Num, known, looked_up, pick, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import basis
from service.physics.speedometer import indicated_speed_kmh
from service.rules.reader import default_packs
from service.rules.sections import SpeedometerRule

R39 = basis("UN-R39 5.3", "0 <= V1 - V2 <= 0.1 V2 + 4 km/h")
# The last bit of a float must not turn an exact speedometer into one that reads too low.
LAST_BIT_KMH = 1e-9


class Reading(NamedTuple):
    """A speedometer at one test speed: true speed, what it shows now and then, and the lawful range."""

    true_kmh: float
    displayed_kmh_before: float
    displayed_kmh_after: float
    least_kmh: float
    most_kmh: float


# Why UN R39 advises where it does not forbid.
NO_LAW = say("UN R39 is not law here; it only advises.")
OPEN_LAW = say("Which rule is law here is open; UN R39 only advises.")
NOT_READ = say("The text of the rule here was not read: check the official text.")


class Asked(NamedTuple):
    """A speedometer rule, and whether breaking it is forbidden here."""

    rule: SpeedometerRule
    forbids: bool
    caveat: str = ""
    """Why it only advises."""


def r39() -> SpeedometerRule:
    """Return the UN R39 rule, which advises whatever the place."""
    return default_packs()["unece"].speedometer


def is_r39(rule: SpeedometerRule) -> bool:
    """Return whether a place's rule asks no more than this check: R39's band, at its test speeds, shown or true."""
    return _asks(rule) == _asks(r39())


def _asks(rule: SpeedometerRule) -> tuple[object, ...]:
    edges = rule.least_gain, rule.least_constant_kmh, rule.most_gain, rule.most_constant_kmh
    return (*edges, rule.test_speed_is, rule.test_speeds)


def _asked(car: CarView[Num]) -> Asked:
    """Return UN R39 as the place has it; where it has not, R39 only advises and the place's own rule decides."""
    here = car.front.conditions.rules
    rule = here.speedometer
    if here.speedometer_missing:
        return Asked(r39(), forbids=False, caveat=OPEN_LAW)
    if rule is None or rule.kind != "r39":
        return Asked(r39(), forbids=False, caveat=NO_LAW)
    return Asked(rule, forbids=rule.can_forbid, caveat=NOT_READ)


def present_lead(vehicle: Vehicle[Num]) -> Num:
    """Return the displayed over the true speed now, NaN when it was not measured."""
    return vehicle.displayed_kmh / vehicle.true_kmh


def lead_after_percent(car: CarView[Num]) -> Num:
    """Return by how much the speedometer reads above the true speed after the change [%]; floats or arrays alike."""
    return 100.0 * (present_lead(car.vehicle) / car.change.driven_circumference_ratio - 1.0)


def readings(rule: SpeedometerRule, max_speed_kmh: float, lead: float, ratio: float) -> tuple[Reading, ...]:
    """Return what the speedometer shows at a rule's test speeds; NaN where the lead is not known.

    `ratio` is that of the driven circumference.
    """
    return tuple(
        Reading(
            true,
            true * lead,
            indicated_speed_kmh(true, lead, ratio),
            rule.least_displayed_kmh(true),
            rule.most_displayed_kmh(true),
        )
        for true in rule.test_speeds_for(max_speed_kmh)
    )


def lawful_lead_percent(rule: SpeedometerRule, max_speed_kmh: Num, ratio: Num) -> tuple[Num, Num]:
    """Return the least and the greatest lead [%] that the present speedometer may have."""
    least, most = looked_up(partial(_lawful_leads, rule), max_speed_kmh)
    return 100.0 * (least * ratio - 1.0), 100.0 * (most * ratio - 1.0)


def _lawful_leads(rule: SpeedometerRule, max_speed_kmh: float) -> tuple[float, float]:
    """Return the least and the greatest lawful displayed over true speed at all test speeds of a vehicle."""
    speeds = rule.test_speeds_for(max_speed_kmh)
    if rule.test_speed_is == "true":
        least = max(rule.least_displayed_kmh(speed) / speed for speed in speeds)
        most = min(rule.most_displayed_kmh(speed) / speed for speed in speeds)
    else:
        least = max(speed / rule.most_true_kmh(speed) for speed in speeds)
        slowest = [rule.least_true_kmh(speed) for speed in speeds]
        most = min(speed / true if true > 0.0 else math.inf for speed, true in zip(speeds, slowest, strict=True))
    return least, most


def covers_nothing(rule: SpeedometerRule, max_speed_kmh: Num, ratio: Num) -> Holds:
    """Return whether no speedometer that is lawful now stays so: the change is beyond the whole lawful range."""
    least, most = looked_up(partial(_lawful_leads, rule), max_speed_kmh)
    return (ratio * least > most) | (ratio * most < least)


def sure_lead_percent(rule: SpeedometerRule, car: CarView[Num]) -> tuple[Num, Num]:
    """Return between which leads [%] a reading must lie to keep a rule whichever way its tolerance goes.

    Without a tolerance that is the lawful range. Least above greatest: no reading is close enough.
    """
    least, most = lawful_lead_percent(rule, car.vehicle.max_speed_kmh, car.change.driven_circumference_ratio)
    down, up = reading_tolerance_percent(car)
    return least + down, most - up


def grade_reading(car: CarView[Num], asked: Asked) -> Grade[Num]:
    """Return how a speedometer that was read keeps a rule after the change; floats or arrays alike."""
    ratio, lead = car.change.driven_circumference_ratio, 100.0 * (present_lead(car.vehicle) - 1.0)
    least, most = sure_lead_percent(asked.rule, car)
    outside = (lead < least - LAST_BIT_KMH) | (lead > most + LAST_BIT_KMH)
    outcome = worst(not_met=outside & asked.forbids, not_assessed=unknown(ratio), advisory=outside)
    return Grade(outcome, lead, pick(lead > most, most, least))


def unread_change(car: CarView[Num]) -> tuple[Num, Num, Holds]:
    """Return the change of circumference [%], the limit on its side [%], and whether it is beyond that limit."""
    change = 100.0 * (car.change.driven_circumference_ratio - 1.0)
    least = car.limits.speedometer_unread_least_percent.value
    most = car.limits.speedometer_unread_most_percent.value
    beyond = (change < least - LAST_BIT) | (change > most + LAST_BIT)
    return change, pick(change < 0.0, least, most), beyond


def _grade(car: CarView[Num]) -> Grade[Num]:
    asked = _asked(car)
    if car.vehicle.is_trailer:
        return Grade(MET, UNKNOWN, UNKNOWN)
    return either(car, grade_reading(car, asked), _grade_unread(car, asked))


def either(car: CarView[Num], read: Grade[Num], unread: Grade[Num]) -> Grade[Num]:
    """Return the grade that counts by whether the speedometer was read."""
    was_read = known(present_lead(car.vehicle))
    return Grade(
        pick(was_read, read.outcome, unread.outcome),
        pick(was_read, read.measured, unread.measured),
        pick(was_read, read.limit, unread.limit),
    )


def _grade_unread(car: CarView[Num], asked: Asked) -> Grade[Num]:
    ratio = car.change.driven_circumference_ratio
    hopeless = covers_nothing(asked.rule, car.vehicle.max_speed_kmh, ratio)
    change, limit, beyond = unread_change(car)
    outcome = worst(not_met=hopeless & asked.forbids, not_assessed=unknown(ratio), advisory=beyond | hopeless)
    return Grade(outcome, change, limit)


def _explain(car: CarView, grade: Grade) -> Finding:
    if car.vehicle.is_trailer:
        message = say("A trailer has no speedometer that its tyres could mislead.")
        return Finding("diameter.speedometer", "vehicle", MET, message, None, None, "%", R39)
    if unknown(car.change.driven_circumference_ratio):
        message = say("The speedometer cannot be judged without the overall diameters of all tyres.")
        ask = diameter_remedy(car.front, car.rear)
        return Finding("diameter.speedometer", "vehicle", grade.outcome, message, None, None, "%", R39, ask)
    asked = _asked(car)
    told = _of_a_reading if known(present_lead(car.vehicle)) else _unread
    message, remedy = told(car, grade, asked.rule)
    if grade.outcome == ADVISORY and not asked.forbids and _is_forbidden(car, asked.rule):
        message = sentences(message, asked.caveat)
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("diameter.speedometer", "vehicle", grade.outcome, message, measured, limit, "%", R39, remedy)


def _is_forbidden(car: CarView, rule: SpeedometerRule) -> Holds:
    """Return whether a rule would forbid the change where it is law."""
    if known(present_lead(car.vehicle)):
        return grade_reading(car, Asked(rule, forbids=True)).outcome == NOT_MET
    return covers_nothing(rule, car.vehicle.max_speed_kmh, car.change.driven_circumference_ratio)


def _unread(car: CarView, grade: Grade, rule: SpeedometerRule) -> tuple[Said, Remedy | None]:
    """Return the words where nobody read the speedometer: it is taken as type-approved."""
    ratio, top = car.change.driven_circumference_ratio, car.vehicle.max_speed_kmh
    if ratio == 1.0:
        return say("The rolling circumference does not change, so the speedometer stays as it is."), None
    if grade.outcome == MET:
        lawful = say("A type-approved speedometer stays lawful with that; it is taken to be one.")
        return sentences(changes(grade.measured), lawful), None
    least, most = lawful_lead_percent(rule, top, ratio)
    needed = lawful_lead(least, most)
    if covers_nothing(rule, top, ratio):
        message = sentences(changes(grade.measured), say("No speedometer that is lawful now stays so."))
        return message, _recalibration(least, most)
    message = sentences(
        changes(grade.measured, shown=True), say("It stays lawful if it now reads {needed}.", needed=needed)
    )
    text = say("have the speedometer checked: it must now read {needed}", needed=needed)
    return message, _lead_remedy(text, least, most)


def _of_a_reading(car: CarView, grade: Grade, rule: SpeedometerRule) -> tuple[Said, Remedy | None]:
    """Return the words where the speedometer was read."""
    now, after = grade.measured, lead_after_percent(car)
    if grade.outcome == MET:
        read = reading(now, after)
        return say("{reading}, within the lawful range at every test speed.", reading=read), None
    least, most = sure_lead_percent(rule, car)
    if _is_lawful_as_read(car, rule, now):
        message = say(
            "{reading}: lawful, but nearer to the limit than its tolerance allows.", reading=reading(now, after)
        )
    elif now < least:
        message = say("{reading}: it must never read low.", reading=reading(now, after, low=True))
    else:
        message = say("{reading}: more than is lawful.", reading=reading(now, after))
    return message, _recalibration(least, most)


def _is_lawful_as_read(car: CarView, rule: SpeedometerRule, lead_percent: float) -> bool:
    """Return whether the reading taken as exact keeps a rule."""
    least, most = lawful_lead_percent(rule, car.vehicle.max_speed_kmh, car.change.driven_circumference_ratio)
    return least - LAST_BIT_KMH <= lead_percent <= most + LAST_BIT_KMH


def _recalibration(least: float, most: float) -> Remedy:
    if not least <= most:
        text = say("read the speedometer more closely: to within so much, no reading keeps the rule for certain")
        return Remedy(text, "/vehicle/speedometer/tolerance_percent", "tolerance_percent")
    text = say(
        "have the speedometer recalibrated so that with the present tyres it reads {needed}",
        needed=lawful_lead(least, most),
    )
    return _lead_remedy(text, least, most)


def _lead_remedy(text: Said, least: float, most: float) -> Remedy:
    return Remedy(text, "/vehicle/speedometer", "speedometer_lead_percent", least, most, unit="%")


SPEEDOMETER = CarCheck("diameter.speedometer", _grade, _explain)
