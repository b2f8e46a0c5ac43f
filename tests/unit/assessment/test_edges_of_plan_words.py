"""A plan in words, by hand: names, bands, pairs, repeats, wheels, rims to buy, and what to measure before it is driven.

References: load indices 93 and 96 are 650 and 710 kg (UN R30, load-capacity index table); a tyre gets 0.4 mm wider for
each millimetre of rim and may grow by 4 % in service (ETRTO, from memory); 5 mm of room are left (common practice, no
source). Which sizes take which rims: ETRTO, from memory.
"""

from math import inf, nan

import numpy as np
import pytest

from service.assessment.batch.plan_effects import EFFECTS
from service.assessment.batch.plan_measure_first import measure_before
from service.assessment.batch.plan_pairs import REFERENCE, Difference, Pair, Repeats
from service.assessment.batch.plan_words import (
    NO_ORDER,
    ORDER,
    axle_text,
    blocks_text,
    effect_words,
    fewest_for_certain,
    in_band,
    name_of,
    pair_text,
    repeats_text,
    rims_text,
    rims_to_buy,
)
from service.core.findings import Estimate
from tests.support.cases import ABSENT, changed
from tests.support.plans import F225, F255, F285, asked, planned, request

MINUS = "\N{MINUS SIGN}"
BEHIND, WIDE = (None, F285), (F255, F285)
UNEQUAL = request(BEHIND, WIDE, (F225, F225))


@pytest.fixture(scope="module")
def found():
    made = changed(UNEQUAL, {})
    made["combinations"][0] |= {"label": "wide", "id": "B-1"}
    made["combinations"][1] |= {"id": "B-2"}
    return asked(made)[1]


def test_a_combination_goes_by_its_label_its_id_or_its_number(found):
    assert [name_of(found, at) for at in (REFERENCE, 0, 1, 2)] == ["present wheels", "wide", "B-2", "combination 3"]


@pytest.mark.parametrize(
    ("ends", "unit", "told"),
    [
        ((0.0, 0.0, 0.0), "%", "as now"),
        ((1.26, 0.0, 2.04), "%", "+1.3 % (between 0 and +2)"),
        ((-1.26, -2.04, 0.0), "points", f"{MINUS}1.3 points (between {MINUS}2 and 0)"),
        # A degree per g is told in hundredths.
        ((0.126, 0.044, 0.2), "deg/g", "+0.13 deg/g (between +0.04 and +0.2)"),
        ((0.0, -0.5, 0.5), "%", f"0 % (between {MINUS}0.5 and +0.5)"),
    ],
)
def test_an_estimate_is_told_with_its_ends(ends, unit, told):
    assert in_band(Estimate(*ends), unit) == told


def test_a_pair_is_told_by_what_a_test_may_show_or_by_that_it_hardly_does(found):
    braking = Difference("braking_distance_percent", Estimate(-1.5, -2.5, -0.5), 6.0)
    balance = Difference("balance_deg_per_g", Estimate(0.126, 0.05, 0.2), nan)
    assert pair_text(found, Pair(REFERENCE, 0, (braking, balance), ())) == (
        f"wide against present wheels, what a test may show: braking distance in the dry {MINUS}1.5 % (between "
        f"{MINUS}2.5 and {MINUS}0.5), 6 tests of each; balance in the dry (more is towards understeer) +0.13 deg/g "
        "(between +0.05 and +0.2)."
    )
    assert pair_text(found, Pair(1, 2, (), ())) == "A test will hardly tell combination 3 from B-2."


@pytest.mark.parametrize(
    ("counts", "told"),
    [
        ((inf, inf), "Wet reserve of the rear: no difference to look for."),
        ((4.0, 4.0), "Wet reserve of the rear: 4 tests of each, with tests that scatter by 0.25 points."),
        (
            (2.0, 12.0),
            (
                "Wet reserve of the rear: 2 tests of each for the greatest difference, 12 for the least, with tests "
                "that scatter by 0.25 points."
            ),
        ),
    ],
)
def test_repeats_are_told_for_the_greatest_and_the_least_difference(counts, told):
    assert repeats_text(Repeats("rear_wet_reserve_points", 0.25, 1, *counts)) == told


