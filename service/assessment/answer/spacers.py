"""What spacers ask of the workshop: longer bolts that hold as deep as now, and a wheel that is still centred."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.answer.action import Action, answering
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, Finding

OF_THE_LAW = "law.spacers"


def spacers(views: Sequence[AxleView], findings: Sequence[Finding]) -> list[Action]:
    """Return a line for each axle that gets spacers, keeps them or loses them; common practice, no source."""
    return [_spacers(view, findings) for view in views if view.then.facts.spacer_mm or view.now.facts.spacer_mm]


def _spacers(view: AxleView, findings: Sequence[Finding]) -> Action:
    now, then = view.now.facts.spacer_mm, view.then.facts.spacer_mm
    more = then - now
    bolts = "The bolts or studs stay as long as they are"
    if more:
        bolts = f"They need bolts or studs {plain(abs(more), 1)} mm {'longer' if more > 0.0 else 'shorter'} than now"
    text = (
        f"Fit spacers of {plain(then, 1)} mm on the {view.name} axle, hub-centric ones: the wheel is centred on them. "
    )
    text += f"{bolts}, so that as many threads hold as now and no bolt touches what turns behind the hub."
    if not then:
        text = (
            f"Take the spacers off the {view.name} axle. {bolts.replace('They', 'The wheels')}: longer ones may touch "
        )
        text += "what turns behind the hub."
    told = [each for each in findings if (each.code, each.axle, each.outcome) == (OF_THE_LAW, view.name, ADVISORY)]
    return answering(Action(f"spacers_{view.name}", text, spacer_mm=then), told)
