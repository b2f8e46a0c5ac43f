"""Speedometer bands, winter tyres, load shares, towing and spare as the packs give them.

Sources, and how far each was read: UN R39 5.3 as directive 75/443 prints it (read), its test speeds (memory);
Japan, art. 148 and 226, 30.9 to 44.4 km/h at 40 shown to 2006 (second hand) and 30.9 to 42.55 from 2007 (memory);
49 CFR 393.82, 8 km/h at 80 (read); New South Wales reg. 40A, 10 % below at most (read); StVZO section 36(4) and (5)
(read); UN R142 and R64 (memory); Regeling voertuigen art. 50(3), 0.25 x 0.96 and 0.5 x 0.90 (derived).
"""

import math

import pytest

from service.rules.pack import VehicleFacts, speedometer_asked
from service.rules.reader import default_packs

PACKS = default_packs()
UNECE, DE, NL = PACKS["unece"], PACKS["de"], PACKS["nl"]


def speedometer(pack, category="M1", built="2015-01-01", date=None):
    facts = VehicleFacts(category, mass_kg=1900.0, built=built)
    return speedometer_asked(PACKS[pack], facts, date or PACKS[pack].edition_date)[0]


@pytest.mark.parametrize(("true_kmh", "most_kmh"), [(40.0, 48.0), (80.0, 92.0), (120.0, 136.0)])
def test_the_united_nations_band_reaches_a_tenth_and_4_kmh_above(true_kmh, most_kmh):
    assert speedometer("unece").most_displayed_kmh(true_kmh) == pytest.approx(most_kmh)


def test_the_united_nations_band_begins_at_the_true_speed():
    assert speedometer("unece").least_displayed_kmh(80.0) == 80.0


@pytest.mark.parametrize(
    ("max_speed_kmh", "speeds"),
    [(228, (40, 80, 120)), (150, (40, 80, 120)), (140, (40, 80, 112)), (100, (40, 80)), (45, (36,))],
)
def test_the_test_speeds_follow_the_maximum_speed(max_speed_kmh, speeds):
    assert speedometer("unece").test_speeds_for(max_speed_kmh) == pytest.approx(speeds)


@pytest.mark.parametrize(("built", "most_true_kmh"), [("2006-12-31", 44.4), ("2007-01-01", 42.55)])
def test_the_japanese_upper_edge_at_40_kmh_shown_depends_on_the_build_date(built, most_true_kmh):
    assert speedometer("jp", built=built).most_true_kmh(40.0) == pytest.approx(most_true_kmh, abs=0.05)


@pytest.mark.parametrize("built", ["2006-12-31", "2007-01-01"])
def test_the_japanese_lower_edge_at_40_kmh_shown_is_30_9(built):
    assert speedometer("jp", built=built).least_true_kmh(40.0) == pytest.approx(30.9, abs=0.05)


def test_the_japanese_rule_from_memory_cannot_forbid():
    assert not speedometer("jp", built="2015-01-01").can_forbid


def test_american_buses_and_trucks_have_8_kmh_both_ways_at_80():
    rule = speedometer("us", "N3")
    assert (rule.least_displayed_kmh(80.0), rule.most_displayed_kmh(80.0)) == (72.0, 88.0)
    # The same edges read the other way round.
    assert (rule.most_true_kmh(72.0), rule.least_true_kmh(88.0)) == (80.0, 80.0)


def test_american_cars_have_no_rule_on_the_speedometer():
    """49 CFR 393.82 (read) is of buses and trucks; no federal rule on passenger cars was found."""
    assert speedometer("us", "M1") is None


def test_new_zealand_has_no_rule_on_the_speedometer():
    assert speedometer("nz") is None


@pytest.mark.parametrize("pack", ["unece", "de", "es", "fi", "gb", "nl"])
def test_un_r39_is_law_where_a_place_includes_it(pack):
    assert PACKS[pack].r39_holds_for(VehicleFacts("M1"), PACKS[pack].edition_date)


@pytest.mark.parametrize("built", [None, "1995-01-01", "2015-01-01"])
@pytest.mark.parametrize("pack", ["us", "jp", "nz", "au-nsw", "au-sa", "au-wa"])
def test_un_r39_is_no_law_elsewhere(pack, built):
    """Japan and Australia have rules of their own; in Australia R39's band is tried at the speed shown (read)."""
    assert not PACKS[pack].r39_holds_for(VehicleFacts("M1", built=built), PACKS[pack].edition_date)


def test_mud_and_snow_alone_is_no_winter_tyre_of_the_united_nations():
    """(EU) 458/2011, annex II 4.2.2, as quoted: a slower winter tyre needs the mountain symbol."""
    assert [each.marking for each in UNECE.winter.markings] == ["3PMSF"]


def test_older_cars_in_new_south_wales_may_show_a_tenth_less():
    assert speedometer("au-nsw", built="1990-01-01").least_displayed_kmh(100.0) == pytest.approx(90.0)


