"""The verdict in one or two plain sentences, as a customer reads it."""

from __future__ import annotations

from service.assessment.answer.said_once import spoken
from service.assessment.answer.subjects import named, placed, together, way_of
from service.assessment.answer.verdict import Verdict
from service.core.findings import NOT_ASSESSED, OPEN, Finding
from service.core.saying import Amount, Said, capital, say, sentences

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
# From two on: of one thing a sentence of its own is said.
_NUMBERS = (
    *(say("two"), say("three"), say("four"), say("five"), say("six")),
    *(say("seven"), say("eight"), say("nine"), say("ten")),
)
_BEGINS: dict[Verdict, Said] = {
    "unsuitable": say("Do not fit."),
    "not_recommended": say("We advise against it."),
    "suitable_with_conditions": say("It fits, with conditions."),
}


def summary(verdict: Verdict, findings: list[Finding]) -> Said:
    """Return the summary; `findings` are worst first."""
    if verdict == "suitable":
        return sentences(say("It fits: nothing speaks against it."), _open(findings))
    # What the change brings is the reason; what is so today already is one only where nothing else is.
    worst = [each for each in findings if each.outcome == findings[0].outcome]
    groups = together(spoken([each for each in worst if not each.already] or worst, findings) or worst)
    reason, more = groups[0], groups[1:]
    if verdict == "undetermined":
        # One reading may settle several questions.
        count = len({way_of(group[0]) for group in groups})
        begins = say("Not known yet: one fact is missing.")
        if count > 1:
            begins = say("Not known yet: {count} facts are missing.", count=_counted(count))
        return sentences(begins, placed(reason), _way_out(reason[0]), _more(more))
    return sentences(_BEGINS[verdict], placed(reason), _more(more))


def _way_out(finding: Finding) -> str:
    if finding.remedy is None:
        return ""
    text = finding.remedy.text
    if text.split(maxsplit=1)[0].lower() in _VERBS:
        return capital(say("{remedy}.", remedy=text))
    return say("What settles it: {remedy}.", remedy=text)


def _more(groups: list[list[Finding]]) -> str:
    return say("Besides: {subjects}.", subjects=named(each for group in groups for each in group)) if groups else ""


def _open(findings: list[Finding]) -> str:
    count = len({each.code for each in findings if each.outcome in (OPEN, NOT_ASSESSED)})
    if not count:
        return ""
    if count == 1:
        return say("One point stays open; it does not change the answer.")
    return capital(say("{count} points stay open; they do not change the answer.", count=_counted(count)))


def _counted(count: int) -> str:
    """Return a number from two on, in words where it has one."""
    return _NUMBERS[count - 2] if count - 2 < len(_NUMBERS) else Amount(count)
