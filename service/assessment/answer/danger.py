"""What stands first on the job card: what must not be fitted, what one would not fit, what to settle first."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.answer.subjects import named, placed, subject, together, where
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, Finding


def of_outcome(findings: Sequence[Finding], *outcomes: int) -> list[Finding]:
    """Return the findings that came out like this, in their order."""
    return [each for each in findings if each.outcome in outcomes]


def do_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the whole card of what must not be fitted: nothing is set or tightened on it."""
    broken = of_outcome(findings, NOT_MET)
    card = [answering(Action("do_not_fit", f"Do not fit this combination: {named(broken)}."), broken)]
    card += would_not_fit(findings)
    minor = of_outcome(findings, ADVISORY)
    if minor:
        text = f"Were that put right, these would still need attention: {named(minor)}."
        card.append(answering(Action("mind_too", text), minor))
    return card


def would_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that advises against it, empty where nothing does."""
    against = of_outcome(findings, NOT_RECOMMENDED)
    if not against:
        return []
    reasons = " ".join(placed(group) for group in together(against))
    return [answering(Action("would_not_fit", f"We advise against it: {reasons}"), against)]


def settle_first(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that names what to find out and how, empty where all is known."""
    unknown = of_outcome(findings, NOT_ASSESSED)
    if not unknown:
        return []
    asks = " ".join(_asked(group) for group in together(unknown))
    return [answering(Action("settle_first", f"Settle this before you order or fit. {asks}"), unknown)]


def _asked(group: list[Finding]) -> str:
    first, place = group[0], where(group)
    what = f"{subject(first.code)}{f', {place}' if place else ''}"
    how = first.message.rstrip(".") if first.remedy is None else first.remedy.text
    return f"{what[0].upper()}{what[1:]}: {how}."
