"""Braking: the share of the front and the mean over the axles, by hand."""

from __future__ import annotations

import math

import pytest

from service.core.findings import Estimate
from service.physics.braking import braking_distance_change_percent, front_braking_share, known_or_assumed_share

KNOWN = Estimate(0.75, 0.75, 0.75)


def test_the_front_carries_its_share_and_what_height_over_wheelbase_moves():
    # 0.5 + 0.5 m / 2.5 m.
    assert front_braking_share(750.0, 1500.0, 500.0, 2500.0) == pytest.approx(0.7)


def test_half_a_g_moves_half_of_it():
    assert front_braking_share(750.0, 1500.0, 500.0, 2500.0, 0.5) == pytest.approx(0.6)


def test_a_front_axle_cannot_carry_more_than_the_car():
    assert front_braking_share(1200.0, 1500.0, 900.0, 2000.0) == 1.0


def test_a_front_axle_that_has_lifted_off_carries_nothing():
    # Pulling away at 1 g: 0.1 less 0.4.
    assert front_braking_share(150.0, 1500.0, 800.0, 2000.0, -1.0) == 0.0


def test_a_known_share_has_no_band():
    assert known_or_assumed_share(0.62) == (0.62, 0.62, 0.62)


def test_an_unknown_share_is_assumed_with_a_band():
    # 0.7 by the notes; the ends are the project's judgement.
    assert known_or_assumed_share(front_braking_share(750.0, 1500.0, math.nan, 2500.0)) == (0.7, 0.6, 0.85)


def test_grip_of_the_front_shortens_by_its_share():
    # SN' / SN = 1.1: 1.1^(-0.2 x 0.75), and the ends of the exponent.
    assert braking_distance_change_percent(KNOWN, 1.1, 1.0) == pytest.approx(
        tuple(100.0 * (1.1 ** (-0.75 * power) - 1.0) for power in (0.2, 0.35, 0.1))
    )


def test_grip_of_the_rear_shortens_by_the_rest():
    assert braking_distance_change_percent(KNOWN, 1.0, 1.1).value == pytest.approx(100.0 * (1.1**-0.05 - 1.0))


def test_an_assumed_share_widens_the_band():
    # More front and less rear: the least gain is at the smaller share and the weaker exponent.
    change = braking_distance_change_percent(known_or_assumed_share(math.nan), 1.1, 1.0)
    assert (change.low, change.high) == pytest.approx(
        (100.0 * (1.1 ** (-0.85 * 0.35) - 1.0), 100.0 * (1.1 ** (-0.6 * 0.1) - 1.0))
    )


def test_more_front_and_less_rear_may_go_either_way():
    change = braking_distance_change_percent(known_or_assumed_share(math.nan), 1.1, 1.0 / 1.2)
    assert change.low < 0.0 < change.high
