"""The scale of an axis of a plot: from what to what it runs, where its ticks stand, and where a value does."""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil, floor, log10
from typing import Final, NamedTuple

PADDING: Final = 0.06
"""How much of its span a scale leaves free at either end."""
MOST_TICKS: Final = 6
_ROUND: Final = (1.0, 2.0, 5.0, 10.0)


class AxisScale(NamedTuple):
    """An axis from `low` to `high`, drawn from `start` to `end` [mm]; ticks stand `step` apart."""

    low: float
    high: float
    start: float
    end: float
    step: float

    @classmethod
    def made(cls, values: Iterable[float], least_span: float, ends: tuple[float, float]) -> AxisScale:
        """Return the scale that holds zero and these values, and spans no less than `least_span`."""
        held = [0.0, *values]
        low, high = min(held), max(held)
        lacking = 0.5 * max(0.0, least_span - (high - low))
        free = lacking + PADDING * max(high - low, least_span)
        low, high = low - free, high + free
        return cls(low, high, *ends, _step((high - low) / MOST_TICKS))

    def at(self, value: float) -> float:
        """Return where a value stands [mm]."""
        return self.start + (value - self.low) / (self.high - self.low) * (self.end - self.start)

    @property
    def ticks(self) -> list[float]:
        """Return the values at which ticks stand, zero among them."""
        first, last = ceil(self.low / self.step), floor(self.high / self.step)
        return [place * self.step for place in range(first, last + 1)]

    @property
    def digits(self) -> int:
        """Return how many decimals the ticks need."""
        return max(0, -floor(log10(self.step)))


def _step(least: float) -> float:
    """Return the round number next above."""
    power = 10.0 ** floor(log10(least))
    return next(each * power for each in _ROUND if each * power >= least * (1.0 - 1e-9))