def test_older_cars_in_new_south_wales_have_no_upper_edge():
    assert speedometer("au-nsw", built="1990-01-01").most_displayed_kmh(100.0) == math.inf


def test_newer_cars_in_new_south_wales_must_not_show_less():
    assert speedometer("au-nsw", built="2015-01-01").least_displayed_kmh(100.0) == 100.0


@pytest.mark.parametrize(
    ("pack", "built", "max_speed_kmh", "speeds"),
    [
        # Reg. 40A speaks of speeds above 50 km/h (read).
        *[("au-nsw", "1990-01-01", 50.0, ()), ("au-nsw", "1990-01-01", 50.1, (80, 120))],
        *[("unece", "1990-01-01", 0.0, ()), ("unece", "1990-01-01", 45.1, (40, 0.8 * 45.1))],
        *[("unece", "1990-01-01", 100.1, (40, 80, 0.8 * 100.1)), ("unece", "1990-01-01", 150.1, (40, 80, 120))],
        # Art. 148 is tried at 40 km/h shown, whatever the vehicle can do (read).
        *[("jp", "2006-12-31", 30.0, (40,)), ("jp", "2007-01-01", 300.0, (40,))],
    ],
)
def test_a_vehicle_is_tried_at_the_speeds_for_its_own_or_at_none(pack, built, max_speed_kmh, speeds):
    rule = speedometer(pack, built=built)
    assert rule.test_speeds_for(max_speed_kmh) == pytest.approx(speeds)
    assert rule.has_test_speed(max_speed_kmh) is bool(speeds)


@pytest.mark.parametrize("pack", ["au-nsw", "au-wa", "au-sa"])
def test_the_australian_test_speed_is_the_speed_shown(pack):
    assert speedometer(pack).test_speed_is == "displayed"


@pytest.mark.parametrize(
    ("tyre_built", "date", "counts"),
    [
        ("2017-12-31", "2024-09-30", True),
        ("2018-01-01", "2024-09-30", False),
        ("2017-12-31", "2024-10-01", False),
        (None, "2024-10-01", False),
        (None, "2024-09-30", None),
        ("2017-12-31", None, None),
        ("2018-01-01", None, False),
    ],
)
def test_german_mud_and_snow_alone_counts_to_two_dates(tyre_built, date, counts):
    marking = next(marking for marking in DE.winter.markings if marking.marking == "M+S")
    assert marking.counts(tyre_built, date) is counts


def test_the_german_mountain_mark_counts_without_end():
    marking = next(marking for marking in DE.winter.markings if marking.marking == "3PMSF")
    assert marking.counts("2026-01-01", "2030-01-01") is True


def test_germany_has_no_floor_for_the_winter_speed_symbol():
    assert DE.winter.speed_floor.value == 0.0


def test_the_united_nations_floor_for_the_winter_speed_symbol_is_q_from_memory():
    floor = UNECE.winter.speed_floor
    assert (floor.value, floor.basis.status, floor.basis.kind) == (160.0, "memory", "common_practice")


@pytest.mark.parametrize("pack", sorted(PACKS))
def test_a_winter_label_is_asked_for_everywhere(pack):
    assert PACKS[pack].winter.label_required


@pytest.mark.parametrize(
    ("limit", "value"),
    [
        (UNECE.limits.load_share_single, 0.5),
        (UNECE.limits.load_share_twin_passenger, 0.27),
        (UNECE.limits.load_share_twin_commercial, 0.25),
        (UNECE.limits.load_share_trailer_single, 0.45),
        (UNECE.limits.load_share_trailer_twin, 0.24),
        (UNECE.limits.trailer_speed_kmh, 100.0),
        (UNECE.limits.towing_load_excess_percent, 15.0),
        (UNECE.limits.towing_speed_kmh, 100.0),
        (UNECE.limits.towing_pressure_gain_kpa, 20.0),
        (UNECE.limits.temporary_spare_speed_kmh, 80.0),
        (UNECE.limits.service_width_growth_percent, 4.0),
    ],
)
def test_what_is_remembered_of_the_united_nations_regulations_says_so(limit, value):
    assert (limit.value, limit.basis.status) == (value, "memory")


@pytest.mark.parametrize(
    ("limit", "value"),
    [(NL.limits.load_share_trailer_single, 0.5 * 0.90), (NL.limits.load_share_trailer_twin, 0.25 * 0.96)],
)
def test_the_dutch_trailer_shares_follow_from_the_reductions_read(limit, value):
    assert (limit.value, limit.basis.status) == (pytest.approx(value), "derived")


def test_no_number_from_memory_is_called_a_regulation():
    bases = [rule.basis for pack in PACKS.values() for rule in (*pack.rules, *pack.speedometers)]
    assert {basis.kind for basis in bases if basis.status == "memory"} == {"common_practice"}


def test_every_number_that_was_read_names_the_day_it_was_checked():
    bases = [rule.basis for pack in PACKS.values() for rule in (*pack.rules, *pack.speedometers)]
    assert all("checked 20" in basis.reference for basis in bases if basis.status == "read")
