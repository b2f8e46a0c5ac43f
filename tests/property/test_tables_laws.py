"""Laws that hold for every value of the tables, whatever it is."""

from hypothesis import given
from hypothesis import strategies as st

from service.standards import (
    approved_rim_width,
    commercial_speed_load,
    load_index,
    passenger_speed_load,
    rim_diameter,
    rim_width,
    speed_symbol,
)

symbols = st.sampled_from(speed_symbol.SYMBOLS)
speeds = st.floats(0, 400)
indices = st.integers(0, 279)
aspects = st.floats(20, 100)
widths_mm = st.integers(12, 39).map(lambda tens: 10.0 * tens + 5)


@given(st.integers(0, 278))
def test_a_higher_index_never_carries_less(index):
    assert load_index.load_kg(index + 1) > load_index.load_kg(index)


@given(st.floats(0, 136000))
def test_the_least_index_for_a_mass_carries_it(mass_kg):
    assert load_index.load_kg(load_index.least_index_for_kg(mass_kg)) >= mass_kg


@given(st.floats(45.1, 136000))
def test_the_index_below_the_least_one_does_not_carry_the_mass(mass_kg):
    assert load_index.load_kg(load_index.least_index_for_kg(mass_kg) - 1) < mass_kg


@given(st.floats(0, 300))
def test_the_least_symbol_for_a_speed_reaches_it(speed_kmh):
    assert speed_symbol.speed_kmh(speed_symbol.least_symbol_for_kmh(speed_kmh)) >= speed_kmh


@given(st.floats(5.1, 300))
def test_the_symbol_before_the_least_one_does_not_reach_the_speed(speed_kmh):
    least = speed_symbol.SYMBOLS.index(speed_symbol.least_symbol_for_kmh(speed_kmh))
    assert speed_symbol.speed_kmh(speed_symbol.SYMBOLS[least - 1]) < speed_kmh


@given(symbols, speeds, speeds)
def test_a_passenger_tyre_never_carries_more_at_a_higher_speed(symbol, one, other):
    slow, fast = sorted((one, other))
    assert passenger_speed_load.load_factor(symbol, fast) <= passenger_speed_load.load_factor(symbol, slow)


@given(symbols, speeds)
def test_a_passenger_tyre_never_carries_more_than_its_index(symbol, speed_kmh):
    assert 0 <= passenger_speed_load.load_factor(symbol, speed_kmh) <= 1


@given(symbols, indices, speeds, speeds)
def test_a_commercial_tyre_never_carries_more_at_a_higher_speed(symbol, index, one, other):
    slow, fast = sorted((one, other))
    assert commercial_speed_load.load_factor(symbol, index, fast) <= commercial_speed_load.load_factor(
        symbol, index, slow
    )


@given(symbols, indices)
def test_a_commercial_tyre_carries_its_whole_index_at_the_speed_of_its_symbol(symbol, index):
    speed_kmh = speed_symbol.speed_kmh(symbol)
    assert commercial_speed_load.load_factor(symbol, index, speed_kmh) >= 1


@given(symbols, indices, speeds)
def test_a_commercial_tyre_carries_something_exactly_up_to_its_reach(symbol, index, speed_kmh):
    within = speed_kmh <= commercial_speed_load.speed_reach_kmh(symbol, index)
    assert (commercial_speed_load.load_factor(symbol, index, speed_kmh) > 0) == within


@given(st.floats(8, 30), st.floats(8, 30))
def test_a_larger_rim_code_never_has_a_smaller_nominal_diameter(one, other):
    small, large = sorted((one, other))
    assert rim_diameter.nominal_mm(small) <= rim_diameter.nominal_mm(large)


@given(aspects, aspects)
def test_a_lower_aspect_ratio_never_asks_for_a_narrower_rim(one, other):
    low, high = sorted((one, other))
    assert rim_width.measuring_factor(low) >= rim_width.measuring_factor(high)


@given(widths_mm, aspects)
def test_a_measuring_rim_is_a_whole_number_of_half_inches(width_mm, aspect):
    assert (2 * rim_width.measuring_rim_in(width_mm, aspect)).is_integer()


@given(widths_mm, aspects)
def test_the_measuring_rim_lies_within_the_design_guides_range(width_mm, aspect):
    narrowest, widest = approved_rim_width.by_design_guide(width_mm, aspect)
    assert narrowest <= rim_width.measuring_rim_in(width_mm, aspect) <= widest
