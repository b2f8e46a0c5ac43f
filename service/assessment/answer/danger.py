"""What stands first on the job card: what must not be fitted, what one would not fit, what to settle first."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.answer.said_once import spoken
from service.assessment.answer.subjects import asked, named, placed, subject, together, way_of, where
from service.assessment.checks.clearance import SIDES
from service.assessment.checks.grade import LAST_BIT
from service.assessment.checks.words import plain
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, NOT_RECOMMENDED, Finding
from service.core.saying import Said, capital, joined, say, sentences

# In a remedy that must not wait for the trial fit.
BEFORE_ORDER = " before you order"
_BETWEEN = {f"clearance.{side.name}": side.between for side in SIDES}


def of_outcome(findings: Sequence[Finding], *outcomes: int) -> list[Finding]:
    """Return the findings that came out like this, in their order."""
    return [each for each in findings if each.outcome in outcomes]


def do_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the whole card of what must not be fitted: nothing is set or tightened on it."""
    broken = spoken(of_outcome(findings, NOT_MET), findings)
    text = say("Do not fit this combination: {subjects}.", subjects=named(broken))
    card = [answering(Action("do_not_fit", text), broken)]
    card += would_not_fit(findings)
    minor = spoken(of_outcome(findings, ADVISORY), findings)
    if minor:
        text = say("Were that put right, these would still need attention: {subjects}.", subjects=named(minor))
        card.append(answering(Action("mind_too", text), minor))
    return card


def would_not_fit(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that advises against it, empty where nothing does."""
    against = spoken(of_outcome(findings, NOT_RECOMMENDED), findings)
    if not against:
        return []
    text = say("We advise against it: {reasons}", reasons=sentences(*map(placed, together(against))))
    return [answering(Action("would_not_fit", text), against)]


def settle_first(findings: Sequence[Finding]) -> list[Action]:
    """Return the line that names what to find out and how, empty where all is known."""
    unknown = spoken(of_outcome(findings, NOT_ASSESSED), findings)
    if not unknown:
        return []
    text = sentences(say("Settle this before you order or fit."), _asks(unknown, asked))
    return [answering(Action("settle_first", text), unknown)]


def measure_before_order(findings: Sequence[Finding]) -> list[Action]:
    """Return the line on the room that is to be measured before anything is ordered, empty where none is."""
    narrow = [each for each in of_outcome(findings, ADVISORY) if BEFORE_ORDER in way_of(each)]
    if not narrow:
        return []
    text = sentences(say("Before you order."), _asks(narrow, _room))
    return [answering(Action("measure_before_order", text), narrow)]


def _asks(findings: Sequence[Finding], way: Callable[[Finding], str]) -> Said:
    """Return what to do, each thing once, with all that it settles: `Track, room to the strut, front axle: ...`."""
    ways: dict[str, list[Finding]] = {}
    for each in findings:
        ways.setdefault(way_of(each), []).append(each)
    asks = []
    for group in ways.values():
        about = [*dict.fromkeys(subject(each.code) for each in group), *filter(None, [where(group)])]
        asks.append(say("{subjects}: {what_to_do}", subjects=capital(joined(about)), what_to_do=way(group[0])))
    return sentences(*asks)


def _room(finding: Finding) -> str:
    """Return the room to measure, without saying again that it comes before the order."""
    if finding.remedy is None or finding.remedy.at_least is None or finding.code not in _BETWEEN:
        return asked(finding)
    # As the finding's remedy says it: a whole millimetre, rounded up.
    enough = plain(finding.remedy.at_least + 0.5 - LAST_BIT, 0, "mm")
    remedy = say("measure the room {between}: {enough} is enough", between=_BETWEEN[finding.code], enough=enough)
    return say("{remedy}.", remedy=remedy)
