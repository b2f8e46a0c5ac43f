"""From the outcomes of findings to one verdict; the order of outcomes stands here and nowhere else."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from service.assessment.checks import REQUIRED
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, Finding

Verdict = Literal["suitable", "suitable_with_conditions", "undetermined", "unsuitable"]

SUITABLE, WITH_CONDITIONS, UNDETERMINED, UNSUITABLE = 0, 1, 2, 3
VERDICTS: tuple[Verdict, ...] = ("suitable", "suitable_with_conditions", "undetermined", "unsuitable")
_WORST_FIRST = {NOT_MET: 0, ADVISORY: 2, MET: 4}


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


def _rank(finding: Finding) -> int:
    if finding.outcome == NOT_ASSESSED:
        return 1 if finding.code in REQUIRED else 3
    return _WORST_FIRST[finding.outcome]


def worst_first(findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, worst first: not met, open required questions, advisories, other open ones, met."""
    return sorted(findings, key=_rank)
