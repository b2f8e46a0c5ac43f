"""Laws of what a change does to driving: no change is nothing, a swap is the reciprocal, bands hold their value."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.core.findings import Estimate
from service.physics.aquaplaning import gallaway_onset_kmh, width_factor
from service.physics.bands import difference, relative_change_percent
from service.physics.braking import braking_distance_change_percent, front_braking_share, known_or_assumed_share
from service.physics.heat import heat_reserve_change_percent
from service.physics.peak_grip import load_reserve, peak_grip_change_percent, relative_peak_grip
from service.physics.pressure_load import load_at_pressure_kg, speed_pressure_addition_by_symbol_kpa
from service.physics.repeats import repeats_needed
from service.physics.rolling_energy import energy_change_kwh_per_100km, fuel_change_l_per_100km
from service.physics.turn_in import turn_in
from service.physics.tyre_label import wet_braking_distance_change_percent, wet_class_distance_change_percent
from service.physics.wet_reserve import (
    onset_band_kmh,
    onset_change_band_percent,
    proposed_onset_kmh,
    reserve_fall_percent,
    wet_reserve,
    wet_reserve_percent,
)

RATIO = st.floats(0.6, 1.6)
SHARE = st.one_of(st.floats(0.0, 1.0), st.just(math.nan))
ONSET = st.floats(40.0, 160.0)
DEPTH = st.floats(0.0, 10.0)
CHANGE = st.floats(-40.0, 40.0)
WIDTH = st.floats(125.0, 315.0)
DIAMETER = st.floats(500.0, 800.0)
LOAD = st.floats(200.0, 800.0)
PRESSURE = st.floats(150.0, 250.0)
MORE = st.floats(1.01, 1.3)
SYMBOL = st.sampled_from([160.0, 190.0, 200.0, 210.0, 240.0, 270.0, 300.0])
LETTER = st.sampled_from("ABCDE")
ESTIMATE = st.tuples(st.floats(5.0, 30.0), st.floats(0.5, 1.0), st.floats(1.0, 1.5)).map(
    lambda parts: Estimate(parts[0], parts[0] * parts[1], parts[0] * parts[2])
)


def _holds(band: Estimate[float]) -> bool:
    slack = 1e-9 * (1.0 + abs(band.value))
    return band.low - slack <= band.value <= band.high + slack


def _percent_of_reciprocal(percent: float) -> float:
    return 100.0 * (1.0 / (1.0 + percent / 100.0) - 1.0)


# No change changes nothing, exactly.
@given(SHARE)
def test_the_same_tyres_stop_the_car_as_before(share):
    assert braking_distance_change_percent(known_or_assumed_share(share), 1.0, 1.0) == (0.0, 0.0, 0.0)


def test_the_same_reserve_grips_as_before():
    assert peak_grip_change_percent(1.0) == (0.0, 0.0, 0.0)


@given(DEPTH)
def test_the_same_tyre_floats_as_before(depth):
    assert onset_change_band_percent(0.0, depth, depth) == (0.0, 0.0, 0.0)


@given(WIDTH, DIAMETER)
def test_the_same_tread_stands_the_same_heat(width, diameter):
    assert heat_reserve_change_percent(width, diameter, width, diameter) == 0.0


@given(ESTIMATE)
def test_the_same_wheel_differs_in_nothing(estimate):
    assert difference(estimate, estimate) == (0.0, 0.0, 0.0)
    assert relative_change_percent(estimate, estimate) == (0.0, 0.0, 0.0)


@given(ONSET)
def test_the_same_onset_loses_no_reserve(onset):
    reserve = 100.0 * wet_reserve(onset)
    assert reserve_fall_percent(reserve, reserve) == 0.0


# A swap is the reciprocal, or turns the sign.
@given(RATIO)
def test_swapping_the_tyres_gives_the_reciprocal_grip(ratio):
    there, back = relative_peak_grip(ratio), relative_peak_grip(1.0 / ratio)
    assert back == pytest.approx((1.0 / there.value, 1.0 / there.high, 1.0 / there.low), rel=1e-12)


@given(SHARE, RATIO, RATIO)
def test_swapping_the_tyres_gives_the_reciprocal_distance(share, front, rear):
    known = known_or_assumed_share(share)
    there = braking_distance_change_percent(known, front, rear)
    back = braking_distance_change_percent(known, 1.0 / front, 1.0 / rear)
    expected = (_percent_of_reciprocal(each) for each in (there.value, there.high, there.low))
    assert back == pytest.approx(tuple(expected), rel=1e-9, abs=1e-9)


@given(WIDTH, DIAMETER, WIDTH, DIAMETER)
def test_swapping_the_tyres_gives_the_reciprocal_heat(width, diameter, other_width, other_diameter):
    there = heat_reserve_change_percent(width, diameter, other_width, other_diameter)
    back = heat_reserve_change_percent(other_width, other_diameter, width, diameter)
    assert back == pytest.approx(_percent_of_reciprocal(there), rel=1e-9, abs=1e-9)


@given(RATIO, RATIO, RATIO)
def test_swapping_the_tyres_turns_both_directions(length, height, stiffness):
    there = turn_in(length, height, stiffness)
    back = turn_in(1.0 / length, 1.0 / height, 1.0 / stiffness)
    assert back == (-there.response_first, -there.response_then)


@given(LETTER, LETTER)
def test_swapping_the_classes_gives_the_reciprocal_distance(one, other):
    there, back = wet_class_distance_change_percent(one, other), wet_class_distance_change_percent(other, one)
    expected = (_percent_of_reciprocal(each) for each in (there.value, there.high, there.low))
    assert back == pytest.approx(tuple(expected), rel=1e-9, abs=1e-9)


@given(ESTIMATE, ESTIMATE)
def test_swapping_the_wheels_turns_the_difference(one, other):
    there, back = difference(one, other), difference(other, one)
    assert back == pytest.approx((-there.value, -there.high, -there.low))


@given(ESTIMATE, ESTIMATE)
def test_swapping_the_wheels_gives_the_reciprocal_change(one, other):
    there, back = relative_change_percent(one, other), relative_change_percent(other, one)
    expected = (_percent_of_reciprocal(each) for each in (there.value, there.high, there.low))
    assert back == pytest.approx(tuple(expected), rel=1e-9, abs=1e-9)


# Every band holds its value.
@given(SHARE, RATIO, RATIO)
def test_the_band_of_the_braking_distance_holds_its_value(share, front, rear):
    assert _holds(braking_distance_change_percent(known_or_assumed_share(share), front, rear))


@given(RATIO)
def test_the_band_of_the_peak_grip_holds_its_value(ratio):
    assert _holds(peak_grip_change_percent(ratio))


@given(ONSET, CHANGE, DEPTH, DEPTH)
def test_the_bands_of_the_wet_hold_their_values(onset, change, depth, other_depth):
    present = onset_band_kmh(onset, depth)
    moved = onset_change_band_percent(change, depth, other_depth)
    proposed = proposed_onset_kmh(present, moved)
    assert _holds(present)
    assert _holds(moved)
    assert _holds(proposed)
    assert _holds(wet_reserve_percent(present))


@given(CHANGE)
def test_the_band_of_the_fuel_holds_its_value(energy):
    assert _holds(fuel_change_l_per_100km(energy, "petrol"))


@given(ESTIMATE, ESTIMATE)
def test_the_bands_of_two_differences_hold_their_values(one, other):
    assert _holds(difference(one, other))
    assert _holds(relative_change_percent(one, other))


# Bounds and monotony.
@given(SHARE, st.floats(1.0, 1.6))
def test_a_wider_front_alone_never_lengthens_the_braking_distance(share, ratio):
    # Wider carries no less, so its reserve is no smaller.
    change = braking_distance_change_percent(known_or_assumed_share(share), ratio, 1.0)
    assert change.low <= change.value <= change.high <= 0.0


@given(st.floats(0.0, 3000.0), st.floats(500.0, 3000.0), st.floats(0.0, 2000.0), st.floats(1500.0, 4000.0))
def test_the_front_carries_between_nothing_and_all(front, mass, height, wheelbase):
    assert 0.0 <= front_braking_share(front, mass, height, wheelbase) <= 1.0


@given(st.floats(1.0, 400.0), st.floats(0.0, 300.0))
def test_the_wet_reserve_lies_between_nothing_and_all(onset, speed):
    assert 0.0 <= wet_reserve(onset, speed) <= 1.0


@given(ONSET, ONSET)
def test_a_fall_lies_between_nothing_and_all(onset, other):
    assert 0.0 <= reserve_fall_percent(wet_reserve(onset), wet_reserve(other)) <= 100.0


@given(LOAD, LOAD, MORE)
def test_more_load_on_the_same_tyre_grips_less(capacity, load, more):
    ratio = load_reserve(capacity, load * more) / load_reserve(capacity, load)
    assert peak_grip_change_percent(ratio).high < 0.0


@given(LOAD, PRESSURE, MORE)
def test_more_pressure_up_to_the_reference_never_grips_less(rated, pressure, more):
    # By the load reserve alone, and only to the pressure that carries the load index.
    now, then = (load_at_pressure_kg(rated, each, 250.0) for each in (pressure, pressure * more))
    assert peak_grip_change_percent(then / now).low >= 0.0


@given(PRESSURE, DEPTH, WIDTH, st.floats(1.0, 60.0))
def test_a_wider_patch_never_has_more_wet_reserve(pressure, depth, width, wider):
    onset = gallaway_onset_kmh(pressure, depth, 2.0, 1.0)
    assert wet_reserve(onset * width_factor(width, width + wider)) <= wet_reserve(onset)


@given(PRESSURE, DEPTH)
def test_more_pressure_never_has_less_wet_reserve(pressure, depth):
    low, high = (wet_reserve(gallaway_onset_kmh(each, depth, 2.0, 1.0)) for each in (pressure, pressure + 20.0))
    assert high >= low


@given(ONSET, st.floats(0.0, 9.0), st.floats(0.1, 1.0))
def test_less_tread_never_raises_the_low_end(onset, depth, deeper):
    assert onset_band_kmh(onset, depth).low <= onset_band_kmh(onset, depth + deeper).low


@given(WIDTH, DIAMETER, MORE)
def test_a_wider_tread_stands_more_heat(width, diameter, more):
    assert heat_reserve_change_percent(width, diameter, width * more, diameter) > 0.0


@given(RATIO, RATIO, RATIO, MORE)
def test_a_lower_sidewall_never_answers_slower(length, height, stiffness, more):
    lower = turn_in(length, height / more, stiffness)
    assert lower.response_first >= turn_in(length, height, stiffness).response_first


@given(st.floats(0.8, 1.8), MORE)
def test_a_better_wet_grip_index_stops_shorter(index, more):
    assert wet_braking_distance_change_percent(index, index * more) < 0.0


@given(st.floats(0.1, 6.0), st.floats(500.0, 3000.0), MORE)
def test_more_mass_takes_more_energy(step, mass, more):
    assert energy_change_kwh_per_100km(step, mass * more) > energy_change_kwh_per_100km(step, mass)


@given(st.floats(50.0, 340.0), st.floats(0.0, 50.0), SYMBOL)
def test_more_speed_never_asks_for_less_pressure(speed, faster, symbol):
    more = speed_pressure_addition_by_symbol_kpa(speed + faster, symbol)
    assert more >= speed_pressure_addition_by_symbol_kpa(speed, symbol) >= 0.0


@given(st.floats(0.05, 5.0), st.floats(0.1, 5.0), MORE)
def test_a_smaller_difference_never_takes_fewer_tests(effect, scatter, more):
    assert repeats_needed(effect / more, scatter) >= repeats_needed(effect, scatter)