@pytest.mark.parametrize(
    ("kpa", "is_held", "told"),
    [
        (249.6, False, "; 250 kPa"),
        (250.0, True, "; 250 kPa, not by the rule: the axle needs it, or the tyre usually gets no more"),
        (nan, True, "; its maker states the pressure"),
    ],
)
def test_a_wheel_is_told_with_its_pressure_and_why_it_is_so(found, kpa, is_held, told):
    axle = found.combinations[0].front._replace(pressure_kpa=kpa, pressure_held=is_held)
    assert axle_text(axle) == f"{F225} on 8J x 19 H2 ET45{told}"


def test_each_rim_to_buy_is_told_with_its_axle_and_the_tyres_it_serves(found):
    # 255/35 R19 takes 8.5 to 10 in, 285/30 R19 9.5 to 10.5 in: the present 8 and 9 in do not serve them.
    told = rims_to_buy(found)
    assert [(axle, tyres) for axle, _, tyres in told] == [("front", [F255]), ("rear", [F285])]
    front, rear = (rim for _, rim, _ in told)
    assert front.startswith("8.5J x 19 ET")
    assert rear.startswith("9.5J x 19 ET")
    words = f"front axle: {front} for {F255}; rear axle: {rear} for {F285}."
    assert rims_text(found) == f"The fewest rims to buy: {words}"
    assert fewest_for_certain(found)
    for at in (0, 1):
        bought = list(found.rims_to_buy)
        bought[at] = bought[at]._replace(smallest=bought[at].smallest._replace(exact=False))
        assert rims_text(found._replace(rims_to_buy=tuple(bought))) == f"Rims to buy: {words}"


def test_where_the_present_rims_do_none_is_bought():
    assert rims_text(planned((F225, None))) == "No rims have to be bought."


def test_how_often_the_order_is_driven_is_told_where_that_is_known(found):
    assert blocks_text(found._replace(blocks=3.0)) == f"{ORDER} 3 blocks show the greatest difference of each effect."
    asking = "State how far repeated tests scatter to learn how many blocks it takes."
    assert blocks_text(found._replace(blocks=nan)) == f"{ORDER} {asking}"
    assert blocks_text(found._replace(blocks=3.0, order=[])) == NO_ORDER


@pytest.mark.parametrize(
    ("name", "head"),
    [
        ("braking_distance_percent", "Braking distance in the dry [%]"),
        ("front_peak_grip_percent", "Peak grip of the front in the dry [%]"),
        ("rear_peak_grip_percent", "Peak grip of the rear in the dry [%]"),
        ("balance_deg_per_g", "Balance in the dry (more is towards understeer) [deg/g]"),
        ("front_aquaplaning_onset_percent", "Speed at which the front floats [%]"),
        ("rear_aquaplaning_onset_percent", "Speed at which the rear floats [%]"),
        ("front_wet_reserve_points", "Wet reserve of the front [points]"),
        ("rear_wet_reserve_points", "Wet reserve of the rear [points]"),
        ("wet_balance_points", "Balance in the wet (rear reserve beside the front's) [points]"),
    ],
)
def test_a_column_is_headed_by_its_effect_and_unit(name, head):
    assert effect_words(name) == head


def test_the_balance_in_the_wet_is_what_the_rear_gains_more_than_the_front(found):
    names = ("wet_balance_points", "rear_wet_reserve_points", "front_wet_reserve_points")
    for at in range(3):
        both, rear, front = (found.bands[name][at].value for name in names)
        assert both == pytest.approx(rear - front, abs=1e-9)
    # A wider tyre floats sooner: behind alone, it is the rear that loses.
    assert found.bands["wet_balance_points"][0].value < 0.0 == found.bands["front_wet_reserve_points"][0].value


BARE = {"/vehicle/front/clearance": {}}
SCATTERED = {"repeatability": {"wet_balance_points": 0.3}}


def measured_first(made, changes):
    return [(each.pointer, each.combinations) for each in asked(changed(made, changes))[1].measure_first]


def test_what_more_combinations_wait_for_is_measured_first_then_the_scatter():
    made = request((F285, None), (F255, None), BEHIND, **SCATTERED)
    rooms = [("/vehicle/front/clearance/inboard_mm", 2), ("/vehicle/front/clearance/outboard_mm", 2)]
    assert measured_first(made, BARE) == rooms
    behind = [("/vehicle/rear/clearance/inboard_mm", 1), ("/vehicle/rear/clearance/outboard_mm", 1)]
    assert measured_first(made, BARE | {"/vehicle/rear/clearance": {}}) == rooms + behind
    # Where no scatter is stated it comes next, and is a matter of all three.
    scatter = [("/repeatability", 3)]
    assert measured_first(request((F285, None), (F255, None), BEHIND), BARE) == rooms + scatter


