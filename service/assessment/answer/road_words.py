"""What a change does on the road, in words: balance in the dry and in the wet, and how the car turns in."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple

from service.assessment.checks.words import plain
from service.assessment.view.views import CarView
from service.core.numeric import known, unknown
from service.core.saying import Amount, Said, say
from service.physics.turn_in import TurnIn
from service.physics.wet_reserve import RESERVE_FILM_MM, RESERVE_SPEED_KMH

ResponseFirst = Literal["quicker", "slower", "alike"]
ResponseThen = Literal["more", "less", "alike"]
LessReserve = Literal["front", "rear", "alike"]

# Shares of the load that differ by less than this are the same to a driver: project's judgement.
SAME_SHARE_PERCENT = 2.0


# Say: one of these and one of the next are joined: "... at first and holds more ..."
_FIRST: Mapping[ResponseFirst, Said] = MappingProxyType(
    {
        "quicker": say("The steering answers a little quicker at first"),
        "slower": say("The steering answers a little slower at first"),
        "alike": say("The steering answers at first as it does now"),
    }
)
# Say: the steering is what holds
_THEN: Mapping[ResponseThen, Said] = MappingProxyType(
    {
        "more": say("holds more once the tyres are loaded"),
        "less": say("holds less once the tyres are loaded"),
        "alike": say("holds as much once the tyres are loaded"),
    }
)


class TurnInWords(NamedTuple):
    """How the steering answers at first, and once the tyres are loaded; None where it cannot be said."""

    first: ResponseFirst
    then: ResponseThen
    text: str


class WetBalance(NamedTuple):
    """Which axle has less of the load left on the road in standing water, now and then, and a sentence on it."""

    less_reserve_present: LessReserve
    less_reserve_proposed: LessReserve
    text: str


def turn_in_words(car: CarView, found: TurnIn) -> TurnInWords | None:
    """Return how the car turns in after the change; None for a trailer and where it is not known."""
    first, then = found
    if car.vehicle.is_trailer or unknown(first) or unknown(then):
        return None
    how: ResponseFirst = "quicker" if first > 0.0 else "slower" if first < 0.0 else "alike"
    later: ResponseThen = "more" if then > 0.0 else "less" if then < 0.0 else "alike"
    return TurnInWords(how, later, say("{at_first} and {once_loaded}.", at_first=_FIRST[how], once_loaded=_THEN[later]))


def wet_balance(car: CarView) -> WetBalance | None:
    """Return which axle floats first in standing water, new tyres compared with new; None where it is not known."""
    front, rear = car.front_reserve, car.rear_reserve
    now = front.present_percent, rear.present_percent
    then = front.proposed_percent, rear.proposed_percent
    if not all(known(each) for each in (*now, *then)):
        return None
    before, after = _less(*now), _less(*then)
    shares: dict[str, str] = {
        "speed": plain(RESERVE_SPEED_KMH, 0, "km/h"),
        "film": plain(RESERVE_FILM_MM, 0, "mm"),
        "front": plain(then[0], 0, "%"),
        "rear": plain(then[1], 0, "%"),
    }
    if now == then:
        text = say(
            "In the wet the balance stays as it is: at {speed} in {film} of water, the front keeps some {front} of its "
            "load on the road and the rear {rear}.",
            **shares,
        )
    else:
        text = say(
            "In the wet, at {speed} in {film} of water, the front keeps some {front} of its load on the road and the "
            "rear {rear}; now {front_now} and {rear_now}.",
            **shares,
            front_now=Amount(now[0], "%", bare=True),
            rear_now=plain(now[1], 0, "%"),
        )
    return WetBalance(before, after, text)


def _less(front: float, rear: float) -> LessReserve:
    if abs(front - rear) < SAME_SHARE_PERCENT:
        return "alike"
    return "front" if front < rear else "rear"
