"""Whom each rule, relief and speedometer of each place is for: asked at the edge of every condition printed.

The conditions are those of `data/places`, copied by hand (see `test_places_held.py` for the documents). A mass "over"
is not included and one "up to" is; both days of a window are; a limiter set to the speed named counts.
"""

import re
from typing import NamedTuple, get_args

import pytest

from service.rules.pack import VehicleFacts, asked, speedometer_asked
from service.rules.reader import default_packs
from service.rules.rule import Category
from tests.support.cases import changed, check, saloon
from tests.support.place_tables import Held, printed

PACKS = default_packs()
# UN R.E.3: the classes of motor vehicles and trailers; G marks an off-road vehicle (of N the packs know none).
CLASSES = ("M1", "M1G", "M2", "M3", "N1", "N2", "N3", "O1", "O2", "O3", "O4")
LINES = [(place, line) for place in PACKS for line in printed(place)]
LAWS = [(place, line) for place, line in LINES if line.what.startswith("law.")]
RELIEFS = [(place, line) for place, line in LINES if line.what.startswith("relief.")]
DAY_BESIDE = {
    "1974-07-01": "1974-06-30",
    "1998-01-01": "1997-12-31",
    "2006-06-30": "2006-07-01",
    "2006-12-31": "2007-01-01",
    "2007-01-01": "2006-12-31",
}


class Edge(NamedTuple):
    """A vehicle at the edge of what a line asks, and whether the line is for it."""

    facts: VehicleFacts
    holds: bool


def classes(line: Held) -> set[str]:
    return set(line.whom.split(",")[0].split()) & set(CLASSES) or set(CLASSES)


def one_for(line: Held) -> VehicleFacts:
    """Return a vehicle that the line is for, at the edge of each of its masses and days."""
    over, most = re.search(r">(\d+) kg", line.whom), re.search(r"<=(\d+) kg", line.whom)
    mass_kg = float(most[1]) if most else float(over[1]) + 1.0 if over else 1900.0
    day = re.search(r"(?:from|to) (\d{4}-\d\d-\d\d)", line.whom)
    return VehicleFacts(min(classes(line)), driven=True, mass_kg=mass_kg, built=day[1] if day else "2015-05-01")


def edges(line: Held) -> list[Edge]:
    fits = one_for(line)
    found = [Edge(fits._replace(category=each), each in classes(line)) for each in CLASSES]
    for sign, printed_kg in re.findall(r"(>|<=)(\d+) kg", line.whom):
        kg = float(printed_kg)
        found += [Edge(fits._replace(mass_kg=kg + step), (step > 0) == (sign == ">")) for step in (-1.0, 0.0, 1.0)]
    if " kg" not in line.whom:
        found += [Edge(fits._replace(mass_kg=mass_kg), True) for mass_kg in (700.0, 44000.0, None)]
    for day in re.findall(r"(?:from|to) (\d{4}-\d\d-\d\d)", line.whom):
        found += [Edge(fits._replace(built=day), True), Edge(fits._replace(built=DAY_BESIDE[day]), False)]
    found.append(Edge(fits._replace(driven=False), "driven" not in line.whom.split(", ")))
    return found


def named(lines: list[tuple[str, Held]]) -> list[object]:
    return [pytest.param(place, line, id=f"{place} {line.what}") for place, line in lines]


def test_the_classes_are_those_that_a_vehicle_can_have():
    assert get_args(Category) == CLASSES


@pytest.mark.parametrize(("place", "line"), named(LAWS))
def test_a_rule_is_asked_of_those_it_is_for_and_of_no_others(place, line):
    of_the_vehicle = "vehicle" in line.whom.split(", ")
    wrong = [
        (edge, where)
        for edge in edges(line)
        for where in ("front", "rear", "vehicle")
        if (line.what in {rule.code for rule in asked(PACKS[place], edge.facts, where, "2026-11-01").rules})
        is not (edge.holds and (where == "vehicle") is of_the_vehicle)
    ]
    assert wrong == []


@pytest.mark.parametrize(("place", "line"), named(RELIEFS))
@pytest.mark.parametrize("step_kmh", [-1.0, 0.0, 1.0, None])
@pytest.mark.parametrize("stand", [True, False, None])
def test_a_relief_is_given_to_those_it_is_for_and_to_no_others(place, line, step_kmh, stand):
    limited = re.search(r"limited to (\d+) km/h", line.whom)
    set_to_kmh = None if step_kmh is None else (float(limited[1]) if limited else 80.0) + step_kmh
    holds = (limited is None or step_kmh in (-1.0, 0.0)) and (stand is True or "standing" not in line.whom)
    for edge in edges(line):
        given = PACKS[place].allowances_for(edge.facts, seats_standing=stand, speed_limited_kmh=set_to_kmh)
        assert (line.what in {each.code for each in given}) is (edge.holds and holds), edge


