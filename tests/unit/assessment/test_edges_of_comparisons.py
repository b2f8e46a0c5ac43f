"""Comparing candidates by hand: how far each is, what is worth a word, and which tyres are changed.

References: load indices 94 and 97 are 670 and 730 kg, symbols W and Y 270 and 300 km/h (UN R30, load-capacity index and
speed symbol tables); 225/45 R17 and 235/45 R17 have 634 and 644 mm in tyre handbooks (from memory). The steps in which
a fitter counts what differs (10 mm of width, 1 % of diameter, half an inch of rim, one inch of diameter, 5 mm of
offset, 3 % of load, ten symbols of speed, half a step for season and kind) are common practice, no source.
"""

import numpy as np
import pytest

from service.api.inbound import translate
from service.api.schemas.request import CheckRequest
from service.assessment.batch.changed_axles import change_in_words, changed_axles, renamed_axles
from service.assessment.batch.closeness import axle_distance, distance
from service.assessment.batch.compare import compare, explained
from service.assessment.batch.comparison_measures import gains, losses, measures, trades, wet_margin_band_points
from service.assessment.batch.grading import grade_all, stack_candidates
from service.assessment.batch.plan_effects import EFFECTS
from service.assessment.batch.ranking import not_bettered
from tests.support.cases import ABSENT, changed, saloon

TYRE, RIM = "225/45 R17 94W XL", "7.5J x 17 H2 ET45"


def case(changes=None):
    return translate.case(CheckRequest.model_validate(changed(saloon(), changes or {})))


def proposed(front=(TYRE, RIM), rear=None, changes=None):
    wheels = {}
    for axle, (tyre, rim) in (("front", front), ("rear", rear or front)):
        wheels |= {f"/candidate/{axle}/tyre/size": tyre, f"/candidate/{axle}/rim/size": rim}
    return case(wheels | (changes or {})).candidate


def steps(one, candidate, season=None):
    """Return how far the front, the rear and both are from the present wheels."""
    car = grade_all(one, *stack_candidates(one, [candidate])).car
    axles = [float(axle_distance(view, season, (1,))[0]) for view in (car.front, car.rear)]
    return (*axles, float(distance(car, season, (1,))[0]))


@pytest.mark.parametrize(
    ("tyre", "rim", "away"),
    [
        (TYRE, RIM, 0.0),
        # 10 mm wider and 10 of 634 mm higher: 1 step and 1.58.
        ("235/45 R17 94W XL", RIM, 2.5773),
        (TYRE, "8.5J x 17 H2 ET45", 2.0),
        (TYRE, "7.5J x 18 H2 ET45", 1.0),
        (TYRE, "7.5J x 17 H2 ET38", 1.4),
        # 60 of 670 kg are 8.96 %.
        ("225/45 R17 97W XL", RIM, 2.9851),
        # 30 km/h are one symbol.
        ("225/45 R17 94Y XL", RIM, 0.1),
        ("225/45 R17 94W XL 3PMSF", RIM, 0.5),
        ("225/45 RF17 94W XL", RIM, 0.5),
        # What is known of one of the two only may be anything.
        (TYRE, "7.5J x 17 H2", 10.0),
        ("225/45 R17 94W XL 3PMSF", "8J x 17 H2", 11.5),
    ],
)
def test_a_wheel_is_as_far_as_its_differences_in_steps(tyre, rim, away):
    told = steps(case(), proposed((tyre, rim), (TYRE, RIM)))
    assert told == pytest.approx((away, 0.0, away), abs=0.0005)
    assert steps(case(), proposed((tyre, rim))) == pytest.approx((away, away, 2.0 * away), abs=0.001)


def test_what_neither_wheel_states_does_not_take_them_apart():
    bare = {"/vehicle/front/fitted/rim/size": "7.5J x 17"}
    assert steps(case(bare), proposed((TYRE, "7.5J x 17"), (TYRE, RIM)))[0] == 0.0


@pytest.mark.parametrize(
    ("season", "now", "away"),
    [
        ("winter", TYRE, (0.5, 0.0)),
        ("summer", TYRE, (0.0, 0.5)),
        (None, TYRE, (0.0, 0.5)),
        # Of what the car is on now, where nobody says a season.
        (None, "225/45 R17 94W XL 3PMSF", (0.5, 0.0)),
        ("summer", "225/45 R17 94W XL 3PMSF", (0.0, 0.5)),
    ],
)
def test_the_season_asked_for_is_the_nearer_one_else_that_of_the_car(season, now, away):
    one = case({"/vehicle/front/fitted/tyre/size": now})
    found = [steps(one, proposed((tyre, RIM), (TYRE, RIM)), season)[0] for tyre in (TYRE, TYRE + " 3PMSF")]
    assert tuple(found) == pytest.approx(away, abs=1e-9)


