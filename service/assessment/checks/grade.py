"""The form of a check: a grade in numbers (one case or a million), and its explanation in words (one case).

Both paths, the single check and the arrays of compare, search and sweep, call the same `grade`; only
the single check calls `explain`. A view's types say float; on the array path the same names hold arrays
(`batch/grading.py` is the one place that puts them there), so a grade asks only what answers both: comparisons,
`known`, `unknown`, `pick`, `worst`, never an `if` on a value.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, NamedTuple, TypeVar

from service.core.findings import Finding, Where
from service.core.numeric import known

View = TypeVar("View")


# A limit reached exactly (1.5 % of 600 mm) must not fail by the last bit of a float.
LAST_BIT = 1e-9


class Grade(NamedTuple):
    """How a question came out: outcome code, the number found, the limit it was held against (NaN: none)."""

    outcome: int
    measured: float
    limit: float


class Check(NamedTuple, Generic[View]):
    """One question: its code, the grade and the words."""

    code: str
    grade: Callable[[View], Grade]
    explain: Callable[[View, Grade], Finding]
    where: Where = "vehicle"
    """Of what a question to the whole vehicle speaks; one to an axle has the place of its view."""


def finite(value: float) -> float | None:
    """Return the number for an answer, None where it is not known."""
    return float(value) if known(value) else None
