"""The verdict in one or two plain sentences, as a customer reads it."""

from __future__ import annotations

from service.assessment.answer.said_once import spoken
from service.assessment.answer.subjects import named, placed, together, way_of
from service.assessment.answer.verdict import Verdict
from service.core.findings import NOT_ASSESSED, OPEN, Finding

# What a remedy begins with when it is something to do; any other names a thing.
_VERBS = (
    "ask",
    "check",
    "choose",
    "fit",
    "keep",
    "look",
    "measure",
    "put",
    "read",
    "set",
    "state",
    "take",
    "use",
    "weigh",
)
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_BEGINS: dict[Verdict, str] = {
    "unsuitable": "Do not fit.",
    "not_recommended": "We advise against it.",
    "suitable_with_conditions": "It fits, with conditions.",
}


def summary(verdict: Verdict, findings: list[Finding]) -> str:
    """Return the summary; `findings` are worst first."""
    if verdict == "suitable":
        return f"It fits: nothing speaks against it.{_open(findings)}"
    # What the change brings is the reason; what is so today already is one only where nothing else is.
    worst = [each for each in findings if each.outcome == findings[0].outcome]
    groups = together(spoken([each for each in worst if not each.already] or worst, findings) or worst)
    reason, more = groups[0], groups[1:]
    if verdict == "undetermined":
        # One reading may settle several questions.
        count = len({way_of(group[0]) for group in groups})
        facts = "one fact is missing" if count == 1 else f"{_counted(count)} facts are missing"
        return f"Not known yet: {facts}. {placed(reason)}{_way_out(reason[0])}{_more(more)}"
    return f"{_BEGINS[verdict]} {placed(reason)}{_more(more)}"


def _way_out(finding: Finding) -> str:
    if finding.remedy is None:
        return ""
    text = finding.remedy.text
    if text.split(maxsplit=1)[0].lower() in _VERBS:
        return f" {text[0].upper()}{text[1:]}."
    return f" What settles it: {text}."


def _more(groups: list[list[Finding]]) -> str:
    return f" Besides: {named(each for group in groups for each in group)}." if groups else ""


def _open(findings: list[Finding]) -> str:
    count = len({each.code for each in findings if each.outcome in (OPEN, NOT_ASSESSED)})
    if not count:
        return ""
    what = "point stays open; it does" if count == 1 else "points stay open; they do"
    return f" {_counted(count).capitalize()} {what} not change the answer."


def _counted(count: int) -> str:
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)