def with_measures(**values):
    """Return the present fitment several times, with these measures in its place."""
    count = len(next(iter(values.values())))
    found = compare(case(), [proposed()] * count, "balance")
    return found, found.measures._replace(**{name: np.array(each) for name, each in values.items()})


@pytest.mark.parametrize(
    ("name", "values", "more", "less"),
    [
        ("dry_grip_percent", [0.5, 0.502, -0.5, -0.502], "dry_grip", "dry_grip"),
        ("wet_margin_percent", [0.5, 0.502, -0.5, -0.502], "wet_margin", "wet_margin"),
        # A shorter distance is better.
        ("braking_distance_percent", [-0.5, -0.502, 0.5, 0.502], "braking", "braking"),
        # The present tyres carry 2 x 670 kg, 34 % more than 1000 kg.
        ("load_margin_percent", [34.499, 34.502, 33.501, 33.498], "load_margin", "load_margin"),
    ],
)
def test_half_a_per_cent_is_no_difference_worth_a_word_and_more_is(name, values, more, less):
    found, measures = with_measures(**{name: values})
    better, worse = (each(found.graded.car, measures).tolist() for each in (gains, losses))
    assert [trades(each) for each in better] == [[], [more], [], []]
    assert [trades(each) for each in worse] == [[], [], [], [less]]


def test_a_load_margin_half_a_per_cent_away_exactly_is_no_difference_either():
    now = float(with_measures(dry_grip_percent=[0.0])[0].measures.load_margin_percent[0])
    found, measures = with_measures(load_margin_percent=[now + 0.5, now - 0.5])
    assert gains(found.graded.car, measures).tolist() == losses(found.graded.car, measures).tolist() == [0, 0]


def test_a_diameter_is_a_loss_beyond_what_is_met():
    # Up to 1.5 % nothing needs saying (common practice, no source).
    found, measures = with_measures(diameter_deviation_percent=[1.5, 1.51])
    assert [trades(each) for each in losses(found.graded.car, measures).tolist()] == [[], ["diameter"]]


@pytest.mark.parametrize(
    ("front", "rear", "gained", "lost"),
    [
        # The wheel moves out by 2 mm and by 3 mm.
        (45, 43, False, False),
        (45, 42, False, True),
        (42, 45, False, True),
        # And in.
        (45, 47, False, False),
        (45, 48, False, True),
    ],
)
def test_two_millimetres_of_room_are_nothing_and_three_are_lost(front, rear, gained, lost):
    candidate = proposed(*((TYRE, f"7.5J x 17 H2 ET{offset}") for offset in (front, rear)))
    found = compare(case(), [candidate], "balance")
    told = ["room" in trades(int(each[0])) for each in (found.gains, found.losses)]
    assert told == [gained, lost]


def test_room_is_gained_where_every_edge_of_both_axles_goes_back():
    # 215/45 R17 is 9 mm lower (625 beside 634 mm) and on 7J some 9 mm narrower: 4 mm are left on each side.
    narrow = ("215/45 R17 94W XL", "7J x 17 H2 ET45")
    for pair, gained in (((narrow, narrow), True), ((narrow, (TYRE, RIM)), False), (((TYRE, RIM), narrow), False)):
        found = compare(case(), [proposed(*pair)], "balance")
        assert ("room" in trades(int(found.gains[0]))) is gained


@pytest.mark.parametrize(("diameter_mm", "gained"), [(630, False), (629, True)])
def test_two_millimetres_of_room_gained_are_no_gain_and_more_are(diameter_mm, gained):
    # Half of 634 - 630 mm; sideways the narrow tyre leaves more.
    lower = {f"/candidate/{axle}/tyre/overall_diameter_mm": diameter_mm for axle in ("front", "rear")}
    found = compare(case(), [proposed(("215/45 R17 94W XL", "7J x 17 H2 ET45"), changes=lower)], "balance")
    assert ("room" in trades(int(found.gains[0]))) is gained


def words_of(one, candidate):
    return change_in_words(one.vehicle, candidate, changed_axles(one.vehicle, candidate))


WIDER, WIDE_RIM = "245/40 R17 97W XL", "8J x 17 H2 ET45"


@pytest.mark.parametrize(
    ("front", "rear", "renamed", "words"),
    [
        ((TYRE, RIM), (TYRE, RIM), 0, "As fitted now."),
        ((WIDER, RIM), (TYRE, RIM), 1, f"Two of four: front {WIDER}; the rear stays as it is."),
        ((TYRE, RIM), (WIDER, RIM), 1, f"Two of four: rear {WIDER}; the front stays as it is."),
        ((WIDER, RIM), (WIDER, RIM), 2, f"All four: {WIDER}."),
        ((WIDER, WIDE_RIM), (WIDER, WIDE_RIM), 2, f"All four: {WIDER} on {WIDE_RIM}."),
        ((TYRE, WIDE_RIM), (TYRE, RIM), 0, f"Two of four: front {TYRE} on {WIDE_RIM}; the rear stays as it is."),
        ((WIDER, RIM), (TYRE, WIDE_RIM), 1, f"Front: {WIDER}. Rear: {TYRE} on {WIDE_RIM}."),
    ],
)
def test_what_changes_is_said_in_a_sentence(front, rear, renamed, words):
    one, candidate = case(), proposed(front, rear)
    assert words_of(one, candidate) == words
    assert renamed_axles(one.vehicle, candidate) == renamed


