"""What a search leaves out, counted and said by hand: one reason for each, the most frequent first.

References: load indices 88, 91 and 94 are 560, 615 and 670 kg (UN R30, load-capacity index table); what the sentences
say is worked out here from the counts. What a car keeps of its stagger, season and kind is common practice, no source.
"""

from collections import Counter

import numpy as np
import pytest

from service.assessment.batch.left_out import Sieve, reason_in_words, why_none
from service.assessment.batch.needs import UNKNOWN_NEEDS, Needs, stronger
from service.assessment.batch.search_axle import AxleLimits, first_reasons
from service.assessment.batch.search_pairs import is_square, stagger_of
from service.assessment.batch.size_search import Wanted, defaults_of, search
from service.assessment.batch.sizes import grid, marking_for, of_widths, stock
from service.designation.tyre import parse_tyre
from tests.support.cases import changed, saloon
from tests.unit.assessment.test_search import case, fitted_with, rims

SALOON = "225/45 R17 94W XL"
NOTHING = Sieve(0, 0, Counter())
DEFAULTS = frozenset({"limits.stagger", "search.season_mix"})


def sieve(tried, **removed):
    return Sieve(tried, 0, Counter({name.replace("__", "."): count for name, count in removed.items()}))


@pytest.mark.parametrize(
    ("front", "rear", "pairs", "said"),
    [
        (NOTHING, NOTHING, Sieve(9, 1, Counter({"limits.stagger": 8})), ""),
        (NOTHING, NOTHING, NOTHING, "No tyre is left for the front axle. There was none to try."),
        (
            sieve(1, rim__width=1),
            sieve(2, rim__width=2),
            NOTHING,
            (
                "No tyre is left for the front axle. Left out of 1 tyre on a rim: 1 for a rim width that the tyre "
                "does not take."
            ),
        ),
        (
            Sieve(2, 2, Counter()),
            sieve(7, load__capacity=4, rim__width=2, speed__capability=1),
            NOTHING,
            (
                "No tyre is left for the rear axle. Left out of 7 tyres on rims: 4 for too low a load index, 2 for "
                "a rim width that the tyre does not take and 1 for too low a speed symbol."
            ),
        ),
        (
            # The fourth and fifth reasons are counted together; one that sent nothing away is none.
            sieve(19, rim__width=7, load__capacity=5, rim__contour=4, law__size=2, rim__diameter=1, tyre__structure=0),
            NOTHING,
            NOTHING,
            (
                "No tyre is left for the front axle. Left out of 19 tyres on rims: 7 for a rim width that the tyre "
                "does not take, 5 for too low a load index, 4 for a rim contour that does not hold the tyre and 3 "
                "for other reasons."
            ),
        ),
        (
            Sieve(1, 1, Counter()),
            Sieve(1, 1, Counter()),
            sieve(1, search__season_mix=1),
            (
                "No pair of front and rear tyres is left. Left out of 1 pair: 1 for summer, winter or all-season "
                "tyres together. Of these the search left out by itself, and finds when it is asked to: 1 for "
                "summer, winter or all-season tyres together."
            ),
        ),
        (
            Sieve(2, 2, Counter()),
            Sieve(2, 2, Counter()),
            sieve(4, diameter__axle_ratio=3, limits__stagger=1),
            (
                "No pair of front and rear tyres is left. Left out of 4 pairs: 3 for axles that would turn too "
                "differently and 1 for another difference between front and rear tyres than the car is to have. Of "
                "these the search left out by itself, and finds when it is asked to: 1 for another difference "
                "between front and rear tyres than the car is to have."
            ),
        ),
    ],
)
def test_why_nothing_is_left_is_said_with_its_counts(front, rear, pairs, said):
    assert why_none(front, rear, pairs, DEFAULTS) == said


def test_a_reason_without_words_of_its_own_is_a_rule_or_a_check():
    assert reason_in_words("law.tyre_size") == "a rule of the place"
    assert reason_in_words("wear.age") == "a check that is not passed"


def test_each_is_counted_for_the_first_reason_that_holds_and_the_rest_is_left():
    broken = {
        "one": np.array([True, False, False, True, False]),
        "other": np.array([True, True, False, False, False]),
        "none": np.zeros(5, np.bool_),
    }
    removed, left = first_reasons(broken, 5)
    assert removed == {"one": 2, "other": 1, "none": 0}
    assert left.tolist() == [2, 4]


