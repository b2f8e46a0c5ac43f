"""The form of a check: a grade in numbers (one case or a million), and its explanation in words (one case).

Both paths, the single check and the arrays of compare, search and sweep, call the same `grade`; only
the single check calls `explain`. A grade takes a view of either, so it asks only what answers both: comparisons,
`known`, `unknown`, `pick`, `worst`, never an `if` on a value.
"""

from __future__ import annotations

from collections.abc import Callable, Container
from math import isnan
from typing import Generic, NamedTuple, Protocol

from service.assessment.view.views import AxleView, CarView
from service.core.findings import Basis, Finding, Where
from service.core.numeric import Num, known

# A limit reached exactly (1.5 % of 600 mm) must not fail by the last bit of a float.
LAST_BIT = 1e-9


class Grade(NamedTuple, Generic[Num]):
    """How a question came out: outcome code, the number found, the limit it was held against (NaN: none)."""

    outcome: int
    """An array of `Outcomes` for many, see `worst`."""
    measured: Num
    limit: Num


class AxleFigure(Protocol):
    """A figure of an axle, of one wheel or of many."""

    def __call__(self, view: AxleView[Num], /) -> Num:
        """Return the figure."""


class CarFigure(Protocol):
    """A figure of the whole vehicle, with one candidate or with many."""

    def __call__(self, car: CarView[Num], /) -> Num:
        """Return the figure."""


class AxleGrade(Protocol):
    """How a question to an axle came out, for one wheel or for many."""

    def __call__(self, view: AxleView[Num], /) -> Grade[Num]:
        """Return the grade."""


class CarGrade(Protocol):
    """How a question to the whole vehicle came out, for one candidate or for many."""

    def __call__(self, car: CarView[Num], /) -> Grade[Num]:
        """Return the grade."""


class AxleCheck(NamedTuple):
    """One question to an axle: its code, the grade and the words."""

    code: str
    grade: AxleGrade
    explain: Callable[[AxleView, Grade], Finding]


class CarCheck(NamedTuple):
    """One question to the whole vehicle."""

    code: str
    grade: CarGrade
    explain: Callable[[CarView, Grade], Finding]
    where: Where = "vehicle"
    """Of what it speaks."""


Place = tuple[str, Where]
"""The code of a question and where it is asked."""


class _Everywhere:
    def __contains__(self, place: object) -> bool:
        """Return whether a question is among all of them."""
        return True


EVERYWHERE: Container[Place] = _Everywhere()

# A finding without words rests on nothing that anybody is shown.
_UNSAID = Basis("project_estimate", "", "", "own", "")


def unsaid(code: str, where: Where, grade: Grade) -> Finding:
    """Return a finding without its words: most questions are met, and a short answer tells of none of them."""
    outcome, measured, limit = grade
    return Finding(
        code, where, outcome, "", None if isnan(measured) else measured, None if isnan(limit) else limit, None, _UNSAID
    )


def finite(value: float) -> float | None:
    """Return the number for an answer, None where it is not known."""
    return float(value) if known(value) else None
