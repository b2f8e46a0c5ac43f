"""Do the tyres carry the axle at the vehicle's top speed?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.figures import load_share
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, OPEN, Finding, Remedy, is_open, worst
from service.core.numeric import Num, unknown
from service.core.saying import Amount, Said, say, sentences
from service.core.sources import basis
from service.standards.load_index import least_index_for_kg
from service.standards.passenger_speed_load import load_factor
from service.standards.speed_symbol import least_symbol_for_kmh

PASSENGER = basis("UN-R30 2.31", "with the shares of the axle mass of UN R142 (from memory)")
COMMERCIAL = basis("UN-R54 annex 8", "with the shares of the axle mass of UN R142 (from memory)")


def _grade(view: AxleView[Num]) -> Grade[Num]:
    capacity, mass = view.then.load.axle_capacity_kg, view.axle.max_axle_mass_kg
    # Where the present tyre's load at that speed is for its maker to state as well, one of no lower index settles it.
    now, then = view.now.facts, view.then.facts
    lower = unknown(then.rated_kg - now.rated_kg) | (then.rated_kg < now.rated_kg)
    # With neither speed nor mass given, the index must hold at lower speeds too, where the present one carries more.
    supposed = view.vehicle.speed_assumed and view.axle.mass_assumed
    to_be_asked = (now.left_to_maker != 1.0) | (then.left_to_maker != 1.0) | lower
    outcome = worst(
        not_met=capacity < mass - LAST_BIT,
        not_assessed=(unknown(capacity) & to_be_asked) | (supposed and (then.rated_kg < now.rated_kg)),
        open_question=unknown(capacity),
    )
    return Grade(outcome, capacity, mass)


def index_remedy(view: AxleView, axle_mass_kg: float) -> Remedy:
    """Return the least load index with which the axle's tyres carry this mass at the vehicle's speed."""
    facts = view.then.facts
    per_tyre = axle_mass_kg * load_share(facts, view.axle, view.limits, view.vehicle)
    factor, symbol = facts.load_factor, None
    if unknown(facts.load_factor):
        symbol = least_symbol_for_kmh(view.vehicle.max_speed_kmh)
        factor = 1.0 if symbol is None else load_factor(symbol, view.vehicle.max_speed_kmh)
    # What an index carries exactly, it carries: a quotient may be off by the last bit.
    index = least_index_for_kg(per_tyre / factor - LAST_BIT)
    pointer = tyre_pointer(view.name)
    if index is None:
        return Remedy(say("check the axle's mass: no load index of the table carries it"), pointer, "load_index")
    return Remedy(_index_words(Amount(index), symbol, keeps_all=factor >= 1.0), pointer, "load_index", float(index))


def _index_words(index: Amount, symbol: str | None, *, keeps_all: bool) -> Said:
    if symbol is None and keeps_all:
        return say("load index {index} or more", index=index)
    if symbol is None:
        return say("load index {index} or more, or a faster speed symbol that keeps more of its load", index=index)
    if keeps_all:
        return say("load index {index} or more, with speed symbol {symbol}", index=index, symbol=symbol)
    return say(
        "load index {index} or more, with speed symbol {symbol}, or a faster speed symbol that keeps more of its load",
        index=index,
        symbol=symbol,
    )


def _explain(view: AxleView, grade: Grade) -> Finding:
    where = COMMERCIAL if view.then.facts.commercial else PASSENGER
    if is_open(grade.outcome):
        message, remedy = _not_known(view, grade)
    else:
        message, remedy = _carried(view, grade), None
        if grade.outcome == NOT_MET:
            remedy = index_remedy(view, grade.limit)
    return Finding(
        "load.capacity", view.name, grade.outcome, message, finite(grade.measured), grade.limit, "kg", where, remedy
    )


def _not_known(view: AxleView, grade: Grade) -> tuple[Said, Remedy]:
    mass = plain(grade.limit, 0, "kg")
    if unknown(view.then.facts.rated_kg):
        message = say(
            "What the tyres carry is not known without load index and speed symbol. The axle needs {mass}.", mass=mass
        )
        return message, index_remedy(view, grade.limit)
    message = say(
        "What the tyres carry at {speed} is for their maker to state. The axle needs {mass}.",
        speed=plain(view.vehicle.max_speed_kmh, 0, "km/h"),
        mass=mass,
    )
    if grade.outcome == OPEN:
        message = sentences(message, say("The load index is no lower than the present one."))
    text = say("the tyre maker's statement for this speed")
    return message, Remedy(text, tyre_pointer(view.name), "speed_symbol")


def _carried(view: AxleView, grade: Grade) -> Said:
    facts, mass = view.then.facts, plain(grade.limit, 0, "kg")
    speed = plain(min(view.vehicle.max_speed_kmh, facts.speed_capability_kmh), 0, "km/h")
    share = plain(100.0 * facts.load_factor, 1, "%")
    if grade.outcome == NOT_MET:
        carried = apart(grade.measured, grade.limit, 0, "kg")
        if facts.load_factor == 1.0:
            return say("The axle's tyres carry {carried}; the axle needs {mass}.", carried=carried, mass=mass)
        return say(
            "The axle's tyres carry {carried} at {speed} ({share} of the load index); the axle needs {mass}.",
            carried=carried,
            speed=speed,
            share=share,
            mass=mass,
        )
    carried = plain(grade.measured, 0, "kg")
    if facts.load_factor == 1.0:
        return say("The axle's tyres carry {carried}, enough for {mass}.", carried=carried, mass=mass)
    return say(
        "The axle's tyres carry {carried} at {speed} ({share} of the load index), enough for {mass}.",
        carried=carried,
        speed=speed,
        share=share,
        mass=mass,
    )


CAPACITY = AxleCheck("load.capacity", _grade, _explain)
