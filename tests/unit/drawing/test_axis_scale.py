"""An axis holds zero and every value with a little free at both ends; its ticks are round (sums by hand)."""

from __future__ import annotations

import pytest

from service.drawing.axis_scale import AxisScale


@pytest.mark.parametrize(
    ("values", "least", "low", "high", "step", "digits"),
    [
        # 6 per cent of the span of 3 are free at each end: 0.18. A sixth of 3.36 is 0.56, the next round step 1.
        ([1.0, 3.0], 1.0, -0.18, 3.18, 1.0, 0),
        # All below zero: the axis ends above it.
        ([-3.0, -1.0], 1.0, -3.18, 0.18, 1.0, 0),
        # A span of 0.1 lacks 3.9 of the least one, half at each end, and 6 per cent of 4 are 0.24.
        ([0.1], 4.0, -2.19, 2.29, 1.0, 0),
        ([], 4.0, -2.24, 2.24, 1.0, 0),
        # A sixth of 0.448 is 0.0747: the next round step is a tenth.
        ([0.4], 0.4, -0.024, 0.424, 0.1, 1),
        # A sixth of 11.2 is 1.87: two. A sixth of 22.4 is 3.7: five. Of 0.112 it is 0.0187: 0.02.
        ([10.0], 4.0, -0.6, 10.6, 2.0, 0),
        ([20.0], 4.0, -1.2, 21.2, 5.0, 0),
        ([0.1], 0.1, -0.006, 0.106, 0.02, 2),
    ],
)
def test_from_what_to_what_it_runs(values, least, low, high, step, digits):
    axis = AxisScale.made(values, least, (10.0, 110.0))
    assert (axis.low, axis.high, axis.step) == (pytest.approx(low), pytest.approx(high), pytest.approx(step))
    assert axis.digits == digits
    assert (axis.at(axis.low), axis.at(axis.high)) == (pytest.approx(10.0), pytest.approx(110.0))


def test_a_value_stands_at_its_share_and_an_axis_upwards_is_turned():
    axis = AxisScale(-1.0, 3.0, 50.0, 10.0, 1.0)
    assert [axis.at(each) for each in (-1.0, 0.0, 2.0, 3.0)] == [50.0, 40.0, 20.0, 10.0]


def test_ticks_stand_within_the_axis_and_reach_as_far_as_they_may():
    assert AxisScale(-1.9, 4.1, 0.0, 1.0, 2.0).ticks == [0.0, 2.0, 4.0]
    assert AxisScale(-2.0, 4.0, 0.0, 1.0, 2.0).ticks == [-2.0, 0.0, 2.0, 4.0]
    assert AxisScale(-0.12, 0.12, 0.0, 1.0, 0.1).ticks == [pytest.approx(each) for each in (-0.1, 0.0, 0.1)]
