"""Balance, grip order and wet order around their limits, and new tyres that meet worn ones."""

import dataclasses

import pytest

from service.assessment.checks import aquaplaning_onset, balance, grip_order, wet_order
from service.core.findings import ADVISORY, NOT_RECOMMENDED, OPEN, Estimate
from tests.support.cases import ABSENT, answer, changed, check, finding, outcome, saloon

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
        (0.1, ADVISORY, "towards_understeer", "noticeable"),
        (-0.1, ADVISORY, "towards_oversteer", "noticeable"),
        (0.3, ADVISORY, "towards_understeer", "noticeable"),
        (0.301, ADVISORY, "towards_understeer", "strong"),
        (-0.3, ADVISORY, "towards_oversteer", "noticeable"),
        (-0.301, NOT_RECOMMENDED, "towards_oversteer", "strong"),
    ],
)
def test_the_shift_of_balance_has_a_direction_and_a_degree(gradient, outcome_code, direction, degree):
    car = car_with(gradient_deg_per_g=Estimate(gradient, gradient - 0.01, gradient + 0.01))
    found = balance.balance(car)
    assert balance.CHANGE.grade(car).outcome == outcome_code
    assert (found.direction, found.degree) == (direction, degree)


def test_a_strong_shift_towards_oversteer_whose_direction_is_open_only_advises():
    car = car_with(gradient_deg_per_g=Estimate(-0.4, -0.9, 0.2))
    assert balance.CHANGE.grade(car).outcome == ADVISORY


def test_a_shift_towards_oversteer_is_said_to_turn_in_and_to_slide_in_the_dry():
    found = balance.balance(car_with(gradient_deg_per_g=Estimate(-0.2, -0.3, -0.1)))
    assert found.warning is not None
    assert "turns in more readily" in found.warning
    assert found.text.startswith("In the dry")


def test_a_band_that_reaches_beyond_the_class_on_both_sides_leaves_the_direction_open():
    found = balance.balance(car_with(gradient_deg_per_g=Estimate(0.2, -0.2, 0.4)))
    assert not found.certain
    assert "uncertain" in found.text


@pytest.mark.parametrize(("change", "outcome_code"), [(0.0, 0), (-3.0, 0), (-3.01, ADVISORY), (5.0, 0)])
def test_the_rear_may_lose_three_per_cent_of_stiffness_against_the_front(change, outcome_code):
    assert grip_order.GRIP_ORDER.grade(car_with(grip_order_percent=change)).outcome == outcome_code


def test_no_sentence_on_balance_calls_stiffness_grip():
    wide = saloon(front=("255/40 R17 98W XL", "8.5J x 17 H2 ET45"))
    told = [finding(check(wide), code, "vehicle") for code in ("balance.change", "balance.grip_order")]
    assert [each.outcome for each in told] == [ADVISORY, ADVISORY]
    assert all("In the dry" in each.message and "grip" not in each.message for each in told)
    assert "cornering stiffness" in told[1].message


@pytest.mark.parametrize(("change", "outcome_code"), [(-9.9, 0), (-10.0, 0), (-10.1, ADVISORY), (5.0, 0)])
def test_aquaplaning_may_start_ten_per_cent_earlier(change, outcome_code):
    view = view_with(aquaplaning_onset_percent=Estimate(change, 1.7 * change, 0.75 * change))
    assert aquaplaning_onset.AQUAPLANING.grade(view).outcome == outcome_code


# A rear axle that floats first is a warning where it was not so, or less so by more than two per cent, before.
@pytest.mark.parametrize(
    ("present", "proposed", "outcome_code"),
    [
        (0.0, 0.0, 0),
        (0.0, -2.9, 0),
        (0.0, -3.1, ADVISORY),
        (-2.0, -4.9, 0),
        (-2.0, -5.1, ADVISORY),
        (-2.0, -1.0, 0),
        (3.0, 0.5, 0),
    ],
)
def test_the_rear_axle_must_not_come_to_float_first(present, proposed, outcome_code):
    car = car_with(rear_onset_lead_percent_present=present, rear_onset_lead_percent=proposed)
    assert wet_order.AXLE_ORDER.grade(car).outcome == outcome_code


def with_limit(car, name, value):
    """Return the vehicle as the checks see it where the place sets another limit."""
    limit = dataclasses.replace(getattr(car.limits, name), value=value)
    return car._replace(limits=dataclasses.replace(car.limits, **{name: limit}))


@pytest.mark.parametrize(("limit", "outcome_code"), [(-3.0, ADVISORY), (-6.0, 0)])
def test_a_place_may_set_how_much_grip_the_rear_may_lose(limit, outcome_code):
    car = with_limit(car_with(grip_order_percent=-5.0), "grip_order_change_advisory_percent", limit)
    grade = grip_order.GRIP_ORDER.grade(car)
    assert (grade.outcome, grade.limit) == (outcome_code, limit)


@pytest.mark.parametrize(("limit", "outcome_code"), [(-2.0, ADVISORY), (-6.0, 0)])
def test_a_place_may_set_how_much_sooner_the_rear_may_float(limit, outcome_code):
    car = car_with(rear_onset_lead_percent_present=0.0, rear_onset_lead_percent=-5.0)
    car = with_limit(car, "wet_order_change_advisory_percent", limit)
    assert wet_order.AXLE_ORDER.grade(car).outcome == outcome_code


