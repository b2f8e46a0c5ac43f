"""Is the tyre fast enough for the vehicle?"""

from __future__ import annotations

from service.assessment.checks.grade import Check, Grade, finite, unknown
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, MET, NOT_ASSESSED, NOT_MET, Finding, Remedy
from service.core.sources import basis
from service.standards.speed_symbol import least_symbol_for_kmh

SYMBOL = basis("UN-R30 speed symbol", "the symbol must suit the maximum design speed")
COMMERCIAL = basis("UN-R54 annex 8", "speed above the symbol at reduced load")


def _grade(view: AxleView) -> Grade:
    speed, top = view.then.facts.speed_capability_kmh, view.vehicle.max_speed_kmh
    relief = _winter_relief(view) if view.conditions.winter else 0
    return Grade((speed < top) * (NOT_MET - relief) + unknown(speed), speed, top)


def _winter_relief(view: AxleView) -> int:
    """Return by how much the outcome of a slow winter tyre is milder."""
    facts, conditions = view.then.facts, view.conditions
    counts = conditions.winter_tyre(facts.winter_mark)
    fast_enough = facts.speed_capability_kmh >= conditions.winter_floor_kmh
    allowed = (NOT_MET - ADVISORY) * ((counts == 1.0) & fast_enough)
    return allowed + (NOT_MET - NOT_ASSESSED) * ((counts != counts) & fast_enough)


def _explain(view: AxleView, grade: Grade) -> Finding:
    where = COMMERCIAL if view.then.facts.commercial else SYMBOL
    top, winter = plain(grade.limit), view.pack.winter
    enough = "" if grade.outcome == MET else " only"
    message = f"The tyre may run {plain(grade.measured)} km/h{enough}; the vehicle reaches {top} km/h."
    remedy = None if grade.outcome == MET else _symbol_remedy(view, grade.limit)
    if grade.outcome == NOT_ASSESSED and grade.measured == grade.measured:
        message = f"Whether this is a winter tyre here, which may run {plain(grade.measured)} km/h, depends on its age."
        remedy = Remedy("a tyre marked 3PMSF", tyre_pointer(view.name), "marking", equals="3PMSF")
    elif grade.outcome == NOT_ASSESSED:
        message = f"Whether the tyre may run {top} km/h is not known from its designation; its maker states it."
    elif grade.outcome == ADVISORY and winter is not None:
        slow = plain(grade.measured)
        message = (
            f"A winter tyre may be slower than the vehicle ({slow} against {top} km/h) if a label in the driver's view "
            f"says {slow} km/h and that speed is kept."
        )
        where = winter.basis
    measured = finite(grade.measured)
    return Finding("speed.capability", view.name, grade.outcome, message, measured, grade.limit, "km/h", where, remedy)


def _symbol_remedy(view: AxleView, top_kmh: float) -> Remedy:
    symbol = least_symbol_for_kmh(top_kmh)
    pointer = tyre_pointer(view.name)
    if symbol is None:
        words = f"a tyre that its maker states to be good for {plain(top_kmh)} km/h"
        return Remedy(words, pointer, "speed_symbol")
    return Remedy(f"speed symbol {symbol} or faster", pointer, "speed_symbol", top_kmh, equals=symbol, unit="km/h")


SPEED = Check("speed.capability", _grade, _explain, required=True)
