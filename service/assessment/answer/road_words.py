"""What a change does on the road, in words: balance in the dry and in the wet, and how the car turns in."""

from __future__ import annotations

from typing import Literal, NamedTuple

from service.assessment.checks.words import plain
from service.assessment.view.views import CarView
from service.core.numeric import known, unknown
from service.physics.wet_reserve import RESERVE_FILM_MM, RESERVE_SPEED_KMH

ResponseFirst = Literal["quicker", "slower", "alike"]
ResponseThen = Literal["more", "less", "alike"]
LessReserve = Literal["front", "rear", "alike"]

# Shares of the load that differ by less than this are the same to a driver: project's judgement.
SAME_SHARE_PERCENT = 2.0


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


def turn_in_words(car: CarView) -> TurnInWords | None:
    """Return how the car turns in after the change; None for a trailer and where it is not known."""
    first, then = car.driving.turn_in
    if car.vehicle.is_trailer or unknown(first) or unknown(then):
        return None
    how: ResponseFirst = "quicker" if first > 0.0 else "slower" if first < 0.0 else "alike"
    later: ResponseThen = "more" if then > 0.0 else "less" if then < 0.0 else "alike"
    at_first = {
        "quicker": "The steering answers a little quicker at first",
        "slower": "The steering answers a little slower at first",
        "alike": "The steering answers at first as it does now",
    }[how]
    once_loaded = {
        "more": "holds more once the tyres are loaded",
        "less": "holds less once the tyres are loaded",
        "alike": "holds as much once the tyres are loaded",
    }[later]
    return TurnInWords(how, later, f"{at_first} and {once_loaded}.")


def wet_balance(car: CarView) -> WetBalance | None:
    """Return which axle floats first in standing water, new tyres compared with new; None where it is not known."""
    front, rear = car.driving.front, car.driving.rear
    now = front.new_reserve_present_percent, rear.new_reserve_present_percent
    then = front.new_reserve_proposed_percent, rear.new_reserve_proposed_percent
    if not all(known(each) for each in (*now, *then)):
        return None
    before, after = _less(*now), _less(*then)
    where = f"at {plain(RESERVE_SPEED_KMH)} km/h in {plain(RESERVE_FILM_MM)} mm of water"
    shares = f"the front keeps some {plain(then[0])} % of its load on the road and the rear {plain(then[1])} %"
    text = f"In the wet, {where}, {shares}; now {plain(now[0])} and {plain(now[1])} %."
    if now == then:
        text = f"In the wet the balance stays as it is: {where}, {shares}."
    return WetBalance(before, after, text)


def _less(front: float, rear: float) -> LessReserve:
    if abs(front - rear) < SAME_SHARE_PERCENT:
        return "alike"
    return "front" if front < rear else "rear"
