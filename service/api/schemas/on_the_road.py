"""What a change does on the road, as `check` answers it."""

from __future__ import annotations

from service.api.schemas.base import AnswerPart, maybe, part
from service.api.schemas.base import text as words
from service.api.schemas.quantity_bands import Estimate
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


class MeasureFirst(AnswerPart):
    """A fact that the request did not give and that is worth measuring."""

    pointer: str = words("RFC 6901 pointer into the request: where to state it.", 200, "/vehicle/speedometer")
    text: str = words("What to measure, in words.", 200, "the room to the strut, rear")
    settles: list[str] = part("Codes of the findings that it decides.", ["clearance.inboard"], max_length=60)
    narrows: list[str] = part("Names of the estimates that it narrows.", ["braking_distance_percent"], max_length=20)


class LabelEffects(AnswerPart):
    """What the tyres' labels tell of; a number is absent where a class is not given on an axle."""

    energy_kwh_per_100km: Estimate = part("Change of energy at the wheel [kWh/100 km].", default=None)
    petrol_l_per_100km: Estimate = part(
        "The same as petrol burnt [l/100 km]: 32 MJ/l, a marginal efficiency of 0.35 (0.25 to 0.40).", default=None
    )
    diesel_l_per_100km: Estimate = part(
        "The same as diesel burnt [l/100 km]: 36 MJ/l, a marginal efficiency of 0.40 (0.30 to 0.45).", default=None
    )
    wet_braking_distance_percent: Estimate = part("Change of the wet braking distance [%].", default=None)
    front_noise_db: float = maybe("Change of the noise outside, front tyres", "dB", -1.0)
    rear_noise_db: float = maybe("Change of the noise outside, rear tyres", "dB", -1.0)
    text: str = words(
        "The label's effect beside the size's.", 600, "The wet grip classes change the distance by -19 %."
    )
