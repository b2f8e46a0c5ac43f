"""Diameter, speedometer, room, track and the two axles against each other: every outcome around its limit.

The saloon's 225/45 R17 is 634 mm high (432 + 2 x 101, UN R30 6.1.2.1). Limits by common practice, no source, or this
project's judgement (`rules/common_practice.toml`), unless a test says otherwise.
"""

import pytest

from service.core.findings import ADVISORY, NOT_ASSESSED, OPEN, OUTCOME_NAMES
from tests.support.cases import ABSENT, changed, check, finding, outcome, saloon

TYRE = "/candidate/rear/tyre"
RIM = "/candidate/rear/rim/size"
ROOM = "/vehicle/rear/clearance"


def asked(changes, code, where="rear"):
    """Return the finding on the saloon after these changes."""
    return finding(check(changed(saloon(), changes)), code, where)


def graded(changes, code, where="rear"):
    """Return its outcome."""
    return outcome(check(changed(saloon(), changes)), code, where)


# 1.5 % of 634 mm is 9.51 mm, 3 % is 19.02 mm.
@pytest.mark.parametrize(
    ("diameter", "expected"),
    [
        (614.97, "not_met"),
        (614.98, "advisory"),
        (624.48, "advisory"),
        (624.49, "met"),
        (643.51, "met"),
        (643.52, "advisory"),
        (653.02, "advisory"),
        (653.03, "not_met"),
    ],
)
def test_the_overall_diameter_stays_within_its_two_limits(diameter, expected):
    assert graded({f"{TYRE}/overall_diameter_mm": diameter}, "diameter.deviation") == expected


def test_the_message_on_the_diameter_gives_both_and_the_change():
    found = asked({f"{TYRE}/overall_diameter_mm": 660}, "diameter.deviation")
    assert "from 634 to 660 mm (+4.1 %)" in found.message
    assert found.limit == 3.0
    # 1.5 % of 634 mm is 9.51 mm: 624 and 644 mm are beyond.
    assert found.remedy.text == "an overall diameter of 625 to 643 mm"


def test_a_size_that_the_old_table_lacks_is_asked_for_its_diameter():
    found = asked({f"{TYRE}/size": "225 R17 94V"}, "diameter.deviation")
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == f"{TYRE}/overall_diameter_mm"


# UN R39 5.3: 0 <= V1 - V2 <= 0.1 V2 + 4 km/h; of the test speeds 40, 80 and 120 km/h the last is the sharpest above:
# 16 km/h of 120, 13.33 %.
@pytest.mark.parametrize(
    ("displayed", "expected"), [(99.9, "not_met"), (100, "met"), (113.3, "met"), (113.4, "not_met")]
)
def test_the_speedometer_reads_neither_too_little_nor_too_much(displayed, expected):
    reading = {"displayed_kmh": displayed, "true_kmh": 100}
    assert graded({"/vehicle/speedometer": reading}, "diameter.speedometer", "vehicle") == expected


def test_the_message_on_the_speedometer_gives_the_lead_now_and_then():
    changes = {
        "/vehicle/speedometer": {"displayed_kmh": 101, "true_kmh": 100},
        f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * 1.02,
    }
    found = asked(changes, "diameter.speedometer", "vehicle")
    assert "1 % above the true speed now and 1 % below it after" in found.message


def test_without_a_reading_the_lead_that_it_needs_is_said():
    changes = {"/vehicle/speedometer": ABSENT, f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * 1.02}
    found = asked(changes, "diameter.speedometer", "vehicle")
    assert found.outcome == ADVISORY
    assert "have the speedometer checked" in found.remedy.text
    assert found.remedy.pointer == "/vehicle/speedometer"
    assert found.remedy.at_least == pytest.approx(2.0)


# Common practice, no source: a type-approved speedometer bears -4 to +1.5 % unread. UN R39 bears more than 13.33 % (the
# lead at 120 km/h) with no speedometer at all: 1.1334 up, 1 / 1.1334 down.
@pytest.mark.parametrize(
    ("share", "expected"),
    [
        (0.88, "not_met"),
        (0.883, "advisory"),
        (0.9599, "advisory"),
        (0.96, "met"),
        (1.015, "met"),
        (1.0151, "advisory"),
        (1.133, "advisory"),
        (1.134, "not_met"),
    ],
)
def test_a_speedometer_that_nobody_read_is_taken_as_type_approved(share, expected):
    changes = {"/vehicle/speedometer": ABSENT, f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * share}
    assert graded(changes, "diameter.speedometer", "vehicle") == expected


def test_the_assumption_about_an_unread_speedometer_is_said():
    changes = {"/vehicle/speedometer": ABSENT, f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * 1.01}
    message = asked(changes, "diameter.speedometer", "vehicle").message
    assert message == (
        "The rolling circumference grows by 1 %. "
        "A type-approved speedometer stays lawful with that; it is taken to be one."
    )


