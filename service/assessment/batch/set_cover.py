"""The fewest sets that together serve all that is asked: exact for up to twelve things to serve, and mostly beyond.

References
----------
.. The greedy choice needs at most H(n) times as many sets as the least (Chvatal, A greedy heuristic for the
   set-covering problem, Mathematics of Operations Research 4, 1979; from memory).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

# So many things to serve are at most 4,096 states, which are all looked at if need be.
ALWAYS_EXACT = 12
# Beyond them so many steps are tried before the greedy choice is taken: some tens of milliseconds.
MOST_STEPS = 20_000

Cost = tuple[float, ...]
"""What a set costs besides being one more: compared member by member, added member by member."""
Way = tuple[int, Cost, tuple[int, ...]]
"""How many sets, what they cost, and which."""


class Cover(NamedTuple):
    """The sets chosen, as bits of what each serves."""

    chosen: tuple[int, ...]
    covered: int
    exact: bool


def smallest_cover(costs: Mapping[int, Cost]) -> Cover:
    """Return the fewest sets that together serve all that any of them serves, the cheapest of as few.

    `costs` holds for each set, as bits, what it costs; costs are of equal length.
    """
    whole = 0
    for bits in costs:
        whole |= bits
    chosen = _exact(costs, whole)
    if chosen is None:
        return Cover(_greedy(costs, whole), whole, exact=False)
    return Cover(chosen, whole, exact=True)


def _exact(costs: Mapping[int, Cost], whole: int) -> tuple[int, ...] | None:
    """Return the best cover, None where it takes too many steps.

    One set more at a time, from each state of what is served the best way only. The set that comes next serves the
    rarest thing left: every cover has one that does, and the order of the others does not matter.
    """
    serving = _rarest_first(costs, whole)
    seen: set[int] = {0}
    newest: dict[int, Way] = {0: (0, (), ())}
    steps = 0
    while whole not in newest:
        found: dict[int, Way] = {}
        for served, (count, spent, chosen) in newest.items():
            rarest = next(sets for bit, sets in serving if not served & bit)
            steps += len(rarest)
            for bits in rarest:
                reached = served | bits
                way = count + 1, _added(spent, costs[bits]), (*chosen, bits)
                if reached not in seen and (reached not in found or way < found[reached]):
                    found[reached] = way
        if steps > MOST_STEPS and whole.bit_count() > ALWAYS_EXACT:
            return None
        seen.update(found)
        newest = found
    return newest[whole][2]


def _rarest_first(costs: Mapping[int, Cost], whole: int) -> Sequence[tuple[int, list[int]]]:
    """Return each thing to serve with the sets that serve it, the thing with the fewest first."""
    things = (1 << place for place in range(whole.bit_length()))
    serving = [(thing, sorted(bits for bits in costs if bits & thing)) for thing in things if whole & thing]
    return sorted(serving, key=lambda each: len(each[1]))


def _added(spent: Cost, cost: Cost) -> Cost:
    return tuple(map(sum, zip(spent, cost, strict=True))) if spent else cost


def _greedy(costs: Mapping[int, Cost], whole: int) -> tuple[int, ...]:
    """Return a cover by taking each time the set that serves most of what is left, the cheapest of those alike."""
    left, chosen = whole, []
    while left:
        most = min(costs, key=lambda bits: (-(bits & left).bit_count(), costs[bits], bits))
        chosen.append(most)
        left &= ~most
    return tuple(chosen)
