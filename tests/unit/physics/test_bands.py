"""Estimates from a value and its band."""

from __future__ import annotations

import pytest

from service.physics.bands import Multiples, multiple, symmetric


def test_a_symmetric_band_lies_about_the_value():
    assert symmetric(200.0, 0.1) == pytest.approx((200.0, 180.0, 220.0))


def test_a_gain_is_banded_by_its_multiples():
    assert multiple(10.0, Multiples(0.75, 1.7)) == pytest.approx((10.0, 7.5, 17.0))


def test_the_ends_of_a_loss_are_in_order():
    assert multiple(-10.0, Multiples(0.75, 1.7)) == pytest.approx((-10.0, -17.0, -7.5))
