"""Is the tyre fast enough for the vehicle?"""

from __future__ import annotations

from service.assessment.comparison import AxleView
from service.assessment.grade import Check, Grade, finite, unknown
from service.assessment.words import plain, tyre_pointer
from service.core.findings import NOT_ASSESSED, NOT_MET, Finding, Remedy
from service.core.sources import basis
from service.standards.speed_symbol import least_symbol_for_kmh

SYMBOL = basis("UN-R30 speed symbol", "symbol compatible with the maximum design speed")
COMMERCIAL = basis("UN-R54 annex 8", "speed above the symbol at reduced load")


def _grade(view: AxleView) -> Grade:
    speed, top = view.then.facts.speed_capability_kmh, view.vehicle.max_speed_kmh
    return Grade(NOT_MET * (speed < top) + unknown(speed), speed, top)


def _explain(view: AxleView, grade: Grade) -> Finding:
    where = COMMERCIAL if view.then.facts.commercial else SYMBOL
    top = plain(grade.limit)
    remedy = None
    if grade.outcome == NOT_ASSESSED:
        message = f"Whether the tyre may run {top} km/h is not known from its designation; its maker states it."
        remedy = _symbol_remedy(view, grade.limit)
    elif grade.outcome == NOT_MET:
        message = f"The tyre may run {plain(grade.measured)} km/h; the vehicle reaches {top} km/h."
        remedy = _symbol_remedy(view, grade.limit)
    else:
        message = f"The tyre may run {plain(grade.measured)} km/h; the vehicle reaches {top} km/h."
    measured = finite(grade.measured)
    return Finding("speed.capability", view.name, grade.outcome, message, measured, grade.limit, "km/h", where, remedy)


def _symbol_remedy(view: AxleView, top_kmh: float) -> Remedy:
    symbol = least_symbol_for_kmh(top_kmh)
    pointer = tyre_pointer(view.name)
    if symbol is None:
        return Remedy("the tyre maker's statement for this speed", pointer, "speed_symbol")
    return Remedy(f"speed symbol {symbol} or faster", pointer, "speed_symbol", top_kmh, equals=symbol, unit="km/h")


SPEED = Check("speed.capability", _grade, _explain, required=True)
