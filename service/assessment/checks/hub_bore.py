"""Does the wheel's centre bore go on the hub, and is it centred there?

The wheel that is on the car goes on its hub, so the hub is no larger than the present rim's bore; it may be smaller.
"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, Num, known, known_or, pick, unknown
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
    bore, hub, measured = plain(grade.measured, 1), plain(grade.limit, 1), known(view.axle.hub_centre_bore_mm)
    if is_open(grade.outcome):
        message, remedy = _not_known(view, grade)
    elif grade.outcome == NOT_MET:
        message = f"The rim's centre bore of {bore} mm is smaller than the hub's {hub} mm: the wheel does not go on."
        text = f"other rims, with a centre bore of {hub} mm, or a larger one and spigot rings"
        remedy = _rims(view, text, grade.limit)
    elif grade.outcome == ADVISORY and measured:
        message = f"The rim's centre bore of {bore} mm is larger than the hub's {hub} mm: spigot rings are needed."
        text = f"spigot rings {bore} to {hub} mm, or other rims with a centre bore of {hub} mm"
        remedy = _rims(view, text, grade.limit)
    elif grade.outcome == ADVISORY:
        message = f"The rim's centre bore is {bore} mm, the present rim's {hub} mm: spigot rings are needed."
        text = f"spigot rings from {bore} mm to the hub as measured, or other rims with a centre bore of {hub} mm"
        remedy = _rims(view, text, grade.limit)
    elif measured:
        message = f"The rim's centre bore of {bore} mm fits the hub's {hub} mm."
    else:
        message = f"The rim's centre bore is {bore} mm, as the present rim's."
    found, limit = finite(grade.measured), finite(grade.limit)
    if grade.outcome == ADVISORY and not measured:
        # The hub may be smaller than the present bore: a ring is not ordered by it.
        limit = None
    return Finding("rim.centre_bore", view.name, grade.outcome, message, found, limit, "mm", BORE, remedy)


def _rims(view: AxleView, text: str, bore_mm: float) -> Remedy:
    pointer = f"/candidate/{view.name}/rim/centre_bore_mm"
    return Remedy(text, pointer, "centre_bore_mm", bore_mm, bore_mm, unit="mm")


def _not_known(view: AxleView, grade: Grade) -> tuple[str, Remedy]:
    bore, hub = plain(grade.measured, 1), plain(grade.limit, 1)
    of_hub = f"/vehicle/{view.name}/hub/centre_bore_mm"
    if known(grade.measured):
        message = "The hub's centre bore is not known."
        if known(grade.limit):
            message = f"The rim's centre bore of {bore} mm is smaller than the present rim's {hub} mm."
        text = f"measure the centring spigot of the hub: {bore} mm or less is enough"
        return message, Remedy(text, of_hub, "centre_bore_mm", at_most=grade.measured, unit="mm")
    if known(grade.limit):
        holder = "hub" if known(view.axle.hub_centre_bore_mm) else "present rim"
        message = f"The rim's centre bore is not known. The {holder} has {hub} mm."
        text = f"measure the rim's centre bore: {hub} mm is enough"
        pointer = f"/candidate/{view.name}/rim/centre_bore_mm"
        return message, Remedy(text, pointer, "centre_bore_mm", grade.limit, unit="mm")
    message = "Neither the hub's nor the rim's centre bore is known."
    text = "measure the centring spigot of the hub, and the rim's centre bore"
    return message, Remedy(text, of_hub, "centre_bore_mm", unit="mm")


CENTRE_BORE = AxleCheck("rim.centre_bore", _grade, _explain)
