"""The vocabulary of an answer: outcomes, bases, remedies, estimates, findings.

Outcomes are small whole numbers so that one wheel and a million grade alike; `worst` alone says which of
several counts. Named tuples, because some forty findings are made for every answer.
"""

from __future__ import annotations

from itertools import product
from typing import Generic, Literal, NamedTuple, cast

import numpy as np
from numpy.typing import NDArray

from service.core.numeric import BoolArray, Num

Outcomes = NDArray[np.int8]
Holds = bool | BoolArray

OutcomeName = Literal["met", "advisory", "not_assessed", "not_recommended", "not_met"]

# In order of weight: the largest decides the verdict. Two of them are shown as "not assessed": an open question that
# decides nothing, and one that somebody must settle first.
MET = 0
OPEN = 1
ADVISORY = 2
NOT_ASSESSED = 3
NOT_RECOMMENDED = 4
NOT_MET = 5
OUTCOME_NAMES: tuple[OutcomeName, ...] = (
    "met",
    "not_assessed",
    "advisory",
    "not_assessed",
    "not_recommended",
    "not_met",
)

AxleName = Literal["front", "rear"]
Where = Literal["front", "rear", "vehicle"]
BasisKind = Literal["regulation", "standard", "published_model", "common_practice", "project_estimate"]
BasisStatus = Literal["read", "second_hand", "memory", "derived", "own"]

_WORST_FIRST = tuple(np.int8(code) for code in (NOT_MET, NOT_RECOMMENDED, NOT_ASSESSED, ADVISORY, OPEN))
# What counts of every combination: a single check asks forty times an answer.
_OF_ONE: dict[tuple[Holds, ...], int] = {
    told: next((int(code) for holds, code in zip(told, _WORST_FIRST, strict=True) if holds), MET)
    for told in product((False, True), repeat=5)
}


def worst(
    *,
    not_met: Holds = False,
    not_recommended: Holds = False,
    not_assessed: Holds = False,
    advisory: Holds = False,
    open_question: Holds = False,
) -> int:
    """Return the outcome that counts, worst first, and MET where none holds; element by element for arrays.

    For arrays it is an array of `Outcomes`: no type variable ties an int to arrays of small ones, so this says int.
    """
    told = (not_met, not_recommended, not_assessed, advisory, open_question)
    try:
        return _OF_ONE[told]
    except TypeError:
        # An array has no hash, so this is about many: each code goes over the milder ones.
        outcome = np.zeros((), np.int8)
        for holds, code in zip(reversed(told), reversed(_WORST_FIRST), strict=True):
            if holds is not False:
                outcome = np.where(holds, code, outcome)
        return cast("int", outcome)


def is_open(outcome: int) -> bool:
    """Return whether a question was not answered, be it that the verdict waits for it or not."""
    return outcome in (OPEN, NOT_ASSESSED)


class Estimate(NamedTuple, Generic[Num]):
    """An estimated quantity with the band in which the true one is expected."""

    value: Num
    low: Num
    high: Num


class Basis(NamedTuple):
    """What a finding rests on: kind, the document's key in `core/sources.py`, the place in it, how far it was read.

    `reference` is all of it in words, with edition and day checked; `place` is empty for the document as a whole.
    """

    kind: BasisKind
    source: str
    place: str
    status: BasisStatus
    reference: str


class Remedy(NamedTuple):
    """The least change that settles a finding, in words and as data.

    `pointer` is an RFC 6901 pointer into the request; `quantity` names what must change there
    (`load_index`, `offset_mm`, `rim_width_in`, `pressure_kpa`, or the field itself).
    """

    text: str
    pointer: str
    quantity: str
    at_least: float | None = None
    at_most: float | None = None
    equals: str | None = None
    unit: str | None = None


class Finding(NamedTuple):
    """One answered question: where, how it came out, the number, its limit, and what the limit rests on."""

    code: str
    axle: Where
    outcome: int
    message: str
    measured: float | None
    limit: float | None
    unit: str | None
    basis: Basis
    remedy: Remedy | None = None
    already: bool = False
    """Whether the present fitment has it too, and no less."""
    holds_within_tolerance: bool | None = None
    """Whether it comes out so at either end of what was measured; None where no stated tolerance bears on it."""
