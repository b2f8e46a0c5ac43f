"""Which combinations may a test tell apart, and how many repeats does that take?

Two are told apart by an effect where their bands against the present fitment do not overlap and the likely difference
is worth a test. How large it is, is computed from one to the other, so that what both have in common is counted once.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf, isfinite
from typing import NamedTuple

import numpy as np

from service.assessment.batch.grading import Graded, as_column
from service.assessment.batch.plan_between import between
from service.assessment.batch.plan_case import PlanAsked
from service.assessment.batch.plan_effects import EFFECT_NAMES, EFFECTS, EffectName, effects_of
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, Number, known
from service.physics.repeats import repeats_needed

Bands = Mapping[EffectName, Sequence[Estimate[float]]]
"""For each effect its estimate for each combination."""
REFERENCE = -1
"""Stands for the present fitment."""


class Difference(NamedTuple):
    """An effect in which two combinations differ by what a test may show."""

    effect: EffectName
    difference: Estimate[float]
    """The second less the first."""
    repeats: float
    """Tests of each; NaN where no repeatability is stated."""


class Pair(NamedTuple):
    """Two combinations by their places, `REFERENCE` for the present fitment."""

    first: int
    second: int
    apart: tuple[Difference, ...]
    alike: tuple[EffectName, ...]
    """Whose bands overlap, or whose difference is too small to look for."""


class Repeats(NamedTuple):
    """How many tests of each combination one effect takes."""

    effect: EffectName
    standard_deviation: float
    pairs_apart: int
    for_greatest: float
    """For the greatest difference that may be hoped for; infinite where there is none."""
    for_all: float
    """For the smallest of them."""


def bands_of(effects: Mapping[EffectName, Estimate[Number]], size: int) -> dict[EffectName, list[Estimate[float]]]:
    """Return the effects of many combinations one by one."""
    found = {}
    for name, estimate in effects.items():
        ends: list[list[float]] = [as_column(end, (size,)).tolist() for end in estimate]
        found[name] = [Estimate(*each) for each in zip(*ends, strict=True)]
    return found


def pairs_of(graded: Graded, bands: Bands, asked: PlanAsked) -> list[Pair]:
    """Return every pair, those with the present fitment first."""
    size = graded.verdicts.size
    none = Estimate(0.0, 0.0, 0.0)
    found = [
        _pair(REFERENCE, at, {name: (none, bands[name][at], bands[name][at]) for name in EFFECT_NAMES}, asked)
        for at in range(size)
    ]
    first, second = np.triu_indices(size, 1)
    if not len(first):
        return found
    changes = bands_of(effects_of(between(graded, first, second)), len(first))
    for place, (one, other) in enumerate(zip(first.tolist(), second.tolist(), strict=True)):
        sides = {name: (bands[name][one], bands[name][other], changes[name][place]) for name in EFFECT_NAMES}
        found.append(_pair(one, other, sides, asked))
    return found


def _pair(
    first: int,
    second: int,
    sides: Mapping[EffectName, tuple[Estimate[float], Estimate[float], Estimate[float]]],
    asked: PlanAsked,
) -> Pair:
    apart: list[Difference] = []
    alike: list[EffectName] = []
    for name, (one, other, change) in sides.items():
        if not known(change.value):
            continue
        if overlap(one, other) or abs(change.value) < EFFECTS[name].least:
            alike.append(name)
        else:
            apart.append(Difference(name, change, _repeats(change.value, name, asked)))
    return Pair(first, second, tuple(apart), tuple(alike))


def overlap(one: Estimate[float], other: Estimate[float]) -> bool:
    """Return whether two bands have a value in common."""
    return one.low <= other.high and other.low <= one.high


def _repeats(size: float, name: EffectName, asked: PlanAsked) -> float:
    spread = asked.repeatability.get(name, UNKNOWN)
    return repeats_needed(size, spread, asked.confidence, asked.power) if known(spread) else UNKNOWN


def repeats_of(pairs: Sequence[Pair], asked: PlanAsked) -> list[Repeats]:
    """Return for each effect whose repeatability is stated how many tests it takes."""
    found = []
    for name in EFFECT_NAMES:
        if name in asked.repeatability:
            counts = [each.repeats for pair in pairs for each in pair.apart if each.effect == name]
            found.append(
                Repeats(
                    name,
                    asked.repeatability[name],
                    len(counts),
                    min(counts, default=inf),
                    max(counts, default=inf),
                )
            )
    return found


def blocks_of(repeats: Sequence[Repeats]) -> float:
    """Return how often the whole order should be driven: so that every effect shows its greatest difference."""
    return max((each.for_greatest for each in repeats if isfinite(each.for_greatest)), default=UNKNOWN)
