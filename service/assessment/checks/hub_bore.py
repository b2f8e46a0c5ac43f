"""Does the wheel's centre bore go on the hub, and is it centred there?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import unknown
from service.core.sources import basis

BORE = basis("COMMON-PRACTICE", "the wheel is centred on the hub")


def _grade(view: AxleView) -> Grade:
    bore, hub = view.then.facts.centre_bore_mm, view.axle.hub_centre_bore_mm
    play = bore - hub
    tolerance = view.limits.centre_bore_tolerance_mm.value + LAST_BIT
    outcome = worst(not_met=play < -tolerance, open_question=unknown(play), advisory=play > tolerance)
    return Grade(outcome, bore, hub)


def _explain(view: AxleView, grade: Grade) -> Finding:
    field = f"/candidate/{view.name}/rim/centre_bore_mm"
    bore, hub = plain(grade.measured, 1), plain(grade.limit, 1)
    remedy = None
    if is_open(grade.outcome) and unknown(grade.limit):
        message = "The hub's centre bore is not given."
        remedy = Remedy(
            f"measure vehicle.{view.name}.hub.centre_bore_mm",
            f"/vehicle/{view.name}/hub/centre_bore_mm",
            "centre_bore_mm",
            unit="mm",
        )
    elif is_open(grade.outcome):
        message = f"The rim's centre bore is not given; the hub needs {hub} mm."
        remedy = Remedy(
            f"measure candidate.{view.name}.rim.centre_bore_mm", field, "centre_bore_mm", grade.limit, unit="mm"
        )
    elif grade.outcome == NOT_MET:
        message = f"The rim's centre bore of {bore} mm is smaller than the hub's {hub} mm: the wheel does not go on."
        text = f"other rims, with a centre bore of {hub} mm, or a larger one and spigot rings"
        remedy = Remedy(text, field, "centre_bore_mm", grade.limit, grade.limit, unit="mm")
    elif grade.outcome == ADVISORY:
        message = f"The rim's centre bore of {bore} mm is larger than the hub's {hub} mm: spigot rings are needed."
        remedy = Remedy(
            f"spigot rings {bore} to {hub} mm, or other rims with a centre bore of {hub} mm",
            field,
            "centre_bore_mm",
            grade.limit,
            grade.limit,
            unit="mm",
        )
    else:
        message = f"The rim's centre bore of {bore} mm fits the hub's {hub} mm."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.centre_bore", view.name, grade.outcome, message, measured, limit, "mm", BORE, remedy)


CENTRE_BORE = Check("rim.centre_bore", _grade, _explain)
