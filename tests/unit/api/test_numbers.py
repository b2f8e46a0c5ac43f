"""Numbers on their way out. The yardstick is decimal arithmetic: the library's `Decimal`, halves to even."""

from __future__ import annotations

import math
from decimal import ROUND_HALF_EVEN, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.api.render.numbers import HUNDREDTHS, Layout, rounded, scale, to_hundredths

NUMBERS = st.floats(-1e6, 1e6)


def _decimal(number: float, decimals: int) -> float:
    return float(Decimal(number).quantize(Decimal(1).scaleb(-decimals), ROUND_HALF_EVEN))


@given(st.lists(st.tuples(NUMBERS, st.integers(0, 4)), max_size=20))
def test_rounded_numbers_are_those_of_decimal_arithmetic(pairs):
    shown = rounded([number for number, _ in pairs], scale(decimals for _, decimals in pairs))
    for (number, decimals), found in zip(pairs, shown, strict=True):
        exact = _decimal(number, decimals)
        # Within the last bits of a half either neighbour is right.
        half = abs(abs(number * 10**decimals) % 1.0 - 0.5) < 1e-5
        assert found == exact or (half and abs(found - exact) <= 1.001 * 10**-decimals)


@pytest.mark.parametrize("number", [-0.0, -0.004, 0.004])
def test_a_zero_has_no_sign(number):
    assert math.copysign(1.0, to_hundredths(number)) == 1.0


def test_what_is_not_known_stays_so():
    assert all(map(math.isnan, rounded([math.nan], HUNDREDTHS)))


def test_one_number_is_rounded_as_many_are():
    assert [to_hundredths(3.14159), to_hundredths(-2.71828)] == rounded([3.14159, -2.71828], HUNDREDTHS)


def test_a_row_is_named_in_order():
    layout = Layout({"a": 0, "b": 1}, {"c": 2})
    assert list(layout.named([1.0, 2.0, 3.0, 4.0, 5.0]).items()) == [
        ("a", 1.0),
        ("b", 2.0),
        ("c", {"value": 3.0, "low": 4.0, "high": 5.0}),
    ]


def test_numbers_and_estimates_that_are_not_known_have_no_name():
    layout = Layout({"a": 0, "b": 1}, {"c": 2, "d": 2})
    shown = layout.named([math.nan, 2.0, math.nan, math.nan, math.nan, 3.0, 2.0, 4.0])
    assert shown == {"b": 2.0, "d": {"value": 3.0, "low": 2.0, "high": 4.0}}


def test_the_decimals_of_an_estimate_hold_for_its_three_numbers():
    assert Layout({"a": 0}, {"b": 2}).scale == (1.0, 100.0, 100.0, 100.0)