@pytest.mark.parametrize(("pack", "expected"), [("gb", "not_met"), ("au-wa", "not_met"), ("jp", "advisory")])
@pytest.mark.parametrize(("displayed", "share"), [(ABSENT, 1.14), (100, 1.01)])
def test_un_r39_decides_only_where_it_is_law(pack, expected, displayed, share):
    reading = ABSENT if displayed is ABSENT else {"displayed_kmh": displayed, "true_kmh": 100}
    changes = {"/vehicle/speedometer": reading, f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * share}
    found = asked(changes | {"/rule_pack": pack, "/vehicle/built": "2015-03-01"}, "diameter.speedometer", "vehicle")
    assert OUTCOME_NAMES[found.outcome] == expected
    assert ("not law here" in found.message) == (pack == "jp")


def test_a_circumference_that_is_not_known_leaves_the_speedometer_open():
    assert asked({f"{TYRE}/size": "225 R17 94V"}, "diameter.speedometer", "vehicle").outcome == NOT_ASSESSED


def test_without_a_reading_an_unchanged_circumference_is_no_question():
    assert graded({"/vehicle/speedometer": ABSENT}, "diameter.speedometer", "vehicle") == "met"


@pytest.mark.parametrize("pack", ["unece", "jp", "us", "au-nsw"])
def test_a_trailer_has_no_speedometer_to_be_misled(pack):
    changes = {"/vehicle/category": "O2", "/vehicle/speedometer": ABSENT, f"{TYRE}/overall_diameter_mm": 640}
    found = check(changed(saloon(), changes | {"/rule_pack": pack}))
    assert outcome(found, "diameter.speedometer", "vehicle") == "met"
    assert "law.speedometer" not in {each.code for each in found.findings}


@pytest.mark.parametrize(
    ("driven", "expected"), [("rear", "not_met"), ("front", "met"), ("all", "not_met"), (ABSENT, "not_met")]
)
def test_the_driven_axle_moves_the_speedometer(driven, expected):
    changes = {
        "/vehicle/driven_axle": driven,
        "/vehicle/speedometer": {"displayed_kmh": 100, "true_kmh": 100},
        f"{TYRE}/overall_diameter_mm": 640,
    }
    assert graded(changes, "diameter.speedometer", "vehicle") == expected


# The rear axle alone changes, so the ratio changes by the reciprocal.
@pytest.mark.parametrize(
    ("share", "driven", "expected"),
    [
        (1 / 1.0049, "rear", "met"),
        (1 / 1.005, "rear", "met"),
        (1 / 1.0051, "rear", "advisory"),
        (1 / 0.9949, "rear", "advisory"),
        (1 / 1.02, "rear", "advisory"),
        (1 / 1.0051, "all", "advisory"),
        (1 / 1.01, "all", "advisory"),
        (1 / 1.0101, "all", "not_met"),
        (1 / 0.9899, "all", "not_met"),
    ],
)
def test_the_axles_keep_their_ratio_the_more_so_on_all_wheel_drive(share, driven, expected):
    changes = {f"{TYRE}/rolling_circumference_mm": 3.05 * 634 * share, "/vehicle/driven_axle": driven}
    assert graded(changes, "diameter.axle_ratio", "vehicle") == expected


def test_the_message_on_the_axle_ratio_gives_the_change():
    changes = {f"{TYRE}/rolling_circumference_mm": 3.05 * 634 / 1.02, "/vehicle/driven_axle": "all"}
    found = asked(changes, "diameter.axle_ratio", "vehicle")
    assert "+2 %" in found.message
    assert found.limit == 1.0


# Room inboard 14 mm, outboard 16 mm; 5 mm are enough. A millimetre of offset is a millimetre of edge.
@pytest.mark.parametrize(
    ("offset", "code", "expected"),
    [
        (54, "clearance.inboard", "met"),
        (54.1, "clearance.inboard", "advisory"),
        (59, "clearance.inboard", "advisory"),
        (59.1, "clearance.inboard", "not_met"),
        (44, "clearance.inboard", "met"),
        (34, "clearance.outboard", "met"),
        (33.9, "clearance.outboard", "advisory"),
        (29, "clearance.outboard", "advisory"),
        (28.9, "clearance.outboard", "not_met"),
        (46, "clearance.outboard", "met"),
    ],
)
def test_the_offset_moves_the_wheel_into_the_room(offset, code, expected):
    assert graded({RIM: f"7.5J x 17 H2 ET{offset}"}, code) == expected


# Room to the arch 25 mm, of which 10 are enough; half of the change of diameter goes there.
@pytest.mark.parametrize(
    ("diameter", "expected"),
    [(664, "met"), (664.2, "advisory"), (684, "advisory"), (684.2, "not_met"), (620, "met")],
)
def test_half_the_diameter_goes_into_the_room_to_the_arch(diameter, expected):
    assert graded({f"{TYRE}/overall_diameter_mm": diameter}, "clearance.radial") == expected


