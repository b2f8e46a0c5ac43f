"""Balance, grip order and wet order around their limits, and new tyres that meet worn ones."""

import dataclasses

import pytest

from service.assessment.checks import aquaplaning_onset, balance, grip_order, wet_order
from service.core.findings import Estimate
from tests.support.cases import ABSENT, changed, check, finding, outcome, saloon

DEPTH = "/candidate/{}/tyre/tread_depth_mm"


def car_with(**change):
    """Return the saloon as the checks see it, with these changes of the whole vehicle."""
    car = check(saloon()).car
    return car._replace(change=car.change._replace(**change))


def view_with(**change):
    """Return the rear axle as the checks see it, with these changes."""
    view = check(saloon()).car.rear
    return view._replace(change=view.change._replace(**change))


# Classes of this project: below 0.1 deg/g negligible, up to 0.3 noticeable, above strong.
@pytest.mark.parametrize(
    ("gradient", "outcome_code", "direction", "degree"),
    [
        (0.0, 0, "neutral", "negligible"),
        (0.099, 0, "neutral", "negligible"),
        (-0.099, 0, "neutral", "negligible"),
        (0.1, 1, "towards_understeer", "noticeable"),
        (-0.1, 1, "towards_oversteer", "noticeable"),
        (0.3, 1, "towards_understeer", "noticeable"),
        (0.301, 1, "towards_understeer", "strong"),
        (-0.301, 1, "towards_oversteer", "strong"),
    ],
)
def test_the_shift_of_balance_has_a_direction_and_a_degree(gradient, outcome_code, direction, degree):
    car = car_with(gradient_deg_per_g=Estimate(gradient, gradient - 0.01, gradient + 0.01))
    found = balance.balance(car)
    assert balance.CHANGE.grade(car).outcome == outcome_code
    assert (found.direction, found.degree) == (direction, degree)


def test_a_shift_towards_oversteer_is_called_the_more_dangerous_side():
    found = balance.balance(car_with(gradient_deg_per_g=Estimate(-0.2, -0.3, -0.1)))
    assert found.warning is not None
    assert "more dangerous" in found.warning


def test_a_band_that_reaches_beyond_the_class_on_both_sides_leaves_the_direction_open():
    found = balance.balance(car_with(gradient_deg_per_g=Estimate(0.2, -0.2, 0.4)))
    assert not found.certain
    assert "uncertain" in found.text


@pytest.mark.parametrize(("change", "outcome_code"), [(0.0, 0), (-3.0, 0), (-3.01, 1), (5.0, 0)])
def test_the_rear_may_lose_three_per_cent_of_grip_against_the_front(change, outcome_code):
    assert grip_order.GRIP_ORDER.grade(car_with(grip_order_percent=change)).outcome == outcome_code


@pytest.mark.parametrize(("change", "outcome_code"), [(-9.9, 0), (-10.0, 0), (-10.1, 1), (5.0, 0)])
def test_aquaplaning_may_start_ten_per_cent_earlier(change, outcome_code):
    view = view_with(aquaplaning_onset_percent=Estimate(change, 1.7 * change, 0.75 * change))
    assert aquaplaning_onset.AQUAPLANING.grade(view).outcome == outcome_code


# A rear axle that floats first is a warning where it was not so, or less so by more than two per cent, before.
@pytest.mark.parametrize(
    ("present", "proposed", "outcome_code"),
    [(0.0, 0.0, 0), (0.0, -1.9, 0), (0.0, -2.1, 1), (-2.0, -3.9, 0), (-2.0, -4.1, 1), (-2.0, -1.0, 0), (3.0, 0.5, 0)],
)
def test_the_rear_axle_must_not_come_to_float_first(present, proposed, outcome_code):
    car = car_with(rear_onset_lead_percent_present=present, rear_onset_lead_percent=proposed)
    assert wet_order.AXLE_ORDER.grade(car).outcome == outcome_code


def with_limit(car, name, value):
    """Return the vehicle as the checks see it where the place sets another limit."""
    limit = dataclasses.replace(getattr(car.limits, name), value=value)
    return car._replace(limits=dataclasses.replace(car.limits, **{name: limit}))


