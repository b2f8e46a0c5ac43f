"""One arithmetic for one number and for many: the same values, and NaN stays NaN where nothing else is known.

Reference: IEEE 754 (NaN is no number and compares as false); Python's `math` for logarithm and exponential.
"""

import math

import numpy as np
import pytest

from service.core.numeric import (
    UNKNOWN,
    all_hold,
    exponential,
    filled,
    known_or,
    larger,
    natural_log,
    pick,
    round_half_up,
    smaller,
)

PAIRS = [(1.0, 2.0), (2.0, 1.0), (-3.0, -3.0), (0.0, -1.0)]


@pytest.mark.parametrize(("function", "taken"), [(larger, max), (smaller, min)])
def test_of_two_one_is_taken_for_one_number_and_for_many(function, taken):
    expected = [taken(pair) for pair in PAIRS]
    assert [function(*pair) for pair in PAIRS] == expected
    one, other = np.array(PAIRS).T
    assert function(one, other).tolist() == expected
    # A number beside an array stands for all of it.
    assert function(one, 1.0).tolist() == [taken(each, 1.0) for each, _ in PAIRS]


@pytest.mark.parametrize("function", [larger, smaller])
def test_beside_what_is_not_known_the_first_of_two_is_taken(function):
    assert function(1.0, UNKNOWN) == 1.0
    assert function(np.array([1.0]), np.array([UNKNOWN])).tolist() == [1.0]
    assert math.isnan(function(UNKNOWN, 1.0))
    assert math.isnan(function(np.array([UNKNOWN]), np.array([1.0]))[0])


def test_the_second_stands_in_where_the_first_is_not_known():
    assert [known_or(1.0, 2.0), known_or(UNKNOWN, 2.0)] == [1.0, 2.0]
    assert known_or(np.array([1.0, UNKNOWN]), 2.0).tolist() == [1.0, 2.0]


def test_what_holds_for_all_is_one_truth():
    assert [all_hold(True), all_hold(False)] == [True, False]
    assert all_hold(np.array([True, True])) is True
    assert all_hold(np.array([True, False])) is False


def test_what_is_picked_follows_the_condition():
    assert [pick(True, 1.0, 2.0), pick(False, 1.0, 2.0)] == [1.0, 2.0]
    assert pick(np.array([True, False]), 1.0, np.array([5.0, 6.0])).tolist() == [1.0, 6.0]


@pytest.mark.parametrize(("function", "exact"), [(natural_log, math.log), (exponential, math.exp)])
def test_a_function_of_many_is_that_of_each(function, exact):
    values = [0.5, 1.0, 2.5]
    assert [function(each) for each in values] == [exact(each) for each in values]
    assert function(np.array(values)).tolist() == pytest.approx([exact(each) for each in values], rel=1e-15)


def test_halves_are_rounded_up():
    assert [round_half_up(each) for each in (82.5, 82.4, 81.5, -0.5)] == [83.0, 82.0, 82.0, 0.0]
    assert round_half_up(np.array([82.5, 82.4])).tolist() == [83.0, 82.0]


def test_a_value_takes_the_shape_of_another():
    assert filled(1.0, 7.0) == 7.0
    assert filled(np.zeros(3), 7.0).tolist() == [7.0, 7.0, 7.0]
