"""Dimensions: what the printed sizes do not show."""

from __future__ import annotations

import math

import pytest

from service.physics.dimensions import section_height_mm, section_width_mm, service_width_mm, worn_diameter_mm
from service.physics.rolling import DIAGONAL_FACTOR, rolling_circumference_mm


def test_a_tyre_on_its_theoretical_rim_has_its_nominal_width():
    assert section_width_mm(205.0, 143.5, 143.5) == 205.0


def test_a_lost_millimetre_of_tread_takes_two_off_the_diameter():
    assert worn_diameter_mm(632.0, 1.0) == 630.0


def test_a_tyre_may_grow_by_its_tolerance():
    # 4 % of 225 mm is 9 mm.
    assert service_width_mm(225.0, 4.0) == pytest.approx(234.0)


def test_a_diagonal_tyre_rolls_less_far_than_a_radial_one():
    # The factor 2.99 is from memory.
    assert rolling_circumference_mm(600.0, DIAGONAL_FACTOR) == pytest.approx(1794.0)


def test_an_unknown_width_stays_unknown():
    assert math.isnan(section_height_mm(math.nan, 55.0))
