"""A plan to compare combinations: pressures by one rule, pairs by their bands, repeats by the formula, order A-B-A.

References: load indices 93, 96 and 98 are 650, 710 and 750 kg (UN R30, load-capacity index table); load goes with
pressure to the power 0.8, reference 250 kPa, 290 extra load (ETRTO, as printed in Automotive Engineering, p. 290).
"""

import pytest

from service.assessment.answer.assess import assess
from service.assessment.batch.plan_effects import effects_of
from service.assessment.batch.plan_pairs import REFERENCE, overlap
from service.assessment.case import Candidate
from service.core.findings import Estimate
from service.core.numeric import known
from tests.support.cases import ABSENT, changed
from tests.support.plans import F225, F255, F285, asked, effect, planned, request, wheel


def pair(found, first, second):
    (one,) = [each for each in found.pairs if (each.first, each.second) == (first, second)]
    return one


def names(one):
    return {each.effect for each in one.apart}


# Present: 93 XL at 250 kPa, which is 250/290 of its reference. A larger extra-load tyre needs the same pressure for the
# same share of its index, a standard-load one 250 x 250/290 = 215.5, so 215.
@pytest.mark.parametrize(("tyre", "pressure"), [(F255, 250.0), ("245/40 R19 94Y", 215.0)])
def test_the_same_share_of_the_load_index_is_the_same_share_of_the_reference_pressure(tyre, pressure):
    found = planned((tyre, None), rule_pack="unece")
    front = found.combinations[0].front
    # 88.8 % = (250/290)^0.8; the pressure goes by steps of 5 kPa.
    assert front.share_percent == pytest.approx(88.8, abs=0.9)
    assert front.pressure_kpa == pressure or front.pressure_held


def test_the_same_load_over_capacity_lets_a_larger_tyre_down():
    """250 (650/710)^1.25 = 223.9 kPa would do for 255; a car of 245 km/h needs more, so the rule is not kept."""
    slow = changed(request((F255, None), pressure_rule="load_over_capacity"), {"/vehicle/max_speed_kmh": 180})
    front = asked(slow)[1].combinations[0].front
    assert front.pressure_kpa == 225.0
    assert not front.pressure_held


def test_a_pressure_is_never_below_what_the_axle_needs():
    """1080 kg on two tyres of 650 kg: 290 (540/650)^1.25 = 230 kPa, and 50 more at 245 km/h for a symbol Y."""
    rear = planned((None, F225)).combinations[0].rear
    assert rear.pressure_kpa == pytest.approx(282.5, abs=2.6)
    assert rear.pressure_held


def test_an_axle_that_is_not_named_stays_as_it_is():
    found = planned((None, F285)).combinations[0]
    assert found.front.stays
    assert not found.rear.stays
    assert found.front.fitment.tyre.designation.canonical == F225


def test_the_same_tyres_again_do_nothing():
    found = planned((F225, F255))
    assert all(effect(found, name) == (0.0, 0.0, 0.0) for name in found.bands)
    assert pair(found, REFERENCE, 0).apart == ()


def test_a_plan_says_of_a_combination_what_a_check_of_it_says():
    case, found = asked(request((F255, F285), (F225, F225), (None, F285)))
    for at, each in enumerate(found.combinations):
        single = assess(case._replace(candidate=Candidate(each.front.fitment, each.rear.fitment)))
        assert single.verdict == each.verdict
        assert each.words.reason in {"", *(told.message for told in single.findings)}
        for name, estimate in effects_of(single.car).items():
            assert effect(found, name, at) == pytest.approx(estimate, abs=1e-9)


def test_a_rim_of_the_callers_own_is_taken_as_it_is():
    made = request((F255, None))
    made["combinations"][0]["front"] = wheel(F255, "9J x 19 H2 ET40")
    front = asked(made)[1].combinations[0].front
    assert (front.rim.origin, front.fitment.rim.designation.canonical) == ("given", "9J x 19 H2 ET40")


def test_a_rim_that_is_found_is_one_that_the_check_takes():
    case, found = asked(request((F255, F285)))
    (each,) = found.combinations
    assert {each.front.rim.origin, each.rear.rim.origin} == {"found"}
    single = assess(case._replace(candidate=Candidate(each.front.fitment, each.rear.fitment)))
    assert [one.code for one in single.findings if one.code.startswith("rim.") and one.outcome > 1] == []


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [((0, 1), (2, 3), False), ((0, 2), (2, 3), True), ((0, 5), (2, 3), True), ((4, 5), (2, 3), False)],
)
def test_bands_overlap_where_they_have_a_value_in_common(one, other, expected):
    assert overlap(Estimate(0.0, *one), Estimate(0.0, *other)) is expected


