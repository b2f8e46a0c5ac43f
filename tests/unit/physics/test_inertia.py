"""Mass and inertia: plain bodies, by hand; the mass of a common size is common practice, no source."""

from __future__ import annotations

import pytest

from service.physics.inertia import (
    MASS_BAND,
    radius_of_gyration_mm,
    tyre_inertia_kg_m2,
    tyre_mass_kg,
    wheel_inertia_kg_m2,
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
