"""The law of a place in an answer: outcomes, caveats, facts that a rule lacks, each place's speedometer.

Every rule at, just inside and just outside its limit: tests/reference/test_packs_rules.py.
"""

import pytest

from service.core.findings import MET, NOT_MET, OUTCOME_NAMES
from tests.support.cases import ABSENT, answer, changed, check, finding, on_both_axles, outcome, saloon

# Rules with a status other than `read` may only advise.


def under(pack: str, changes: dict | None = None) -> dict:
    """Return the saloon's request under a rule pack, changed."""
    return changed(saloon() | {"rule_pack": pack}, changes or {})


@pytest.mark.parametrize(("offset", "expected"), [(30, "met"), (29, "not_met")])
def test_in_the_netherlands_a_track_of_1500_mm_may_grow_by_30_mm(offset, expected):
    # Regeling voertuigen art. 5.2.23: 2.0 % of the registered track.
    changes = on_both_axles(
        {"/vehicle/{axle}/track_mm": 1500, "/candidate/{axle}/rim/size": f"7.5J x 17 H2 ET{offset}"}
    )
    assert outcome(check(under("nl", changes)), "law.track_change") == expected


def test_a_narrower_track_is_lawful_in_the_netherlands():
    changes = on_both_axles({"/candidate/{axle}/rim/size": "7.5J x 17 H2 ET60"})
    assert outcome(check(under("nl", changes)), "law.track_change") == "met"


@pytest.mark.parametrize(("proposed_mm", "expected"), [(648, "met"), (658, "advisory")])
def test_in_spain_632_mm_may_become_648_but_not_658(proposed_mm, expected):
    # Manual de procedimiento ITV rev. 6: within 3 %; known second-hand, so it can only advise.
    changes = on_both_axles(
        {
            "/vehicle/{axle}/fitted/tyre/size": "205/55 R16 91W",
            "/vehicle/{axle}/fitted/rim/size": "6.5J x 16 H2 ET45",
            "/candidate/{axle}/tyre/size": "205/55 R16 91W",
            "/candidate/{axle}/tyre/overall_diameter_mm": proposed_mm,
            "/candidate/{axle}/rim/size": "6.5J x 16 H2 ET45",
        }
    )
    assert outcome(check(under("es", changes)), "law.overall_diameter") == expected


def test_what_is_known_second_hand_says_to_check_the_official_text():
    changes = on_both_axles({"/candidate/{axle}/tyre/overall_diameter_mm": 660})
    found = finding(check(under("es", changes)), "law.overall_diameter")
    assert "check the official text" in found.message


def test_the_basis_names_article_and_day_checked():
    reference = finding(check(under("nl")), "law.track_change").basis.reference
    assert "5.2.23" in reference
    assert "2026-11-24" in reference


def test_own_safety_checks_keep_their_outcome_under_every_pack():
    changes = {"/candidate/rear/tyre/size": "225/45 R17 79W"}
    outcomes = {outcome(check(under(pack, changes)), "load.capacity") for pack in ("unece", "us", "jp", "au-wa")}
    assert outcomes == {"not_met"}


@pytest.mark.parametrize(("displayed_kmh", "expected"), [(130, "advisory"), (104, "met")])
def test_un_r39_only_advises_in_the_united_states(displayed_kmh, expected):
    request = under("us", {"/vehicle/speedometer/displayed_kmh": displayed_kmh})
    assert outcome(check(request), "diameter.speedometer", "vehicle") == expected


@pytest.mark.parametrize(
    ("built", "displayed_kmh", "expected"),
    [
        # 10 (V1 - 6) / 11 <= V2 <= (100/90) V1 at 40 km/h shown: at true 97 km/h 87.3 or more
        ("2006-12-31", 88, "met"),
        ("2006-12-31", 87, "advisory"),
        # from 2007 (100/94): 91.2 or more
        ("2007-01-01", 92, "met"),
        ("2007-01-01", 91, "advisory"),
    ],
)
def test_japans_speedometer_rule_goes_by_the_day_the_vehicle_was_built(built, displayed_kmh, expected):
    request = under("jp", {"/vehicle/built": built, "/vehicle/speedometer/displayed_kmh": displayed_kmh})
    assert outcome(check(request), "law.speedometer", "vehicle") == expected


