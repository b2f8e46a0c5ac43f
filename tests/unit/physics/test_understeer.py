"""Balance: directions, load transfer and the five ways to change the widths of a staggered car.

The car: 800 kg front, 750 kg rear, 225/40R19 front and 255/35R19 rear on measuring rims at 250 kPa. That a stiffer rear
axle moves it towards understeer is Gillespie, ch. 6. The directions of the five need no number of ours.
"""

from __future__ import annotations

import math

import pytest

from service.core.findings import Estimate
from service.core.units import STANDARD_GRAVITY_M_S2
from service.physics.cornering_stiffness import (
    RatioPowers,
    StiffnessRatios,
    cornering_stiffness_n_per_deg,
    stiffness_ratios,
)
from service.physics.understeer import (
    axle_compliance_deg_per_g,
    axle_stiffness_n_per_deg,
    lateral_load_transfer_n,
    understeer_gradient_change_band_deg_per_g,
    understeer_gradient_change_deg_per_g,
)

UNCHANGED = RatioPowers(1.0, 1.0, 1.0, 0.0)
# width: section height, load of the load index
TYRES = {225.0: (90.0, 630.0), 255.0: (89.0, 710.0), 285.0: (86.0, 750.0)}


def _compliance(mass_kg: float, width_mm: float) -> float:
    weight = mass_kg * STANDARD_GRAVITY_M_S2
    rated = TYRES[width_mm][1] * STANDARD_GRAVITY_M_S2
    return axle_compliance_deg_per_g(weight, axle_stiffness_n_per_deg(weight, rated, 0.0))


def _relative(present_mm: float, proposed_mm: float) -> StiffnessRatios[float]:
    heights = TYRES[proposed_mm][0] / TYRES[present_mm][0]
    return stiffness_ratios(proposed_mm / present_mm, heights, 1.0, 1.0)


def _change(front_mm: float, rear_mm: float) -> Estimate[float]:
    return understeer_gradient_change_band_deg_per_g(
        _compliance(800.0, 225.0),
        _compliance(750.0, 255.0),
        _relative(225.0, front_mm),
        _relative(255.0, rear_mm),
    )


def test_the_same_widths_change_nothing():
    assert _change(225.0, 255.0) == (0.0, 0.0, 0.0)


def test_a_wider_rear_alone_moves_towards_understeer():
    assert _change(225.0, 285.0).low > 0.0


def test_a_wider_front_alone_moves_towards_oversteer():
    assert _change(255.0, 255.0).high < 0.0


def test_a_narrower_rear_alone_moves_towards_oversteer():
    assert _change(225.0, 225.0).high < 0.0


def test_a_step_wider_at_both_ends_moves_little():
    assert abs(_change(255.0, 285.0).value) < 0.1


def test_a_step_wider_at_both_ends_has_no_sure_direction():
    change = _change(255.0, 285.0)
    assert change.low < 0.0 < change.high


def test_a_stiffer_front_tyre_takes_its_share_off_the_gradient():
    # 4 deg/g with a quarter more stiffness is 3.2 deg/g, by hand.
    assert understeer_gradient_change_deg_per_g(4.0, 3.0, 1.25, 1.0) == pytest.approx(-0.8)


def test_a_level_that_may_be_off_widens_the_band():
    # Rear ratio 1.25 without a band: 3 x 0.2 = 0.6, over 1.5 and over 0.5.
    stiffer = StiffnessRatios(RatioPowers(1.25, 1.25, 1.25, math.log(1.25)), *[UNCHANGED] * 3)
    same = StiffnessRatios(*[UNCHANGED] * 4)
    band = understeer_gradient_change_band_deg_per_g(4.0, 3.0, same, stiffer, 0.5)
    assert band == pytest.approx((0.6, 0.4, 1.2))


def test_a_third_of_a_g_moves_load_by_height_over_track():
    # 900 kg, 0.5 m over 1.5 m, 0.3 g: a tenth of the weight.
    moved = lateral_load_transfer_n(900.0, 1500.0, 500.0, 0.3)
    assert moved == pytest.approx(90.0 * STANDARD_GRAVITY_M_S2)


def test_an_axle_going_straight_is_twice_one_tyre():
    straight = axle_stiffness_n_per_deg(8000.0, 6000.0, 0.0)
    assert straight == pytest.approx(2.0 * cornering_stiffness_n_per_deg(4000.0, 6000.0))


def test_load_transfer_costs_an_axle_stiffness():
    assert axle_stiffness_n_per_deg(8000.0, 6000.0, 1500.0) < axle_stiffness_n_per_deg(8000.0, 6000.0, 0.0)


def test_a_lifted_wheel_carries_nothing():
    lifted = axle_stiffness_n_per_deg(8000.0, 12000.0, 5000.0)
    assert lifted == pytest.approx(cornering_stiffness_n_per_deg(8000.0, 12000.0))
