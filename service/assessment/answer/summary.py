"""The verdict in one or two plain sentences, as a customer reads it."""

from __future__ import annotations

from service.assessment.answer.verdict import Verdict
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, Finding


def summary(verdict: Verdict, findings: list[Finding]) -> str:
    """Return the summary; `findings` are worst first."""
    worst = findings[0]
    if verdict == "unsuitable":
        return f"Do not fit. {_at(worst)}{_more(findings, NOT_MET, 'against it')}"
    if verdict == "not_recommended":
        return f"It goes on, but we advise against it. {_at(worst)}{_more(findings, NOT_RECOMMENDED, 'against it')}"
    if verdict == "undetermined":
        ask = f" To settle it: {worst.remedy.text}." if worst.remedy is not None else ""
        return f"One fact is missing. {_at(worst)}{ask}{_more(findings, NOT_ASSESSED, 'to settle')}"
    if verdict == "suitable_with_conditions":
        return f"It fits, with conditions. {_at(worst)}{_more(findings, ADVISORY, 'to mind')}"
    return "It fits."


def _at(finding: Finding) -> str:
    return finding.message if finding.axle == "vehicle" else f"{finding.axle.capitalize()} axle: {finding.message}"


def _more(findings: list[Finding], outcome: int, what: str) -> str:
    count = sum(each.outcome == outcome for each in findings) - 1
    if not count:
        return ""
    return f" There {'is' if count == 1 else 'are'} {count} more {'point' if count == 1 else 'points'} {what}."
