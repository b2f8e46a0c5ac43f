"""What the readers answer at the edges of their tables and beyond."""

import math

import pytest

from service.standards import (
    approved_rim_width,
    commercial_speed_load,
    flotation,
    load_index,
    old_series,
    passenger_speed_load,
    pressure_load,
    rim_diameter,
    rim_width,
    speed_symbol,
)


@pytest.mark.parametrize("index", [-1, 280, 999])
def test_a_load_index_outside_the_table_has_no_mass(index):
    assert math.isnan(load_index.load_kg(index))


def test_the_least_index_for_a_printed_mass_is_its_own():
    assert load_index.least_index_for_kg(615) == 91


def test_the_least_index_for_a_mass_between_two_rows_is_the_upper_one():
    assert load_index.least_index_for_kg(615.1) == 92


def test_no_index_carries_more_than_the_last_row():
    assert load_index.least_index_for_kg(136000.1) is None


def test_an_unknown_mass_has_no_least_index():
    assert load_index.least_index_for_kg(math.nan) is None


def test_an_unknown_speed_symbol_has_no_speed():
    assert math.isnan(speed_symbol.speed_kmh("I"))


def test_the_least_symbol_for_a_speed_between_two_is_the_faster_one():
    assert speed_symbol.least_symbol_for_kmh(201) == "H"


def test_the_least_symbol_for_its_own_speed_is_itself():
    assert speed_symbol.least_symbol_for_kmh(210) == "H"


def test_no_symbol_of_its_own_goes_beyond_300_kmh():
    assert speed_symbol.least_symbol_for_kmh(300.5) is None


def test_the_open_ended_symbol_is_not_offered_as_a_symbol():
    assert "(Y)" not in speed_symbol.SYMBOLS


@pytest.mark.parametrize("code", [7, 31, 390, math.nan])
def test_a_rim_code_outside_the_table_has_no_nominal_diameter(code):
    assert math.isnan(rim_diameter.nominal_mm(code))


@pytest.mark.parametrize("symbol", ["I", "", "ZR"])
def test_a_passenger_tyre_of_unknown_symbol_has_no_load_factor(symbol):
    assert math.isnan(passenger_speed_load.load_factor(symbol, 100))


def test_an_unknown_speed_has_no_load_factor():
    assert math.isnan(passenger_speed_load.load_factor("V", math.nan))


def test_a_commercial_tyre_of_unknown_symbol_has_no_load_factor():
    assert math.isnan(commercial_speed_load.load_factor("I", 109, 100))


def test_a_commercial_tyre_at_unknown_speed_has_no_load_factor():
    assert math.isnan(commercial_speed_load.load_factor("N", 109, math.nan))


def test_a_commercial_tyre_of_unknown_symbol_has_no_reach():
    assert math.isnan(commercial_speed_load.speed_reach_kmh("I", 109))


def test_a_speed_between_two_rows_takes_the_smaller_load():
    assert commercial_speed_load.load_factor("N", 109, 96) == commercial_speed_load.load_factor("N", 109, 100)


def test_a_heavy_tyre_without_a_column_gains_nothing():
    assert commercial_speed_load.load_factor("N", 122, 40) == 1.0


def test_a_heavy_tyre_without_a_column_ends_at_its_symbol():
    assert commercial_speed_load.load_factor("N", 122, 141) == 0.0


def test_a_slow_commercial_tyre_without_a_column_keeps_its_load_to_its_symbol():
    assert [commercial_speed_load.load_factor("D", 100, speed) for speed in (65, 66)] == [1.0, 0.0]


def test_a_pressure_between_two_columns_is_not_interpolated():
    assert math.isnan(pressure_load.load_kg(80, 205))


def test_a_load_index_without_a_row_has_no_load_at_a_pressure():
    assert math.isnan(pressure_load.load_kg(91, 200))


@pytest.mark.parametrize("aspect", [19.9, 0, math.nan])
def test_no_rim_factor_exists_below_the_ladder(aspect):
    assert math.isnan(rim_width.theoretical_factor(aspect))


def test_no_measuring_rim_exists_below_the_ladder():
    assert math.isnan(rim_width.measuring_rim_in(205, 15))


@pytest.mark.parametrize(("between", "row"), [(48, 45), (57, 55), (72, 70), (29, 25), (82, 75), (100, 95)])
def test_an_aspect_ratio_between_two_rows_takes_the_row_below(between, row):
    assert rim_width.measuring_factor(between) == rim_width.measuring_factor(row)


def test_a_size_without_a_row_has_no_approved_rims():
    assert approved_rim_width.from_table(205, 50, 16, "R") is None


def test_a_size_of_another_construction_has_no_approved_rims():
    assert approved_rim_width.from_table(205, 55, 16, "D") is None


def test_the_design_guide_estimates_nothing_below_its_ladder():
    assert all(math.isnan(width) for width in approved_rim_width.by_design_guide(205, 15))


def test_an_old_size_without_a_row_has_no_dimensions():
    assert old_series.row(205, 17) is None


def test_a_size_in_inches_without_a_row_has_no_dimensions():
    assert old_series.numeric_row(6.5, 16) is None


def test_a_flotation_size_without_a_row_has_no_design_diameter():
    assert math.isnan(flotation.from_table(33, 12.5, 15))


def test_an_estimate_of_a_flotation_size_lies_half_an_inch_below_its_name():
    assert flotation.estimate_mm(33) == pytest.approx(33 * 25.4 - 12.7)
