"""From the outcomes of findings to one verdict; the order of outcomes stands here and nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal, overload

import numpy as np

from service.assessment.checks import REQUIRED
from service.core.findings import Finding, Outcomes

Verdict = Literal["suitable", "suitable_with_conditions", "undetermined", "unsuitable"]

SUITABLE, WITH_CONDITIONS, UNDETERMINED, UNSUITABLE = 0, 1, 2, 3
VERDICTS: tuple[Verdict, ...] = ("suitable", "suitable_with_conditions", "undetermined", "unsuitable")
# By outcome code (met, advisory, not assessed, not met): first for other questions, then for required ones.
_PLACES = ((4, 2, 3, 0), (4, 2, 1, 0))
_CODES = (
    (SUITABLE, WITH_CONDITIONS, SUITABLE, UNSUITABLE),
    (SUITABLE, WITH_CONDITIONS, UNDETERMINED, UNSUITABLE),
)
LAST_PLACE = 4


@overload
def verdict_code(outcome: int, *, required: bool) -> int: ...
@overload
def verdict_code(outcome: Outcomes, *, required: bool) -> Outcomes: ...
def verdict_code(outcome: int | Outcomes, *, required: bool) -> int | Outcomes:
    """Return what one outcome, or each of many, means for the verdict; the verdict is the largest."""
    codes = _CODES[required]
    return codes[outcome] if isinstance(outcome, int) else np.array(codes, np.int8)[outcome]


def verdict_of(worst: Finding) -> Verdict:
    """Return the verdict that the worst finding gives; `order` says which one that is."""
    return VERDICTS[verdict_code(worst.outcome, required=worst.code in REQUIRED)]


def places(*, required: bool) -> tuple[int, ...]:
    """Return by outcome code where a finding stands: 0 first, `LAST_PLACE` for what is met."""
    return _PLACES[required]


def order(findings: Sequence[Finding]) -> list[int]:
    """Return the places of the findings, worst first: not met, open required questions, advisories, other open, met."""
    ranks = [_PLACES[each.code in REQUIRED][each.outcome] for each in findings]
    return sorted(range(len(ranks)), key=ranks.__getitem__)
