"""Has the wheel the hub's bolt circle?"""

from __future__ import annotations

from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import UNKNOWN, known, unknown
from service.core.sources import basis

CIRCLE = basis("COMMON-PRACTICE", "rim and hub have the same number of bolts on the same circle")
# Diameters are written to a tenth of a millimetre (114.3), so half of that is the same circle.
SAME_CIRCLE_MM = 0.05


def _grade(view: AxleView) -> Grade:
    facts, hub = view.then.facts, view.axle.hub_bolt_circle
    bolts, diameter = (UNKNOWN, UNKNOWN) if hub is None else (float(hub.bolts), hub.diameter_mm)
    apart = abs(facts.bolt_circle_mm - diameter)
    differs = (apart > SAME_CIRCLE_MM) | ((facts.bolts != bolts) & known(apart))
    return Grade(worst(not_met=differs, open_question=unknown(apart)), facts.bolt_circle_mm, diameter)


def _explain(view: AxleView, grade: Grade) -> Finding:
    facts, hub = view.then.facts, view.axle.hub_bolt_circle
    field = f"/candidate/{view.name}/rim/bolt_circle"
    remedy = None
    if hub is None:
        message = "The hub's bolt circle is not given."
        remedy = Remedy(
            f"state vehicle.{view.name}.hub.bolt_circle", f"/vehicle/{view.name}/hub/bolt_circle", "bolt_circle"
        )
    elif is_open(grade.outcome):
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


BOLT_CIRCLE = Check("rim.bolt_circle", _grade, _explain)
