"""What a change does on the road, through the assessment: laws, limits of the wet reserve, label, what to measure.

Limits of the wet reserve (25 % rear, 40 % front, 5 % left at the rear): project's judgement, from the notes on driving.
Label: class limits of Regulation (EC) 1222/2009, annex I (read), letters A to E of (EU) 2020/740 (from memory).
Energy at the wheel: rolling resistance [kg/t] x mass [t] x 9.81 N/kg x 100 km / 3.6 MJ/kWh, worked out by hand.
"""

import numpy as np
import pytest

from service.assessment.answer.measure_first import measure_first
from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.checks import balance, wet_reserve
from service.core.findings import ADVISORY, MET, NOT_RECOMMENDED
from tests.support import many_cases
from tests.support.cases import ABSENT, answer, at, changed, check, on_both_axles, saloon, wheel

PRESENT = ("225/45 R17 94W XL", "7.5J x 17 H2 ET45")
WIDER = ("245/40 R17 97W XL", "8.5J x 17 H2 ET45")
CHECKS = {"front": wet_reserve.FRONT, "rear": wet_reserve.REAR}


def leaves(part):
    """Return all numbers of nested tuples."""
    if isinstance(part, tuple):
        return [number for inner in part for number in leaves(inner)]
    return [part]


def road(fitted, proposed):
    """Return what changes on the road from one fitment all round to another."""
    present = {f"/vehicle/{axle}/fitted": wheel(*fitted) for axle in ("front", "rear")}
    return check(changed(saloon(proposed, proposed), present)).car.driving


def test_an_unchanged_fitment_changes_nothing_on_the_road():
    car = check(saloon()).car
    found = car.driving
    assert (car.front_reserve.fall_percent, car.rear_reserve.fall_percent) == (0.0, 0.0)
    for axle in (found.front, found.rear):
        assert leaves((axle.peak_grip_percent, axle.heat_reserve_percent)) == [0.0] * 4
        assert axle.wet_reserve_present == axle.wet_reserve_proposed
    assert leaves(found.braking_distance_percent) == [0.0] * 3
    assert tuple(found.turn_in) == (0.0, 0.0)


def _factors(found):
    changes = (
        found.front.peak_grip_percent.value,
        found.rear.peak_grip_percent.value,
        found.front.heat_reserve_percent,
        found.rear.heat_reserve_percent,
        found.braking_distance_percent.value,
    )
    return 1.0 + 0.01 * np.array(changes)


def test_a_swap_gives_the_reciprocal():
    there, back = road(PRESENT, WIDER), road(WIDER, PRESENT)
    assert (_factors(there) != 1.0).all()
    assert _factors(there) * _factors(back) == pytest.approx(1.0)


@pytest.mark.parametrize("size", ["235/45 R17 97W XL", "245/40 R17 95W XL", "245/45 R17 99W XL", "255/40 R17 98W XL"])
def test_a_wider_front_alone_never_lengthens_dry_braking(size):
    # Load indices as the sizes are sold (from memory): none below the 94 of the present tyre.
    found = check(saloon((size, "8J x 17 H2 ET45"), PRESENT)).car.driving.braking_distance_percent
    assert max(found) <= 0.0


@pytest.mark.parametrize("seed", [3, 4, 12, 21])
def test_the_wet_reserve_is_a_share(seed):
    asked = many_cases.question(seed, 100)
    about = {name: value for name, value in asked.items() if name != "candidates"}
    cases = [check({**about, "candidate": each}).case for each in asked["candidates"]]
    car = grade_all(cases[0], *stack_candidates(cases[0], [each.candidate for each in cases])).car
    for axle, new in ((car.driving.front, car.front_reserve), (car.driving.rear, car.rear_reserve)):
        shares = leaves((axle.wet_reserve_present, axle.wet_reserve_proposed, new.proposed_percent))
        numbers = np.concatenate([np.atleast_1d(each) for each in shares])
        numbers = numbers[~np.isnan(numbers)]
        assert ((numbers >= 0.0) & (numbers <= 100.0)).all()


def with_reserve(axle, fall, left, gradient=0.0):
    """Return the saloon with this fall of an axle's reserve, this much left, and this change of balance."""
    car = check(saloon()).car
    here = getattr(car, f"{axle}_reserve")._replace(fall_percent=fall, proposed_percent=left)
    change = car.change._replace(gradient_deg_per_g=car.change.gradient_deg_per_g._replace(value=gradient))
    return car._replace(**{f"{axle}_reserve": here}, change=change)


