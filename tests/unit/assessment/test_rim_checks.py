"""Rim, hub and brake: every outcome, at the limit and on both sides of it.

Limits by common practice, no source (`rules/common_practice.toml`), unless a test says otherwise.
"""

import pytest

from service.core.findings import MET, NOT_ASSESSED, OPEN, OUTCOME_NAMES
from tests.support.cases import ABSENT, changed, check, finding, outcome, saloon

RIM = "/candidate/rear/rim"
TYRE = "/candidate/rear/tyre"


def asked(changes, code):
    """Return the finding on the saloon's rear axle after these changes."""
    return finding(check(changed(saloon(), changes)), code)


def graded(changes, code):
    """Return its outcome."""
    return outcome(check(changed(saloon(), changes)), code)


def test_a_rim_of_another_diameter_code_is_refused_with_both_codes():
    found = asked({f"{RIM}/size": "7.5J x 18 H2 ET45"}, "rim.diameter")
    assert (found.measured, found.limit) == (18.0, 17.0)
    assert "for a rim of 17 inch" in found.message
    assert "has 18 inch" in found.message


@pytest.mark.parametrize(
    ("rim", "expected"),
    [("17", "met"), ("16.5", "not_met"), ("17.5", "not_met"), ("16", "not_met"), ("18", "not_met")],
)
def test_bead_and_rim_diameter_must_be_equal(rim, expected):
    assert graded({f"{RIM}/size": f"7.5J x {rim} H2 ET45"}, "rim.diameter") == expected


# 225/45 R17 has a row: 7 to 8 1/2 in (approved rim widths, ETRTO, from memory). A row decides.
@pytest.mark.parametrize(
    ("width", "expected"),
    [("6.75", "not_met"), ("7", "met"), ("7.25", "met"), ("8.25", "met"), ("8.5", "met"), ("8.75", "not_met")],
)
def test_a_row_of_the_table_decides_on_the_rim_width(width, expected):
    assert graded({f"{RIM}/size": f"{width}J x 17 H2 ET45"}, "rim.width") == expected


# 225/50 R17 has no row. Design guide (from memory): 0.70 x 225 = 157.5 mm = 6.2 in, 0.90 x 225 = 202.5 mm = 7.97 in,
# to the half inch 6 and 8; half an inch beyond is a question to the maker.
@pytest.mark.parametrize(
    ("width", "expected"),
    [
        ("5.25", "not_met"),
        ("5.5", "advisory"),
        ("5.75", "advisory"),
        ("6", "met"),
        ("8", "met"),
        ("8.25", "advisory"),
        ("8.5", "advisory"),
        ("8.75", "not_met"),
    ],
)
def test_an_estimated_range_of_rim_widths_is_blurred_by_half_an_inch(width, expected):
    changes = {f"{TYRE}/size": "225/50 R17 98W XL", f"{RIM}/size": f"{width}J x 17 H2 ET45"}
    assert graded(changes, "rim.width") == expected


@pytest.mark.parametrize(("width", "expected"), [("7.75", "not_met"), ("8", "met"), ("9", "met"), ("9.25", "not_met")])
def test_the_makers_own_range_of_rim_widths_decides(width, expected):
    changes = {f"{TYRE}/approved_rim_widths_in": {"min": 8, "max": 9}, f"{RIM}/size": f"{width}J x 17 H2 ET45"}
    assert graded(changes, "rim.width") == expected


def test_the_message_on_the_rim_width_gives_the_width_and_both_ends():
    found = asked({f"{RIM}/size": "9J x 17 H2 ET45"}, "rim.width")
    assert found.message == "The rim is 9 in wide; the tyre takes 7 to 8.5 in only."
    assert found.remedy.text == "a rim 7 to 8.5 in wide, or a tyre that is approved on 9 in"


def test_an_estimated_range_is_called_one():
    changes = {f"{TYRE}/size": "225/50 R17 98W XL", f"{RIM}/size": "8.25J x 17 H2 ET45"}
    found = asked(changes, "rim.width")
    assert "estimated" in found.message
    # What is uncertain is the estimate: the maker's word settles it, another rim would be judged anew.
    assert found.remedy.text.startswith("ask the tyre's maker")
    assert found.remedy.pointer == f"{TYRE}/approved_rim_widths_in"


def test_a_makers_range_upside_down_is_no_range():
    found = asked({f"{TYRE}/approved_rim_widths_in": {"min": 9, "max": 8}}, "rim.width")
    assert found.remedy.pointer == "/candidate/rear/tyre/approved_rim_widths_in"


@pytest.mark.parametrize(
    ("rim", "expected"),
    [
        ("7.5J x 17 H2 ET45", "met"),
        ("7.5J x 17 EH2+ ET45", "met"),
        ("7.5J x 17 ET45", "not_assessed"),
        # Steep seats of 15 degrees hold without one: common practice, from memory.
        ("7.5J x 17.5 ET45", "met"),
        ("7.5J - 17 H2 ET45", "advisory"),
    ],
)
def test_a_tubeless_tyre_needs_a_hump_and_a_one_piece_rim(rim, expected):
    """ISO 4000-2:2007, note: humps are necessary on the mounting side."""
    assert graded({f"{RIM}/size": rim}, "rim.contour") == expected