@pytest.mark.parametrize(
    ("one", "other", "both"),
    [
        (Needs(91, "H"), Needs(94, "T"), Needs(94, "H")),
        (Needs(94, "V"), Needs(91, "W"), Needs(94, "W")),
        # H is 210 km/h, Q is 160 km/h: letters do not stand in their order.
        (Needs(94, "H"), Needs(94, "U"), Needs(94, "H")),
        (Needs(107, "R", 105), Needs(109, "Q", 103), Needs(109, "R", 105)),
        (Needs(107, "R"), Needs(109, "Q", 107), Needs(109, "R", 107)),
        (Needs(94, "V"), UNKNOWN_NEEDS, UNKNOWN_NEEDS),
        (UNKNOWN_NEEDS, Needs(94, "V"), UNKNOWN_NEEDS),
        (Needs(94, None), Needs(94, "V"), UNKNOWN_NEEDS),
        (Needs(94, "V"), Needs(None, "V"), UNKNOWN_NEEDS),
    ],
)
def test_one_tyre_for_both_axles_has_the_higher_index_and_the_faster_symbol(one, other, both):
    assert stronger(one, other) == both


@pytest.mark.parametrize(
    ("needs", "printed"),
    [(Needs(94, "V"), "94V"), (Needs(107, "R", 105), "107/105R"), (UNKNOWN_NEEDS, ""), (Needs(94, None), "")],
)
def test_a_description_reads_as_on_a_sidewall(needs, printed):
    assert needs.description == printed


def test_what_the_caller_asked_is_no_default():
    always = {"search.rim_width_mix", "search.season_mix", "search.class_mix"}
    assert defaults_of(Wanted()) == always | {"limits.stagger", "limits.axle_ratio_percent"}
    assert defaults_of(Wanted(stagger="any")) == always | {"limits.axle_ratio_percent"}
    assert defaults_of(Wanted(axle_ratio_percent=1.0)) == always | {"limits.stagger"}


@pytest.mark.parametrize(
    ("rear", "square"),
    [
        # Load, speed and marks are no size.
        ("225/45 R17 91V", True),
        ("235/45 R17 94W XL", False),
        ("225/50 R17 94W XL", False),
        ("225/45 R18 94W XL", False),
        ("225/45-17 94W XL", False),
    ],
)
def test_a_car_with_one_size_all_round_is_square(rear, square):
    vehicle = case(changed(saloon(), {"/vehicle/rear/fitted/tyre/size": rear})).vehicle
    assert is_square(vehicle) is square
    assert stagger_of(vehicle) == ("square" if square else "keep")


def test_the_sizes_of_one_aspect_are_those_of_their_designations():
    # On the grid, and beside it: 20 % and code 26 are not in it.
    for aspect, code in ((45, 17), (25, 12), (85, 24), (20, 17), (45, 26)):
        told = of_widths(aspect, code)
        alone = stock([parse_tyre(f"{width}/{aspect} R{code}") for width in range(125, 356, 10)])
        assert np.array_equal(told, alone.facts, equal_nan=True)


def test_only_a_search_for_winter_supposes_winter_tyres():
    assert [marking_for(case()._replace(season=each)) for each in ("winter", "summer", None)] == ["3PMSF", "", ""]
    assert {each.markings for each in grid("3PMSF").designations} == {("3PMSF",)}
    assert {each.markings for each in grid("").designations} == {()}


def counts(texts, wanted=None, one=None, rim="7.5J x 17 H2 ET45"):
    """Return what a search of these tyres on one rim tells of the front, the rear and the pairs."""
    found = search(
        one or case(), stock([parse_tyre(each) for each in texts]), (rims(rim), rims(rim)), wanted or Wanted()
    )
    return tuple(
        (each.tried, each.kept, {code: count for code, count in each.removed.items() if count})
        for each in (found.front, found.rear, found.pairs)
    )


def test_each_tyre_of_a_stock_is_kept_or_counted_once_for_each_axle():
    # 480 and 500 kg a tyre at 228 km/h: 88 carries 560 kg, 80 only 450; T ends at 190 km/h; 16 inch is another rim.
    front, rear, pairs = counts(("225/45 R17 94W XL", "225/45 R17 80W", "225/45 R17 94T XL", "205/55 R16 91V"))
    left_out = {"rim.diameter": 1, "load.capacity": 1, "speed.capability": 1}
    assert front == rear == (4, 1, left_out)
    assert pairs == (1, 1, {})


def test_of_two_sizes_the_four_pairs_are_two_square_ones():
    _, _, pairs = counts(("225/45 R17 94W XL", "225/45 R17 97W XL"))
    assert pairs == (4, 2, {"limits.stagger": 2})
    # 634 and 644 mm: the ratio of the axles moves by 1.6 %, more than is let pass, whatever the stagger.
    for wanted in (Wanted(), Wanted(stagger="any")):
        _, _, pairs = counts(("225/45 R17 94W XL", "235/45 R17 94W XL"), wanted)
        assert pairs == (4, 2, {"limits.axle_ratio_percent": 2})


def test_a_section_width_is_kept_at_both_of_its_limits():
    sizes = tuple(f"{width}/45 R17 94W XL" for width in (205, 215, 225, 235, 245))
    front = counts(sizes, Wanted(AxleLimits(min_section_width_mm=215.0, max_section_width_mm=235.0)))[0]
    assert front == (5, 3, {"limits.section_width_mm": 2})


