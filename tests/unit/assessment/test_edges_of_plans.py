"""A plan by hand: every pressure of both rules, what is worth a test, how many blocks, and in which order.

References: load goes with pressure to the power 0.8, reference 250 kPa, 290 extra load (ETRTO, as printed in Automotive
Engineering, p. 290); load indices 84, 93, 94 and 96 are 500, 650, 670 and 710 kg (UN R30, load-capacity index table).
Below 160 km/h speed adds no pressure. Usually no tyre gets 50 kPa more than its reference (common practice, no source).
What is worth a test (0.5 %, half a point, a twentieth of a degree per g) is the project's judgement, as its contract
tells it.
"""

from math import inf, isnan

import pytest

from service.assessment.batch.plan_case import PlanAsked
from service.assessment.batch.plan_effects import EFFECT_NAMES
from service.assessment.batch.plan_order import running_order
from service.assessment.batch.plan_pairs import REFERENCE, Difference, Pair, blocks_of, pairs_of, repeats_of
from service.core.findings import Estimate
from tests.support.cases import changed
from tests.support.plans import F225, F255, F285, asked, planned, request, wheel

SLOW = {"/vehicle/max_speed_kmh": 150}


def front_of(tyre, rule, **changes):
    made = changed(request((tyre, None), pressure_rule=rule), SLOW | changes)
    return asked(made)[1].combinations[0].front


# Present: 93 XL at 250 of 290 kPa, 88.8 % of its index; the front carries 960 kg at most, 790 kg at the kerb.
@pytest.mark.parametrize(
    ("tyre", "kpa", "share", "held"),
    [
        (F225, 250.0, 88.8, False),
        (F255, 250.0, 88.8, False),
        # 250 x 250/290 = 215.5; (215/250)^0.8
        ("245/40 R19 94Y", 215.0, 88.6, False),
        # It needs 250 (480/500)^1.25 = 237.6 kPa; (240/250)^0.8
        ("225/45 R17 84W", 240.0, 96.8, True),
    ],
)
def test_the_share_of_the_load_index_stays_unless_the_axle_needs_more(tyre, kpa, share, held):
    front = front_of(tyre, "share_of_load_index")
    assert (front.pressure_kpa, front.pressure_held) == (kpa, held)
    assert front.share_percent == pytest.approx(share, abs=0.05)


@pytest.mark.parametrize(
    ("tyre", "kpa", "share", "held"),
    [
        # 395 of 650 x (250/290)^0.8 = 577.2 kg
        (F225, 250.0, 68.4, False),
        # 250 (650/710)^1.25 = 223.9; 395 of 710 x (225/290)^0.8 = 579.4 kg
        (F255, 225.0, 68.2, False),
        # 215.5 (650/670)^1.25 = 207.5, the half step goes up; 395 of 670 x (210/250)^0.8 = 582.8 kg
        ("245/40 R19 94Y", 210.0, 67.8, False),
        # 250 (650/500)^1.25 = 347 is beyond 290 + 50; above 290 kPa it carries no more than 500 kg
        ("225/45 R17 84W XL", 340.0, 79.0, True),
    ],
)
def test_the_share_of_the_capacity_stays_up_to_what_is_usual(tyre, kpa, share, held):
    front = front_of(tyre, "load_over_capacity")
    assert (front.pressure_kpa, front.pressure_held) == (kpa, held)
    assert front.share_percent == pytest.approx(share, abs=0.05)


def test_the_present_tyre_keeps_its_pressure_to_the_last_kilopascal():
    odd = {"/vehicle/front/fitted/pressure_kpa": 253}
    assert front_of(F225, "share_of_load_index", **odd).pressure_kpa == 253.0
    assert front_of(F255, "share_of_load_index", **odd).pressure_kpa == 255.0


def test_a_present_tyre_with_too_little_air_gets_what_the_axle_needs():
    # 290 (480/650)^1.25 = 198.5 kPa.
    low = front_of(F225, "share_of_load_index", **{"/vehicle/front/fitted/pressure_kpa": 150})
    assert low.pressure_kpa == 200.0


def test_the_reference_has_the_present_wheels_and_its_own_share():
    found = asked(changed(request((F255, None), pressure_rule="load_over_capacity"), SLOW))[1]
    front, rear = found.present
    # The rear has 270 of 290 kPa and 760 kg at the kerb: 380 of 710 x (270/290)^0.8 = 670.6 kg.
    assert [each.pressure_kpa for each in (front, rear)] == [250.0, 270.0]
    assert [each.share_percent for each in (front, rear)] == pytest.approx([68.4, 56.7], abs=0.05)
    assert [(each.stays, each.rim.origin, each.pressure_held) for each in (front, rear)] == [
        (True, "present", False)
    ] * 2


