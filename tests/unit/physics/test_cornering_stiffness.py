"""Cornering stiffness: the level's parts and the ends of the exponents."""

from __future__ import annotations

import math

import pytest

from service.physics.cornering_stiffness import (
    cornering_stiffness_n_per_deg,
    likely_stiffness,
    relative_cornering_stiffness_band,
    stiffness_ratios,
)


def test_the_level_at_half_the_rated_load():
    # q = 1: C = 3000 x (20.59 - 3.80) N/rad, by hand.
    assert cornering_stiffness_n_per_deg(3000.0, 6000.0) == pytest.approx(math.radians(3000.0 * 16.79))


def test_a_tyre_without_load_has_no_stiffness():
    assert cornering_stiffness_n_per_deg(0.0, 6000.0) == 0.0


def test_four_times_the_width_doubles_the_stiffness():
    # The likely exponent of width is one half.
    assert likely_stiffness(stiffness_ratios(4.0, 1.0, 1.0, 1.0)) == pytest.approx(2.0)


def test_the_band_of_a_wider_tyre_runs_from_the_least_to_the_greatest_exponent():
    # 1.1 to the powers 0.5, 0.2 and 1.0.
    assert relative_cornering_stiffness_band(stiffness_ratios(1.1, 1.0, 1.0, 1.0)) == pytest.approx(
        (1.1**0.5, 1.1**0.2, 1.1)
    )


def test_the_band_of_a_pressure_change_spans_none():
    band = relative_cornering_stiffness_band(stiffness_ratios(1.0, 1.0, 1.0, 1.2))
    assert band.low < 1.0 < band.high


def test_the_band_multiplies_the_ends_of_the_factors():
    # Wider and taller: the least is 1.1^0.2 x 1.1^-0.8, the greatest 1.1^1.0 x 1.1^-0.1.
    band = relative_cornering_stiffness_band(stiffness_ratios(1.1, 1.1, 1.0, 1.0))
    assert (band.low, band.high) == pytest.approx((1.1**-0.6, 1.1**0.9))


@pytest.mark.parametrize(
    ("ratios", "exponents"),
    [
        pytest.param((1.2, 1.0, 1.0, 1.0), (0.5, 0.2, 1.0), id="width"),
        pytest.param((1.0, 0.8, 1.0, 1.0), (-0.4, -0.1, -0.8), id="height"),
        pytest.param((1.0, 1.0, 1.2, 1.0), (0.4, 0.1, 0.5), id="rim"),
        pytest.param((1.0, 1.0, 1.0, 0.8), (-0.3, 0.2, -0.7), id="pressure"),
    ],
)
def test_each_ratio_alone_follows_its_own_exponents(ratios, exponents):
    # The exponents (likely, least, greatest gain) are this project's judgement; no paper gives them.
    ratio = next(ratio for ratio in ratios if ratio != 1.0)
    assert relative_cornering_stiffness_band(stiffness_ratios(*ratios)) == pytest.approx(
        tuple(ratio**power for power in exponents)
    )


def test_the_four_ratios_multiply():
    # 16^0.5 x 16^-0.4 x 16^0.4 x 16^-0.3 = 16^0.2.
    assert likely_stiffness(stiffness_ratios(16.0, 16.0, 16.0, 16.0)) == pytest.approx(16.0**0.2)
