"""Label: the band of a step between classes, by hand."""

from __future__ import annotations

import pytest

from service.physics.tyre_label import (
    rolling_resistance_change_kg_per_t,
    wet_braking_distance_change_percent,
    wet_class_distance_change_percent,
)


def test_the_band_of_a_rolling_resistance_step_runs_from_the_nearest_to_the_furthest_tyres():
    # B is 6.5 to 7.7, D is 9.0 to 10.5.
    assert rolling_resistance_change_kg_per_t("B", "D") == pytest.approx((2.8, 1.3, 4.0))


def test_two_tyres_of_one_class_may_differ_by_the_class():
    assert rolling_resistance_change_kg_per_t("B", "B") == pytest.approx((0.0, -1.2, 1.2))


def test_twice_the_index_halves_the_distance():
    assert wet_braking_distance_change_percent(0.8, 1.6) == pytest.approx(-50.0)


def test_the_band_of_a_wet_grip_step_runs_from_the_nearest_to_the_furthest_tyres():
    # D is 1.10 to 1.25, B is 1.40 to 1.55.
    assert wet_class_distance_change_percent("D", "B") == pytest.approx(
        (100.0 * (1.10 / 1.40 - 1.0), 100.0 * (1.10 / 1.55 - 1.0), 100.0 * (1.25 / 1.40 - 1.0))
    )
