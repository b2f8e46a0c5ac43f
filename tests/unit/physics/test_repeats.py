"""Repeats: rounding and the edges."""

from __future__ import annotations

import math

import pytest

from service.physics.repeats import repeats_needed


def test_a_great_difference_still_takes_two_tests():
    assert repeats_needed(100.0, 1.0) == 2.0


def test_no_difference_is_never_seen():
    assert repeats_needed(0.0, 1.0) == math.inf


def test_the_sign_of_the_difference_does_not_matter():
    assert repeats_needed(-0.7, 1.0) == repeats_needed(0.7, 1.0)


def test_more_power_takes_more_tests():
    # 2 (1.960 + 1.282)^2 = 21.01, and 0.96: 22, by hand.
    assert repeats_needed(1.0, 1.0, power=0.9) == 22.0


def test_an_unknown_scatter_has_an_unknown_number():
    assert math.isnan(repeats_needed(1.0, math.nan))


@pytest.mark.parametrize("count", [repeats_needed(0.3, 1.0), repeats_needed(1.1, 1.0)])
def test_tests_are_whole(count):
    assert count == int(count)
