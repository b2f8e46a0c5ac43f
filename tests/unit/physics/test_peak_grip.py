"""Peak grip: the exponent and its ends, by hand; they are this project's judgement, no paper gives them."""

from __future__ import annotations

import pytest

from service.physics.peak_grip import load_reserve, peak_grip_change_percent, relative_peak_grip


def test_a_tyre_for_600_kg_under_400_has_half_as_much_again():
    assert load_reserve(600.0, 400.0) == pytest.approx(1.5)


def test_twice_the_reserve_grips_by_its_powers():
    assert relative_peak_grip(2.0) == pytest.approx((2.0**0.2, 2.0**0.1, 2.0**0.35))


def test_the_ends_of_a_loss_are_in_order():
    assert peak_grip_change_percent(0.9) == pytest.approx(
        (100.0 * (0.9**0.2 - 1.0), 100.0 * (0.9**0.35 - 1.0), 100.0 * (0.9**0.1 - 1.0))
    )
