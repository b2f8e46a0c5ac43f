"""What stands first on the job card: what must not be fitted, what one would not fit, what to settle first."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.answer.said_once import spoken
from service.assessment.answer.subjects import named, placed, subject, together, way_of, where
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, Finding

# In a remedy that must not wait for the trial fit.
BEFORE_ORDER = " before you order"


def of_outcome(findings: Sequence[Finding], *outcomes: int) -> list[Finding]:
    """Return the findings that came out like this, in their order."""
    return [each for each in findings if each.outcome in outcomes]


def do_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the whole card of what must not be fitted: nothing is set or tightened on it."""
    broken = spoken(of_outcome(findings, NOT_MET), findings)
    card = [answering(Action("do_not_fit", f"Do not fit this combination: {named(broken)}."), broken)]
    card += would_not_fit(findings)
    minor = spoken(of_outcome(findings, ADVISORY), findings)
    if minor:
        text = f"Were that put right, these would still need attention: {named(minor)}."
        card.append(answering(Action("mind_too", text), minor))
    return card


def would_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that advises against it, empty where nothing does."""
    against = spoken(of_outcome(findings, NOT_RECOMMENDED), findings)
    if not against:
        return []
    reasons = " ".join(placed(group) for group in together(against))
    return [answering(Action("would_not_fit", f"We advise against it: {reasons}"), against)]


def settle_first(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that names what to find out and how, empty where all is known."""
    unknown = spoken(of_outcome(findings, NOT_ASSESSED), findings)
    if not unknown:
        return []
    text = f"Settle this before you order or fit. {_asks(unknown)}"
    return [answering(Action("settle_first", text), unknown)]


def measure_before_order(findings: Sequence[Finding]) -> list[Action]:
    """Return the line on the room that is to be measured before anything is ordered, empty where none is."""
    narrow = [each for each in of_outcome(findings, ADVISORY) if BEFORE_ORDER in way_of(each)]
    if not narrow:
        return []
    return [answering(Action("measure_before_order", f"Before you order. {_asks(narrow)}"), narrow)]


def _asks(findings: Sequence[Finding]) -> str:
    """Return what to do, each thing once, with all that it settles: `Track, room to the strut, front axle: ...`."""
    ways: dict[str, list[Finding]] = {}
    for each in findings:
        ways.setdefault(way_of(each), []).append(each)
    asks = []
    for how, group in ways.items():
        what, place = ", ".join(dict.fromkeys(subject(each.code) for each in group)), where(group)
        asks.append(f"{what[0].upper()}{what[1:]}{f', {place}' if place else ''}: {how.replace(BEFORE_ORDER, '')}.")
    return " ".join(asks)