def test_what_a_test_may_show_has_bands_that_do_not_overlap_and_a_difference_worth_it():
    found = planned((F255, F285), (F225, F225), (None, F285), (F255, F255))
    for each in found.pairs:
        for difference in each.apart:
            first = (0.0, 0.0, 0.0) if each.first == REFERENCE else effect(found, difference.effect, each.first)
            assert not overlap(Estimate(*first), effect(found, difference.effect, each.second))
        assert names(each).isdisjoint(each.alike)


def test_the_same_combination_twice_is_told_apart_by_nothing():
    found = planned((F255, F285), (F255, F285))
    assert pair(found, 0, 1).apart == ()


def test_a_difference_is_that_of_a_check_with_the_other_one_on_the_car():
    case, found = asked(request((F255, F285), (F225, F225)))
    first, second = (Candidate(each.front.fitment, each.rear.fitment) for each in found.combinations)
    vehicle = case.vehicle
    fitted = vehicle._replace(
        front=vehicle.front._replace(fitted=first.front), rear=vehicle.rear._replace(fitted=first.rear)
    )
    single = effects_of(assess(case._replace(vehicle=fitted, candidate=second)).car)
    for each in pair(found, 0, 1).apart:
        assert each.difference == pytest.approx(single[each.effect], abs=1e-9)


def test_repeats_are_given_for_what_has_a_stated_scatter_only():
    found = planned((F255, F285), (F225, F225), repeatability={"braking_distance_percent": 0.8})
    counts = {each.effect: each.repeats for each in pair(found, 0, 1).apart}
    # 1.85 % of distance and a scatter of 0.8 %: 2 (2.80 x 0.8 / 1.85)^2 + 0.96 = 3.9, so 4 (by hand).
    assert counts["braking_distance_percent"] == 4.0
    assert [name for name, count in counts.items() if known(count)] == ["braking_distance_percent"]
    assert found.blocks == 4.0


def test_the_reference_is_driven_before_and_after_each_combination():
    found = planned((F255, F285), (F225, F225), (F255, F255))
    assert found.order[::2] == [REFERENCE] * 4
    assert sorted(found.order[1::2]) == [0, 1, 2]


def test_what_must_not_be_fitted_is_not_driven_and_what_is_advised_against_comes_last():
    found = planned((None, F285), ("155/65 R14 75T", None), (F255, F255))
    verdicts = [each.verdict for each in found.combinations]
    assert verdicts[:2] == ["not_recommended", "unsuitable"]
    assert found.order == [REFERENCE, 2, REFERENCE, 0, REFERENCE]


def test_where_nothing_can_be_driven_there_is_no_order():
    assert planned(("155/65 R14 75T", None)).order == []


def test_what_lacks_is_to_be_measured_first_and_what_is_stated_is_not():
    assert planned((F255, F285), repeatability={"braking_distance_percent": 1.0}).measure_first == []
    bare = changed(request((F285, None)), {"/vehicle/wheelbase_mm": ABSENT, "/vehicle/front/clearance": {}})
    pointers = [each.pointer for each in asked(bare)[1].measure_first]
    assert pointers[-1] == "/vehicle/wheelbase_mm"
    assert "/vehicle/front/clearance/inboard_mm" in pointers[:-1]


def test_a_room_that_was_measured_too_loosely_is_to_be_measured_more_closely():
    """The room to the strut does as measured, and may not at the worse end of 4 mm."""
    loose = changed(request((F255, None)), {"/vehicle/front/clearance/tolerance_mm": 4})
    loose["combinations"][0]["front"] = wheel(F255, "8.5J x 19 H2 ET44")
    first = asked(loose)[1].measure_first[0]
    assert (first.pointer, first.settles) == ("/vehicle/front/clearance/inboard_mm", ("clearance.inboard",))


def test_without_a_stated_scatter_the_first_thing_to_drive_is_the_reference():
    assert [each.pointer for each in planned((F255, F285)).measure_first] == ["/repeatability"]


def test_rims_are_bought_for_what_the_present_ones_do_not_take_and_as_few_as_do():
    """The present rims are 19 inch, which 265/35 R19 takes; both 18 inch tyres take 9.5 in (ETRTO, memory)."""
    found = planned((None, "265/35 R18 97Y XL"), (None, "275/35 R18 99Y XL"), (None, "265/35 R19 98Y XL"))
    origins = [each.rear.rim.origin for each in found.combinations]
    assert origins == ["found", "found", "present"]
    front, rear = found.rims_to_buy
    assert front.smallest.rims == ()
    assert len(rear.smallest.rims) == 1
    assert [len(each.serves) for each in rear.smallest.rims] == [2]
