"""One arithmetic for one wheel and for a million: functions that accept a float or an array alike.

A quantity that is not known is NaN on both paths. Comparisons with NaN are false, so an unknown
never passes for a number; `known` and `unknown` are the only ways to ask.
"""

from __future__ import annotations

from collections.abc import Callable
from math import exp, isnan, log, nan
from typing import Protocol, cast, overload

import numpy as np
from numpy.typing import NDArray
from typing_extensions import TypeVar

FloatArray = NDArray[np.float64]
BoolArray = NDArray[np.bool_]
# What stands where arrays come through: an array, or one number where no element differs.
Number = float | FloatArray
# A type without its argument is that of one wheel.
Num = TypeVar("Num", float, Number, default=float)
Value = TypeVar("Value", int, float, Number)
# For what is only ever read: what holds one number may stand where arrays may come.
Num_co = TypeVar("Num_co", float, Number, default=float, covariant=True)

UNKNOWN = nan


@overload
def known(value: float) -> bool: ...
@overload
def known(value: FloatArray) -> BoolArray: ...
def known(value: float | FloatArray) -> bool | BoolArray:
    """Return whether a quantity is known, element by element."""
    return not isnan(value) if isinstance(value, float) else ~np.isnan(value)


@overload
def unknown(value: float) -> bool: ...
@overload
def unknown(value: FloatArray) -> BoolArray: ...
def unknown(value: float | FloatArray) -> bool | BoolArray:
    """Return whether a quantity is not known, element by element."""
    return isnan(value) if isinstance(value, float) else np.isnan(value)


class _OfAQuantity(Protocol):
    def __call__(self, value: Num, /) -> Num: ...


# A quantity without its sign: plain `abs`, whose published type forgets what either of two types gives.
magnitude = cast("_OfAQuantity", abs)


def larger(first: Num, second: Num) -> Num:
    """Return the larger of two quantities, element by element; the first where either is NaN."""
    if isinstance(first, float) and isinstance(second, float):
        return max(first, second)
    return np.where(second > first, second, first)


def smaller(first: Num, second: Num) -> Num:
    """Return the smaller of two quantities, element by element; the first where either is NaN."""
    if isinstance(first, float) and isinstance(second, float):
        return min(first, second)
    return np.where(second < first, second, first)


def known_or(first: Num, second: Num) -> Num:
    """Return the first quantity where it is known, else the second."""
    if isinstance(first, float) and isinstance(second, float):
        return second if isnan(first) else first
    return np.where(np.isnan(first), second, first)


def round_half_up(value: Num) -> Num:
    """Return the nearest whole number, halves rounded up as the standards do (82.5 -> 83)."""
    return (value + 0.5) // 1.0


def all_hold(condition: bool | BoolArray) -> bool:  # noqa: FBT001 - what a comparison of floats or arrays gives
    """Return whether a condition holds for every element."""
    return condition if isinstance(condition, bool) else bool(np.all(condition))


def pick(condition: object, yes: Value, no: Value) -> Value:
    """Return `yes` where the condition holds, else `no`, element by element."""
    if isinstance(condition, bool):
        return yes if condition else no
    # Either number may stand for a whole array of equal ones; only the condition tells, and no type says so.
    return cast("Value", np.where(np.asarray(condition), yes, no))


def natural_log(value: Num) -> Num:
    """Return the natural logarithm."""
    if isinstance(value, float):
        return log(value)
    return np.log(value)


def exponential(value: Num) -> Num:
    """Return e to the power of the value."""
    if isinstance(value, float):
        return exp(value)
    return np.exp(value)


def filled(like: Num, value: Num) -> Num:
    """Return this value in the shape of another quantity."""
    return value if isinstance(like, float) else np.full_like(like, value)


def looked_up(table: Callable[[float], tuple[float, float]], at: Num) -> tuple[Num, Num]:
    """Return the two numbers that a table gives at each quantity; equal ones are looked up once."""
    if isinstance(at, float):
        return table(at)
    distinct, place = np.unique(at, return_inverse=True)
    one, other = np.array([table(each) for each in distinct.tolist()]).reshape(len(distinct), 2).T
    return one[place], other[place]
