"""Does the wheel's centre bore go on the hub, and is it centred there?

The wheel that is on the car goes on its hub, so the hub is no larger than the present rim's bore; it may be smaller.
"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, pick, unknown
from service.core.saying import Amount, Said, say
from service.core.sources import basis

BORE = basis("COMMON-PRACTICE", "the wheel is centred on the hub")


def _bore_mm(view: AxleView[Num]) -> Num:
    """Return the bore of the proposed rim; where it is the present one, what either states of it."""
    same = view.change.same_rim == 1.0
    return known_or(view.then.facts.centre_bore_mm, pick(same, view.now.facts.centre_bore_mm, UNKNOWN))


def _grade(view: AxleView[Num]) -> Grade[Num]:
    bore, hub, present = _bore_mm(view), view.axle.hub_centre_bore_mm, view.now.facts.centre_bore_mm
    spigot = known_or(hub, present)
    play = bore - spigot
    tolerance = view.limits.centre_bore_tolerance_mm.value + LAST_BIT
    small = play < -tolerance
    # Smaller than the present bore: it goes on only where the present wheel has play, or rings.
    lost = unknown(play) | (small & unknown(hub))
    outcome = worst(
        not_met=small & known(hub),
        not_assessed=lost & ((view.change.same_rim == 0.0) | known(play)),
        advisory=play > tolerance,
        open_question=lost,
    )
    return Grade(outcome, bore, spigot)


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy = None
    bore, hub, measured = _bore(grade.measured), _bore(grade.limit), known(view.axle.hub_centre_bore_mm)
    if is_open(grade.outcome):
        message, remedy = _not_known(view, grade)
    elif grade.outcome == NOT_MET:
        message = say(
            "The rim's centre bore of {bore} mm is smaller than the hub's {hub} mm: the wheel does not go on.",
            bore=bore,
            hub=hub,
        )
        text = say("other rims, with a centre bore of {hub} mm, or a larger one and spigot rings", hub=hub)
        remedy = _rims(view, text, grade.limit)
    elif grade.outcome == ADVISORY:
        message, remedy = _rings(view, grade)
    elif measured:
        message = say("The rim's centre bore of {bore} mm fits the hub's {hub} mm.", bore=bore, hub=hub)
    else:
        message = say("The rim's centre bore is {bore} mm, as the present rim's.", bore=bore)
    found, limit = finite(grade.measured), finite(grade.limit)
    if grade.outcome == ADVISORY and not measured:
        # The hub may be smaller than the present bore: a ring is not ordered by it.
        limit = None
    return Finding("rim.centre_bore", view.name, grade.outcome, message, found, limit, "mm", BORE, remedy)


def _bore(diameter_mm: float) -> Amount:
    """Return a bore as it is marked and sold, in millimetres whatever units the answer is in."""
    return plain(diameter_mm, 1)


def _rings(view: AxleView, grade: Grade) -> tuple[Said, Remedy]:
    bore, hub = _bore(grade.measured), _bore(grade.limit)
    if known(view.axle.hub_centre_bore_mm):
        message = say(
            "The rim's centre bore of {bore} mm is larger than the hub's {hub} mm: spigot rings are needed.",
            bore=bore,
            hub=hub,
        )
        text = say(
            "spigot rings {outside} to {hub} mm, or other rims with a centre bore of {hub} mm",
            outside=bore,
            hub=hub,
        )
        return message, _rims(view, text, grade.limit)
    message = say(
        "The rim's centre bore is {bore} mm, the present rim's {present} mm: spigot rings are needed.",
        bore=bore,
        present=hub,
    )
    text = say(
        "spigot rings from {bore} mm to the hub as measured, or other rims with a centre bore of {present} mm",
        bore=bore,
        present=hub,
    )
    return message, _rims(view, text, grade.limit)


def _rims(view: AxleView, text: Said, bore_mm: float) -> Remedy:
    pointer = f"/candidate/{view.name}/rim/centre_bore_mm"
    return Remedy(text, pointer, "centre_bore_mm", bore_mm, bore_mm, unit="mm")


def _not_known(view: AxleView, grade: Grade) -> tuple[Said, Remedy]:
    bore, hub = _bore(grade.measured), _bore(grade.limit)
    of_hub = f"/vehicle/{view.name}/hub/centre_bore_mm"
    if known(grade.measured):
        message = say("The hub's centre bore is not known.")
        if known(grade.limit):
            message = say(
                "The rim's centre bore of {bore} mm is smaller than the present rim's {present} mm.",
                bore=bore,
                present=hub,
            )
        text = say("measure the centring spigot of the hub: {bore} mm or less is enough", bore=bore)
        return message, Remedy(text, of_hub, "centre_bore_mm", at_most=grade.measured, unit="mm")
    if known(grade.limit):
        message = say("The rim's centre bore is not known. The present rim has {bore} mm.", bore=hub)
        if known(view.axle.hub_centre_bore_mm):
            message = say("The rim's centre bore is not known. The hub has {bore} mm.", bore=hub)
        text = say("measure the rim's centre bore: {bore} mm is enough", bore=hub)
        pointer = f"/candidate/{view.name}/rim/centre_bore_mm"
        return message, Remedy(text, pointer, "centre_bore_mm", grade.limit, unit="mm")
    message = say("Neither the hub's nor the rim's centre bore is known.")
    text = say("measure the centring spigot of the hub, and the rim's centre bore")
    return message, Remedy(text, of_hub, "centre_bore_mm", unit="mm")


CENTRE_BORE = AxleCheck("rim.centre_bore", _grade, _explain)
