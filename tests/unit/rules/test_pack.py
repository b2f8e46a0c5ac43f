"""Which rules of a pack apply to a vehicle, an axle and a day."""

import dataclasses
import math

import pytest

import service.rules
from service.rules.pack import Asked, RulePack, VehicleFacts, asked, speedometer_asked
from service.rules.reader import default_packs
from tests.support.unchanging import data_classes, takes_another_field, takes_another_value

PACKS = default_packs()
NL = PACKS["nl"]
CAR = VehicleFacts("M1", driven=False, mass_kg=1900.0, built="2015-05-01")
VAN = CAR._replace(category="N1")
LORRY = CAR._replace(category="N2", mass_kg=7500.0)


def ask(pack: RulePack, facts: VehicleFacts = CAR, axle: str = "front", day: str | None = None) -> Asked:
    return asked(pack, facts, axle, day or pack.edition_date)


def codes(pack: RulePack, facts: VehicleFacts = CAR, axle: str = "front", day: str | None = None) -> set[str]:
    return {rule.code for rule in ask(pack, facts, axle, day).rules}


def dated(first: str | None, last: str | None) -> RulePack:
    track = next(rule for rule in NL.rules if rule.code == "law.track_change")
    return dataclasses.replace(NL, rules=(dataclasses.replace(track, valid_from=first, valid_to=last),))


@pytest.mark.parametrize(
    ("date", "applies"),
    [("2023-12-31", False), ("2024-01-01", True), ("2025-12-31", True), ("2026-01-01", False)],
)
def test_a_rule_applies_within_its_dates_only(date, applies):
    assert ("law.track_change" in codes(dated("2024-01-01", "2025-12-31"), day=date)) is applies


def test_without_a_date_the_first_day_of_the_edition_counts():
    assert codes(dated("2026-11-01", None)) == {"law.track_change"}


def test_without_a_date_a_rule_that_begins_after_the_edition_does_not_apply():
    assert codes(dated("2026-11-02", None)) == set()


def test_a_rule_for_cars_leaves_lorries_alone():
    assert "law.track_change" not in codes(NL, LORRY)


@pytest.mark.parametrize(("mass_kg", "applies"), [(3499.0, True), (3500.0, True), (3501.0, False)])
def test_a_greatest_mass_is_included(mass_kg, applies):
    assert ("law.track_change_commercial" in codes(NL, VAN._replace(mass_kg=mass_kg))) is applies


@pytest.mark.parametrize(("mass_kg", "applies"), [(3500.0, False), (3501.0, True)])
def test_a_mass_to_be_exceeded_is_not_included(mass_kg, applies):
    assert ("law.driven_circumference" in codes(NL, LORRY._replace(driven=True, mass_kg=mass_kg))) is applies


def test_a_rule_for_driven_axles_leaves_the_other_alone():
    assert "law.driven_circumference" not in codes(NL, LORRY)


@pytest.mark.parametrize(("built", "applies"), [("1997-12-31", False), ("1998-01-01", True)])
def test_a_rule_for_vehicles_built_from_a_day_includes_that_day(built, applies):
    assert ("law.axle_load" in codes(NL, VAN._replace(built=built))) is applies


def test_a_rule_that_needs_an_unknown_build_date_is_left_out():
    assert "law.axle_load" not in codes(NL, VAN._replace(built=None))


def test_a_rule_that_needs_an_unknown_build_date_names_it():
    unsettled = ask(NL, VAN._replace(built=None)).unsettled
    assert [(rule.code, missing) for rule, missing in unsettled] == [("law.axle_load", ("built",))]


@pytest.mark.parametrize("mass_kg", [None, math.nan])
def test_a_rule_that_needs_an_unknown_mass_names_it(mass_kg):
    unsettled = ask(NL, VAN._replace(mass_kg=mass_kg)).unsettled
    assert [(rule.code, missing) for rule, missing in unsettled] == [
        ("law.track_change_commercial", ("max_mass_kg",)),
    ]


def test_a_rule_that_fails_on_one_fact_asks_for_no_other():
    assert ask(NL, VehicleFacts("M1")).unsettled == ()