# The speed at which the rule is tried is the speed shown (circular 18/03-3-1; JP-148: 30.9 km/h at 40 km/h shown), so
# the upper edge 1.1 V2 + c is met at V2 = (V1 - c) / 1.1: at 97 km/h 97 x 120 / 105.45 = 110.4 and 97 x 40 / 30.91 =
# 125.5 km/h. Were the speed the true one, it would be 97 x 136 / 120 = 109.9 and 97 x 50 / 40 = 121.3 km/h.
@pytest.mark.parametrize(
    ("pack", "displayed_kmh", "expected"),
    [
        ("au-nsw", 110.3, "met"),
        ("au-nsw", 110.5, "advisory"),
        ("au-sa", 110.3, "met"),
        ("au-sa", 110.5, "advisory"),
        ("au-wa", 110.3, "met"),
        ("au-wa", 110.5, "advisory"),
        ("jp", 125.4, "met"),
        ("jp", 125.6, "advisory"),
    ],
)
def test_where_the_test_speed_is_the_one_shown_the_rule_is_tried_there(pack, displayed_kmh, expected):
    changes = {"/vehicle/built": "2015-01-01", "/vehicle/speedometer/displayed_kmh": displayed_kmh}
    assert outcome(check(under(pack, changes)), "law.speedometer", "vehicle") == expected


@pytest.mark.parametrize("pack", ["unece", "nl", "nz"])
def test_where_the_rule_is_un_r39_itself_it_is_asked_once(pack):
    codes = [each.code for each in check(under(pack)).findings]
    assert "law.speedometer" not in codes
    assert "diameter.speedometer" in codes


def test_without_the_day_built_japans_rule_is_not_settled():
    found = finding(check(under("jp")), "law.speedometer", "vehicle")
    assert OUTCOME_NAMES[found.outcome] == "not_assessed"
    assert "the day on which the vehicle was built" in found.message
    assert found.remedy.pointer == "/vehicle/built"


def bus(changes: dict) -> dict:
    """Return a bus above 5 t whose rear axle of 1340 kg capacity has to carry 1500 kg."""
    vehicle = {
        "/vehicle/category": "M3",
        "/vehicle/max_mass_kg": 6000,
        "/vehicle/built": "2010-01-01",
        "/vehicle/rear/max_axle_mass_kg": 1500,
    }
    return under("nl", {**vehicle, **changes})


@pytest.mark.parametrize(("standing", "expected"), [(True, "met"), (False, "not_met")])
def test_dutch_buses_with_standing_passengers_count_15_percent_less_axle_mass(standing, expected):
    # Regeling voertuigen art. 50(1): 0.85 x 1500 kg = 1275 kg
    assert outcome(check(bus({"/vehicle/seats_standing": standing})), "law.axle_load") == expected


def test_a_commercial_tyre_carries_more_by_dutch_law_on_a_bus_held_to_100_kmh():
    # UN R54 annex 8: +5 % at 100 km/h for N, load index up to 121; 2 x 690 x 1.05 = 1449 kg.
    tyre = {"/candidate/rear/tyre/size": "225/65 R17C 95N", "/vehicle/rear/max_axle_mass_kg": 1440}
    limited = check(bus({**tyre, "/vehicle/speed_limited_kmh": 100, "/vehicle/max_speed_kmh": 120}))
    free = check(bus({**tyre, "/vehicle/max_speed_kmh": 120}))
    assert (outcome(limited, "law.axle_load"), outcome(free, "law.axle_load")) == ("met", "not_met")


