"""Front and rear wheels joined by hand: which pairs are tried, which stay, and which of too many.

References: 600 wheels of an axle and 10,000 pairs are looked at (the project's choice, told in its contract). What goes
together is common practice, no source: the ratio of circumferences stays, a staggered car keeps its stagger, rims that
are of one width stay so.
"""

from collections import Counter
from itertools import product

import numpy as np
import pytest

from service.assessment.batch.search_axle import AxleFound, AxleLimits, filter_axles
from service.assessment.batch.search_pairs import PairAsks, best, join
from service.assessment.batch.sizes import service_table, stock
from service.assessment.batch.wheel_table import Wheels, wheels_of
from service.assessment.view.wheel_facts import ROW
from service.designation.tyre import parse_tyre
from tests.support.cases import changed, saloon
from tests.unit.assessment.test_search import case, rims

SIZES = stock([parse_tyre(each) for each in ("225/45 R17 94W XL", "225/45 R17 94W XL 3PMSF", "225/45 R17C 101/99T")])
SUMMER, WINTER, VAN = range(3)


def found(*wheels, merit=None):
    """Return wheels of an axle: (place of the size, nominal width, rim code, rim width, circumference) of each."""
    table = np.zeros((len(ROW), len(wheels)))
    for name, at in (("nominal_width_mm", 1), ("rim_code", 2), ("rim_width_in", 3)):
        table[ROW[name]] = [each[at] for each in wheels]
    table[ROW["commercial"]] = [each[0] == VAN for each in wheels]
    return AxleFound(
        Wheels(table, np.array([each[0] for each in wheels], np.intp), np.zeros(len(wheels), np.intp)),
        np.array([float(each[4]) for each in wheels]),
        np.zeros(len(wheels)) if merit is None else np.array(merit, np.float64),
        len(wheels),
        Counter(),
    )


def joined(fronts, rears, asks, changes=None):
    """Return the pairs that stay and what the others were sent away for."""
    made = join(case(changed(saloon(), changes or {})), found(*fronts), found(*rears), SIZES, asks)
    pairs = list(zip(made.front_at.tolist(), made.rear_at.tolist(), strict=True))
    assert made.tried == len(fronts) * len(rears) == len(pairs) + sum(made.removed.values())
    return pairs, {code: count for code, count in made.removed.items() if count}


NOW = (SUMMER, 225.0, 17.0, 7.5, 1935.0)


def test_a_pair_turns_as_now_to_the_limit_and_no_further():
    # 1 % of 1935 mm are 19.35 mm, whichever axle it is that turns otherwise.
    near, far = (SUMMER, 225.0, 17.0, 7.5, 1935.0 * 1.0099), (SUMMER, 225.0, 17.0, 7.5, 1935.0 * 1.0102)
    asks = PairAsks("any", 1.0, mixed=True)
    assert joined([NOW], [NOW, near, far], asks) == ([(0, 0), (0, 1)], {"limits.axle_ratio_percent": 1})
    assert joined([far, NOW, near], [NOW], asks) == ([(1, 0), (2, 0)], {"limits.axle_ratio_percent": 1})
    # A limit of naught is reached exactly by what turns as now.
    assert joined([NOW], [NOW, near], PairAsks("any", 0.0, mixed=True))[0] == [(0, 0)]


@pytest.mark.parametrize(
    ("asks", "pairs", "removed"),
    [
        (PairAsks("any", 1.0, mixed=True), 9, {}),
        # A van's tyre is counted as that first, whatever its season.
        (PairAsks("any", 1.0, mixed=False), 3, {"search.class_mix": 4, "search.season_mix": 2}),
        (PairAsks("square", 1.0, mixed=True), 3, {"limits.stagger": 6}),
        (PairAsks("square", 1.0, mixed=False), 3, {"search.class_mix": 4, "search.season_mix": 2}),
    ],
)
def test_season_kind_and_size_are_asked_in_that_order(asks, pairs, removed):
    wheels = [(size, *NOW[1:]) for size in (SUMMER, WINTER, VAN)]
    stay, sent_away = joined(wheels, wheels, asks)
    assert (len(stay), sent_away) == (pairs, removed)


def test_a_staggered_car_keeps_by_how_much_its_rear_is_wider_and_its_rim_larger():
    wider = {"/vehicle/rear/fitted/tyre/size": "245/40 R18 97W XL", "/vehicle/rear/fitted/rim/size": "8.5J x 18 ET45"}
    wheels = [(SUMMER, width, code, 8.0, 1935.0) for width, code in product((225.0, 245.0), (17.0, 18.0))]
    stay, sent_away = joined(wheels, wheels, PairAsks("keep", 5.0, mixed=True), wider)
    # 225 on 17 in front goes with 245 on 18 in behind, and nothing else is 20 mm and one inch more.
    assert (stay, sent_away) == ([(0, 3)], {"limits.stagger": 15})


