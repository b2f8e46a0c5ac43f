"""What a change does on the road, as `check` answers it."""

from __future__ import annotations

from service.api.schemas.base import AnswerPart, part
from service.api.schemas.base import text as words
from service.assessment.answer.road_words import LessReserve, ResponseFirst, ResponseThen
from service.assessment.checks.balance import Degree, Direction


class DryBalance(AnswerPart):
    """The balance in the dry and below the limit."""

    direction: Direction = part("Which way the balance goes.", "neutral")
    degree: Degree = part("How far the balance goes.", "negligible")
    text: str = words("The change of balance in a sentence.", 300, "The balance stays as it is.")


class WetBalance(AnswerPart):
    """The balance in standing water: which axle has the lesser wet reserve, new tyres compared with new."""

    less_reserve_present: LessReserve = part("The axle with the lesser reserve now.", "rear")
    less_reserve_proposed: LessReserve = part("The axle with the lesser reserve then.", "rear")
    text: str = words("Both reserves in a sentence.", 300, "In the wet the balance stays as it is.")


class TurnIn(AnswerPart):
    """How the car turns in; directions without numbers."""

    first: ResponseFirst = part("How the steering answers at first.", "slower")
    then: ResponseThen = part("How much the front holds once its tyres are loaded.", "more")
    text: str = words("Both in a sentence.", 300, "The steering answers a little slower at first and holds more.")