def test_a_hump_that_nobody_stated_decides_nothing_and_takes_one_short_line():
    found = asked({f"{RIM}/size": "7.5J x 17 ET45"}, "rim.contour")
    assert found.outcome == OPEN
    assert found.message == "No hump is stated for the rim."


# The rear axle may weigh 1000 kg, half of it on each wheel.
@pytest.mark.parametrize(("rating", "expected"), [(499.9, "not_met"), (500, "met"), (500.1, "met")])
def test_a_rim_must_carry_its_share_of_the_axle(rating, expected):
    assert graded({f"{RIM}/load_rating_kg": rating}, "rim.load_rating") == expected


def test_twin_wheels_share_the_axle_among_four_rims():
    assert asked({"/vehicle/rear/wheels_per_side": 2}, "rim.load_rating").limit == 250.0


def test_the_message_on_the_rims_load_gives_rating_and_share():
    found = asked({f"{RIM}/load_rating_kg": 450}, "rim.load_rating")
    assert found.message == "The rim is rated for 450 kg only; each wheel has to carry 500 kg."


@pytest.mark.parametrize(
    ("circle", "expected"),
    [("5x112", "met"), ("5/112", "met"), ("4x112", "not_met"), ("5x110", "not_met"), ("5x112.1", "not_met")],
)
def test_bolt_circles_must_be_equal_in_number_and_diameter(circle, expected):
    assert graded({f"{RIM}/bolt_circle": circle}, "rim.bolt_circle") == expected


def test_the_message_on_the_bolt_circle_gives_both():
    found = asked({f"{RIM}/bolt_circle": "5x114.3"}, "rim.bolt_circle")
    assert "5x114.3" in found.message
    assert "5x112" in found.message


# Hub 66.6 mm; a tenth of a millimetre is the same bore.
@pytest.mark.parametrize(
    ("bore", "expected"),
    [
        (66.4, "not_met"),
        (66.51, "met"),
        (66.6, "met"),
        (66.69, "met"),
        (66.8, "advisory"),
        (72.6, "advisory"),
        (57.1, "not_met"),
    ],
)
def test_a_larger_bore_asks_for_rings_and_a_smaller_one_does_not_go_on(bore, expected):
    assert graded({f"{RIM}/centre_bore_mm": bore}, "rim.centre_bore") == expected


def test_spigot_rings_are_named_by_both_diameters():
    found = asked({f"{RIM}/centre_bore_mm": 72.6}, "rim.centre_bore")
    assert found.remedy.text.startswith("spigot rings 72.6 to 66.6 mm")


@pytest.mark.parametrize(("least", "expected"), [(16.5, "met"), (17, "met"), (17.5, "not_met"), (18, "not_met")])
def test_the_rim_must_be_no_smaller_than_the_brake_needs(least, expected):
    assert graded({"/vehicle/rear/min_rim_diameter_in": least}, "rim.brake_clearance") == expected


def test_the_message_on_the_brake_gives_both_codes():
    found = asked({"/vehicle/rear/min_rim_diameter_in": 18}, "rim.brake_clearance")
    assert found.message.startswith("A rim of 17 inch does not clear the brake, which needs 18 inch.")


# Other rims on the car of which nobody stated anything: 7 in wide where 7.5 are on it.
OTHER = {f"{RIM}/size": "7J x 17 H2 ET45"}
FITTED = "/vehicle/rear/fitted/rim"
NOTHING_OF_THE_HUB = {"/vehicle/rear/hub": ABSENT}
NOTHING_OF_FITTED = {
    f"{FITTED}/bolt_circle": ABSENT,
    f"{FITTED}/centre_bore_mm": ABSENT,
    f"{FITTED}/load_rating_kg": ABSENT,
}
NOTHING_OF_RIM = {f"{RIM}/bolt_circle": ABSENT, f"{RIM}/centre_bore_mm": ABSENT, f"{RIM}/load_rating_kg": ABSENT}


@pytest.mark.parametrize(
    ("code", "pointer", "enough"),
    [
        ("rim.load_rating", f"{RIM}/load_rating_kg", "500 kg is enough"),
        ("rim.bolt_circle", f"{RIM}/bolt_circle", "5x112 is enough"),
        ("rim.centre_bore", f"{RIM}/centre_bore_mm", "66.6 mm is enough"),
    ],
)
def test_what_nobody_read_on_another_rim_decides_and_the_answer_says_what_is_enough(code, pointer, enough):
    found = asked(OTHER | NOTHING_OF_RIM, code)
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == pointer
    assert found.remedy.text.endswith(enough)


