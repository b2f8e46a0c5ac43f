"""Has the wheel the hub's bolt circle?

The wheel that is on the car goes on its hub: where nobody looked at the hub, the present rim's circle is the hub's.
"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import SAME_CIRCLE_MM
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, magnitude, pick, unknown
from service.core.saying import say
from service.core.sources import basis

CIRCLE = basis("COMMON-PRACTICE", "rim and hub have the same number of bolts on the same circle")


def _hub(view: AxleView[Num]) -> tuple[Num, Num]:
    """Return number of bolts and circle of the hub, by the present rim where the hub was not looked at."""
    hub, now = view.hub, view.now.facts
    return known_or(hub.bolts, now.bolts), known_or(hub.circle_mm, now.bolt_circle_mm)


def _rim(view: AxleView[Num]) -> tuple[Num, Num]:
    """Return the same of the proposed rim; where it is the present one, what either states of it."""
    now, then, same = view.now.facts, view.then.facts, view.change.same_rim == 1.0
    return (
        known_or(then.bolts, pick(same, now.bolts, UNKNOWN)),
        known_or(then.bolt_circle_mm, pick(same, now.bolt_circle_mm, UNKNOWN)),
    )


def _grade(view: AxleView[Num]) -> Grade[Num]:
    (bolts, diameter), (rim_bolts, rim_diameter) = _hub(view), _rim(view)
    apart = magnitude(rim_diameter - diameter)
    differs = (apart > SAME_CIRCLE_MM) | ((rim_bolts != bolts) & known(apart))
    outcome = worst(
        not_met=differs,
        not_assessed=unknown(apart) & (view.change.same_rim == 0.0),
        open_question=unknown(apart),
    )
    return Grade(outcome, rim_diameter, diameter)


def _explain(view: AxleView, grade: Grade) -> Finding:
    of_rim = f"/candidate/{view.name}/rim/bolt_circle"
    hub, rim = _circle(*_hub(view)), _circle(*_rim(view))
    remedy = None
    # What is said of the hub rests on the present wheel where nobody looked.
    looked = view.axle.hub_bolt_circle is not None
    if is_open(grade.outcome) and hub == "":
        message = say("The hub's bolt circle is not known.")
        remedy = _read_the_hub(view, rim)
    elif is_open(grade.outcome):
        message = say("The rim's bolt circle is not known. The present rim has {circle}.", circle=hub)
        if looked:
            message = say("The rim's bolt circle is not known. The hub has {circle}.", circle=hub)
        text = say("read the bolt circle on the back of the wheel: {circle} is enough", circle=hub)
        remedy = Remedy(text, of_rim, "bolt_circle", equals=hub)
    elif grade.outcome == NOT_MET:
        message = say(
            "The rim's bolt circle is {rim}, the present rim's {present}: the wheel does not go on.",
            rim=rim,
            present=hub,
        )
        if looked:
            message = say(
                "The rim's bolt circle is {rim}, the hub's {hub}: the wheel does not go on.", rim=rim, hub=hub
            )
        text = say("other rims, with bolt circle {circle}", circle=hub)
        remedy = Remedy(text, of_rim, "bolt_circle", equals=hub)
    elif looked:
        message = say("Rim and hub both have bolt circle {circle}.", circle=hub)
    else:
        message = say(
            "The rim has bolt circle {circle} as the present rim, so it is taken to be the hub's.", circle=hub
        )
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.bolt_circle", view.name, grade.outcome, message, measured, limit, "mm", CIRCLE, remedy)


def _read_the_hub(view: AxleView, rim: str) -> Remedy:
    text = say("read the bolt circle on the back of the present wheel, or measure the hub")
    if rim:
        text = say(
            "read the bolt circle on the back of the present wheel, or measure the hub: {circle} is enough", circle=rim
        )
    return Remedy(text, f"/vehicle/{view.name}/hub/bolt_circle", "bolt_circle", equals=rim or None)


def _circle(bolts: float, diameter_mm: float) -> str:
    return "" if unknown(diameter_mm) else f"{plain(bolts)}x{plain(diameter_mm, 2)}"


BOLT_CIRCLE = AxleCheck("rim.bolt_circle", _grade, _explain)
