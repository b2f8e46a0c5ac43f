"""Wheel position: signs, by hand from the definitions (mounting face the origin, outboard positive)."""

from __future__ import annotations

import pytest

from service.physics.wheel_position import (
    grown_diameter_mm,
    inner_edge_mm,
    outer_edge_mm,
    ride_height_change_mm,
    rim_overall_width_mm,
    scrub_radius_change_mm,
    track_change_mm,
)


def test_offset_pulls_the_outer_edge_in():
    assert outer_edge_mm(230.0, 45.0) == 70.0


def test_offset_pushes_the_inner_edge_in():
    assert inner_edge_mm(230.0, 45.0) == 160.0


def test_a_rim_is_wider_over_its_flanges():
    # 8 in between the flanges, half an inch each: 9 in; the flange is from memory.
    assert rim_overall_width_mm(203.2) == pytest.approx(228.6)


def test_ten_millimetres_less_offset_widen_the_track_by_twenty():
    assert track_change_mm(45.0, 35.0) == 20.0


def test_ten_millimetres_less_offset_move_the_patch_outboard_by_ten():
    assert scrub_radius_change_mm(45.0, 35.0) == 10.0


def test_a_larger_loaded_radius_lifts_the_car():
    assert ride_height_change_mm(300.0, 304.0) == 4.0


def test_a_tyre_grows_in_its_section_and_not_at_its_bead():
    # 205/55 R16, by hand: 406 + 2 x 113 x 1.04 = 641.04 mm; a tyre for snow 1 % more (both from memory).
    assert grown_diameter_mm(406.0, 113.0, 4.0, 0.0) == pytest.approx(641.04)
    assert grown_diameter_mm(406.0, 113.0, 4.0, 1.0) == pytest.approx(647.45, abs=0.01)
