"""Estimates of one wheel: which are left out, and what was weighed is taken as weighed."""

import math

import pytest

from service.assessment.view.estimates import WheelEstimates, wheel_estimates
from service.physics.inertia import MASS_BAND
from tests.support.cases import changed, check, saloon

TYRE = "/candidate/rear/tyre"


def estimates(changes) -> WheelEstimates:
    """Return those of the proposed rear wheel of the saloon."""
    wheel = check(changed(saloon(), changes)).car.rear.then
    return wheel_estimates(wheel, wheel.behaviour.patch_width_mm, None)


def test_the_loaded_radius_of_a_passenger_tyre_is_within_a_millimetre_and_a_half():
    """Rhyne 2005 against published measurements: plus or minus 1.5 mm at normal load."""
    value, low, high = estimates({}).static_loaded_radius_mm
    assert (value - low, high - value) == (pytest.approx(1.5), pytest.approx(1.5))


def test_a_patch_four_times_as_wide_floats_at_half_the_speed():
    """sqrt(W / W'): this project's own law. The onset by pressure and tread has no width in it."""
    wheel = check(saloon()).car.rear.then
    by_pressure, width = wheel.behaviour.aquaplaning_onset_kmh, wheel.behaviour.patch_width_mm
    assert wheel_estimates(wheel, width, None).aquaplaning_onset_kmh.value == pytest.approx(by_pressure)
    assert wheel_estimates(wheel, width / 4.0, None).aquaplaning_onset_kmh.value == pytest.approx(by_pressure / 2.0)


@pytest.mark.parametrize(
    "size", ["215/65 R17C 109/107T", "225/65 R17 108/106T", "LT245/65 R17 111/108S E", "225/45 D17 94H"]
)
def test_the_loaded_radius_of_a_carcass_that_the_model_was_not_made_for_is_left_out(size):
    """The formula breaks for commercial and bias carcasses, and no band of it there is known."""
    found = estimates({f"{TYRE}/size": size, f"{TYRE}/reference_pressure_kpa": 450}).static_loaded_radius_mm
    assert all(map(math.isnan, found))


def test_weighed_parts_weigh_what_the_scales_said():
    found = estimates({f"{TYRE}/mass_kg": 9.4, "/candidate/rear/rim/mass_kg": 10.8}).wheel_mass_kg
    assert found == pytest.approx((20.2, 20.2, 20.2))


def test_a_tyre_that_nobody_weighed_has_its_band_and_the_weighed_rim_none():
    value, low, high = estimates({"/candidate/rear/rim/mass_kg": 10.8}).wheel_mass_kg
    assert value - low == pytest.approx(MASS_BAND * (value - 10.8))
    assert high - value == pytest.approx(MASS_BAND * (value - 10.8))


def test_the_inertia_of_weighed_parts_keeps_the_band_of_their_shape():
    value, low, high = estimates({f"{TYRE}/mass_kg": 9.4, "/candidate/rear/rim/mass_kg": 10.8}).wheel_inertia_kg_m2
    assert 0.0 < value - low < 0.11 * value
    assert 0.0 < high - value < 0.11 * value
