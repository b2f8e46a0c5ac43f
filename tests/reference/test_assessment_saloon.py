"""Three widths on one saloon, front and rear in five combinations.

Common practice, no source: what drivers and testers of such a car tell. The saloon is invented: about 1550 kg,
rear-wheel drive, 225/40 R19 in front and 255/35 R19 at the rear as fitted now. `pytest -s` prints the table.
"""

import sys

import pytest

from service.assessment.checks.balance import balance
from service.core.findings import ADVISORY, NOT_RECOMMENDED
from tests.support.cases import changed, check, finding, saloon, wheel

WHEELS = {
    225: ("225/40 R19 93Y XL", "8J x 19 H2 ET45"),
    255: ("255/35 R19 96Y XL", "9J x 19 H2 ET40"),
    285: ("285/30 R19 98Y XL", "10J x 19 H2 ET28"),
}
PRESENT = (225, 255)
COMBINATIONS = ((225, 255), (255, 285), (255, 255), (225, 225), (225, 285))


def fitted(front, rear):
    """Return the assessment of these widths on the saloon that has `PRESENT` now."""
    base = {
        "/vehicle/front/fitted": wheel(*WHEELS[PRESENT[0]]),
        "/vehicle/rear/fitted": wheel(*WHEELS[PRESENT[1]]),
        "/vehicle/front/kerb_axle_mass_kg": 780,
        "/vehicle/rear/kerb_axle_mass_kg": 770,
    }
    return check(changed(saloon(WHEELS[front], WHEELS[rear]), base))


def from_225(width):
    """Return the front axle when 225 there is replaced by this width."""
    return fitted(width, PRESENT[1]).car.front


@pytest.mark.parametrize(("one", "other"), [(225, 255), (225, 285), (255, 285)])
def test_the_three_sizes_keep_their_diameter_within_one_and_a_half_per_cent(one, other):
    diameters = {width: from_225(width).then.geometry.overall_diameter_mm for width in (one, other)}
    assert abs(diameters[other] / diameters[one] - 1.0) < 0.015


@pytest.mark.parametrize(("narrow", "wide"), [(225, 255), (255, 285)])
def test_a_wider_tyre_has_a_wider_and_shorter_patch_of_about_the_same_area(narrow, wide):
    before, after = from_225(narrow).then.behaviour, from_225(wide).then.behaviour
    assert after.patch_width_mm > before.patch_width_mm
    assert after.patch_length_mm < before.patch_length_mm
    assert after.patch_area_cm2 == pytest.approx(before.patch_area_cm2, rel=0.05)


def test_what_is_fitted_now_changes_nothing():
    assert balance(fitted(225, 255).car).direction == "neutral"


def test_one_step_wider_on_both_axles_keeps_the_balance():
    found = balance(fitted(255, 285).car)
    assert (found.direction, found.degree, found.warning) == ("neutral", "negligible", None)


@pytest.mark.parametrize("width", [225, 255])
def test_one_width_all_round_shifts_towards_oversteer(width):
    assert balance(fitted(width, width).car).direction == "towards_oversteer"


@pytest.mark.parametrize("width", [225, 255])
def test_a_shift_towards_oversteer_is_warned_of_by_what_the_rear_does(width):
    found = finding(fitted(width, width), "balance.change", "vehicle")
    assert "the rear may slide" in found.message


def test_a_wide_rear_alone_shifts_towards_understeer():
    assert balance(fitted(225, 285).car).direction == "towards_understeer"


def test_a_wide_rear_alone_is_advised_against():
    # A shift and a rear that loses wet reserve as well: verdict "we advise against it" by the project's judgement.
    found = finding(fitted(225, 285), "balance.change", "vehicle")
    assert found.outcome == NOT_RECOMMENDED
    assert "runs wide" in found.message


@pytest.mark.parametrize("combination", COMBINATIONS[2:])
def test_the_direction_of_a_shift_is_certain(combination):
    assert balance(fitted(*combination).car).certain


# Testers' figures: about 6 % earlier on 255 and a bit over 15 % earlier on 285 than on 225.
@pytest.mark.parametrize(("width", "told"), [(255, -6.0), (285, -15.5)])
def test_aquaplaning_starts_earlier_on_wider_tyres_by_about_what_is_told(width, told):
    value, low, high = from_225(width).change.aquaplaning_onset_percent
    assert low <= told <= high
    assert value == pytest.approx(told, rel=0.4)


def test_the_order_of_the_axles_in_the_wet_is_warned_of_where_the_rear_grows():
    found = finding(fitted(225, 285), "wet.axle_order", "vehicle")
    assert found.outcome == ADVISORY


def test_the_five_combinations_make_a_table():
    rows = [_row(*combination) for combination in COMBINATIONS]
    heading = "front/rear  balance                          dK [deg/g] and band        onset front, rear [%]"
    sys.stdout.write("\n".join(["", heading, *rows, ""]))
    assert len({row[11:] for row in rows}) == len(COMBINATIONS)


def _row(front, rear):
    car = fitted(front, rear).car
    found = balance(car)
    value, low, high = car.change.gradient_deg_per_g
    onsets = "   ".join(f"{view.change.aquaplaning_onset_percent.value:+6.1f}" for view in (car.front, car.rear))
    words = f"{found.degree} {found.direction}"
    return f"{front}/{rear}     {words:<32} {value:+.2f} ({low:+.2f} to {high:+.2f})     {onsets}"