@pytest.mark.parametrize(
    ("axle", "fall", "left", "expected"),
    [
        ("rear", 0.0, 40.0, MET),
        ("rear", 24.9, 40.0, MET),
        ("rear", 25.0, 40.0, MET),
        ("rear", 25.1, 40.0, ADVISORY),
        ("front", 25.1, 40.0, MET),
        ("front", 39.9, 40.0, MET),
        ("front", 40.0, 40.0, MET),
        ("front", 40.1, 40.0, ADVISORY),
        ("rear", 10.0, 5.1, MET),
        ("rear", 10.0, 5.0, NOT_RECOMMENDED),
        ("rear", 10.0, 4.9, NOT_RECOMMENDED),
        ("rear", 60.0, 0.0, NOT_RECOMMENDED),
        # A rear that had no more before loses nothing by the change.
        ("rear", 0.0, 4.9, MET),
        ("front", 10.0, 4.9, MET),
    ],
)
def test_the_wet_reserve_is_graded_at_its_limits(axle, fall, left, expected):
    assert CHECKS[axle].grade(with_reserve(axle, fall, left)).outcome == expected


# A noticeable change of balance begins at 0.1 deg/g (project's judgement).
@pytest.mark.parametrize(
    ("gradient", "fall", "expected"),
    [
        (0.2, 25.1, NOT_RECOMMENDED),
        (-0.2, 25.1, NOT_RECOMMENDED),
        (0.2, 25.0, ADVISORY),
        (0.05, 25.1, MET),
    ],
)
def test_a_shift_with_a_falling_rear_reserve_is_advised_against(gradient, fall, expected):
    assert balance.CHANGE.grade(with_reserve("rear", fall, 40.0, gradient)).outcome == expected


def labelled(before, after, **changes):
    """Return what the labels tell of the saloon with these before and after on both axles."""
    labels = {"/vehicle/{axle}/fitted/tyre/label": before, "/candidate/{axle}/tyre/label": after}
    found = check(changed(saloon(), on_both_axles(labels) | changes))
    return found.label_effects


def test_two_classes_of_wet_grip_shorten_wet_braking_by_some_nineteen_per_cent():
    # Lower limits of the index: C 1.25, A 1.55; the distance goes with its reciprocal.
    found = labelled({"wet_grip_class": "C"}, {"wet_grip_class": "A"}).wet_braking_distance_percent
    assert found.value == pytest.approx(100.0 * (1.25 / 1.55 - 1.0))
    assert found.value == pytest.approx(-19.0, abs=0.5)


def test_one_kilogram_a_tonne_on_1500_kg_is_041_kwh():
    # Upper limits of the coefficient: C 9.0, A 6.5 kg/t, so 2.5 kg/t less; 750 kg on each axle.
    masses = {"/vehicle/{axle}/kerb_axle_mass_kg": 750}
    found = labelled(
        {"rolling_resistance_class": "C"}, {"rolling_resistance_class": "A"}, **on_both_axles(masses)
    ).energy_kwh_per_100km
    assert found.value / -2.5 == pytest.approx(0.41, abs=0.005)


def test_without_a_label_nothing_is_told_of_it():
    assert "label_effects" not in answer(check(saloon()))["vehicle"]


UNSTATED = {
    "/vehicle/speedometer": ABSENT,
    "/vehicle/wheelbase_mm": ABSENT,
    "/vehicle/front/clearance": ABSENT,
    "/candidate/rear/tyre/tread_depth_mm": ABSENT,
}


def unstated(**given):
    return changed(saloon(WIDER, WIDER), {**UNSTATED, **given})


def test_what_to_measure_first_is_ordered_by_what_it_settles_and_narrows():
    found = measure_first(check(unstated()).case)
    effects = [each.effect for each in found]
    assert effects == sorted(effects, reverse=True)
    assert effects[-1] > 0.0
    # What settles no question and only narrows a band comes after what settles one.
    settling = [bool(each.settles) for each in found]
    assert settling == sorted(settling, reverse=True)


def test_what_to_measure_first_names_a_pointer_that_the_request_lacks():
    pointers = [each.pointer for each in measure_first(check(unstated()).case)]
    assert "/candidate/rear/tyre/tread_depth_mm" in pointers
    assert "/vehicle/front/clearance/inboard_mm" in pointers
    for pointer in pointers:
        with pytest.raises(KeyError):
            at(unstated(), pointer)


def test_the_wheelbase_is_worth_measuring_only_where_the_axles_change_differently():
    # The share of the front weighs the changes of both axles: where they are alike it weighs nothing.
    def pointers(request):
        return [each.pointer for each in measure_first(check(changed(request, UNSTATED)).case)]

    assert "/vehicle/wheelbase_mm" in pointers(saloon(WIDER, PRESENT))
    assert "/vehicle/wheelbase_mm" not in pointers(saloon(WIDER, WIDER))


def test_what_is_given_is_not_to_be_measured():
    given = unstated(**{"/candidate/rear/tyre/tread_depth_mm": 8})
    assert "/candidate/rear/tyre/tread_depth_mm" not in [each.pointer for each in measure_first(check(given).case)]
    assert measure_first(check(saloon()).case) == []
