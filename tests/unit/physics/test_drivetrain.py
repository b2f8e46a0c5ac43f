"""Drivetrain: signs and sizes, by hand."""

from __future__ import annotations

import pytest

from service.physics.drivetrain import axle_ratio_change_percent, engine_speed_change_percent, odometer_change_percent


def test_a_quarter_more_circumference_takes_a_fifth_off_the_engine_speed():
    assert engine_speed_change_percent(2000.0, 2500.0) == pytest.approx(-20.0)


def test_a_smaller_wheel_shows_more_distance():
    assert odometer_change_percent(2000.0, 1600.0) == pytest.approx(25.0)


def test_the_same_growth_on_both_axles_keeps_their_ratio():
    assert axle_ratio_change_percent(2000.0, 2100.0, 2200.0, 2310.0) == pytest.approx(0.0, abs=1e-9)


def test_a_larger_front_alone_shifts_the_ratio():
    assert axle_ratio_change_percent(2000.0, 2100.0, 2020.0, 2100.0) == pytest.approx(1.0)
