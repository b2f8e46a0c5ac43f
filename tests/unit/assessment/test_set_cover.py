"""The smallest set of sets against all subsets tried one by one, and the greedy choice against its known bound.

Source: the definition (fewest sets whose union is the whole); the bound H(n) by Chvatal, Mathematics of Operations
Research 4 (1979), from memory.
"""

from itertools import combinations
from random import Random

import pytest

from service.assessment.batch.set_cover import ALWAYS_EXACT, smallest_cover
from tests.support.effort import cases


def union(sets):
    whole = 0
    for each in sets:
        whole |= each
    return whole


def by_trying_all(costs):
    """Return how many sets the smallest cover has, and the least that one of so many costs."""
    whole = union(costs)
    for count in range(len(costs) + 1):
        covers = [chosen for chosen in combinations(costs, count) if union(chosen) == whole]
        if covers:
            return count, min(tuple(sum(costs[each][at] for each in chosen) for at in range(2)) for chosen in covers)
    raise AssertionError("all sets together cover what they cover")


def some_sets(seed, things, sets):
    chance = Random(seed)
    return {
        union(1 << chance.randrange(things) for _ in range(chance.randint(1, 4))): (
            float(chance.randint(0, 3)),
            float(chance.randint(0, 9)),
        )
        for _ in range(sets)
    }


@pytest.mark.parametrize("seed", range(cases(30, 600)))
def test_up_to_twelve_things_are_covered_by_the_fewest_and_cheapest_sets(seed):
    costs = some_sets(seed, 3 + seed % 10, 4 + seed % 9)
    found = smallest_cover(costs)
    assert found.exact
    assert union(found.chosen) == found.covered == union(costs)
    spent = tuple(sum(costs[each][at] for each in found.chosen) for at in range(2))
    assert (len(found.chosen), spent) == by_trying_all(costs)


@pytest.mark.parametrize("seed", range(5))
def test_twelve_things_with_very_many_sets_are_still_exact(seed):
    assert smallest_cover(some_sets(seed, ALWAYS_EXACT, 3000)).exact


def test_beyond_twelve_things_very_many_sets_are_not_all_tried():
    assert not smallest_cover(some_sets(1, 13, 20_000)).exact


def test_nothing_is_covered_by_nothing():
    assert smallest_cover({}) == ((), 0, True)


def test_beyond_twelve_a_greedy_cover_says_so_and_keeps_to_its_bound():
    chance = Random(1)
    things = range(48)
    costs = {union(1 << each for each in chance.sample(things, 5)): (0.0,) for _ in range(400)}
    # Ten sets that serve all are hidden among them.
    costs |= {union(1 << each for each in things[start : start + 5]): (0.0,) for start in range(0, 48, 5)}
    found = smallest_cover(costs)
    assert not found.exact
    assert union(found.chosen) == found.covered == 2**48 - 1
    # A set of five is chosen at most H(5) = 137/60 times as often as in the least cover, which has no more than ten.
    assert len(found.chosen) <= 137 / 60 * 10
    # None is there for nothing: each serves something that those before it do not.
    served = 0
    for each in found.chosen:
        assert each & ~served
        served |= each


def test_of_sets_that_serve_as_many_the_greedy_choice_takes_the_cheapest():
    chance = Random(2)
    costs = {union(1 << each for each in chance.sample(range(48), 5)): (1.0,) for _ in range(400)}
    dear, cheap, fewer = 2**9 - 1, (2**9 - 1) << 20, (2**8 - 1) << 30
    found = smallest_cover(costs | {dear: (2.0,), cheap: (1.0,), fewer: (0.0,)})
    assert not found.exact
    assert found.chosen[:2] == (cheap, dear)


def test_a_set_that_serves_all_is_the_cover():
    assert smallest_cover({0b111: (5.0,), 0b011: (0.0,), 0b100: (0.0,)}).chosen == (0b111,)