@pytest.mark.parametrize("where", ["front", "rear"])
def test_wear_moves_neither_the_wet_order_nor_the_circumference(where):
    """Sizes are compared as new; what wear does is said by the findings on the tread."""
    car = check(changed(saloon(), {DEPTH.format(where): 2.0})).car
    assert car.change.rear_onset_lead_percent == car.change.rear_onset_lead_percent_present
    assert (car.change.driven_circumference_ratio, car.change.axle_ratio_percent) == (1.0, 0.0)


def test_the_level_of_the_onset_is_that_of_the_stated_tread():
    """A worn tyre floats sooner, and its band reaches further down (Gallaway: exponent 0.06 of the tread)."""
    worn = answer(check(changed(saloon(), {DEPTH.format("rear"): 2.0})))["axles"]["rear"]
    new, old = (worn[when]["aquaplaning_onset_kmh"] for when in ("present", "proposed"))
    assert old["value"] < new["value"]
    assert old["low"] / old["value"] < new["low"] / new["value"] == pytest.approx(0.8, abs=0.01)


def test_the_change_of_the_onset_may_be_turned_round_by_the_pattern():
    """Single tests of one plus-size step range from no change to 7 % earlier (second hand); wider by 10 mm here."""
    wider = changed(saloon(), {"/candidate/rear/tyre/size": "235/45 R17 97W XL"})
    found = check(wider)
    change = found.car.rear.change.aquaplaning_onset_percent
    assert change.low < -7.0 < change.value < 0.0 < change.high
    assert "by pattern and wear anything from" in finding(found, "wet.aquaplaning").message


def test_no_size_is_named_against_aquaplaning():
    wide = changed(saloon(), {f"/candidate/{name}/tyre/size": "295/35 R17 100W XL" for name in ("front", "rear")})
    found = finding(check(wide), "wet.aquaplaning")
    assert found.outcome == ADVISORY
    assert "Slow down sooner" in found.message
    assert found.remedy is None or found.remedy.quantity == "fitment"


# A millimetre of tread is two of diameter (geometry), on 634 mm: 0.5 % is 1.585 mm of tread, 1 % is 3.17 mm. In front a
# pair deeper by more than a millimetre is in the wrong place (common practice, no source).
@pytest.mark.parametrize(
    ("front_depth", "rear_depth", "driven", "expected"),
    [
        (8.0, 8.0, "all", "met"),
        (6.42, 8.0, "all", "met"),
        (6.41, 8.0, "all", "advisory"),
        (4.83, 8.0, "all", "advisory"),
        (4.82, 8.0, "all", "not_recommended"),
        (4.82, 8.0, ABSENT, "advisory"),
        (4.82, 8.0, "rear", "met"),
        (8.0, 7.0, "front", "met"),
        (8.0, 6.9, "front", "advisory"),
        (8.0, 6.9, "all", "advisory"),
        (8.0, 4.82, "all", "not_recommended"),
        (8.0, 2.0, "rear", "advisory"),
        # Not given is new.
        (ABSENT, 4.82, "all", "not_recommended"),
        (ABSENT, ABSENT, "all", "met"),
    ],
)
def test_new_tyres_against_worn_ones(front_depth, rear_depth, driven, expected):
    depths = {DEPTH.format("front"): front_depth, DEPTH.format("rear"): rear_depth}
    request = changed(saloon(), {**depths, "/vehicle/driven_axle": driven})
    assert outcome(check(request), "tyre.tread_difference", "vehicle") == expected


def test_what_the_car_is_worn_today_only_advises():
    today = {f"/vehicle/{name}/fitted/tyre/tread_depth_mm": mm for name, mm in (("front", 4.0), ("rear", 8.0))}
    then = {DEPTH.format("front"): 4.0, "/vehicle/driven_axle": "all"}
    found = finding(check(changed(saloon(), today | then)), "tyre.tread_difference", "vehicle")
    assert (found.outcome, found.already) == (ADVISORY, True)


def test_the_message_on_mixed_wear_gives_both_depths_and_the_remedy_the_axle():
    request = changed(saloon(), {DEPTH.format("rear"): 3.5, "/vehicle/driven_axle": "all"})
    found = finding(check(request), "tyre.tread_difference", "vehicle")
    assert "8 mm of tread in front and 3.5 mm at the rear" in found.message
    assert "strains the all-wheel drive" in found.message
    # No more than a millimetre shallower than the front, and within 1.585 mm of it.
    assert found.remedy.text == "fit new tyres at the rear too, or ones with 7 to 9.5 mm of tread"


def test_the_deeper_pair_goes_to_the_rear():
    request = changed(saloon(), {DEPTH.format("rear"): 3.5, "/vehicle/driven_axle": "front"})
    found = finding(check(request), "tyre.tread_difference", "vehicle")
    assert found.remedy.text == "put the deeper pair at the rear"


def test_a_caravan_has_no_drive_to_strain():
    request = changed(saloon(), {DEPTH.format("rear"): 3.5, "/vehicle/category": "O2"})
    assert outcome(check(request), "tyre.tread_difference", "vehicle") == "met"


def test_a_balance_without_the_present_load_index_is_not_estimated():
    request = changed(saloon(), {"/vehicle/rear/fitted/tyre/size": "225/45 R17"})
    found = finding(check(request), "balance.change", "vehicle")
    assert found.outcome == OPEN
    assert found.remedy.pointer == "/vehicle/rear/fitted/tyre/size"


def test_a_grip_order_without_a_size_is_not_estimated():
    request = changed(saloon(), {"/candidate/rear/tyre/size": "225 R17 94V"})
    found = finding(check(request), "balance.grip_order", "vehicle")
    assert found.outcome == OPEN
    assert found.remedy.pointer == "/candidate/rear/tyre/overall_diameter_mm"
