"""Which missing fact would settle or narrow the most, found by varying each between what is plausible.

Nothing is ranked by a fixed list: every fact that the caller did not give is set to its two plausible ends, the
questions are asked again, and what comes out differently is what the fact decides.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import NamedTuple

from service.assessment.answer.already import weighed
from service.assessment.answer.every_question import graded
from service.assessment.answer.missing_facts import Missing, missing_facts
from service.assessment.case import Case
from service.assessment.view.views import CarView
from service.core.findings import NOT_ASSESSED, Estimate, Where
from service.core.numeric import known

MOST_ROWS = 8
ESTIMATES: Mapping[str, Callable[[CarView], Estimate[float]]] = MappingProxyType(
    {
        "balance": lambda car: car.change.gradient_deg_per_g,
        "braking_distance_percent": lambda car: car.driving.braking_distance_percent,
        "front_wet_reserve_percent": lambda car: car.driving.front.wet_reserve_proposed,
        "rear_wet_reserve_percent": lambda car: car.driving.rear.wet_reserve_proposed,
        "front_peak_grip_percent": lambda car: car.driving.front.peak_grip_percent,
        "rear_peak_grip_percent": lambda car: car.driving.rear.peak_grip_percent,
    }
)
# A number that moves by less than this share of its band is not worth a measurement: project's judgement.
WORTH_A_SHARE = 0.02
# What the verdict waits for comes before all that it does not wait for: no question's outcome weighs as much.
AWAITED = 10.0


class MeasureFirst(NamedTuple):
    """A fact worth measuring: where it goes, what it settles (codes of findings) and what it narrows (names)."""

    pointer: str
    text: str
    settles: tuple[str, ...]
    narrows: tuple[str, ...]
    effect: float
    """What the list is ordered by: what the verdict waits for, the outcomes that differ, the shares of the bands."""


def measure_first(case: Case) -> list[MeasureFirst]:
    """Return what to measure first, the most telling first; empty where every fact that matters is given."""
    now = _outcomes(case)
    found = [_effect(case, now, each) for each in missing_facts(case)]
    telling = [each for each in found if each.settles or each.narrows]
    return sorted(telling, key=lambda each: -each.effect)[:MOST_ROWS]


def _effect(case: Case, now: Mapping[tuple[str, Where], int], missing: Missing) -> MeasureFirst:
    low, high = (missing.put(case, end) for end in (missing.low, missing.high))
    at_low, at_high = _outcomes(low), _outcomes(high)
    differing = {
        (code, where): abs(at_low[code, where] - at_high[code, where])
        for code, where in at_low
        if at_low[code, where] != at_high.get((code, where), at_low[code, where])
    }
    awaited = sum(now.get(question) == NOT_ASSESSED for question in differing)
    shares = _shares(weighed(case), weighed(low), weighed(high))
    narrows = tuple(name for name, share in shares.items() if share > WORTH_A_SHARE)
    return MeasureFirst(
        pointer=missing.pointer,
        text=missing.text,
        settles=tuple(dict.fromkeys(code for code, _ in differing)),
        narrows=narrows,
        effect=AWAITED * awaited + sum(differing.values()) + 0.1 * sum(shares[name] for name in narrows),
    )


def _outcomes(case: Case) -> dict[tuple[str, Where], int]:
    return {(code, where): int(grade.outcome) for code, where, grade in graded(case, weighed(case))}


def _shares(now: CarView, low: CarView, high: CarView) -> Mapping[str, float]:
    """Return by how large a share of its band each estimate moves between the two ends."""
    found: dict[str, float] = {}
    for name, estimate in ESTIMATES.items():
        band = estimate(now).high - estimate(now).low
        moved = abs(estimate(high).value - estimate(low).value)
        if known(moved) and band > 0.0:
            found[name] = moved / band
    return found
