"""Is the tyre fast enough for the vehicle?"""

from __future__ import annotations

from service.assessment.checks.grade import AxleCheck, Grade, finite
from service.assessment.checks.words import plain, tyre_pointer
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, MET, OPEN, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known, unknown
from service.core.saying import Said, say
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
    # A winter tyre or a spare may be slower than the vehicle, so that it does not tell how fast that is.
    untold = view.vehicle.speed_assumed and (
        (now.winter_mark > then.winter_mark) | (now.temporary_spare > then.temporary_spare)
    )
    outcome = worst(
        not_met=slow & ((counts == 0.0) | (speed < floor) | unknown(floor)),
        not_assessed=(slow & unknown(counts)) | (unknown(speed) & to_be_asked) | untold,
        advisory=slow,
        open_question=unknown(speed),
    )
    return Grade(outcome, speed, top)


def _explain(view: AxleView, grade: Grade) -> Finding:
    where = COMMERCIAL if view.then.facts.commercial else SYMBOL
    top, winter = plain(grade.limit, 0, "km/h"), view.pack.winter
    # A speed that is not known has no words.
    speed = plain(grade.measured, 0, "km/h") if known(grade.measured) else top
    remedy = None if grade.outcome == MET else _symbol_remedy(view, grade.limit)
    if grade.outcome == MET:
        message = say("The tyre may run {speed}; the vehicle reaches {top}.", speed=speed, top=top)
    elif is_open(grade.outcome) and known(grade.measured):
        message = say("The tyre may run {speed} only; whether it is a winter tyre depends on its age.", speed=speed)
        remedy = Remedy(say("fit a tyre marked 3PMSF"), tyre_pointer(view.name), "marking", equals="3PMSF")
    elif grade.outcome == OPEN:
        message = say(
            "Whether the tyre may run {top} its maker states; the present one is marked in the same way.", top=top
        )
    elif is_open(grade.outcome):
        message = say("Whether the tyre may run {top} is not known from its designation; its maker states it.", top=top)
    elif grade.outcome == ADVISORY and winter is not None:
        message, where = _slow(speed, top, labelled=winter.label_required), winter.basis
        faster = _symbol_remedy(view, grade.limit)
        remedy = faster._replace(text=_kept(speed, faster.text, labelled=winter.label_required))
    else:
        message = say("The tyre may run {speed} only; the vehicle reaches {top}.", speed=speed, top=top)
    measured = finite(grade.measured)
    return Finding("speed.capability", view.name, grade.outcome, message, measured, grade.limit, "km/h", where, remedy)


def _slow(speed: str, top: str, *, labelled: bool) -> Said:
    """Return that a winter tyre may be slower than the vehicle here, and on what condition."""
    if labelled:
        return say(
            "The winter tyre may run {speed}, the vehicle reaches {top}. That is allowed with a label of {speed} in "
            "the driver's view, and no more may be driven.",
            speed=speed,
            top=top,
        )
    return say(
        "The winter tyre may run {speed}, the vehicle reaches {top}. That is allowed, and no more may be driven.",
        speed=speed,
        top=top,
    )


def _kept(speed: str, faster: str, *, labelled: bool) -> Said:
    """Return how the slow winter tyre is kept, and what else helps: what keeps the tyre is what was wanted."""
    if labelled:
        return say("put a label of {speed} in the driver's view, or fit {faster_tyre}", speed=speed, faster_tyre=faster)
    return say("keep to {speed}, or fit {faster_tyre}", speed=speed, faster_tyre=faster)


def _symbol_remedy(view: AxleView, top_kmh: float) -> Remedy:
    symbol = least_symbol_for_kmh(top_kmh)
    pointer = tyre_pointer(view.name)
    if symbol is None:
        words = say("a tyre that its maker states to be good for {speed}", speed=plain(top_kmh, 0, "km/h"))
        return Remedy(words, pointer, "speed_symbol")
    words = say("speed symbol {symbol} or faster", symbol=symbol)
    return Remedy(words, pointer, "speed_symbol", top_kmh, equals=symbol, unit="km/h")


SPEED = AxleCheck("speed.capability", _grade, _explain)
