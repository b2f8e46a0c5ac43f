"""Does the speedometer stay lawful after the change (UN R39: never too low, not too high)?

The speedometer counts wheel turns, so its lead over the true speed is taken as proportional: measured once, it holds
at every speed and moves with the rolling circumference of the driven axle (of both axles when that is not given).
"""

from __future__ import annotations

import math
from functools import lru_cache
from typing import NamedTuple

from service.assessment.case import Vehicle
from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.missing import diameter_remedy
from service.assessment.checks.words import apart, beside_true_speed, lawful_lead, plain, signed
from service.assessment.view.views import CarView
from service.core.findings import MET, Finding, Remedy, is_open, worst
from service.core.numeric import pick, unknown
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


def r39() -> SpeedometerRule:
    """Return the UN R39 rule, which holds as a safety check whatever the place."""
    return default_packs()["unece"].speedometer


def is_r39(rule: SpeedometerRule) -> bool:
    """Return whether a place's rule asks no more than this check: R39's band, at its test speeds, shown or true."""
    return _asks(rule) == _asks(r39())


def _asks(rule: SpeedometerRule) -> tuple[object, ...]:
    edges = rule.least_gain, rule.least_constant_kmh, rule.most_gain, rule.most_constant_kmh
    return (*edges, rule.test_speed_is, rule.test_speeds)


def present_lead(vehicle: Vehicle) -> float:
    """Return the displayed over the true speed now, NaN when it was not measured."""
    return vehicle.displayed_kmh / vehicle.true_kmh


def lead_after_percent(car: CarView) -> float:
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


def lawful_lead_percent(rule: SpeedometerRule, max_speed_kmh: float, ratio: float) -> tuple[float, float]:
    """Return the least and the greatest lead [%] that the present speedometer may have."""
    least, most = _lawful_leads(rule, max_speed_kmh)
    return 100.0 * (least * ratio - 1.0), 100.0 * (most * ratio - 1.0)


@lru_cache(maxsize=1024)
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


def _grade(car: CarView) -> Grade:
    ratio = car.change.driven_circumference_ratio
    lead = 100.0 * (present_lead(car.vehicle) - 1.0)
    least, most = lawful_lead_percent(r39(), car.vehicle.max_speed_kmh, ratio)
    outside = (lead < least - LAST_BIT_KMH) | (lead > most + LAST_BIT_KMH)
    # Without a measured lead an unchanged circumference leaves the speedometer as lawful as it is.
    not_known = (unknown(lead) & (ratio != 1.0)) | unknown(ratio)
    outcome = MET if car.vehicle.is_trailer else worst(not_met=outside, not_assessed=not_known)
    return Grade(outcome, lead, pick(lead > most, most, least))


def _explain(car: CarView, grade: Grade) -> Finding:
    if car.vehicle.is_trailer:
        message = "A trailer has no speedometer that its tyres could mislead."
        return Finding("diameter.speedometer", "vehicle", MET, message, None, None, "%", R39)
    if unknown(car.change.driven_circumference_ratio):
        message = "The speedometer cannot be judged without the overall diameters of all tyres."
        ask = diameter_remedy(car.front, car.rear)
        return Finding("diameter.speedometer", "vehicle", grade.outcome, message, None, None, "%", R39, ask)
    least, most = lawful_lead_percent(r39(), car.vehicle.max_speed_kmh, car.change.driven_circumference_ratio)
    needed = lawful_lead(least, most)
    remedy = None
    if is_open(grade.outcome):
        change = 100.0 * (car.change.driven_circumference_ratio - 1.0)
        by = "less than 0.1" if plain(change, 1) == "0" else signed(change)
        message = (
            f"The rolling circumference changes by {by} %. That is lawful if the speedometer now reads {needed}; "
            "its reading is not given."
        )
        remedy = Remedy(
            f"measure vehicle.speedometer (displayed against true speed); lawful if it now reads {needed}",
            "/vehicle/speedometer",
            "speedometer_lead_percent",
            least,
            most,
            unit="%",
        )
    elif grade.outcome == MET and unknown(grade.measured):
        message = "The rolling circumference does not change, so the speedometer stays as it is."
    else:
        lead = lead_after_percent(car)
        after = beside_true_speed(lead)
        if grade.outcome == MET:
            message = f"{_reads(grade.measured, after)}, within the lawful range at every test speed."
        else:
            low = grade.measured < least
            after = f"{apart(-lead, 0.0, 1)} % below the true speed" if low else after
            side = "it must never read low" if low else "more than is lawful"
            message = f"{_reads(grade.measured, after)}: {side}."
            remedy = _remedy(least, most, needed)
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("diameter.speedometer", "vehicle", grade.outcome, message, measured, limit, "%", R39, remedy)


def _reads(lead_percent: float, after: str) -> str:
    now = beside_true_speed(lead_percent)
    if after == now:
        return f"The speedometer reads {now} now and after the change"
    return f"The speedometer reads {now} now and {after.replace(' the true speed', ' it')} after the change"


def _remedy(least: float, most: float, needed: str) -> Remedy:
    return Remedy(
        f"have the speedometer recalibrated so that with the present tyres it reads {needed}",
        "/vehicle/speedometer",
        "speedometer_lead_percent",
        least,
        most,
        unit="%",
    )


SPEEDOMETER = Check("diameter.speedometer", _grade, _explain)
