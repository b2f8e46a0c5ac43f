"""Does the speedometer keep the place's own rule, where that is not UN R39 at R39's own test speeds?"""

from __future__ import annotations

import math

from service.assessment.checks.grade import Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.speedometer_lead import (
    Asked,
    covers_nothing,
    either,
    grade_reading,
    is_r39,
    present_lead,
    sure_lead_percent,
    unread_change,
)
from service.assessment.checks.words import beside_true_speed, lawful_lead, plain
from service.assessment.law.law_words import FACTS
from service.assessment.view.views import CarView
from service.core.findings import MET, OPEN, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, Num, all_hold, known, unknown
from service.core.saying import Said, listed, say, sentences
from service.rules.sections import SpeedometerRule

CODE = "law.speedometer"


def rule_of(car: CarView[Num]) -> tuple[SpeedometerRule, tuple[str, ...]] | None:
    """Return the place's own speedometer rule and the facts that would settle whether it applies; None: none asked."""
    vehicle, here = car.vehicle, car.front.conditions.rules
    rule, missing = here.speedometer, here.speedometer_missing
    if vehicle.is_trailer or rule is None:
        return None
    # R39 is asked of every car anyway.
    if not missing and rule.kind == "r39" and is_r39(rule):
        return None
    return rule, missing


def grades(car: CarView[Num]) -> list[Grade[Num]]:
    """Return the grade of the place's own speedometer rule, when it has one."""
    found = rule_of(car)
    return [] if found is None else [_grade(car, *found)]


def _grade(car: CarView[Num], rule: SpeedometerRule, missing: tuple[str, ...]) -> Grade[Num]:
    """Return whether the displayed speed stays within the rule's band; floats or arrays alike."""
    if missing:
        return Grade(OPEN, UNKNOWN, UNKNOWN)
    if not all_hold(rule.has_test_speed(car.vehicle.max_speed_kmh)):
        return Grade(MET, UNKNOWN, UNKNOWN)
    asked = Asked(rule, rule.can_forbid)
    return either(car, grade_reading(car, asked), _grade_unread(car, asked))


def _grade_unread(car: CarView[Num], asked: Asked) -> Grade[Num]:
    # Taken as lawful now: the service's own check says what is worth a look.
    ratio = car.change.driven_circumference_ratio
    hopeless = covers_nothing(asked.rule, car.vehicle.max_speed_kmh, ratio)
    change, limit, beyond = unread_change(car)
    outcome = worst(not_met=hopeless & asked.forbids, open_question=unknown(ratio) | beyond, advisory=hopeless)
    return Grade(outcome, change, limit)


def findings(car: CarView) -> list[Finding]:
    """Return the finding on the place's own speedometer rule, when it has one."""
    found = rule_of(car)
    if found is None:
        return []
    rule, missing = found
    if missing:
        return [_unsettled(rule, missing)]
    if not rule.has_test_speed(car.vehicle.max_speed_kmh):
        return [_never_tried(rule)]
    graded = _grade(car, rule, missing)
    remedy: Remedy | None = None
    least, most = sure_lead_percent(rule, car)
    if unknown(least):
        message = say(
            "{rule}: The speedometer cannot be judged without the overall diameters of all tyres.",
            rule=rule.title,
        )
        remedy = diameter_remedy(car.front, car.rear)
    else:
        needed = lawful_lead(least, most)
        message = say(
            "{rule}: With the present tyres the speedometer must read {needed}; {reads}.",
            rule=rule.title,
            needed=needed,
            reads=_reads(car, graded),
        )
        if graded.outcome != MET:
            words = say("a speedometer that with the present tyres reads {needed}", needed=needed)
            pointer, quantity = "/vehicle/speedometer", "speedometer_lead_percent"
            # A rule without an upper end (older cars) sets none.
            highest = None if math.isinf(most) else most
            remedy = Remedy(words, pointer, quantity, least, highest, unit="%")
            if not rule.can_forbid:
                message = sentences(message, say("Check the official text."))
    measured, limit = finite(graded.measured), finite(graded.limit)
    return [Finding(CODE, "vehicle", graded.outcome, message, measured, limit, "%", rule.basis, remedy)]


def _reads(car: CarView, graded: Grade) -> Said:
    if known(present_lead(car.vehicle)):
        return say("it reads {reading}", reading=beside_true_speed(graded.measured))
    if car.change.driven_circumference_ratio == 1.0:
        return say("the circumference does not change")
    return say("it is taken to be lawful now") if graded.outcome == MET else say("its reading is not given")


def _unsettled(rule: SpeedometerRule, missing: tuple[str, ...]) -> Finding:
    """Return the finding that asks for the facts which settle the rule that applies."""
    facts = listed([FACTS[name] for name in missing])
    message = say("Which speedometer rule applies here is not known without {facts}.", facts=facts)
    remedy = Remedy(say("give {facts}", facts=facts), f"/vehicle/{missing[0]}", missing[0])
    return Finding(CODE, "vehicle", OPEN, message, None, None, "%", rule.basis, remedy)


def _never_tried(rule: SpeedometerRule) -> Finding:
    """Return the finding where the vehicle reaches none of the speeds at which the rule is tried."""
    speed = plain(rule.test_speeds[-1].above_kmh, 0, "km/h")
    message = say(
        "{rule}: It is about speeds above {speed}, which this vehicle does not reach.", rule=rule.title, speed=speed
    )
    return Finding(CODE, "vehicle", MET, message, None, None, "%", rule.basis)
