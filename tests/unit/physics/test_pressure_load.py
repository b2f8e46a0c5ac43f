"""Pressure and load: the cap and the inverse."""

from __future__ import annotations

import math

import pytest

from service.physics.pressure_load import (
    load_at_pressure_kg,
    pressure_for_load_kpa,
    speed_pressure_addition_by_symbol_kpa,
    speed_pressure_addition_kpa,
)


def test_more_than_the_reference_pressure_carries_no_more():
    assert load_at_pressure_kg(615.0, 320.0, 250.0) == 615.0


def test_the_rated_load_needs_the_reference_pressure():
    assert pressure_for_load_kpa(615.0, 615.0, 250.0) == 250.0


def test_a_load_above_the_rated_one_asks_for_more_than_the_reference_pressure():
    assert pressure_for_load_kpa(650.0, 615.0, 250.0) > 250.0


def test_a_north_american_table_takes_its_own_exponent():
    # Exponent 0.5: a quarter of the pressure carries half the load.
    assert load_at_pressure_kg(600.0, 60.0, 240.0, 0.5) == pytest.approx(300.0)


def test_an_unknown_speed_has_an_unknown_addition():
    assert math.isnan(speed_pressure_addition_kpa(math.nan))


def test_a_symbol_that_is_not_known_has_no_addition_of_a_fast_one():
    # The speed of the symbol decides; without it neither rule is taken for granted.
    assert math.isnan(speed_pressure_addition_by_symbol_kpa(220.0, math.nan))


def test_an_unknown_speed_has_an_unknown_addition_for_a_fast_symbol():
    assert math.isnan(speed_pressure_addition_by_symbol_kpa(math.nan, 270.0))


def test_a_symbol_between_t_and_h_has_the_handbooks_addition():
    # U, 200 km/h: 30 kPa x 20 / 50.
    assert speed_pressure_addition_by_symbol_kpa(180.0, 200.0) == pytest.approx(12.0)
