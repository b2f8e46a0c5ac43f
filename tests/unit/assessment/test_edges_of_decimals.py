"""Crooked numbers in sentences: each is told with the decimals that it deserves, and what is short stays short.

Load indices 93 and 94 are 650 and 670 kg (Regeling voertuigen, Bijlage VIII, annex 4). V keeps 94 % at 230 and 92.5 %
at 235 km/h, W all of it at 240 and 95 % at 250, Y all of it to 270 (UN R30 2.31); between them it is a straight line.
The saloon's tyre is 634 mm high, its track 1,540 mm and its axle 1,000 kg heavy.
"""

import pytest

from service.assessment.checks.pressure import in_words
from service.assessment.checks.words import apart, lawful_lead, span
from tests.support.cases import ABSENT, changed, check, finding, saloon
from tests.unit.assessment.test_edges_of_sentences import INBOARD, MASS, TOP, TREADS, message

NOW = "/vehicle/rear/fitted"
V_94 = {"tyre/size": "225/45 R17 94V XL"}
REFERENCE = {"tyre/reference_pressure_kpa": 290.4}


@pytest.mark.parametrize(
    ("code", "changes", "said"),
    [
        # 94 - 3.1 x 0.3 = 93.07 % of 1,340 kg are 1,247.1.
        (
            "load.capacity",
            V_94 | {TOP: 233.1, MASS: 1000.4},
            "The axle's tyres carry 1247 kg at 233 km/h (93.1 % of the load index), enough for 1000 kg.",
        ),
        (
            "load.capacity",
            V_94 | {TOP: 233.1, MASS: 1300.4},
            "The axle's tyres carry 1247 kg at 233 km/h (93.1 % of the load index); the axle needs 1300 kg.",
        ),
        ("load.capacity", {MASS: 1000.4}, "The axle's tyres carry 1340 kg, enough for 1000 kg."),
        (
            "load.capacity",
            {"tyre/size": "225/45 R17 93W XL", MASS: 1320.4},
            "The axle's tyres carry 1300 kg; the axle needs 1320 kg.",
        ),
        (
            "load.capacity",
            {"tyre/size": "225/45 R17", MASS: 1000.4},
            "What the tyres carry is not known without load index and speed symbol. The axle needs 1000 kg.",
        ),
        (
            "load.capacity",
            {"tyre/size": "225/45 ZR17 (93Y)", TOP: 310.4, MASS: 1000.4},
            "What the tyres carry at 310 km/h is for their maker to state. The axle needs 1000 kg.",
        ),
        # 1,340 - 0.9307 x 1,300 = 130.1 kg.
        (
            "load.below_present",
            {"tyre/size": "225/45 R17 93V XL", TOP: 233.1, MASS: 1000.4},
            "The axle's tyres carry 130 kg less than the present ones. They still carry the axle: 1210 kg for 1000 kg.",
        ),
        # W keeps 99.96 % at 240.08 km/h.
        (
            "load.below_present",
            {"tyre/size": "225/45 R17 94Y XL", TOP: 240.08},
            "The axle's tyres carry as much as the present ones.",
        ),
        (
            "load.below_present",
            {"tyre/size": "225/45 R17 94Y XL", TOP: 240.2},
            "The axle's tyres carry 0.1 % more than the present ones.",
        ),
        ("speed.capability", {TOP: 228.4}, "The tyre may run 270 km/h; the vehicle reaches 228 km/h."),
        (
            "speed.capability",
            {"tyre/size": "225/45 R17 94H XL", TOP: 228.4},
            "The tyre may run 210 km/h only; the vehicle reaches 228 km/h.",
        ),
        # A share of less than a kilogram more is rounded up, a whole one is not.
        ("rim.load_rating", {MASS: 1000.4}, "The rim is rated for 700 kg; each wheel has to carry 501 kg."),
        (
            "rim.load_rating",
            {"rim/load_rating_kg": 700.4},
            "The rim is rated for 700 kg; each wheel has to carry 500 kg.",
        ),
        (
            "rim.load_rating",
            {"rim/load_rating_kg": 450.4},
            "The rim is rated for 450 kg only; each wheel has to carry 500 kg.",
        ),
        (
            "rim.centre_bore",
            {"rim/centre_bore_mm": 66.56},
            "The rim's centre bore of 66.6 mm fits the hub's 66.6 mm.",
        ),
        (
            "load.pressure",
            REFERENCE | {"pressure_kpa": 400.4},
            "400 kPa is too much: the tyre carries its load index at 290 kPa. Usually it gets 340 kPa at most.",
        ),
        # 290 (500/670)^1.25 = 201.1 kPa, and 38.4 for speed at 228.4 km/h.
        (
            "load.pressure",
            {"pressure_kpa": 200.4, TOP: 228.4},
            "200 kPa is too little for the full axle at 228 km/h. It needs at least 240 kPa.",
        ),
        (
            "load.pressure",
            {f"{NOW}/pressure_kpa": 250.4, "pressure_kpa": 248},
            "248 kPa carries the axle, which needs at least 239 kPa. It is below the 250 kPa of today.",
        ),
        # 2 x 9.53 mm of 1,540.
        (
            "track.change",
            {"rim/size": "7.5J x 17 H2 ET35.47"},
            "The track grows by 19.1 mm (1.2 %): each wheel stands 9.5 mm further out.",
        ),
        (
            "diameter.deviation",
            {"tyre/overall_diameter_mm": 640.4},
            "The overall diameter goes from 634 to 640 mm (+1 %), within 1.5 % either way.",
        ),
        (
            "diameter.deviation",
            {"tyre/overall_diameter_mm": 645.4},
            "The overall diameter goes from 634 to 645 mm (+1.8 %), more than the 1.5 % that goes unnoticed.",
        ),
        (
            "diameter.deviation",
            {"tyre/overall_diameter_mm": 634.4, f"{NOW}/tyre/overall_diameter_mm": 634.4},
            "The overall diameter stays at 634 mm.",
        ),
        ("tyre.tread_depth", {TREADS["rear"]: 7.96}, "The tread is 8 mm deep."),
        # What is measured today is 0.04 mm of movement away, which nobody sees.
        ("clearance.inboard", {"rim/size": "7.5J x 17 H2 ET45.04"}, "The room towards the strut does not change."),
        (
            "clearance.inboard",
            {"rim/size": "7.5J x 17 H2 ET45.04", INBOARD: ABSENT},
            "The room towards the strut does not change.",
        ),
        (
            "clearance.inboard",
            {INBOARD: 3.4},
            "The room towards the strut is 3 mm; 5 mm or more is advised. The change leaves this as it is today.",
        ),
        # 15 - 0.6 further in of 14 + 0.4; 0.94 mm short.
        (
            "clearance.inboard",
            {INBOARD: 14.4, "rim/size": "7.5J x 17 H2 ET60.34"},
            "The wheel needs 15 mm more room towards the strut, 0.9 mm more than there is: it touches.",
        ),
    ],
)
def test_a_number_is_told_with_the_decimals_it_deserves(code, changes, said):
    assert message(code, changes) == said


