"""What the tyre may carry, how fast, at which pressure and with how much tread: every outcome around its limit."""

import pytest

from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, OPEN
from tests.support.cases import ABSENT, changed, check, finding, outcome, saloon

TYRE = "/candidate/rear/tyre"
SPEED = "/vehicle/max_speed_kmh"


def asked(changes, code):
    """Return the finding on the saloon's rear axle after these changes."""
    return finding(check(changed(saloon(), changes)), code)


def graded(changes, code):
    """Return its outcome."""
    return outcome(check(changed(saloon(), changes)), code)


# Load index 94 is 670 kg (Regeling voertuigen, Bijlage VIII, annex 4), so two tyres carry 1340 kg.
@pytest.mark.parametrize(("mass", "expected"), [(1339.9, "met"), (1340, "met"), (1340.1, "not_met")])
def test_two_tyres_carry_twice_their_load_index(mass, expected):
    assert graded({"/vehicle/rear/max_axle_mass_kg": mass}, "load.capacity") == expected


def test_the_message_on_the_load_gives_what_is_carried_and_what_is_needed():
    found = asked({"/vehicle/rear/max_axle_mass_kg": 1400}, "load.capacity")
    # The present tyres are the same, and that is said behind it.
    assert found.message.startswith("The axle's tyres carry 1340 kg; the axle needs 1400 kg. ")
    assert found.remedy.text == "load index 96 or more"


def test_without_a_service_description_the_load_is_not_assessed():
    found = asked({f"{TYRE}/size": "225/45 R17"}, "load.capacity")
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == f"{TYRE}/size"


# V is 240, Y 300 km/h (UN R30, as printed in Automotive Engineering, p. 291); above 300 the maker states it.
@pytest.mark.parametrize(
    ("service", "top", "expected"),
    [
        ("94V", 239.9, "met"),
        ("94V", 240, "met"),
        ("94V", 240.1, "not_met"),
        ("94H", 211, "not_met"),
        ("94Y", 300, "met"),
        ("94Y", 301, "not_met"),
        ("(94Y)", 300, "met"),
        ("(94Y)", 301, "not_assessed"),
        ("", 200, "not_assessed"),
    ],
)
def test_the_symbol_must_reach_the_top_speed(service, top, expected):
    changes = {f"{TYRE}/size": f"225/45 R17 {service}".strip(), SPEED: top}
    assert graded(changes, "speed.capability") == expected


@pytest.mark.parametrize(("top", "expected"), [(240, "met"), (241, "not_assessed")])
def test_zr_alone_says_no_more_than_above_240_kmh(top, expected):
    """Common practice, from memory."""
    assert graded({f"{TYRE}/size": "225/45 ZR17", SPEED: top}, "speed.capability") == expected


def test_the_message_on_the_speed_gives_both_and_the_remedy_the_next_symbol():
    found = asked({f"{TYRE}/size": "225/45 R17 94H XL"}, "speed.capability")
    assert found.message == "The tyre may run 210 km/h only; the vehicle reaches 228 km/h."
    assert found.remedy.text == "speed symbol V or faster"


# 500 kg on a tyre of 670 kg at 290 kPa: 290 (500/670)^1.25 = 201.1 kPa (pressure-load law derived from the printed
# table, handbook p. 290), and with W 38 kPa for 228 km/h, 10 for each 10 km/h from 190 on (begin p. 291, rate from
# memory): 239.1 kPa. A gauge shows whole numbers, so 239 is enough.
@pytest.mark.parametrize(
    ("pressure", "expected"), [(100, "advisory"), (238, "advisory"), (239, "met"), (250, "met"), (340, "met")]
)
def test_the_pressure_must_carry_the_axle_and_can_be_set(pressure, expected):
    assert graded({"/candidate/rear/pressure_kpa": pressure}, "load.pressure") == expected


def test_a_pressure_below_the_present_one_that_carries_the_axle_is_said_and_nothing_more():
    found = asked({"/candidate/rear/pressure_kpa": 245}, "load.pressure")
    assert found.outcome == MET
    assert "below the 250 kPa of today" in found.message