def test_a_rule_of_the_vehicle_comes_with_the_vehicle_only():
    assert (codes(NL, axle="vehicle"), "law.structure" in codes(NL)) == ({"law.structure"}, False)


def test_an_own_rule_stands_in_place_of_the_inherited_one():
    same_size = [rule.pack for rule in NL.rules if rule.code == "law.same_size_on_axle"]
    assert same_size == ["nl"]


def test_a_dropped_rule_is_not_inherited():
    assert "law.structure" not in {rule.code for rule in PACKS["us"].rules}


def test_an_own_limit_stands_in_place_of_the_inherited_one():
    assert [pack.limits.load_share_trailer_single.status for pack in (NL, PACKS["unece"])] == ["derived", "memory"]


def test_a_relief_needs_the_fact_it_is_given_for():
    bus = VehicleFacts("M3", mass_kg=12000.0)
    assert NL.allowances_for(bus) == ()


def test_standing_passengers_bring_the_relief():
    bus = VehicleFacts("M3", mass_kg=12000.0)
    assert [item.code for item in NL.allowances_for(bus, seats_standing=True)] == ["relief.standing_passengers"]


@pytest.mark.parametrize(("limiter_kmh", "expected"), [(85.0, 1), (90.0, 1), (91.0, 0), (math.nan, 0)])
def test_a_speed_limiter_at_or_below_the_named_speed_brings_the_relief(limiter_kmh, expected):
    found = NL.allowances_for(VehicleFacts("N2", mass_kg=7500.0), speed_limited_kmh=limiter_kmh)
    assert len(found) == expected


def test_without_a_build_date_the_speedometer_rule_asks_for_it():
    assert speedometer_asked(PACKS["jp"], CAR._replace(built=None), "2026-11-01")[1] == ("built",)


def test_with_a_build_date_the_speedometer_rule_is_settled():
    assert speedometer_asked(PACKS["jp"], CAR, "2026-11-01")[1] == ()


def test_without_a_build_date_the_last_speedometer_rule_that_may_apply_is_named():
    assert speedometer_asked(PACKS["jp"], CAR._replace(built=None), "2026-11-01")[0] == PACKS["jp"].speedometers[-1]


def test_a_dropped_speedometer_rule_is_not_inherited():
    assert {rule.pack for rule in PACKS["jp"].speedometers} == {"jp"}


def test_where_no_speedometer_rule_is_for_a_vehicle_there_is_none():
    assert speedometer_asked(PACKS["us"], CAR, "2026-11-01") == (None, ())


@pytest.mark.parametrize(("built", "holds"), [("1995-01-01", False), ("2015-01-01", True), (None, False)])
def test_un_r39_holds_where_it_is_settled_that_no_other_rule_does(built, holds):
    older, *_ = PACKS["au-nsw"].speedometers
    pack = dataclasses.replace(NL, speedometers=(older, *NL.speedometers))
    assert pack.r39_holds_for(CAR._replace(built=built), "2026-11-01") is holds


def test_a_lorry_has_the_speedometer_rule_that_a_car_has_not():
    assert speedometer_asked(PACKS["us"], LORRY, "2026-11-01")[0].pack == "us"


def test_the_rules_on_the_speedometer_are_counted():
    assert PACKS["jp"].rule_count == 2


def test_a_pack_says_where_its_rules_are_law():
    assert {rule.code: rule.place for rule in NL.rules}["law.track_change"] == "in the Netherlands"


def test_an_inherited_rule_is_law_where_it_comes_from():
    assert {rule.code: rule.place for rule in NL.rules}["law.structure"] == "under the UN Regulations"


def test_a_pack_without_a_place_takes_its_title():
    assert {rule.place for rule in PACKS["nz"].rules} == {"in New Zealand"}


@pytest.mark.parametrize("pack", sorted(PACKS))
def test_every_pack_says_what_it_does_not_hold(pack):
    assert PACKS[pack].not_held, f"say in `not_held` of {pack}.toml what of its law was not found or is not asked"


def test_what_was_read_once_for_all_requests_neither_changes_nor_grows():
    kinds = list(data_classes(service.rules))
    assert RulePack in kinds
    assert not [each for each in kinds if takes_another_value(each) or takes_another_field(each)]
