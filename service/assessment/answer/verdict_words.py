"""The five verdicts and the outcomes in the words of a heading, as report, drawing and page show them."""

from __future__ import annotations

from types import MappingProxyType
from typing import Final, NamedTuple

from service.assessment.answer.verdict import Verdict
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, OPEN
from service.core.saying import Said, say

VERDICT_WORDS: Final = MappingProxyType[Verdict, Said](
    {
        "suitable": say("It fits"),
        "suitable_with_conditions": say("It fits, with conditions"),
        "undetermined": say("Not known yet"),
        "not_recommended": say("We advise against it"),
        "unsuitable": say("Do not fit"),
    }
)


class OutcomeWords(NamedTuple):
    """A heading over the findings that came out alike: outcome code, name for style and mark, words."""

    outcome: int
    name: str
    title: Said


OUTCOME_WORDS: Final = (
    OutcomeWords(NOT_MET, "not-met", say("Speaks against it")),
    OutcomeWords(NOT_RECOMMENDED, "not-recommended", say("Advised against")),
    OutcomeWords(NOT_ASSESSED, "not-assessed", say("To be settled first")),
    OutcomeWords(ADVISORY, "advisory", say("Needs attention")),
    OutcomeWords(OPEN, "open", say("Open, and decides nothing")),
    OutcomeWords(MET, "met", say("Answered and met")),
)
TODAY: Final = say("today already")
"""Beside a finding that the present fitment has too."""
