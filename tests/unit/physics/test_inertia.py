"""Mass and inertia: plain bodies, by hand; the mass of a common size is common practice, no source."""

from __future__ import annotations

import math

import pytest

from service.core.findings import Estimate
from service.physics.inertia import (
    MASS_BAND,
    radius_of_gyration_mm,
    tyre_inertia_kg_m2,
    tyre_mass_estimate_kg,
    tyre_mass_kg,
    wheel_inertia_estimate_kg_m2,
    wheel_inertia_kg_m2,
    wheel_mass_estimate_kg,
)


def test_a_common_size_weighs_what_it_commonly_weighs():
    # 205/55R16: 9 to 10 kg in the trade (common practice, no source).
    assert tyre_mass_kg(632.0, 205.0, 406.0) == pytest.approx(9.5, rel=MASS_BAND)


def test_a_tyre_without_sidewalls_is_tread_and_beads():
    # Overall diameter and rim both 381 mm: 18.2 pi 0.381 0.8 0.2 = 3.4855 kg of tread, 1 kg of beads, by hand.
    assert tyre_mass_kg(381.0, 200.0, 381.0) == pytest.approx(4.4855, abs=1e-4)


def test_a_tyre_without_width_is_sidewalls_and_beads():
    # Two rings from 381 to 581 mm: 8 x pi / 2 x 0.1924 = 2.4178 kg, 1 kg of beads, by hand.
    assert tyre_mass_kg(581.0, 0.0, 381.0) == pytest.approx(3.4178, abs=1e-4)


def test_the_radius_of_gyration_is_nine_tenths_of_the_radius():
    assert radius_of_gyration_mm(600.0) == pytest.approx(270.0)


def test_the_inertia_of_a_tyre():
    # 10 kg at 0.27 m.
    assert tyre_inertia_kg_m2(10.0, 600.0) == pytest.approx(0.729)


def test_a_rim_adds_its_own_inertia():
    # 8 kg at three quarters of 0.2 m: 0.18 kg m2 more.
    assert wheel_inertia_kg_m2(10.0, 8.0, 600.0, 400.0) == pytest.approx(0.729 + 0.18)


def test_a_weighed_tyre_has_its_mass_and_no_band():
    assert tyre_mass_estimate_kg(9.7, 11.0) == (9.7, 9.7, 9.7)


def test_a_tyre_that_nobody_weighed_has_the_estimate_with_its_band():
    assert tyre_mass_estimate_kg(math.nan, 10.0) == pytest.approx((10.0, 8.0, 12.0))


def test_a_rim_adds_its_mass_and_no_band():
    assert wheel_mass_estimate_kg(Estimate(10.0, 8.0, 12.0), 9.0) == (19.0, 17.0, 21.0)


def test_a_rim_that_nobody_weighed_leaves_the_wheel_unknown():
    assert all(math.isnan(each) for each in wheel_mass_estimate_kg(Estimate(10.0, 8.0, 12.0), math.nan))


def test_weighed_parts_leave_the_inertia_the_band_of_their_shape():
    # 10 kg at 0.27 m and 8 kg at 0.15 m: 0.909 kg m2, a tenth either way.
    weighed = Estimate(10.0, 10.0, 10.0)
    assert wheel_inertia_estimate_kg_m2(weighed, 8.0, 600.0, 400.0) == pytest.approx((0.909, 0.8181, 0.9999))


def test_an_estimated_tyre_widens_the_band_of_the_inertia():
    # 8 and 12 kg at 0.27 m with 0.18 kg m2 of rim: 0.7632 and 1.0548, a tenth less and more.
    estimated = Estimate(10.0, 8.0, 12.0)
    assert wheel_inertia_estimate_kg_m2(estimated, 8.0, 600.0, 400.0) == pytest.approx((0.909, 0.68688, 1.16028))
