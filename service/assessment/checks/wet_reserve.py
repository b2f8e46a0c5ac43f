"""How much of the load still rests on the road in standing water, and does a wider tyre give it away?

New is compared with new, so that the size alone speaks; what wear takes is said by the tread.
"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, CarCheck, Grade, finite
from service.assessment.checks.missing import deflection_remedy
from service.assessment.checks.words import plain
from service.assessment.view.driving import Reserve
from service.assessment.view.views import CarView
from service.core.findings import MET, NOT_RECOMMENDED, AxleName, Finding, is_open, worst
from service.core.numeric import Num, unknown
from service.core.saying import Said, capital, say, sentences
from service.core.sources import SOURCES, basis
from service.physics.wet_reserve import RESERVE_FILM_MM, RESERVE_SPEED_KMH

LIFT = basis("PROJECT", f"lift after {SOURCES['HORNE-DREHER-1963'].title}; tread pattern and compound are not in it")
NOT_STEERED = say("A trailer follows the vehicle that tows it, so neither of its axles leads in standing water.")
# Where the reserve is taken.
SPEED, FILM = plain(RESERVE_SPEED_KMH, 0, "km/h"), plain(RESERVE_FILM_MM, 0, "mm")


def _at(car: CarView[Num], axle: AxleName) -> Reserve[Num]:
    return car.front_reserve if axle == "front" else car.rear_reserve


def _grade(car: CarView[Num], axle: AxleName) -> Grade[Num]:
    here, limits = _at(car, axle), car.limits
    fall = here.fall_percent
    most = limits.wet_reserve_fall_front_percent if axle == "front" else limits.wet_reserve_fall_rear_percent
    spent = here.proposed_percent <= limits.wet_reserve_least_percent.value
    if car.vehicle.is_trailer:
        return Grade(MET, fall, most.value)
    outcome = worst(
        not_recommended=(axle == "rear") & spent & (fall > LAST_BIT),
        advisory=fall > most.value + LAST_BIT,
        open_question=unknown(fall),
    )
    return Grade(outcome, fall, most.value)


def _explain(car: CarView, grade: Grade, axle: AxleName) -> Finding:
    here = _at(car, axle)
    remedy = None
    if car.vehicle.is_trailer:
        return Finding("wet.reserve", axle, MET, NOT_STEERED, None, None, None, LIFT)
    if is_open(grade.outcome):
        message = say("The wet reserve cannot be estimated from what is known of the tyres.")
        remedy = deflection_remedy(car.front, car.rear)
    elif grade.outcome == MET:
        message = capital(_rests(here))
    elif grade.outcome == NOT_RECOMMENDED:
        message = say("The rear would all but float: {shares}", shares=_rests(here))
    else:
        message = (
            say("In standing water the rear becomes nervous sooner: {shares}", shares=_rests(here))
            if axle == "rear"
            else say("In standing water the front runs straight on sooner: {shares}", shares=_rests(here))
        )
        message = sentences(message, say("Slow down sooner in heavy rain."))
    return Finding("wet.reserve", axle, grade.outcome, message, finite(grade.measured), grade.limit, "%", LIFT, remedy)


def _rests(here: Reserve[float]) -> Said:
    """Return how much of the load rests on the road then and now; it begins small, to stand behind a colon."""
    now, then = plain(here.present_percent, 0, "%"), plain(here.proposed_percent, 0, "%")
    if now == then:
        return say(
            "the wet reserve stays at some {now}, at {speed} in {film} of water.", now=now, speed=SPEED, film=FILM
        )
    return say(
        "at {speed} in {film} of water some {then} of the load still rests on the road, {now} now.",
        speed=SPEED,
        film=FILM,
        then=then,
        now=now,
    )


def _check(axle: AxleName) -> CarCheck:
    def grade(car: CarView[Num]) -> Grade[Num]:
        return _grade(car, axle)

    def explain(car: CarView, found: Grade) -> Finding:
        return _explain(car, found, axle)

    return CarCheck("wet.reserve", grade, explain, axle)


FRONT, REAR = _check("front"), _check("rear")