@pytest.mark.parametrize(
    ("verdicts", "order"),
    [
        # 0 suitable, 1 with conditions, 2 undetermined, 3 advised against, 4 not to be fitted.
        ([3, 0, 4, 1, 2], [REFERENCE, 1, REFERENCE, 3, REFERENCE, 4, REFERENCE, 0, REFERENCE]),
        ([4, 4], []),
        ([3], [REFERENCE, 0, REFERENCE]),
    ],
)
def test_the_reference_stands_between_all_and_what_is_advised_against_last(verdicts, order):
    assert running_order(verdicts) == order


@pytest.fixture(scope="module")
def graded():
    return planned((F255, None)).graded


def told_apart(graded, name, *ends):
    """Return whether one combination with this band differs from the present wheels, None where neither is known."""
    bands = {each: [Estimate(0.0, 0.0, 0.0)] for each in EFFECT_NAMES} | {name: [Estimate(*ends)]}
    (one,) = pairs_of(graded, bands, PlanAsked(()))
    apart, alike = name in {each.effect for each in one.apart}, name in one.alike
    return None if not apart and not alike else apart and not alike


@pytest.mark.parametrize(
    ("name", "least"),
    [
        ("braking_distance_percent", 0.5),
        ("front_peak_grip_percent", 0.5),
        ("rear_peak_grip_percent", 0.5),
        ("balance_deg_per_g", 0.05),
        ("front_aquaplaning_onset_percent", 0.5),
        ("rear_aquaplaning_onset_percent", 0.5),
        ("front_wet_reserve_points", 0.5),
        ("rear_wet_reserve_points", 0.5),
        ("wet_balance_points", 0.5),
    ],
)
def test_a_difference_is_worth_a_test_from_its_least_size_on_either_way(graded, name, least):
    for sign in (1.0, -1.0):
        for size, apart in ((least, True), (0.999 * least, False)):
            ends = sorted((sign * 0.5 * least, sign * 2.0 * least))
            assert told_apart(graded, name, sign * size, *ends) is apart


def test_a_band_that_reaches_to_naught_tells_nothing_apart(graded):
    assert told_apart(graded, "braking_distance_percent", 3.0, 0.0, 6.0) is False
    assert told_apart(graded, "braking_distance_percent", 3.0, 0.1, 6.0) is True
    assert told_apart(graded, "braking_distance_percent", float("nan"), 1.0, 2.0) is None


def _pair(first, second, **repeats):
    none = Estimate(0.0, 0.0, 0.0)
    return Pair(first, second, tuple(Difference(name, none, count) for name, count in repeats.items()), ())


def test_repeats_are_counted_from_the_greatest_to_the_least_difference():
    pairs = [
        _pair(REFERENCE, 0, braking_distance_percent=9.0, rear_wet_reserve_points=7.0),
        _pair(REFERENCE, 1, braking_distance_percent=4.0),
        _pair(0, 1, braking_distance_percent=12.0),
    ]
    scatter = {"braking_distance_percent": 0.8, "rear_wet_reserve_points": 0.5, "wet_balance_points": 0.3}
    found = repeats_of(pairs, PlanAsked((), repeatability=scatter))
    assert [tuple(each) for each in found] == [
        ("braking_distance_percent", 0.8, 3, 4.0, 12.0),
        ("rear_wet_reserve_points", 0.5, 1, 7.0, 7.0),
        # No two differ by it: there is nothing that any number of tests would show.
        ("wet_balance_points", 0.3, 0, inf, inf),
    ]
    # Every effect shows its greatest difference.
    assert blocks_of(found) == 7.0
    assert isnan(blocks_of(found[2:]))


def test_a_scatter_of_another_effect_says_nothing_of_this_one():
    found = planned((F255, F285), repeatability={"rear_peak_grip_percent": 0.3})
    counts = {each.effect: each.repeats for each in found.pairs[0].apart}

    assert [name for name, count in counts.items() if not isnan(count)] == ["rear_peak_grip_percent"]


def test_every_wheel_tells_where_its_rim_comes_from_and_whether_it_stays():
    made = request((F255, None), (F225, F285))
    made["combinations"][0]["front"] = wheel(F255, "9J x 19 H2 ET40")
    first, second = asked(made)[1].combinations
    told = [(each.rim.origin, each.stays) for each in (first.front, first.rear, second.front, second.rear)]
    assert told == [("given", False), ("present", True), ("present", False), ("found", False)]