@pytest.mark.parametrize(
    ("place", "category", "built", "number"),
    [
        # Reg. 40A: built from 1 July 1974; ADR 18/03 from July 2006 (memory).
        ("au-nsw", "M1", "1974-06-30", 2),
        ("au-nsw", "M1", "1974-07-01", 1),
        ("au-nsw", "M1", "2006-06-30", 1),
        ("au-nsw", "M1", "2006-07-01", 2),
        # Art. 148 and 226, built to 31 December 2006 or from 1 January 2007.
        ("jp", "M1", "2006-12-31", 1),
        ("jp", "M1", "2007-01-01", 2),
        # 49 CFR 393.82: buses and trucks.
        *(("us", each, "2015-05-01", 1 if each in ("M2", "M3", "N2", "N3") else None) for each in CLASSES),
        *(("unece", each, "1960-01-01", 1) for each in CLASSES),
    ],
)
def test_a_speedometer_is_held_against_the_rule_of_its_vehicle_and_its_day(place, category, built, number):
    rule, missing = speedometer_asked(PACKS[place], VehicleFacts(category, built=built), "2026-11-01")
    expected = None if number is None else PACKS[place].speedometers[number - 1]
    assert (rule, missing) == (expected, ())


@pytest.mark.parametrize(
    ("place", "code", "vehicle", "answered"),
    [
        # Regeling voertuigen, art. 5.3.23: vans and buses up to 3500 kg; 5.2.23: passenger cars.
        ("nl", "law.track_change_commercial", {"category": "N1", "max_mass_kg": 3500}, True),
        ("nl", "law.track_change_commercial", {"category": "N1", "max_mass_kg": 3501}, False),
        ("nl", "law.track_change_commercial", {"category": "M1", "max_mass_kg": 3500}, False),
        ("nl", "law.track_change", {"category": "M1"}, True),
        ("nl", "law.track_change", {"category": "M1G"}, True),
        ("nl", "law.track_change", {"category": "N1"}, False),
        # Art. 50(1): N, buses and trailers from 1998.
        ("nl", "law.axle_load", {"category": "N1", "built": "1998-01-01"}, True),
        ("nl", "law.axle_load", {"category": "N1", "built": "1997-12-31"}, False),
        ("nl", "law.axle_load", {"category": "M1", "built": "1998-01-01"}, False),
        # Art. 5.3.15(6)(c): above 3500 kg.
        ("nl", "law.driven_circumference", {"category": "N2", "max_mass_kg": 3501}, True),
        ("nl", "law.driven_circumference", {"category": "N2", "max_mass_kg": 3500}, False),
        # VIRM, class MD3.
        ("nz", "law.load_index_spread_bus", {"category": "M2", "max_mass_kg": 3501}, True),
        ("nz", "law.load_index_spread_bus", {"category": "M2", "max_mass_kg": 3500}, False),
        # VSI 9: 25 mm for cars, 50 mm for off-road cars and goods vehicles.
        ("au-nsw", "law.track_change", {"category": "M1"}, True),
        ("au-nsw", "law.track_change", {"category": "M1G"}, False),
        ("au-nsw", "law.track_change_off_road", {"category": "M1G"}, True),
        ("au-nsw", "law.track_change_off_road", {"category": "M1"}, False),
        # Rules 46 and 52: passenger cars, off-road cars, others.
        *((place, "law.speed_rating_car", {"category": "M1"}, True) for place in ("au-sa", "au-wa")),
        *((place, "law.speed_rating_off_road", {"category": "M1"}, False) for place in ("au-sa", "au-wa")),
        *((place, "law.speed_rating_other", {"category": "N1"}, True) for place in ("au-sa", "au-wa")),
        # FMVSS 110 speaks of passenger cars, FMVSS 120 of the others.
        ("us", "law.sidewall_limit", {"category": "M1"}, True),
        ("us", "law.sidewall_limit", {"category": "M1G"}, False),
        ("us", "law.load_rating_sum", {"category": "M1G"}, True),
        ("us", "law.load_rating_sum", {"category": "M1"}, False),
    ],
)
def test_an_answer_has_the_rules_of_its_vehicle_and_no_others(place, code, vehicle, answered):
    request = changed(saloon(), {"/rule_pack": place} | {f"/vehicle/{name}": value for name, value in vehicle.items()})
    assert ((code, "rear") in {(each.code, each.axle) for each in check(request).findings}) is answered
