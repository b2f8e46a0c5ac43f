"""Is the tyre fast enough for the vehicle?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, MET, OPEN, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known, unknown
from service.core.sources import basis
from service.standards.speed_symbol import least_symbol_for_kmh

SYMBOL = basis("UN-R30 speed symbol", "the symbol must suit the maximum design speed")
COMMERCIAL = basis("UN-R54 annex 8", "speed above the symbol at reduced load")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    speed, top = view.then.facts.speed_capability_kmh, view.vehicle.max_speed_kmh
    slow, now, then = speed < top, view.now.facts, view.then.facts
    # The car is as fast on tyres so marked today: no shop has the maker's statement, and nobody fits another kind.
    to_be_asked = (now.left_to_maker != 1.0) | (then.left_to_maker != 1.0)
    # A winter tyre that is fast enough for the place may be slower than the vehicle, whatever the season asked about.
    counts, floor = view.conditions.slow_winter_tyre(view.then.facts.winter_mark), view.conditions.winter_floor_kmh
    outcome = worst(
        not_met=slow & ((counts == 0.0) | (speed < floor) | unknown(floor)),
        not_assessed=(slow & unknown(counts)) | (unknown(speed) & to_be_asked),
        advisory=slow,
        open_question=unknown(speed),
    )
    return Grade(outcome, speed, top)


def _explain(view: AxleView, grade: Grade) -> Finding:
    where = COMMERCIAL if view.then.facts.commercial else SYMBOL
    top, winter = plain(grade.limit), view.pack.winter
    enough = "" if grade.outcome == MET else " only"
    message = f"The tyre may run {plain(grade.measured)} km/h{enough}; the vehicle reaches {top} km/h."
    remedy = None if grade.outcome == MET else _symbol_remedy(view, grade.limit)
    if is_open(grade.outcome) and known(grade.measured):
        message = f"The tyre may run {plain(grade.measured)} km/h only; whether it is a winter tyre depends on its age."
        remedy = Remedy("fit a tyre marked 3PMSF", tyre_pointer(view.name), "marking", equals="3PMSF")
    elif is_open(grade.outcome):
        message = f"Whether the tyre may run {top} km/h is not known from its designation; its maker states it."
        if grade.outcome == OPEN:
            message = (
                f"Whether the tyre may run {top} km/h its maker states; the present one is marked in the same way."
            )
    elif grade.outcome == ADVISORY and winter is not None:
        slow = plain(grade.measured)
        label = f" with a label of {slow} km/h in the driver's view" if winter.label_required else ""
        message = (
            f"The winter tyre may run {slow} km/h, the vehicle reaches {top} km/h. That is allowed{label}, and no more "
            "may be driven."
        )
        where = winter.basis
        faster = _symbol_remedy(view, grade.limit)
        keep = f"put a label of {slow} km/h in the driver's view" if winter.label_required else f"keep to {slow} km/h"
        # What keeps the tyre comes first: it is what was wanted.
        remedy = faster._replace(text=f"{keep}, or fit {faster.text}")
    measured = finite(grade.measured)
    return Finding("speed.capability", view.name, grade.outcome, message, measured, grade.limit, "km/h", where, remedy)


def _symbol_remedy(view: AxleView, top_kmh: float) -> Remedy:
    symbol = least_symbol_for_kmh(top_kmh)
    pointer = tyre_pointer(view.name)
    if symbol is None:
        words = f"a tyre that its maker states to be good for {plain(top_kmh)} km/h"
        return Remedy(words, pointer, "speed_symbol")
    return Remedy(f"speed symbol {symbol} or faster", pointer, "speed_symbol", top_kmh, equals=symbol, unit="km/h")


SPEED = AxleCheck("speed.capability", _grade, _explain)
