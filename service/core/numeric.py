"""One arithmetic for one wheel and for a million: functions that accept a float or an array alike.

A quantity that is not known is NaN on both paths. Comparisons with NaN are false, so an unknown
never passes for a number; `unknown` is the only way to ask.
"""

from __future__ import annotations

import math
from typing import TypeVar, cast

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
Num = TypeVar("Num", float, FloatArray)

UNKNOWN = math.nan


def larger(first: Num, second: Num) -> Num:
    """Return the larger of two quantities, element by element; the first where either is NaN."""
    if isinstance(first, float) and isinstance(second, float):
        return second if second > first else first
    return cast("Num", np.where(second > first, second, first))


def smaller(first: Num, second: Num) -> Num:
    """Return the smaller of two quantities, element by element; the first where either is NaN."""
    if isinstance(first, float) and isinstance(second, float):
        return second if second < first else first
    return cast("Num", np.where(second < first, second, first))


def known_or(first: Num, second: Num) -> Num:
    """Return the first quantity where it is known, else the second."""
    if isinstance(first, float) and isinstance(second, float):
        return first if first == first else second
    return cast("Num", np.where(first == first, first, second))


def round_half_up(value: Num) -> Num:
    """Return the nearest whole number, halves rounded up as the standards do (82.5 -> 83)."""
    return (value + 0.5) // 1.0


def pick(condition: object, yes: Num, no: Num) -> Num:
    """Return `yes` where the condition holds, else `no`, element by element."""
    if isinstance(condition, bool):
        return yes if condition else no
    return cast("Num", np.where(np.asarray(condition), yes, no))


def natural_log(value: Num) -> Num:
    """Return the natural logarithm."""
    if isinstance(value, float):
        return math.log(value)
    return cast("Num", np.log(value))


def exponential(value: Num) -> Num:
    """Return e to the power of the value."""
    if isinstance(value, float):
        return math.exp(value)
    return cast("Num", np.exp(value))