@pytest.mark.parametrize(("tyre", "expected"), [("225/45 R17 94W XL", "not_met"), ("225/65 R17C 94/92R", "met")])
def test_in_the_us_passenger_tyres_on_a_truck_count_divided_by_110(tyre, expected):
    # FMVSS 120 S5.1.2: 2 x 670 / 1.10 = 1218 kg; a commercial tyre counts whole, 1340 kg.
    changes = {
        "/vehicle/category": "N2",
        "/vehicle/max_mass_kg": 5000,
        "/vehicle/rear/max_axle_mass_kg": 1300,
        "/candidate/rear/tyre/size": tyre,
    }
    assert outcome(check(under("us", changes)), "law.load_rating_sum") == expected


def test_a_speedometer_rule_without_an_upper_end_asks_for_none():
    # Road Transport (Vehicle Registration) Regulation (NSW), 40A: not more than 10 % below the true speed.
    older = {"/vehicle/built": "1995-06-01", "/vehicle/speedometer": ABSENT, "/candidate/rear/rim/size": "8J x 17 ET45"}
    wider = {"/candidate/rear/tyre/size": "235/45 R17 97W XL"}
    shown = answer(check(under("au-nsw", older | wider)))["findings"]
    (remedy,) = [each["remedy"] for each in shown if each["code"] == "law.speedometer"]
    assert "below the true speed" in remedy["text"]
    assert "at_most" not in remedy


def test_a_tyre_that_carries_nothing_at_the_speed_of_the_law_is_answered_with_a_faster_symbol():
    """A8 is 40 km/h (UN R54); Dutch law reads the load of a trailer above 750 kg at 100 km/h, which is symbol J."""
    changes = on_both_axles({"/candidate/{axle}/tyre/size": "185/80 R14C 102/100A8"})
    trailer = {
        "/rule_pack": "nl",
        "/vehicle/category": "O2",
        "/vehicle/built": "2019-05-20",
        "/vehicle/max_mass_kg": 1800,
        "/vehicle/max_speed_kmh": 25,
    }
    found = [each for each in check(changed(saloon(), changes | trailer)).findings if each.code == "law.axle_load"]
    assert [(each.axle, each.outcome, each.remedy.equals) for each in found] == [
        ("front", NOT_MET, "J"),
        ("rear", NOT_MET, "J"),
    ]


# Road Transport (Vehicle Registration) Regulation (NSW), 40A: the rule is about speeds above 50 km/h.
@pytest.mark.parametrize("built", ["1974-07-01", "1990-01-01", "2006-06-30"])
@pytest.mark.parametrize(("max_speed_kmh", "tried"), [(10, False), (50, False), (51, True)])
@pytest.mark.parametrize("reading", [ABSENT, {"displayed_kmh": 40, "true_kmh": 20}])
def test_a_speedometer_rule_is_met_by_a_vehicle_that_reaches_none_of_its_speeds(built, max_speed_kmh, tried, reading):
    older = {
        "/vehicle/built": built,
        "/vehicle/max_speed_kmh": max_speed_kmh,
        "/vehicle/speedometer": reading,
        "/candidate/rear/tyre/size": "255/45 R17 98W",
    }
    found = finding(check(under("au-nsw", older)), "law.speedometer", "vehicle")
    assert ("about speeds above 50 km/h, which this vehicle does not reach" in found.message) != tried
    assert tried or found.outcome == MET


def test_a_rim_whose_offset_nobody_read_is_brought_back_by_its_spacers():
    # Manual de procedimiento ITV (Spain), second hand: the track may grow by 30 mm, which is 15 mm a side.
    rims = on_both_axles(
        {
            "/vehicle/{axle}/fitted/rim/size": "7.5J x 17 H2",
            "/candidate/{axle}/rim/size": "7.5J x 17 H2",
            "/candidate/{axle}/spacer_mm": 30,
        }
    )
    remedy = finding(check(under("es", rims)), "law.track_change").remedy
    assert (remedy.pointer, remedy.at_most) == ("/candidate/rear/spacer_mm", 15)
    assert remedy.text == "spacers of 15 mm or less"
