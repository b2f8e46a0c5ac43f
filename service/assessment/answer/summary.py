"""The verdict in one or two plain sentences."""

from __future__ import annotations

from service.assessment.answer.verdict import Verdict
from service.assessment.checks import REQUIRED
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, Finding


def summary(verdict: Verdict, findings: list[Finding]) -> str:
    """Return the summary; `findings` are worst first."""
    worst = findings[0]
    if verdict == "unsuitable":
        others = sum(each.outcome == NOT_MET for each in findings) - 1
        noun = "reason stands" if others == 1 else "reasons stand"
        more = f" {others} more {noun} against it." if others else ""
        return f"Do not fit. {_at(worst)}{more}"
    if verdict == "undetermined":
        open_ones = [each for each in findings if each.outcome == NOT_ASSESSED and each.code in REQUIRED]
        remedy = open_ones[0].remedy
        ask = f" To settle it: {remedy.text}." if remedy is not None else ""
        return f"Nothing speaks against it yet, but not everything is known. {_at(open_ones[0])}{ask}"
    if verdict == "suitable_with_conditions":
        count = sum(each.outcome == ADVISORY for each in findings)
        first = next(each for each in findings if each.outcome == ADVISORY)
        noun = "point needs" if count == 1 else "points need"
        return f"It fits, with conditions: {count} {noun} attention. {_first(first, count)}{_left_open(findings)}"
    return f"It fits: every required question is answered and none speaks against it.{_left_open(findings)}"


def _at(finding: Finding) -> str:
    return finding.message if finding.axle == "vehicle" else f"{finding.axle.capitalize()} axle: {finding.message}"


def _first(finding: Finding, count: int) -> str:
    if count == 1:
        return _at(finding)
    where = "" if finding.axle == "vehicle" else f", {finding.axle} axle"
    return f"First{where}: {finding.message}"


def _left_open(findings: list[Finding]) -> str:
    count = sum(each.outcome == NOT_ASSESSED for each in findings)
    if not count:
        return ""
    return f" {count} further question{' stays' if count == 1 else 's stay'} open."