@pytest.mark.parametrize(
    ("front", "rear", "driven", "said"),
    [
        (8.24, 5.18, "rear", "The tyres have 8.2 mm of tread in front and 5.2 mm at the rear."),
        (5.46, 5.46, "rear", "All tyres have 5.5 mm of tread."),
        # 2 x 3.06 mm of 634.
        (8.24, 5.18, "all", "Wear alone sets the diameters apart by 1 %, which strains the all-wheel drive."),
    ],
)
def test_treads_are_told_in_tenths(front, rear, driven, said):
    changes = {TREADS["front"]: front, TREADS["rear"]: rear, "/vehicle/driven_axle": driven}
    assert said in message("tyre.tread_difference", changes, "vehicle")


@pytest.mark.parametrize(
    ("pressure_kpa", "said"), [(245.4, "245 kPa (2.45 bar)"), (250, "250 kPa (2.5 bar)"), (300, "300 kPa (3 bar)")]
)
def test_a_pressure_is_told_as_a_gauge_of_either_kind_shows_it(pressure_kpa, said):
    assert in_words(pressure_kpa) == said


def test_no_symbol_is_fast_enough_above_that_of_the_last():
    """Y is 300 km/h (UN R30)."""
    remedy = finding(check(changed(saloon(), {TOP: 310.4})), "speed.capability").remedy
    assert remedy.text == "a tyre that its maker states to be good for 310 km/h"


# Ends are rounded into the range, exact ones stay; what is narrower than the last decimal is told by its middle.
@pytest.mark.parametrize(
    ("least", "most", "digits", "text"),
    [
        (43.0, 48.0, 0, "43 to 48 mm"),
        (8.0004, 9.0, 1, "8.1 to 9 mm"),
        (None, 48.0, 0, "48 mm or less"),
        (43.0, None, 0, "43 mm or more"),
        (42.33, 42.71, 0, "42.5 mm"),
        (43.7, 44.45, 0, "44 mm"),
        (7.0, 7.0, 2, "7 mm"),
    ],
)
def test_a_range_is_told_by_ends_that_lie_within_it(least, most, digits, text):
    said = span(least, most, "mm", digits)
    assert said == text
    assert {each.unit for each in said.parameters.values()} == {"mm"}


@pytest.mark.parametrize(
    ("least", "most", "text"),
    [(0.104, 10.0, "0.2 to 10 % above the true speed"), (1.0, 9.796, "1 to 9.7 % above the true speed")],
)
def test_a_lead_is_rounded_into_its_range_once(least, most, text):
    assert lawful_lead(least, most) == text


def test_what_is_beyond_a_limit_by_thousandths_is_told_in_hundredths():
    assert (apart(2.004, 2.0, 1, "mm"), apart(2.006, 2.0, 1, "mm")) == ("2 mm", "2.01 mm")
