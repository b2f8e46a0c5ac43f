"""The five verdicts and the outcomes in the words of a heading, as report, drawing and page show them."""

from __future__ import annotations

from types import MappingProxyType
from typing import Final, NamedTuple

from service.assessment.answer.verdict import Verdict
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN

VERDICT_WORDS: Final = MappingProxyType[Verdict, str](
    {
        "suitable": "It fits",
        "suitable_with_conditions": "It fits, with conditions",
        "undetermined": "Not known yet",
        "not_recommended": "We advise against it",
        "unsuitable": "Do not fit",
    }
)


class OutcomeWords(NamedTuple):
    """A heading over the findings that came out alike: outcome code, name for style and mark, words."""

    outcome: int
    name: str
    title: str


OUTCOME_WORDS: Final = (
    OutcomeWords(NOT_MET, "not-met", "Speaks against it"),
    OutcomeWords(NOT_RECOMMENDED, "not-recommended", "Advised against"),
    OutcomeWords(NOT_ASSESSED, "not-assessed", "To be settled first"),
    OutcomeWords(ADVISORY, "advisory", "Needs attention"),
    OutcomeWords(OPEN, "open", "Open, and decides nothing"),
    OutcomeWords(MET, "met", "Answered and met"),
)
TODAY: Final = "today already"
"""Beside a finding that the present fitment has too."""
