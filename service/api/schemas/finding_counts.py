"""How many questions came out how, in an answer to one candidate and in a row of many."""

from __future__ import annotations

from typing import Any

from service.api.schemas.base import AnswerPart, whole


def _count(outcome: str, example: int) -> Any:  # noqa: ANN401 - as pydantic's Field
    return whole(f"Findings that came out {outcome}", "1", (0, 1000), example)


class FindingCounts(AnswerPart):
    """How many questions came out how."""

    met: int = _count("met", 31)
    advisory: int = _count("advisory", 2)
    not_assessed: int = _count("not assessed", 4)
    not_recommended: int = _count("not recommended", 0)
    not_met: int = _count("not met", 0)
