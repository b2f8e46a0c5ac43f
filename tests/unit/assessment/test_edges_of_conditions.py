"""What season, day and place change in the questions: which mark makes a winter tyre, and where the law reads a load.

Germany: StVZO § 36(4) and (5), read: 3PMSF counts without end, M+S alone until 30 September 2024 on tyres built by the
end of 2017, and a slower tyre has no floor of speed. UN R142 (from memory): 3PMSF, from 160 km/h on. The Netherlands:
Regeling voertuigen, art. 50(1) and (4), read.
"""

import math
from dataclasses import replace

import pytest

from service.assessment.view.conditions import conditions_of, law_speed_kmh
from tests.support.cases import ABSENT, changed, check, saloon

NAN = math.nan
NO_MARK, MUD_AND_SNOW, ALPINE = 0.0, 1.0, 2.0


def conditions(**fields):
    """Return the conditions of the saloon with these fields of the request."""
    return conditions_of(check(saloon() | fields).case)


# Whether a tyre without a mark, with M+S and with 3PMSF is a winter tyre. The day it was built nobody states.
@pytest.mark.parametrize(
    ("pack", "day", "counts", "floor_kmh"),
    [
        ("de", "2024-09-30", (0, NAN, 1), 0.0),
        ("de", "2024-10-01", (0, 0, 1), 0.0),
        ("unece", "2026-01-01", (0, 0, 1), 160.0),
    ],
)
def test_a_mark_makes_a_winter_tyre_by_place_and_day(pack, day, counts, floor_kmh):
    found = conditions(rule_pack=pack, date=day)
    told = [found.winter_tyre(mark) for mark in (NO_MARK, MUD_AND_SNOW, ALPINE)]
    assert told == pytest.approx(counts, nan_ok=True)
    assert found.winter_floor_kmh == pytest.approx(floor_kmh, nan_ok=True)
    assert found.day == day


def test_where_no_rule_tells_of_winter_tyres_no_mark_makes_one():
    case = check(saloon()).case
    found = conditions_of(case._replace(pack=replace(case.pack, winter=None)))
    assert [found.winter_tyre(mark) for mark in (NO_MARK, MUD_AND_SNOW, ALPINE)] == [0, 0, 0]
    assert math.isnan(found.winter_floor_kmh)


# 3PMSF in any season, M+S alone in winter.
@pytest.mark.parametrize(
    ("season", "slow"), [({"season": "winter"}, (0, NAN, 1)), ({"season": "summer"}, (0, 0, 1)), ({}, (0, 0, 1))]
)
def test_a_winter_tyre_may_be_slower_by_its_mark_and_the_season(season, slow):
    found = conditions(rule_pack="de", date="2024-09-30", **season)
    told = [found.slow_winter_tyre(mark) for mark in (NO_MARK, MUD_AND_SNOW, ALPINE)]
    assert told == pytest.approx(slow, nan_ok=True)
    assert found.winter == (season == {"season": "winter"})


def test_without_a_day_that_of_the_edition_of_the_rules_counts():
    found = check(saloon() | {"rule_pack": "de"}).case
    assert conditions_of(found).day == found.pack.edition_date


@pytest.mark.parametrize(("tolerance", "vary"), [("design", False), ("standard", True)])
def test_tyres_vary_where_the_standard_lets_them(tolerance, vary):
    assert conditions(tyre_tolerance=tolerance).tyres_vary == vary


BUS = {"category": "M3", "max_mass_kg": 12000}


@pytest.mark.parametrize(
    ("vehicle", "kmh", "share"),
    [
        ({"category": "M1"}, NAN, 1.0),
        ({"category": "N1", "speed_limited_kmh": 90}, 90, 1.0),
        ({"category": "N1", "speed_limited_kmh": 91}, NAN, 1.0),
        ({"category": "N1"}, NAN, 1.0),
        ({"category": "O2", "max_mass_kg": 751}, 100, 1.0),
        ({"category": "O2", "max_mass_kg": 750}, NAN, 1.0),
        (BUS | {"speed_limited_kmh": 100}, 100, 1.0),
        # 15 % less of the axle's mass is asked of buses with standing passengers.
        (BUS | {"seats_standing": True}, NAN, 0.85),
        (BUS | {"seats_standing": False}, NAN, 1.0),
        ({"category": "M2", "max_mass_kg": 5000, "seats_standing": True}, NAN, 1.0),
        (BUS | {"seats_standing": True, "speed_limited_kmh": 100}, 100, 0.85),
    ],
)
def test_the_law_reads_a_load_at_its_own_speed_and_asks_its_own_share(vehicle, kmh, share):
    fields = {f"/vehicle/{name}": value for name, value in vehicle.items()} | {"/rule_pack": "nl"}
    case = check(changed(saloon(), fields)).case
    found = conditions_of(case)
    assert (found.law_speed_kmh, found.axle_mass_share) == pytest.approx((kmh, share), nan_ok=True)
    assert law_speed_kmh(case) == pytest.approx(kmh, nan_ok=True)


# StVZO § 57(3); Regeling voertuigen, art. 5.3.15(6)(c). Where nobody states the driven axle both may be.
@pytest.mark.parametrize(
    ("pack", "category", "code"), [("de", "M1", "law.distance_counter"), ("nl", "N2", "law.driven_circumference")]
)
@pytest.mark.parametrize(
    ("driven", "axles"),
    [("front", ["front"]), ("rear", ["rear"]), ("all", ["front", "rear"]), (ABSENT, ["front", "rear"])],
)
def test_a_rule_on_driven_tyres_is_asked_of_the_axles_that_are(pack, category, code, driven, axles):
    fields = {"/rule_pack": pack, "/vehicle/category": category, "/vehicle/driven_axle": driven}
    found = check(changed(saloon(), fields)).findings
    assert [each.axle for each in found if each.code == code] == axles