def test_no_pressure_is_below_the_lowest_of_the_table():
    """150 kPa is the lowest tabulated pressure (handbook p. 290)."""
    light = {"/vehicle/rear/max_axle_mass_kg": 300, SPEED: 150, "/vehicle/rear/fitted/pressure_kpa": ABSENT}
    assert graded(light | {"/candidate/rear/pressure_kpa": 149}, "load.pressure") == "advisory"
    assert graded(light | {"/candidate/rear/pressure_kpa": 150}, "load.pressure") == "met"


# 91V (615 kg at 250 kPa) is cut to 568.9 kg at 235 km/h; an axle of 1180 kg asks 590 kg of each.
@pytest.mark.parametrize("pressure", [250, 280, 291, 320, ABSENT])
def test_no_pressure_makes_a_tyre_carry_more_than_its_index(pressure):
    """ETRTO: the load index counts at the reference pressure; above it the load is no higher."""
    changes = {
        TYRE: {"size": "225/45 R17 91V"},
        "/candidate/rear/pressure_kpa": pressure,
        SPEED: 235,
        "/vehicle/rear/max_axle_mass_kg": 1180,
    }
    found = asked(changes, "load.pressure")
    assert found.outcome == NOT_MET
    assert found.remedy.quantity == "load_index"
    assert "kPa" not in found.remedy.text


def test_a_missing_pressure_is_no_fault_of_the_tyre():
    found = asked({"/candidate/rear/pressure_kpa": ABSENT}, "load.pressure")
    assert (found.outcome, found.measured, found.remedy) == (MET, 250.0, None)


@pytest.mark.parametrize(("pressure", "said"), [(200, "too little for the full axle at 228 km/h"), (380, "too much")])
def test_a_wrong_pressure_is_set_to_the_one_of_the_job_card(pressure, said):
    found = asked({"/candidate/rear/pressure_kpa": pressure}, "load.pressure")
    assert found.outcome == ADVISORY
    assert said in found.message
    assert found.remedy.text == "set 250 kPa (2.5 bar), cold"


# 290 kPa of an extra load tyre and 50 more are usual; gauges and job cards show whole numbers, and 340.5 as 340.
@pytest.mark.parametrize(("pressure", "outcome"), [(340, MET), (340.5, MET), (340.6, ADVISORY)])
def test_a_pressure_is_too_much_where_a_gauge_shows_more_than_is_usual(pressure, outcome):
    assert asked({"/candidate/rear/pressure_kpa": pressure}, "load.pressure").outcome == outcome


VAN_TYRE = "215/65 R17C 109/107T"


def test_a_commercial_tyre_in_place_of_a_passenger_one_waits_for_the_pressure_on_its_sidewall():
    found = asked({f"{TYRE}/size": VAN_TYRE}, "load.pressure")
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == f"{TYRE}/reference_pressure_kpa"


def test_among_commercial_tyres_the_pressure_on_the_sidewall_holds_nothing_up():
    found = asked({f"{TYRE}/size": VAN_TYRE, "/vehicle/rear/fitted/tyre/size": VAN_TYRE}, "load.pressure")
    assert found.outcome == OPEN
    assert "sidewall" in found.message


# 93 is 650 kg, 94 is 670 kg, 95 is 690 kg (same table).
@pytest.mark.parametrize(("index", "expected"), [(93, "advisory"), (94, "met"), (95, "met")])
def test_less_load_than_the_present_tyres_is_pointed_out(index, expected):
    assert graded({f"{TYRE}/size": f"225/45 R17 {index}W XL"}, "load.below_present") == expected


def test_the_message_on_less_load_gives_the_difference():
    found = asked({f"{TYRE}/size": "225/45 R17 93W XL"}, "load.below_present")
    assert "40 kg less" in found.message
    assert found.remedy.text == "load index 94 or more"


@pytest.mark.parametrize("pointer", [f"{TYRE}/size", "/vehicle/rear/fitted/tyre/size"])
def test_the_tyre_without_a_service_description_is_named(pointer):
    found = asked({pointer: "225/45 R17"}, "load.below_present")
    assert found.outcome == OPEN
    assert found.remedy.pointer == pointer


