"""Laws that hold for every tyre: nothing changed changes nothing, a swap flips, more is more."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.physics.aquaplaning import gallaway_onset_kmh, width_factor
from service.physics.bands import Multiples, multiple
from service.physics.contact_patch import contact_patch, tread_width_mm
from service.physics.cornering_stiffness import (
    cornering_stiffness_n_per_deg,
    relative_cornering_stiffness_band,
    stiffness_ratios,
)
from service.physics.drivetrain import axle_ratio_change_percent, engine_speed_change_percent
from service.physics.pressure_load import load_at_pressure_kg, pressure_for_load_kpa
from service.physics.understeer import (
    understeer_gradient_change_band_deg_per_g,
    understeer_gradient_change_deg_per_g,
)
from service.physics.vertical_stiffness import deflection_mm, static_loaded_radius_mm, vertical_stiffness_n_per_mm
from service.physics.wheel_position import inner_edge_mm, outer_edge_mm, track_change_mm

RATIO = st.floats(0.6, 1.6)
RATIOS = st.tuples(RATIO, RATIO, RATIO, RATIO)
COMPLIANCE = st.floats(1.0, 8.0)
WIDTH = st.floats(125.0, 315.0)
ASPECT = st.floats(25.0, 80.0)
RIM = st.floats(305.0, 584.0)
PRESSURE = st.floats(150.0, 350.0)
LOAD = st.floats(2000.0, 7000.0)
CIRCUMFERENCE = st.floats(1500.0, 2500.0)
OFFSET = st.floats(-40.0, 80.0)


def test_the_same_tyre_is_exactly_as_stiff():
    assert relative_cornering_stiffness_band(stiffness_ratios(1.0, 1.0, 1.0, 1.0)) == (1.0, 1.0, 1.0)


@given(RATIOS)
def test_the_band_of_the_relative_stiffness_holds_its_value(ratios):
    band = relative_cornering_stiffness_band(stiffness_ratios(*ratios))
    # The products are taken in another order: a last digit may differ.
    assert band.low * (1.0 - 1e-12) <= band.value <= band.high * (1.0 + 1e-12)


@given(RATIOS)
def test_swapping_the_tyres_gives_the_reciprocal_band(ratios):
    there = relative_cornering_stiffness_band(stiffness_ratios(*ratios))
    back = relative_cornering_stiffness_band(stiffness_ratios(*(1.0 / ratio for ratio in ratios)))
    assert back == pytest.approx((1.0 / there.value, 1.0 / there.high, 1.0 / there.low), rel=1e-12)


@given(LOAD, st.floats(1.01, 1.3))
def test_cornering_stiffness_grows_with_load_but_less(load_n, growth):
    rated_n = 7000.0 * 1.3
    gain = cornering_stiffness_n_per_deg(load_n * growth, rated_n) / cornering_stiffness_n_per_deg(load_n, rated_n)
    assert 1.0 < gain < growth


@given(COMPLIANCE, COMPLIANCE)
def test_unchanged_tyres_leave_the_balance_exactly_alone(front, rear):
    same = stiffness_ratios(1.0, 1.0, 1.0, 1.0)
    assert understeer_gradient_change_band_deg_per_g(front, rear, same, same) == (0.0, 0.0, 0.0)


@given(COMPLIANCE, RATIOS)
def test_axles_alike_that_change_alike_leave_the_balance_alone(compliance, ratios):
    # Whatever the exponents are: both axles share them.
    alike = stiffness_ratios(*ratios)
    change = understeer_gradient_change_band_deg_per_g(compliance, compliance, alike, alike)
    assert change == (0.0, 0.0, 0.0)


@given(COMPLIANCE, COMPLIANCE, RATIO, RATIO)
def test_swapping_the_fitments_flips_the_change_of_balance(front, rear, front_ratio, rear_ratio):
    there = understeer_gradient_change_deg_per_g(front, rear, front_ratio, rear_ratio)
    back = understeer_gradient_change_deg_per_g(
        front / front_ratio, rear / rear_ratio, 1.0 / front_ratio, 1.0 / rear_ratio
    )
    assert back == pytest.approx(-there, rel=1e-9, abs=1e-9)


@given(COMPLIANCE, COMPLIANCE, RATIOS, RATIOS)
def test_the_band_of_the_balance_holds_its_value(front, rear, front_ratios, rear_ratios):
    change = understeer_gradient_change_band_deg_per_g(
        front, rear, stiffness_ratios(*front_ratios), stiffness_ratios(*rear_ratios)
    )
    assert change.low - 1e-9 <= change.value <= change.high + 1e-9


@given(COMPLIANCE, st.floats(1.01, 1.6))
def test_a_wider_rear_never_moves_towards_oversteer(rear, width_ratio):
    same = stiffness_ratios(1.0, 1.0, 1.0, 1.0)
    wider = stiffness_ratios(width_ratio, 1.0, 1.0, 1.0)
    assert understeer_gradient_change_band_deg_per_g(4.0, rear, same, wider).low > 0.0


@given(st.floats(-50.0, 50.0))
def test_the_band_of_a_change_holds_its_value(change):
    band = multiple(change, Multiples(0.75, 1.7))
    assert band.low <= band.value <= band.high


@given(WIDTH, ASPECT, RIM, PRESSURE)
def test_more_pressure_is_stiffer(width, aspect, rim, pressure):
    assert vertical_stiffness_n_per_mm(pressure * 1.05, aspect, width, rim) > vertical_stiffness_n_per_mm(
        pressure, aspect, width, rim
    )


@given(WIDTH, ASPECT, RIM, PRESSURE, LOAD)
def test_more_load_stands_lower(width, aspect, rim, pressure, load_n):
    stiffness = vertical_stiffness_n_per_mm(pressure, aspect, width, rim)
    assert static_loaded_radius_mm(640.0, load_n * 1.05, stiffness) < static_loaded_radius_mm(640.0, load_n, stiffness)


def _patch(nominal_mm: float, diameter_mm: float, rim_mm: float, load_n: float, pressure_kpa: float):
    height_mm = 0.5 * (diameter_mm - rim_mm)
    aspect = 100.0 * height_mm / nominal_mm
    stiffness = vertical_stiffness_n_per_mm(pressure_kpa, aspect, nominal_mm, rim_mm)
    tread = tread_width_mm(nominal_mm, aspect)
    return contact_patch(load_n, pressure_kpa, diameter_mm, height_mm, tread, deflection_mm(load_n, stiffness))


EQUAL = (st.floats(175.0, 275.0), st.floats(10.0, 40.0), st.floats(600.0, 680.0), st.floats(3000.0, 5500.0))


@given(*EQUAL, st.floats(200.0, 300.0))
def test_at_equal_diameter_load_and_pressure_a_wider_tyre_has_a_wider_patch(width, more, diameter, load_n, pressure):
    narrow = _patch(width, diameter, 432.0, load_n, pressure)
    wide = _patch(width + more, diameter, 432.0, load_n, pressure)
    assert wide.width_mm > narrow.width_mm


@given(*EQUAL, st.floats(200.0, 300.0))
def test_at_equal_diameter_load_and_pressure_a_wider_tyre_has_a_shorter_patch(width, more, diameter, load_n, pressure):
    narrow = _patch(width, diameter, 432.0, load_n, pressure)
    wide = _patch(width + more, diameter, 432.0, load_n, pressure)
    assert wide.length_mm < narrow.length_mm


@given(*EQUAL, st.floats(200.0, 300.0))
def test_at_equal_diameter_load_and_pressure_the_area_hardly_changes(width, more, diameter, load_n, pressure):
    narrow = _patch(width, diameter, 432.0, load_n, pressure)
    wide = _patch(width + more, diameter, 432.0, load_n, pressure)
    assert wide.area_cm2 == pytest.approx(narrow.area_cm2, rel=0.05)


@given(st.floats(100.0, 300.0), st.floats(100.0, 300.0))
def test_swapping_the_widths_gives_the_reciprocal_onset(one, other):
    assert width_factor(one, other) * width_factor(other, one) == pytest.approx(1.0, rel=1e-12)


@given(PRESSURE, st.floats(1.0, 9.0), st.floats(0.5, 8.0), st.floats(0.1, 2.0))
def test_more_tread_floats_later(pressure, tread, film, texture):
    more = gallaway_onset_kmh(pressure, tread + 0.5, film, texture)
    assert more > gallaway_onset_kmh(pressure, tread, film, texture)


@given(PRESSURE, st.floats(1.0, 9.0), st.floats(0.5, 8.0), st.floats(0.1, 2.0))
def test_more_water_floats_earlier(pressure, tread, film, texture):
    more = gallaway_onset_kmh(pressure, tread, film + 0.5, texture)
    assert more < gallaway_onset_kmh(pressure, tread, film, texture)


@given(PRESSURE)
def test_more_pressure_floats_later(pressure):
    assert gallaway_onset_kmh(pressure + 10.0, 6.0, 2.0, 0.5) > gallaway_onset_kmh(pressure, 6.0, 2.0, 0.5)


@given(st.floats(300.0, 900.0), st.floats(0.3, 1.0), st.floats(240.0, 300.0))
def test_the_pressure_for_a_load_carries_that_load(rated, share, reference):
    pressure = pressure_for_load_kpa(rated * share, rated, reference)
    assert load_at_pressure_kg(rated, pressure, reference) == pytest.approx(rated * share, rel=1e-9)


@given(CIRCUMFERENCE)
def test_the_same_circumference_changes_nothing(circumference):
    assert engine_speed_change_percent(circumference, circumference) == 0.0


@given(CIRCUMFERENCE, CIRCUMFERENCE)
def test_the_same_circumferences_keep_the_ratio_of_the_axles_exactly(front, rear):
    assert axle_ratio_change_percent(front, rear, front, rear) == 0.0


@given(st.floats(150.0, 350.0), OFFSET)
def test_the_two_edges_are_a_width_apart(width, offset):
    assert outer_edge_mm(width, offset) + inner_edge_mm(width, offset) == pytest.approx(width)


@given(OFFSET, OFFSET)
def test_swapping_the_offsets_flips_the_change_of_track(one, other):
    assert track_change_mm(one, other) == -track_change_mm(other, one)
