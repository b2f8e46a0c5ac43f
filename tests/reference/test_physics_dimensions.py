"""Design dimensions, rolling circumference and edges against printed sizes.

Sources: the design values of seven modern sizes (measuring rim, S, D), from memory of the printed tables; P205/60R15 on
a 6.0 in rim, design section 8.23 in, design overall diameter 24.69 in (Tire and Rim Association design guide, quoted
second-hand); the rounding of the section height (275/30R20 gives 674 mm, not 672), from memory. The factor x of the
theoretical rim is the tyre maker's; the seven values here are the design guide's (from memory).
Tolerance: none where the regulation rounds to whole millimetres.
"""

from __future__ import annotations

import math

import pytest

from service.core.numeric import round_half_up
from service.core.units import MM_PER_INCH
from service.physics.dimensions import overall_diameter_mm, section_height_mm, section_width_mm, worn_diameter_mm
from service.physics.drivetrain import odometer_change_percent
from service.physics.rolling import revolutions_per_km, rolling_circumference_mm

# nominal width, aspect, rim diameter [mm], measuring rim [in], x, S, D
SIZES = {
    "195/65R15": (195.0, 65.0, 381.0, 6.0, 0.70, 201.0, 635.0),
    "205/55R16": (205.0, 55.0, 406.0, 6.5, 0.70, 214.0, 632.0),
    "185/65R15": (185.0, 65.0, 381.0, 5.5, 0.70, 189.0, 621.0),
    "225/45R17": (225.0, 45.0, 432.0, 7.5, 0.85, 225.0, 634.0),
    "225/40R18": (225.0, 40.0, 457.0, 8.0, 0.85, 230.0, 637.0),
    "255/35R19": (255.0, 35.0, 483.0, 9.0, 0.85, 260.0, 661.0),
    "235/75R15": (235.0, 75.0, 381.0, 6.5, 0.70, 235.0, 733.0),
}


@pytest.mark.parametrize("size", SIZES)
def test_the_section_width_is_the_printed_one(size):
    nominal, _, _, rim_in, x, printed, _ = SIZES[size]
    assert round_half_up(section_width_mm(nominal, rim_in * MM_PER_INCH, x * nominal)) == printed


@pytest.mark.parametrize("size", SIZES)
def test_the_overall_diameter_is_the_printed_one(size):
    nominal, aspect, rim_mm, _, _, _, printed = SIZES[size]
    assert overall_diameter_mm(rim_mm, section_height_mm(nominal, aspect)) == printed


def test_half_a_millimetre_of_section_height_is_rounded_up():
    assert overall_diameter_mm(508.0, section_height_mm(275.0, 30.0)) == 674.0


def test_the_section_width_of_the_design_guides_worked_size():
    # 8.23 in is printed to hundredths of an inch (0.13 mm either way) and was rounded to whole millimetres before.
    width = section_width_mm(205.0, 6.0 * MM_PER_INCH, 0.70 * 205.0)
    assert width == pytest.approx(8.23 * MM_PER_INCH, abs=0.5)


def test_the_overall_diameter_of_the_design_guides_worked_size():
    # Printed to hundredths of an inch: 0.13 mm either way.
    assert overall_diameter_mm(381.0, section_height_mm(205.0, 60.0)) == pytest.approx(24.69 * MM_PER_INCH, abs=0.13)


def test_half_an_inch_of_rim_moves_the_section_width_by_five_millimetres():
    # 0.4 x 12.7 = 5.08 mm, derived in the notes from K of UN Regulation No. 30.
    wider = section_width_mm(225.0, 8.5 * MM_PER_INCH, 191.0) - section_width_mm(225.0, 8.0 * MM_PER_INCH, 191.0)
    assert wider == pytest.approx(5.08)


def test_the_rolling_circumference_is_3_05_diameters():
    # 632 mm x 3.05 (European Commission, CO2MPAS): 1927.6 mm.
    assert rolling_circumference_mm(632.0) == pytest.approx(1927.6)


def test_the_turns_in_a_kilometre():
    # 205/55R16: 518.8 by 3.05 D; pi D would say 503.6.
    assert revolutions_per_km(rolling_circumference_mm(632.0)) == pytest.approx(518.8, abs=0.05)


def test_the_rolling_radius_of_an_open_tyre_set():
    # Open MF-Tyre set of 205/60R15: effective radius 304.4 mm at 4000 N. The factor is stated to 1 %; it hits 0.1 %.
    assert rolling_circumference_mm(627.0) / (2.0 * math.pi) == pytest.approx(304.4, rel=0.001)


def test_three_millimetres_of_wear_advance_the_odometer_by_around_one_per_cent():
    # Automotive Engineering, ch. 10.1, p. 297: "3 mm wear gives an advance of around 1%"; 195/65R15 taken here.
    worn = rolling_circumference_mm(worn_diameter_mm(635.0, 3.0))
    assert odometer_change_percent(rolling_circumference_mm(635.0), worn) == pytest.approx(1.0, abs=0.1)