@pytest.mark.parametrize(
    ("depth", "expected"), [(1.5, "not_met"), (1.6, "advisory"), (2.9, "advisory"), (3.0, "met"), (3.1, "met")]
)
def test_tread_depth_has_a_least_and_a_wise_value(depth, expected):
    """1.6 mm and 3 mm: common practice, no source."""
    assert graded({f"{TYRE}/tread_depth_mm": depth}, "tyre.tread_depth") == expected


def test_the_message_on_the_tread_gives_depth_and_limit():
    found = asked({f"{TYRE}/tread_depth_mm": 1.5}, "tyre.tread_depth")
    assert "1.5 mm" in found.message
    assert "1.6 mm" in found.message


@pytest.mark.parametrize(("depth", "expected"), [(1.5, "not_met"), (3.9, "advisory"), (4.0, "met")])
def test_a_winter_tyre_wants_four_millimetres(depth, expected):
    """Common practice, no source."""
    changes = {f"{TYRE}/size": "225/45 R17 94W XL 3PMSF", f"{TYRE}/tread_depth_mm": depth}
    assert graded(changes, "tyre.tread_depth") == expected


def test_m_and_s_alone_wants_no_more_than_a_summer_tyre():
    """458/2011 annex II 4.2.2, as quoted: M+S alone is no winter tyre."""
    changes = {f"{TYRE}/size": "225/45 R17 94W XL M+S", f"{TYRE}/tread_depth_mm": 3.5}
    assert graded(changes, "tyre.tread_depth") == "met"


def test_a_missing_tread_depth_is_taken_as_new_and_decides_nothing():
    found = asked({f"{TYRE}/tread_depth_mm": ABSENT}, "tyre.tread_depth")
    assert found.outcome == OPEN
    assert found.message == "The tread depth is not given; the tyre is taken as new."
    assert found.remedy.pointer == f"{TYRE}/tread_depth_mm"


def test_a_temporary_spare_is_no_regular_tyre():
    """UN R64, from memory: 80 km/h at most."""
    found = asked({f"{TYRE}/size": "T125/80 R17 99M"}, "tyre.temporary_spare")
    assert found.outcome == NOT_MET
    assert "80 km/h" in found.message


def test_a_regular_tyre_is_made_for_regular_use():
    assert graded({}, "tyre.temporary_spare") == "met"


@pytest.mark.parametrize(
    ("front", "rear", "expected"),
    [("R", "R", "met"), ("D", "D", "met"), ("R", "D", "not_met"), ("D", "R", "not_met"), ("B", "R", "not_met")],
)
def test_radial_and_diagonal_tyres_are_not_mixed(front, rear, expected):
    """EU summary mi0081: all tyres have the same structure."""
    request = changed(
        saloon(),
        {
            "/vehicle/front/fitted/tyre/size": f"225/45 {front}17 94V",
            "/vehicle/rear/fitted/tyre/size": f"225/45 {rear}17 94V",
            "/candidate/front/tyre/size": f"225/45 {front}17 94V",
            "/candidate/rear/tyre/size": f"225/45 {rear}17 94V",
        },
    )
    assert outcome(check(request), "tyre.structure", "vehicle") == expected


def test_the_diagonal_axle_is_the_one_to_change():
    request = changed(saloon(), {"/candidate/front/tyre/size": "225/45 D17 94V"})
    assert finding(check(request), "tyre.structure", "vehicle").remedy.pointer == "/candidate/front/tyre/size"


def test_too_much_pressure_is_told_of_a_tyre_that_states_no_load_index_too():
    """250 kPa and 50 more are what a standard-load tyre usually gets: common practice, no source."""
    found = asked({f"{TYRE}/size": "225/45 R17", "/candidate/rear/pressure_kpa": 360}, "load.pressure")
    assert found.outcome == ADVISORY
    assert "360 kPa is too much" in found.message
    assert (found.remedy.text, found.remedy.at_least) == ("set 300 kPa (3 bar) or less, cold", None)
