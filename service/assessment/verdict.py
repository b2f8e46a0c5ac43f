"""From the outcomes of findings to one verdict; the order of outcomes stands here and nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from service.assessment.checks import REQUIRED
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, Finding

Verdict = Literal["suitable", "suitable_with_conditions", "undetermined", "unsuitable"]

SUITABLE, WITH_CONDITIONS, UNDETERMINED, UNSUITABLE = 0, 1, 2, 3
VERDICTS: tuple[Verdict, ...] = ("suitable", "suitable_with_conditions", "undetermined", "unsuitable")
# By outcome code (met, advisory, not assessed, not met): first for other questions, then for required ones.
_PLACES = ((4, 2, 3, 0), (4, 2, 1, 0))
LAST_PLACE = 4


def verdict_code(outcome: int, *, required: bool) -> int:
    """Return what one outcome means for the verdict; the verdict is the largest. Floats or arrays alike."""
    open_question = UNDETERMINED if required else SUITABLE
    return (
        UNSUITABLE * (outcome == NOT_MET)
        + open_question * (outcome == NOT_ASSESSED)
        + WITH_CONDITIONS * (outcome == ADVISORY)
    )


def verdict_of(findings: Sequence[Finding]) -> Verdict:
    """Return the verdict on a list of findings."""
    return VERDICTS[max(verdict_code(each.outcome, required=each.code in REQUIRED) for each in findings)]


def places(*, required: bool) -> tuple[int, ...]:
    """Return by outcome code where a finding stands: 0 first, `LAST_PLACE` for what is met."""
    return _PLACES[required]


def _place(finding: Finding) -> int:
    return places(required=finding.code in REQUIRED)[finding.outcome]


def worst_first(findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, worst first: not met, open required questions, advisories, other open ones, met."""
    return sorted(findings, key=_place)
