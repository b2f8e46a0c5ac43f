"""What spacers ask of the workshop: longer bolts that hold as deep as now, and a wheel that is still centred."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding
from service.core.saying import Said, say, sentences

OF_THE_LAW = "law.spacers"


def spacers(views: Sequence[AxleView], findings: Sequence[Finding]) -> list[Action]:
    """Return a line for each axle that gets spacers, keeps them or loses them; common practice, no source."""
    return [_spacers(view, findings) for view in views if view.then.facts.spacer_mm or view.now.facts.spacer_mm]


def _spacers(view: AxleView, findings: Sequence[Finding]) -> Action:
    now, then = view.now.facts.spacer_mm, view.then.facts.spacer_mm
    more = then - now
    at_front = view.name == "front"
    if then:
        text = sentences(_spacers_on(plain(then, 1, "mm"), at_front=at_front), _bolts(more))
    else:
        text = sentences(
            say("Take the spacers off the front axle.") if at_front else say("Take the spacers off the rear axle."),
            say(
                "The wheels need bolts or studs {length} shorter than now: longer ones may touch what turns behind the "
                "hub.",
                length=plain(abs(more), 1, "mm"),
            ),
        )
    told = [each for each in findings if (each.code, each.axle, each.outcome) == (OF_THE_LAW, view.name, ADVISORY)]
    return answering(Action(f"spacers_{view.name}", text, spacer_mm=then), told)


def _spacers_on(size: str, *, at_front: bool) -> Said:
    if at_front:
        return say(
            "Fit spacers of {size} on the front axle, hub-centric ones: the wheel is centred on them.", size=size
        )
    return say("Fit spacers of {size} on the rear axle, hub-centric ones: the wheel is centred on them.", size=size)


def _bolts(more_mm: float) -> Said:
    if more_mm == 0.0:
        return say(
            "The bolts or studs stay as long as they are, so that as many threads hold as now and no bolt touches what "
            "turns behind the hub."
        )
    length = plain(abs(more_mm), 1, "mm")
    if more_mm > 0.0:
        return say(
            "They need bolts or studs {length} longer than now, so that as many threads hold as now and no bolt "
            "touches what turns behind the hub.",
            length=length,
        )
    return say(
        "They need bolts or studs {length} shorter than now, so that as many threads hold as now and no bolt touches "
        "what turns behind the hub.",
        length=length,
    )
