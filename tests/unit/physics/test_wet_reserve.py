"""Wet reserve: the square of speed, the ends and the parts of the band, by hand; the widths are project judgement."""

from __future__ import annotations

import numpy as np
import pytest

from service.core.findings import Estimate
from service.physics.wet_reserve import (
    onset_band_kmh,
    onset_change_band_percent,
    proposed_onset_kmh,
    reserve_fall_percent,
    wet_reserve,
    wet_reserve_percent,
)


def test_at_half_the_onset_three_quarters_rest_on_the_road():
    assert wet_reserve(160.0) == pytest.approx(0.75)


def test_another_speed_may_be_asked():
    assert wet_reserve(100.0, 60.0) == pytest.approx(0.64)


def test_a_floating_tyre_has_no_reserve():
    assert wet_reserve(70.0) == 0.0


def test_the_band_follows_the_onset():
    assert wet_reserve_percent(Estimate(100.0, 80.0, 160.0)) == pytest.approx((36.0, 0.0, 75.0))


def test_a_fall_from_40_to_30_is_a_quarter():
    assert reserve_fall_percent(40.0, 30.0) == pytest.approx(25.0)


def test_a_gain_is_no_fall():
    assert reserve_fall_percent(30.0, 40.0) == 0.0


def test_nothing_falls_from_nothing():
    assert reserve_fall_percent(0.0, 0.0) == 0.0


def test_a_deep_tread_has_the_band_of_the_level():
    assert onset_band_kmh(100.0, 8.0) == pytest.approx((100.0, 80.0, 120.0))


def test_at_three_millimetres_the_band_is_still_that_of_the_level():
    assert onset_band_kmh(100.0, 3.0) == pytest.approx((100.0, 80.0, 120.0))


def test_two_millimetres_less_widen_the_band_downwards_only():
    # A fifth off the low end.
    assert onset_band_kmh(100.0, 1.0) == pytest.approx((100.0, 64.0, 120.0))


def test_the_tread_pattern_adds_eight_points_to_either_side():
    # -10 %: 0.75 and 1.7 of it, and 8.
    assert onset_change_band_percent(-10.0, 8.0, 8.0) == pytest.approx((-10.0, -25.0, 0.5))


def test_a_worn_proposed_tyre_may_be_worse():
    assert onset_change_band_percent(-10.0, 8.0, 2.0) == pytest.approx((-10.0, -35.0, 0.5))


def test_leaving_a_worn_tyre_may_gain_more():
    assert onset_change_band_percent(-10.0, 2.0, 8.0) == pytest.approx((-10.0, -25.0, 10.5))


def test_no_tyre_loses_more_than_all():
    assert onset_change_band_percent(-60.0, 8.0, 8.0).low == -100.0


def test_the_same_worn_tyre_has_no_band():
    assert onset_change_band_percent(0.0, 1.6, 1.6) == (0.0, 0.0, 0.0)


def test_the_proposed_onset_is_off_by_the_level_and_the_change():
    present, change = Estimate(100.0, 80.0, 120.0), Estimate(-10.0, -25.0, 0.0)
    assert proposed_onset_kmh(present, change) == pytest.approx((90.0, 60.0, 120.0))


@pytest.mark.parametrize("onset_kmh", [0.0, -10.0])
def test_where_the_band_of_the_onset_ends_at_nothing_nothing_rests_on_the_road(onset_kmh):
    assert wet_reserve(onset_kmh) == 0.0
    assert wet_reserve(np.array([onset_kmh, 160.0])).tolist() == [0.0, 0.75]
