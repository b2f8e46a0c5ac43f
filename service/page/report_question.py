"""The question of a report in sentences: the vehicle, the rules of its place, the wheels."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Final, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.case import DrivenAxle, Fitment, Season
from service.core.numeric import known
from service.core.saying import Amount, Said, joined, say, sentences
from service.drawing.terms import FITMENTS
from service.page.report_rows import FRONT, REAR

DRIVES: Final[Mapping[DrivenAxle, Said]] = MappingProxyType(
    {"front": say("front-wheel drive"), "rear": say("rear-wheel drive"), "all": say("all-wheel drive")}
)
SEASONS: Final[Mapping[Season, Said]] = MappingProxyType({"summer": say("summer use"), "winter": say("winter use")})
# Say: in the column "Pressure" of a table
NOT_GIVEN: Final = say("not given")


class Wheel(NamedTuple):
    """A line of the table of wheels; `style` is `present` or `proposed`."""

    style: str
    axle: Said
    fitment: Said
    tyre: str
    rim: str
    pressure: str


def wheels(found: Assessment) -> Iterator[Wheel]:
    """Yield present and proposed of each axle."""
    vehicle, candidate = found.case.vehicle, found.case.candidate
    for axle, now, then in (
        (FRONT, vehicle.front.fitted, candidate.front),
        (REAR, vehicle.rear.fitted, candidate.rear),
    ):
        yield _wheel("present", axle, now)
        yield _wheel("proposed", axle, then)


def _wheel(style: str, axle: Said, fitment: Fitment) -> Wheel:
    words = FITMENTS["present" if style == "present" else "proposed"]
    tyre, rim = fitment.tyre.designation.canonical, fitment.rim.designation.canonical
    pressure = Amount(fitment.pressure_kpa, "kPa") if known(fitment.pressure_kpa) else NOT_GIVEN
    return Wheel(style, axle, words, tyre, rim, pressure)


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
