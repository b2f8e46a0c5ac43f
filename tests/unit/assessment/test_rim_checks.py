"""Rim, hub and brake: every outcome, at the limit and on both sides of it.

Limits by common practice, no source (`rules/common_practice.toml`), unless a test says otherwise.
"""

import pytest

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
    assert "code 17" in found.message
    assert "18" in found.message


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
    assert found.remedy.text == "a rim 7 to 8.5 in wide"


def test_an_estimated_range_is_called_one():
    changes = {f"{TYRE}/size": "225/50 R17 98W XL", f"{RIM}/size": "8.25J x 17 H2 ET45"}
    found = asked(changes, "rim.width")
    assert "estimated" in found.message
    assert "ask the tyre's maker" in found.message


def test_a_makers_range_upside_down_is_no_range():
    found = asked({f"{TYRE}/approved_rim_widths_in": {"min": 9, "max": 8}}, "rim.width")
    assert found.remedy.pointer == "/candidate/rear/tyre/approved_rim_widths_in"


@pytest.mark.parametrize(
    ("rim", "expected"),
    [
        ("7.5J x 17 H2 ET45", "met"),
        ("7.5J x 17 EH2+ ET45", "met"),
        ("7.5J x 17 ET45", "advisory"),
        ("7.5J - 17 H2 ET45", "advisory"),
    ],
)
def test_a_tubeless_tyre_needs_a_hump_and_a_one_piece_rim(rim, expected):
    """ISO 4000-2:2007, note: humps are necessary on the mounting side."""
    assert graded({f"{RIM}/size": rim}, "rim.contour") == expected


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
    assert found.message == "A rim of diameter code 17 does not clear the brake, which needs 18."


@pytest.mark.parametrize(
    ("pointer", "code"),
    [
        (f"{RIM}/load_rating_kg", "rim.load_rating"),
        (f"{RIM}/bolt_circle", "rim.bolt_circle"),
        ("/vehicle/rear/hub/bolt_circle", "rim.bolt_circle"),
        (f"{RIM}/centre_bore_mm", "rim.centre_bore"),
        ("/vehicle/rear/hub/centre_bore_mm", "rim.centre_bore"),
        ("/vehicle/rear/min_rim_diameter_in", "rim.brake_clearance"),
    ],
)
def test_a_missing_field_is_asked_for_by_name(pointer, code):
    found = asked({pointer: ABSENT}, code)
    assert found.outcome == 2
    assert found.remedy.pointer == pointer
    assert pointer[1:].replace("/", ".") in found.remedy.text


def test_a_size_below_the_design_guide_has_no_known_rim_widths():
    found = asked({f"{TYRE}/size": "225/15 R17 94W XL"}, "rim.width")
    assert found.outcome == 2
    assert "approved_rim_widths_in" in found.remedy.text