def test_a_wider_tyre_takes_its_width_and_its_growth_on_both_sides():
    """On the same rim 20 mm of nominal width; 245 x 0.85 against 225 x 0.85 as theoretical rim, K = 0.4, then +4 %.

    S = S1 + 0.4 (190.5 - 0.85 S1): 224.7 and 237.9 mm; half of 1.04 x 13.2 is 6.9 mm (UN R30 6.1.1.1; growth 6.1.4.2).
    """
    view = check(changed(saloon(), {f"{TYRE}/size": "245/45 R17 95W XL"})).car.rear
    assert view.change.inboard_edge_mm == pytest.approx(6.86, abs=0.01)
    assert view.change.outboard_edge_mm == pytest.approx(6.86, abs=0.01)


def test_a_rim_wider_than_the_tyre_sets_the_edge():
    """Half of the 10 in and 12.7 mm of flange (from memory) reach beyond half of the tyre: 139.7 mm less the offset."""
    view = check(changed(saloon(), {f"{TYRE}/size": "225/45 R17 94W XL", RIM: "10J x 17 H2 ET45"})).car.rear
    assert view.then.geometry.outer_edge_mm == pytest.approx(127.0 + 12.7 - 45.0)


def test_the_message_on_room_says_by_how_much_it_touches():
    found = asked({RIM: "7.5J x 17 H2 ET62"}, "clearance.inboard")
    assert found.message == "The wheel needs 17 mm more room towards the strut, 3 mm more than there is: it touches."
    assert found.remedy.text == "ET 34 to 54"


def test_room_below_what_is_advised_is_told_beside_it():
    found = asked({f"{ROOM}/inboard_mm": 10, RIM: "7.5J x 17 H2 ET54"}, "clearance.inboard")
    assert (
        found.message == "The wheel needs 9 mm more room towards the strut, which leaves 1 mm; 5 mm or more is advised."
    )


def test_a_range_of_offsets_with_one_whole_number_in_it_is_that_number():
    found = asked({f"{ROOM}/inboard_mm": 5, f"{ROOM}/outboard_mm": 5, RIM: "7.5J x 17 H2 ET54"}, "clearance.inboard")
    assert found.remedy.text == "ET 45"


def test_a_wheel_too_wide_for_both_sides_is_told_so():
    changes = {TYRE: {"size": "285/40 R17 100W"}, RIM: "10J x 17 H2 ET45", f"{ROOM}/inboard_mm": 10}
    assert (
        "a narrower wheel, since no offset leaves enough on both sides"
        in asked(changes, "clearance.inboard").remedy.text
    )


@pytest.mark.parametrize("side", ["inboard", "outboard"])
def test_room_that_was_not_measured_is_asked_for_with_what_is_enough(side):
    offset = {"inboard": 55, "outboard": 35}[side]
    found = asked({f"{ROOM}/{side}_mm": ABSENT, RIM: f"7.5J x 17 H2 ET{offset}"}, f"clearance.{side}")
    assert found.outcome == 2
    assert f"vehicle.rear.clearance.{side}_mm" in found.remedy.text
    assert found.remedy.at_least == pytest.approx(15.0)


def test_the_arch_that_was_not_measured_is_asked_for():
    found = asked({f"{ROOM}/radial_mm": ABSENT, f"{TYRE}/overall_diameter_mm": 644}, "clearance.radial")
    assert found.remedy.pointer == "/vehicle/rear/clearance/radial_mm"
    assert found.remedy.at_least == pytest.approx(15.0)


def test_a_wheel_that_needs_no_more_room_passes_unmeasured():
    assert graded({"/vehicle/rear/clearance": ABSENT}, "clearance.inboard") == "met"


@pytest.mark.parametrize("code", ["clearance.inboard", "clearance.outboard", "track.change"])
@pytest.mark.parametrize("pointer", [RIM, "/vehicle/rear/fitted/rim/size"])
def test_the_rim_without_an_offset_is_named(pointer, code):
    found = asked({pointer: "7.5J x 17 H2"}, code)
    assert found.outcome == 2
    assert found.remedy.pointer == pointer


def test_the_track_changes_by_twice_the_offset_whatever_the_width():
    """Geometry, standards of wheel position: track change = 2 (ET present - ET proposed)."""
    found = asked({RIM: "9J x 17 H2 ET40"}, "track.change")
    assert found.measured == 10.0
    assert "+10 mm" in found.message


def test_wet_grip_of_a_tyre_that_may_be_crushed_is_not_estimated():
    found = asked({"/vehicle/rear/kerb_axle_mass_kg": 4000}, "wet.aquaplaning")
    assert found.outcome == OPEN
    assert found.remedy.quantity == "pressure_kpa"
