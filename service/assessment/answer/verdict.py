"""From the outcomes of findings to one verdict: the worst outcome decides, and each leads to one verdict."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

import numpy as np

from service.core.findings import Finding, Outcomes

Verdict = Literal["suitable", "suitable_with_conditions", "undetermined", "not_recommended", "unsuitable"]

SUITABLE, WITH_CONDITIONS, UNDETERMINED, NOT_RECOMMENDED, UNSUITABLE = range(5)
VERDICTS: tuple[Verdict, ...] = (
    "suitable",
    "suitable_with_conditions",
    "undetermined",
    "not_recommended",
    "unsuitable",
)
# By outcome code: met, open, advisory, not assessed, not recommended, not met.
_MEANS = (SUITABLE, SUITABLE, WITH_CONDITIONS, UNDETERMINED, NOT_RECOMMENDED, UNSUITABLE)


def verdict_of(worst: Finding) -> Verdict:
    """Return the verdict that the worst finding gives; `worst_first` says which one that is."""
    return VERDICTS[_MEANS[worst.outcome]]


def verdict_codes(worst: Outcomes) -> Outcomes:
    """Return the verdict of each candidate by its worst outcome, as indices into `VERDICTS`."""
    return np.array(_MEANS, np.int8)[worst]


def worst_first(findings: Sequence[Finding]) -> list[Finding]:
    """Return the findings, worst first; those alike stay in the order of the questions."""
    return sorted(findings, key=lambda each: -each.outcome)