@pytest.mark.parametrize(
    ("stagger", "rear", "pairs"),
    [
        ("square", "7.5J x 17 H2 ET45", 2),
        ("keep", "7.5J x 17 H2 ET45", 2),
        ("any", "7.5J x 17 H2 ET45", 4),
        # The car's rims differ already.
        ("square", "8J x 17 H2 ET45", 4),
    ],
)
def test_rims_of_one_width_stay_so(stagger, rear, pairs):
    wheels = [(SUMMER, 225.0, 17.0, width, 1935.0) for width in (7.0, 7.5)]
    stay, sent_away = joined(
        wheels, wheels, PairAsks(stagger, 1.0, mixed=False), {"/vehicle/rear/fitted/rim/size": rear}
    )
    assert len(stay) == pairs
    assert sent_away == ({"search.rim_width_mix": 4 - pairs} if pairs < 4 else {})


@pytest.mark.parametrize(("count", "left_out"), [(599, 0), (600, 0), (601, 1), (640, 40)])
def test_of_more_than_600_wheels_the_best_go_on_in_their_order(count, left_out):
    # The greater the better: those left out are the first ones.
    made = best(found(*[(at, *NOW[1:4], float(at)) for at in range(count)], merit=range(count)))
    assert made.wheels.size_at.tolist() == made.circumference_mm.tolist() == list(range(left_out, count))
    assert made.merit.tolist() == list(range(left_out, count))
    assert made.removed == (Counter({"search.not_joined": left_out}) if left_out else Counter())


def test_of_wheels_as_good_as_each_other_the_first_go_on():
    made = best(found(*[(at, *NOW[1:]) for at in range(601)]))
    assert made.wheels.size_at.tolist() == list(range(600))


def test_of_more_than_ten_thousand_pairs_those_are_graded_whose_worse_wheel_is_best():
    # 101 x 100 pairs: a pair is no better than its worse wheel, so the worst front wheel loses its hundred.
    for worst in (0, 57, 100):
        merit = [-1.0 if at == worst else 5.0 for at in range(101)]
        front, rear = found(*[NOW] * 101, merit=merit), found(*[NOW] * 100, merit=[9.0] * 100)
        made = join(case(), front, rear, SIZES, PairAsks("any", 1.0, mixed=True))
        assert (len(made.front_at), made.removed["search.not_graded"], made.tried) == (10_000, 100, 10_100)
        assert worst not in made.front_at
        # The caller's order stays.
        assert (np.diff(made.front_at * 100 + made.rear_at) > 0).all()


def test_where_an_axle_has_no_wheel_there_is_no_pair():
    assert joined([NOW], [], PairAsks("any", 1.0, mixed=False)) == ([], {})
    assert joined([], [NOW], PairAsks("any", 1.0, mixed=False)) == ([], {})


def merits(rank_by, front, rear):
    """Return what each axle alone says of a measure, with these tyres on the present rims."""
    one = case()
    made = []
    for axle, text in ((one.vehicle.front, front), (one.vehicle.rear, rear)):
        sizes = stock([parse_tyre(text)])
        services = service_table(sizes, axle, one.vehicle.max_speed_kmh, float("nan"))
        made.append(wheels_of(sizes, services, rims("7.5J x 17 H2 ET45")))
    return [each.merit.tolist() for each in filter_axles(one, *made, AxleLimits(), rank_by)]


@pytest.mark.parametrize(
    ("rank_by", "of_more", "of_now"),
    [
        # 730 beside 670 kg: friction goes with the reserve of load to the power of 0.2 (project's estimate).
        ("dry_grip", (100.0 * ((730.0 / 670.0) ** 0.2 - 1.0),) * 2, (0.0, 0.0)),
        ("braking", (100.0 * ((730.0 / 670.0) ** 0.2 - 1.0),) * 2, (0.0, 0.0)),
        # 1460 and 1340 kg, on the front beside 960 and on the rear beside 1000 kg.
        ("load_margin", (52.083, 46.0), (39.583, 34.0)),
        # 60 kg are 2.985 steps of 3 %.
        ("closest_to_present", (-2.985, -2.985), (0.0, 0.0)),
    ],
)
def test_an_axle_alone_says_of_a_measure_what_its_own_tyres_do(rank_by, of_more, of_now):
    more, now = "225/45 R17 97W XL", "225/45 R17 94W XL"
    front, rear = merits(rank_by, more, now)
    assert (*front, *rear) == pytest.approx((of_more[0], of_now[1]), abs=0.001)
    front, rear = merits(rank_by, now, more)
    assert (*front, *rear) == pytest.approx((of_now[0], of_more[1]), abs=0.001)


def test_a_wider_tyre_gives_away_wet_reserve_and_stiffness_keeps_balance_on_its_own_axle_alone():
    wide, now = "245/45 R17 94W XL", "225/45 R17 94W XL"
    for rank_by in ("wet_margin", "balance"):
        front, rear = merits(rank_by, wide, now)
        assert front[0] < 0.0 == rear[0]
        front, rear = merits(rank_by, now, wide)
        assert rear[0] < 0.0 == front[0]
