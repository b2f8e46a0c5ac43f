"""What the workshop passes on: to the driver, to the customer, and to whoever applies the law of the place.

Every advisory that no other line of the job card answers has a line here, so that no warning stays in the findings.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.answer.said_once import spoken
from service.assessment.answer.subjects import named, together, where
from service.core.findings import Finding
from service.core.saying import Said, say, sentences

# How the car drives concerns the driver, all else the customer.
FOR_THE_DRIVER = ("balance.", "wet.")
# How the codes of lines begin that say again what a finding says.
RETOLD = ("tell_", "ask_")


def told(findings: Sequence[Finding]) -> list[Action]:
    """Return a line for each advisory that the change brings, and one for all that the car has today already."""
    said = spoken(findings, findings)
    lines = list(_lines(each for each in said if not each.already and not _is_law(each)))
    old = [each for each in said if each.already and not _is_law(each)]
    if old:
        text = say("Tell the customer what needs attention on the car today already: {subjects}.", subjects=named(old))
        lines.append(answering(Action("tell_as_today", text), old))
    return lines


def asked_of_the_place(findings: Sequence[Finding]) -> list[Action]:
    """Return a line for each rule of the place that only advises: whoever applies it is asked."""
    return list(_lines(filter(_is_law, findings)))


def _is_law(finding: Finding) -> bool:
    return finding.code.startswith("law.")


def _lines(findings: Iterator[Finding]) -> Iterator[Action]:
    for group in together(findings):
        first, place = group[0], where(group)
        kind = "ask" if _is_law(first) else "tell"
        axle = f"_{first.axle}" if len(group) == 1 and place else ""
        better = "" if first.remedy is None or _is_law(first) else say("Better: {remedy}.", remedy=first.remedy.text)
        text = sentences(_addressed(first, place), better)
        yield answering(Action(f"{kind}_{first.code.replace('.', '_')}{axle}", text), group)


def _addressed(finding: Finding, place: str) -> Said:
    message = finding.message
    if _is_law(finding):
        if place:
            return say("Ask the inspection office before you order ({place}): {message}", place=place, message=message)
        return say("Ask the inspection office before you order: {message}", message=message)
    if finding.code.startswith(FOR_THE_DRIVER):
        if place:
            return say("Tell the driver ({place}): {message}", place=place, message=message)
        return say("Tell the driver: {message}", message=message)
    if place:
        return say("Tell the customer ({place}): {message}", place=place, message=message)
    return say("Tell the customer: {message}", message=message)
