"""Energy and fuel: the band of the efficiency, by hand; the efficiencies are this project's judgement."""

from __future__ import annotations

import pytest

from service.physics.rolling_energy import energy_change_kwh_per_100km, fuel_change_l_per_100km


def test_twice_the_mass_takes_twice_the_energy():
    assert energy_change_kwh_per_100km(2.0, 3000.0) == pytest.approx(2.0 * energy_change_kwh_per_100km(2.0, 1500.0))


def test_the_worst_engine_burns_the_most():
    # Diesel, 10 kWh a litre: 0.40, at best 0.45, at worst 0.30.
    assert fuel_change_l_per_100km(1.8, "diesel") == pytest.approx((0.45, 0.4, 0.6))


def test_what_is_saved_has_its_ends_in_order():
    assert fuel_change_l_per_100km(-1.8, "diesel") == pytest.approx((-0.45, -0.6, -0.4))
