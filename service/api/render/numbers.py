"""Numbers on their way out: rounded many at once, by name, and absent where they are not known."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import repeat
from math import isnan
from typing import Any, Final

Json = dict[str, Any]

WHOLE: Final = 1.5 * 2.0**52
"""So large that a float has no room for fractions beside it: added and taken away again, it rounds to whole numbers."""


def scale(decimals: Iterable[int]) -> tuple[float, ...]:
    """Return what `rounded` multiplies numbers by to keep these decimals."""
    return tuple(10.0**each for each in decimals)


def rounded(numbers: Iterable[float], scaled_by: Iterable[float]) -> list[float]:
    """Return the numbers with as many decimals as their scales have zeros, halves to even, no zero with a sign.

    `round` would write and read decimal text for each of the three hundred numbers of an answer.
    """
    return [(each * by + WHOLE - WHOLE) / by for each, by in zip(numbers, scaled_by, strict=False)]


def to_hundredths(number: float) -> float:
    """Return one number with two decimals, rounded likewise."""
    return (number * 100.0 + WHOLE - WHOLE) / 100.0


HUNDREDTHS: Final = repeat(100.0)


class Layout:
    """Names for a row of numbers: plain ones first, then estimates of three numbers each, with their decimals."""

    __slots__ = ("_plain", "estimates", "scale")

    def __init__(self, plain: Mapping[str, int], estimates: Mapping[str, int]) -> None:
        self._plain = tuple(plain)
        self.estimates = tuple(estimates)
        self.scale = scale((*plain.values(), *(each for each in estimates.values() for _ in range(3))))

    def named(self, numbers: Sequence[float]) -> Json:
        """Return the rounded numbers that are known under their names."""
        ends = iter(numbers)
        shown: Json = dict(zip(self._plain, ends, strict=False))
        if isnan(sum(shown.values())):
            shown = {name: value for name, value in shown.items() if not isnan(value)}
        for name, value, low, high in zip(self.estimates, ends, ends, ends, strict=False):
            if not isnan(value):
                shown[name] = {"value": value, "low": low, "high": high}
        return shown