def test_what_is_enough_for_the_widest_is_enough_for_all():
    # 285/30 R19 has 290 mm on 10 in, 225/40 R19 has 230 on 8 in: 30 mm more, 5.8 for growth and 5 to be left.
    for pair in ((F285, F255), (F255, F285)):
        made = request(*((tyre, None) for tyre in pair), **SCATTERED)
        first = asked(changed(made, BARE))[1].measure_first[0]
        assert first.text == "measure the room between wheel and strut: 41 mm is enough"
        assert (first.settles, first.narrows) == (("clearance.inboard",), ())


def test_of_what_does_not_fit_anyway_nothing_need_be_known():
    assert measured_first(request(("155/70 R19 84T", None), **SCATTERED), BARE) == []


def test_what_only_narrows_a_band_comes_last_and_all_in_all_eight_are_named():
    unknown = {
        "/vehicle/front/kerb_axle_mass_kg": ABSENT,
        "/vehicle/rear/kerb_axle_mass_kg": ABSENT,
        "/vehicle/front/fitted/pressure_kpa": ABSENT,
        "/vehicle/wheelbase_mm": ABSENT,
    }
    made = request((F285, None), (F255, None), BEHIND)
    rooms = BARE | {"/vehicle/rear/clearance": {}}
    told = [pointer for pointer, _ in measured_first(made, rooms | unknown)]
    assert (len(told), told[4]) == (8, "/repeatability")
    assert set(told[5:]) <= set(unknown)


def test_a_room_measured_too_loosely_is_told_for_as_many_as_it_stops():
    # Of 22 and 24 mm only 2 and 4 are sure, which are not 5: even the present front wheel does as measured alone.
    loose = {"/vehicle/front/clearance/tolerance_mm": 20}
    made = request((F255, None), (F255, F285), BEHIND, **SCATTERED)
    told = [(each.pointer, each.text, each.combinations) for each in asked(changed(made, loose))[1].measure_first]
    assert told[:2] == [
        ("/vehicle/front/clearance/inboard_mm", "measure the room to the strut, front more closely", 3),
        ("/vehicle/front/clearance/outboard_mm", "measure the room to the wing edge, front more closely", 3),
    ]
    assert not [pointer for pointer, _, _ in told if "/rear/" in pointer]


def test_of_one_combination_a_fact_narrows_the_bands_of_one():
    unknown = {"/vehicle/front/fitted/pressure_kpa": ABSENT, "/vehicle/front/kerb_axle_mass_kg": ABSENT}
    told = asked(changed(request((F285, None), **SCATTERED), unknown))[1].measure_first
    assert max(len(each.narrows) for each in told) > 1
    assert {each.combinations for each in told} == {1}


def test_a_band_is_narrowed_by_what_moves_it_by_more_than_a_fiftieth_of_it(monkeypatch):
    # A wheelbase is from 2400 to 3000 mm: 600 are a fiftieth of 30,000, and less than that of what is a little more.
    # Of what has no band, and of what is not known, no share can be taken.
    name = "braking_distance_percent"
    made = changed(request((F255, None), (F285, None), **SCATTERED), {"/vehicle/wheelbase_mm": ABSENT})
    case, told = asked(made)
    for bands, count in (
        ([29_999.0, 30_001.0], 1),
        ([30_001.0, 29_999.0], 1),
        ([29_999.0, 1.0], 2),
        ([30_000.0, 30_000.0], 0),
        ([0.0, 29_999.0], 1),
        ([0.0, nan], 0),
    ):
        ends = np.array(bands)
        stub = EFFECTS[name]._replace(of=lambda car, ends=ends: Estimate(car.vehicle.wheelbase_mm, 0.0 * ends, ends))
        monkeypatch.setattr("service.assessment.batch.plan_measure_first.EFFECTS", {name: stub})
        found = measure_before(case, (), told.graded, scatter_is_stated=True)
        assert [(each.pointer, each.narrows, each.combinations) for each in found] == [
            ("/vehicle/wheelbase_mm", (name,), count)
        ] * bool(count)