@pytest.mark.parametrize(("limit", "outcome_code"), [(-3.0, 1), (-6.0, 0)])
def test_a_place_may_set_how_much_grip_the_rear_may_lose(limit, outcome_code):
    car = with_limit(car_with(grip_order_percent=-5.0), "grip_order_change_advisory_percent", limit)
    grade = grip_order.GRIP_ORDER.grade(car)
    assert (grade.outcome, grade.limit) == (outcome_code, limit)


@pytest.mark.parametrize(("limit", "outcome_code"), [(-2.0, 1), (-6.0, 0)])
def test_a_place_may_set_how_much_sooner_the_rear_may_float(limit, outcome_code):
    car = car_with(rear_onset_lead_percent_present=0.0, rear_onset_lead_percent=-5.0)
    car = with_limit(car, "wet_order_change_advisory_percent", limit)
    assert wet_order.AXLE_ORDER.grade(car).outcome == outcome_code


def test_worn_tyres_at_the_rear_are_warned_of_in_the_wet():
    request = changed(saloon(), {DEPTH.format("rear"): 2.0})
    found = finding(check(request), "wet.axle_order", "vehicle")
    assert found.outcome == 1
    assert "the rear lets go first" in found.message


def test_worn_tyres_at_the_front_are_the_safer_order_in_the_wet():
    request = changed(saloon(), {DEPTH.format("front"): 2.0})
    assert outcome(check(request), "wet.axle_order", "vehicle") == "met"


# A millimetre of tread is two of diameter (geometry), on 634 mm: 0.5 % is 1.585 mm of tread, 1 % is 3.17 mm.
@pytest.mark.parametrize(
    ("rear_depth", "driven", "expected"),
    [
        (8.0, "all", "met"),
        (6.42, "all", "met"),
        (6.41, "all", "advisory"),
        (4.83, "all", "advisory"),
        (4.82, "all", "not_met"),
        (4.82, "rear", "advisory"),
        (2.0, "front", "advisory"),
    ],
)
def test_new_tyres_against_worn_ones_strain_all_wheel_drive(rear_depth, driven, expected):
    request = changed(saloon(), {DEPTH.format("rear"): rear_depth, "/vehicle/driven_axle": driven})
    assert outcome(check(request), "tyre.tread_difference", "vehicle") == expected


def test_the_message_on_mixed_wear_gives_both_depths():
    request = changed(saloon(), {DEPTH.format("rear"): 3.5, "/vehicle/driven_axle": "all"})
    found = finding(check(request), "tyre.tread_difference", "vehicle")
    assert "8 mm of tread in front and 3.5 mm at the rear" in found.message
    assert "strains the all-wheel drive" in found.message


@pytest.mark.parametrize("where", ["front", "rear"])
def test_the_axle_without_a_tread_depth_is_named(where):
    found = finding(check(changed(saloon(), {DEPTH.format(where): ABSENT})), "tyre.tread_difference", "vehicle")
    assert found.outcome == 2
    assert found.remedy.pointer == DEPTH.format(where)


def test_wear_makes_the_circumference_smaller():
    """3 mm of wear give the speedometer an advance of about 1 % (Automotive Engineering, p. 297): 6 of 634 mm."""
    worn = {DEPTH.format(name): 5.0 for name in ("front", "rear")}
    change = check(changed(saloon(), worn)).car.change
    assert 100.0 * (change.driven_circumference_ratio - 1.0) == pytest.approx(-1.0, abs=0.1)


def test_wear_alone_counts_in_the_ratio_of_the_axles():
    request = changed(saloon(), {DEPTH.format("rear"): 4.0, "/vehicle/driven_axle": "all"})
    assert outcome(check(request), "diameter.axle_ratio", "vehicle") == "not_met"


def test_a_balance_without_the_present_load_index_is_not_estimated():
    request = changed(saloon(), {"/vehicle/rear/fitted/tyre/size": "225/45 R17"})
    found = finding(check(request), "balance.change", "vehicle")
    assert found.outcome == 2
    assert found.remedy.pointer == "/vehicle/rear/fitted/tyre/size"


def test_a_grip_order_without_a_size_is_not_estimated():
    request = changed(saloon(), {"/candidate/rear/tyre/size": "225 R17 94V"})
    found = finding(check(request), "balance.grip_order", "vehicle")
    assert found.outcome == 2
    assert found.remedy.pointer == "/candidate/rear/tyre/overall_diameter_mm"