@pytest.mark.parametrize("code", ["rim.load_rating", "rim.bolt_circle", "rim.centre_bore"])
def test_what_nobody_read_on_the_rims_that_are_on_the_car_decides_nothing(code):
    nothing = NOTHING_OF_RIM | NOTHING_OF_FITTED | NOTHING_OF_THE_HUB
    assert asked(nothing, code).outcome == OPEN
    assert asked(nothing | OTHER, code).outcome == NOT_ASSESSED
    # What the present rim states holds for the same rim.
    assert asked(NOTHING_OF_RIM | NOTHING_OF_THE_HUB, code).outcome == MET


@pytest.mark.parametrize(
    ("changes", "same"),
    [
        ({}, 1.0),
        ({f"{RIM}/size": "7.5J x 17 ET45"}, 1.0),
        (NOTHING_OF_RIM, 1.0),
        ({f"{RIM}/load_rating_kg": 900}, 1.0),
        ({f"{RIM}/size": "8J x 17 H2 ET45"}, 0.0),
        ({f"{RIM}/size": "7.5J x 18 H2 ET45"}, 0.0),
        ({f"{RIM}/size": "7.5J x 17 H2 ET44"}, 0.0),
        ({f"{RIM}/size": "7.5J x 17 H2"}, 0.0),
        ({f"{RIM}/size": "7.5J - 17 H2 ET45"}, 0.0),
        ({f"{RIM}/bolt_circle": "4x112"}, 0.0),
        ({f"{RIM}/bolt_circle": "5x108"}, 0.0),
        ({f"{RIM}/centre_bore_mm": 72.6}, 0.0),
    ],
)
def test_a_rim_is_the_present_one_until_something_contradicts_it(changes, same):
    assert check(changed(saloon(), changes)).car.rear.change.same_rim == same


@pytest.mark.parametrize(("circle", "expected"), [("5x112", "met"), ("5x108", "not_met"), ("4x112", "not_met")])
def test_the_present_wheel_tells_the_bolt_circle_of_a_hub_that_nobody_looked_at(circle, expected):
    found = asked(NOTHING_OF_THE_HUB | {f"{RIM}/bolt_circle": circle}, "rim.bolt_circle")
    assert OUTCOME_NAMES[found.outcome] == expected
    assert "present rim" in found.message


# The present bore is 66.6 mm: the hub is no larger, and may be smaller.
@pytest.mark.parametrize(
    ("bore", "expected"), [(66.6, "met"), (66.65, "met"), (72.6, "advisory"), (66.4, "not_assessed")]
)
def test_the_present_wheel_bounds_the_bore_of_a_hub_that_nobody_measured(bore, expected):
    found = asked(NOTHING_OF_THE_HUB | {f"{RIM}/centre_bore_mm": bore}, "rim.centre_bore")
    assert OUTCOME_NAMES[found.outcome] == expected


def test_no_ring_is_ordered_for_a_hub_that_nobody_measured():
    found = asked(NOTHING_OF_THE_HUB | {f"{RIM}/centre_bore_mm": 72.6}, "rim.centre_bore")
    assert found.limit is None
    assert found.remedy.text.startswith("spigot rings from 72.6 mm to the hub as measured")


def test_a_hub_that_may_be_small_enough_is_measured():
    found = asked(NOTHING_OF_THE_HUB | {f"{RIM}/centre_bore_mm": 63.4}, "rim.centre_bore")
    assert found.remedy.pointer == "/vehicle/rear/hub/centre_bore_mm"
    assert found.remedy.text == "measure the centring spigot of the hub: 63.4 mm or less is enough"
    assert found.remedy.at_most == 63.4


# Code 17 is on the car, which clears the brake with it.
@pytest.mark.parametrize(("code", "expected"), [("17", "met"), ("18", "met"), ("16.5", "not_assessed")])
def test_a_rim_no_smaller_than_the_present_one_clears_the_brake(code, expected):
    changes = {"/vehicle/rear/min_rim_diameter_in": ABSENT, f"{RIM}/size": f"7.5J x {code} H2 ET45"}
    assert graded(changes, "rim.brake_clearance") == expected


def test_a_brake_that_nobody_measured_is_looked_up_and_the_answer_says_which_code_is_enough():
    changes = {"/vehicle/rear/min_rim_diameter_in": ABSENT, f"{RIM}/size": "7.5J x 16 H2 ET45"}
    found = asked(changes, "rim.brake_clearance")
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == "/vehicle/rear/min_rim_diameter_in"
    assert "16 inch or less is enough" in found.remedy.text
    assert found.remedy.at_most == 16.0


def test_a_size_below_the_design_guide_has_no_known_rim_widths():
    found = asked({f"{TYRE}/size": "225/15 R17 94W XL"}, "rim.width")
    assert found.outcome == NOT_ASSESSED
    assert found.remedy.pointer == f"{TYRE}/approved_rim_widths_in"
    assert "a range that includes 7.5 in is enough" in found.remedy.text
