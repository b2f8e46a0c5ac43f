"""The question of a report in sentences: the vehicle and the rules of its place."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from service.assessment.answer.assess import Assessment
from service.assessment.case import DrivenAxle, Season
from service.core.saying import Amount, Said, joined, say, sentences

DRIVES: Final[Mapping[DrivenAxle, Said]] = MappingProxyType(
    {"front": say("front-wheel drive"), "rear": say("rear-wheel drive"), "all": say("all-wheel drive")}
)
SEASONS: Final[Mapping[Season, Said]] = MappingProxyType({"summer": say("summer use"), "winter": say("winter use")})


def question(found: Assessment) -> Said:
    """Return vehicle, use, rules and how much of the law is held, in sentences."""
    pack = found.case.pack
    return sentences(
        say("{vehicle}.", vehicle=_vehicle(found)),
        say("Rules: {title} ({pack}), edition {edition}.", title=pack.title, pack=pack.id, edition=pack.edition),
        _law(found),
    )


def _vehicle(found: Assessment) -> Said:
    vehicle, case = found.case.vehicle, found.case
    words = [
        say("Category {category}", category=vehicle.category),
    ]
    if not vehicle.speed_assumed:
        # Say: a part of a list: the vehicle's top speed
        words.append(say("up to {speed}", speed=Amount(vehicle.max_speed_kmh, "km/h")))
    if vehicle.driven_axle is not None:
        words.append(DRIVES[vehicle.driven_axle])
    if not vehicle.front.mass_assumed:
        words.append(say("front axle up to {mass}", mass=Amount(vehicle.front.max_axle_mass_kg, "kg")))
    if not vehicle.rear.mass_assumed:
        words.append(say("rear axle up to {mass}", mass=Amount(vehicle.rear.max_axle_mass_kg, "kg")))
    if case.season is not None:
        words.append(SEASONS[case.season])
    if case.date is not None:
        # Say: a part of a list: the day for which the question is asked
        words.append(say("on {date}", date=str(case.date)))
    return joined(words)


def _law(found: Assessment) -> Said:
    """Return how many rules of the place are held, apply and are met, and what is not held."""
    held, applied, met = found.law
    rules = say("1 rule is held") if held == 1 else say("{count} rules are held", count=Amount(held))
    told = say("{rules}; {applied}.", rules=rules, applied=_applied(applied, met))
    not_held = found.case.pack.not_held
    if not not_held:
        return told
    return sentences(told, say("Not held: {rules}", rules=joined(not_held, " ")))


def _applied(applied: int, met: int) -> Said:
    if not applied:
        return say("none of them applies to this vehicle")
    those = (
        say("1 of them applies to this vehicle")
        if applied == 1
        else say("{count} of them apply to this vehicle", count=Amount(applied))
    )
    # Say: a number of rules of the law
    good = say("1 is met") if met == 1 else say("{count} are met", count=Amount(met))
    return joined((those, good))
