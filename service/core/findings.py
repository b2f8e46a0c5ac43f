"""The vocabulary of an answer: outcomes, bases, remedies, estimates, findings.

Outcomes are small whole numbers so that one wheel and a million grade alike: a check adds them up
with comparisons (`ADVISORY * (x > a) + ...`) and the worst is the largest. Named tuples, because
some forty findings are made for every answer.
"""

from __future__ import annotations

from typing import Generic, Literal, NamedTuple

from service.core.numeric import Num

MET = 0
ADVISORY = 1
NOT_ASSESSED = 2
NOT_MET = 3
OUTCOME_NAMES = ("met", "advisory", "not_assessed", "not_met")

OutcomeName = Literal["met", "advisory", "not_met", "not_assessed"]
AxleName = Literal["front", "rear"]
Where = Literal["front", "rear", "vehicle"]
BasisKind = Literal["regulation", "standard", "published_model", "common_practice", "project_estimate"]
BasisStatus = Literal["read", "second_hand", "memory", "derived", "own"]


class Estimate(NamedTuple, Generic[Num]):
    """An estimated quantity with the band in which the true one is expected."""

    value: Num
    low: Num
    high: Num


class Basis(NamedTuple):
    """What a finding rests on: kind, the reference in words (article, edition, day checked), how far it was read."""

    kind: BasisKind
    reference: str
    status: BasisStatus


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
