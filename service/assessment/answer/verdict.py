"""From the outcomes of findings to one verdict; the order of outcomes stands here and nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from service.assessment.checks import REQUIRED
from service.core.findings import Finding

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


def verdict_codes(*, required: bool) -> tuple[int, ...]:
    """Return by outcome code what an outcome means for the verdict, an index into `VERDICTS`; the largest decides."""
    return _CODES[required]


def verdict_of(worst: Finding) -> Verdict:
    """Return the verdict that the worst finding gives; `worst_first` says which one that is."""
    return VERDICTS[_CODES[worst.code in REQUIRED][worst.outcome]]


def places(*, required: bool) -> tuple[int, ...]:
    """Return by outcome code where a finding stands: 0 first, `LAST_PLACE` for what is met."""
    return _PLACES[required]


def worst_first(findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, worst first: not met, open required questions, advisories, other open ones, met."""
    return sorted(findings, key=lambda each: _PLACES[each.code in REQUIRED][each.outcome])
