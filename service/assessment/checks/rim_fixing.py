"""Does the wheel go on the hub: bolt circle and centre bore?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, Check, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, Finding, Remedy, worst
from service.core.numeric import UNKNOWN, known, unknown
from service.core.sources import basis

CIRCLE = basis("COMMON-PRACTICE", "rim and hub have the same number of bolts on the same circle")
BORE = basis("COMMON-PRACTICE", "the wheel is centred on the hub")
# Diameters are written to a tenth of a millimetre (114.3), so half of that is the same circle.
SAME_CIRCLE_MM = 0.05


def _grade_circle(view: AxleView) -> Grade:
    facts, hub = view.then.facts, view.axle.hub_bolt_circle
    bolts, diameter = (UNKNOWN, UNKNOWN) if hub is None else (float(hub.bolts), hub.diameter_mm)
    apart = abs(facts.bolt_circle_mm - diameter)
    differs = (apart > SAME_CIRCLE_MM) | ((facts.bolts != bolts) & known(apart))
    return Grade(worst(not_met=differs, not_assessed=unknown(apart)), facts.bolt_circle_mm, diameter)


def _explain_circle(view: AxleView, grade: Grade) -> Finding:
    facts, hub = view.then.facts, view.axle.hub_bolt_circle
    field = f"/candidate/{view.name}/rim/bolt_circle"
    remedy = None
    if hub is None:
        message = "The hub's bolt circle is not given."
        remedy = Remedy(
            f"state vehicle.{view.name}.hub.bolt_circle", f"/vehicle/{view.name}/hub/bolt_circle", "bolt_circle"
        )
    elif grade.outcome == NOT_ASSESSED:
        message = f"The rim's bolt circle is not given; the hub has {hub.canonical}."
        remedy = Remedy(f"state candidate.{view.name}.rim.bolt_circle", field, "bolt_circle", equals=hub.canonical)
    elif grade.outcome == NOT_MET:
        rim = f"{plain(facts.bolts)}x{plain(facts.bolt_circle_mm, 1)}"
        message = f"The rim's bolt circle is {rim}, the hub's {hub.canonical}: the wheel does not go on."
        remedy = Remedy(f"other rims, with bolt circle {hub.canonical}", field, "bolt_circle", equals=hub.canonical)
    else:
        message = f"Rim and hub both have bolt circle {hub.canonical}."
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("rim.bolt_circle", view.name, grade.outcome, message, measured, limit, "mm", CIRCLE, remedy)


def _grade_bore(view: AxleView) -> Grade:
    bore, hub = view.then.facts.centre_bore_mm, view.axle.hub_centre_bore_mm
    play = bore - hub
    tolerance = view.limits.centre_bore_tolerance_mm.value + LAST_BIT
    outcome = worst(not_met=play < -tolerance, not_assessed=unknown(play), advisory=play > tolerance)
    return Grade(outcome, bore, hub)


def _explain_bore(view: AxleView, grade: Grade) -> Finding:
    field = f"/candidate/{view.name}/rim/centre_bore_mm"
    bore, hub = plain(grade.measured, 1), plain(grade.limit, 1)
    remedy = None
    if grade.outcome == NOT_ASSESSED and unknown(grade.limit):
        message = "The hub's centre bore is not given."
        remedy = Remedy(
            f"measure vehicle.{view.name}.hub.centre_bore_mm",
            f"/vehicle/{view.name}/hub/centre_bore_mm",
            "centre_bore_mm",
            unit="mm",
        )
    elif grade.outcome == NOT_ASSESSED:
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


BOLT_CIRCLE = Check("rim.bolt_circle", _grade_circle, _explain_circle)
CENTRE_BORE = Check("rim.centre_bore", _grade_bore, _explain_bore)
