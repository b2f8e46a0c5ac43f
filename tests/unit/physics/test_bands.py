"""Estimates from a value and its band."""

from __future__ import annotations

import pytest

from service.core.findings import Estimate
from service.physics.bands import Multiples, difference, multiple, relative_change_percent, symmetric


def test_a_symmetric_band_lies_about_the_value():
    assert symmetric(200.0, 0.1) == pytest.approx((200.0, 180.0, 220.0))


def test_a_gain_is_banded_by_its_multiples():
    assert multiple(10.0, Multiples(0.75, 1.7)) == pytest.approx((10.0, 7.5, 17.0))


def test_the_ends_of_a_loss_are_in_order():
    assert multiple(-10.0, Multiples(0.75, 1.7)) == pytest.approx((-10.0, -17.0, -7.5))


def test_independent_bands_combine_as_the_root_of_the_sum_of_squares():
    # 3 and 4 on one side, 6 and 8 on the other.
    present, proposed = Estimate(10.0, 2.0, 14.0), Estimate(20.0, 17.0, 26.0)
    assert difference(present, proposed) == pytest.approx((10.0, 5.0, 20.0))


def test_the_same_thing_has_no_difference():
    assert difference(Estimate(10.0, 8.0, 12.0), Estimate(10.0, 8.0, 12.0)) == (0.0, 0.0, 0.0)


def test_what_is_known_of_both_leaves_no_band():
    assert difference(Estimate(9.0, 9.0, 9.0), Estimate(9.5, 9.5, 9.5)) == (0.5, 0.5, 0.5)


def test_a_relative_change_takes_the_band_of_what_is_not_known():
    # From exactly 10 to 11, at least 10, at most 12.1.
    change = relative_change_percent(Estimate(10.0, 10.0, 10.0), Estimate(11.0, 10.0, 12.1))
    assert change == pytest.approx((10.0, 0.0, 21.0))