def test_a_truck_of_twins_all_round_has_eight_tyres_and_a_van_with_twins_behind_six():
    for axles, words in ((("front", "rear"), "Four of eight: rear "), (("rear",), "Four of six: rear ")):
        twins = {f"/vehicle/{axle}/wheels_per_side": 2 for axle in axles}
        one = case(twins)
        assert words_of(one, proposed((TYRE, RIM), (WIDER, RIM))).startswith(words)


@pytest.mark.parametrize(
    ("now_mm", "then_mm", "axles"),
    [
        (8.0, 7.96, []),
        (8.0, 7.94, ["front"]),
        (4.0, 4.04, []),
        (4.0, 4.06, ["front"]),
        # A tyre of which nobody tells is a new one, 8 mm.
        (ABSENT, 8.0, []),
        (ABSENT, 6.0, ["front"]),
        (6.0, ABSENT, ["front"]),
    ],
)
def test_tyres_whose_tread_differs_by_a_hair_are_the_same_ones(now_mm, then_mm, axles):
    one = case({"/vehicle/front/fitted/tyre/tread_depth_mm": now_mm})
    candidate = proposed(changes={"/candidate/front/tyre/tread_depth_mm": then_mm})
    assert changed_axles(one.vehicle, candidate) == axles


def test_only_what_is_better_in_nothing_is_bettered():
    # The first betters the second in one measure and is as good in all others; the third is better in another.
    found, measures = with_measures(
        dry_grip_percent=[2.0, 1.0, 1.0],
        braking_distance_percent=[0.0, 0.0, 0.0],
        wet_margin_percent=[0.0, 0.0, 1.0],
        balance_deg_per_g=[0.0, 0.0, 0.0],
        load_margin_percent=[34.0, 34.0, 34.0],
        diameter_deviation_percent=[0.0, 0.0, 0.0],
    )
    assert not_bettered(found.graded.verdicts, measures).tolist() == [True, False, True]


@pytest.mark.parametrize(
    ("name", "better", "worse"),
    [
        ("dry_grip_percent", 1.0, -1.0),
        ("braking_distance_percent", -1.0, 1.0),
        ("wet_margin_percent", 1.0, -1.0),
        ("balance_deg_per_g", 0.0, 0.1),
        ("load_margin_percent", 35.0, 34.0),
        ("diameter_deviation_percent", 0.0, 1.0),
    ],
)
def test_each_measure_alone_betters_in_its_own_direction(name, better, worse):
    # What is not known counts as the worst.
    found, measures = with_measures(**{name: [worse, better, np.nan, better]})
    assert not_bettered(found.graded.verdicts, measures).tolist() == [False, True, False, True]


def test_candidates_explained_are_those_asked_for_each_with_its_own_findings():
    found = explained(case(), [proposed(), proposed(("225/45 R17 94T XL", RIM))])
    assert [each.verdict for each in found] == ["suitable", "unsuitable"]


def test_a_trailer_has_no_braking_of_its_own():
    trailer = {"/vehicle/category": "O2", "/vehicle/driven_axle": ABSENT, "/vehicle/max_speed_kmh": 100}
    found = compare(case(trailer), [proposed((WIDER, RIM))], "balance")
    assert np.isnan(found.measures.braking_distance_percent).all()


@pytest.mark.parametrize(
    ("front", "rear", "axle"),
    [
        ("235/45 R17 97W XL", TYRE, "front"),
        (TYRE, "235/45 R17 97W XL", "rear"),
        ("235/45 R17 97W XL", "215/45 R17 94W XL", "rear"),
    ],
)
def test_the_band_of_the_wet_margin_is_that_of_the_axle_it_is_taken_of(front, rear, axle):
    # It tells of the rear, and of the front where the rear stays; the band is that of a plan (the contract's wording).
    graded = grade_all(case(), *stack_candidates(case(), [proposed((front, RIM), (rear, RIM))]))
    low, value, high = (float(np.ravel(end)[0]) for end in sorted(wet_margin_band_points(graded.car), key=np.ravel))
    of_plan = EFFECTS[f"{axle}_wet_reserve_points"].of(graded.car)
    assert [low, value, high] == pytest.approx(sorted(float(np.ravel(end)[0]) for end in of_plan))
    assert value == pytest.approx(float(measures(graded).wet_margin_percent[0]))
    assert low < value < high