def test_winter_and_all_season_tyres_are_not_paired():
    sizes = [f"225/45 R17 94W XL{mark}" for mark in ("", " M+S", " 3PMSF", " M+S 3PMSF")]
    _, _, pairs = counts(sizes, Wanted(stagger="any"))
    assert pairs == (16, 4, {"search.season_mix": 12})
    _, _, pairs = counts(sizes, Wanted(stagger="any", mixed=True))
    assert pairs == (16, 16, {})


def test_results_are_as_many_as_asked_for_the_best_of_them():
    texts = [f"225/45 R17 {index}W XL" for index in (97, 94, 95)]
    for most in (1, 2, 3, 4):
        found = search(
            case(), stock([parse_tyre(each) for each in texts]), (rims("7.5J x 17 H2 ET45"),) * 2, Wanted(most=most)
        )
        told = [each.front.tyre.designation.load_index for each in found.candidates]
        # 670, 690 and 730 kg: the present index first, then the next one.
        assert told == [94, 95, 97][:most]
        assert [hit.front_size for hit in found.hits] == [1, 2, 0][:most]
        assert {(hit.front_rim, hit.rear_rim) for hit in found.hits} == {(0, 0)}
        assert found.pairs.kept == 3


@pytest.mark.parametrize(
    ("aim", "first"),
    [("dry_grip", 97), ("load_margin", 97), ("braking", 97), ("closest_to_present", 94)],
)
def test_what_is_ranked_by_decides_which_is_first(aim, first):
    texts = [f"225/45 R17 {index}W XL" for index in (94, 97, 95)]
    stocked = stock([parse_tyre(each) for each in texts])
    found = search(case(), stocked, (rims("7.5J x 17 H2 ET45"),) * 2, Wanted(rank_by=aim, most=1))
    assert found.candidates[0].front.tyre.designation.load_index == first


def test_a_load_margin_is_asked_of_each_axle_by_itself():
    # 2 x 670 kg are 39.6 % above 960 and 34 % above 1000 kg.
    front, rear, _ = counts(("225/45 R17 94W XL",), Wanted(AxleLimits(load_margin_percent=36.0)))
    assert front == (1, 1, {})
    assert rear == (1, 0, {"limits.load_margin_percent": 1})


def test_the_room_left_is_asked_of_each_side():
    # 14 mm inboard and 16 outboard as now; ET42 leaves 17 and 13, ET48 11 and 19.
    for offset, room, reasons in (
        (45, 14.0, {}),
        (45, 14.5, {"limits.inboard_room_mm": 1}),
        (42, 13.0, {}),
        (42, 13.5, {"limits.outboard_room_mm": 1}),
        (48, 11.0, {}),
        (48, 11.5, {"limits.inboard_room_mm": 1}),
    ):
        front = counts(("225/45 R17 94W XL",), Wanted(AxleLimits(room_mm=room)), rim=f"7.5J x 17 H2 ET{offset}")[0]
        assert front == (1, 0 if reasons else 1, reasons)


def test_an_arch_that_leaves_less_than_asked_counts_too():
    low = fitted_with("225/45 R17 94W XL", 228.0, {"/vehicle/front/clearance/radial_mm": 9})
    front, rear, _ = counts(("225/45 R17 94W XL",), Wanted(AxleLimits(room_mm=10.0)), low)
    assert front == (1, 0, {"limits.radial_room_mm": 1})
    assert rear == (1, 1, {})


@pytest.mark.parametrize("chunk", [1, 2, 3, 4, 8192])
def test_each_axle_has_its_own_rims_however_many_wheels_are_graded_at_once(chunk, monkeypatch):
    # 4 sizes on 1 and on 2 rims; of the 3 and 6 that are of 17 in, 80 is too weak and T too slow, once a rim.
    monkeypatch.setattr("service.assessment.batch.search_axle.CHUNK", chunk)
    tyres = stock([parse_tyre(each) for each in ("225/45 R17 80W", "205/55 R16 91V", "225/45 R17 94T XL", SALOON)])
    found = search(case(), tyres, (rims("7.5J x 17 H2 ET45"), rims("7J x 17 H2 ET45", "7.5J x 17 H2 ET44")), Wanted())
    told = [
        (each.tried, each.kept, [each.removed[code] for code in ("rim.diameter", "load.capacity", "speed.capability")])
        for each in (found.front, found.rear)
    ]
    assert told == [(4, 1, [1, 1, 1]), (8, 2, [2, 2, 2])]
    # The front rim is 7.5 in wide, and only one of the rear ones is.
    (hit,) = found.hits
    assert tuple(hit) == (3, 0, 3, 1)
    assert found.candidates[0].rear.rim.designation.offset_mm == 44.0
    assert found.pairs.removed["search.rim_width_mix"] == 1
