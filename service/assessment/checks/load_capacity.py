"""Do the tyres carry the axle at the vehicle's top speed?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.figures import load_share
from service.assessment.view.views import AxleView
from service.core.findings import NOT_MET, OPEN, Finding, Remedy, is_open, worst
from service.core.numeric import Num, known, unknown
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
    to_be_asked = (now.left_to_maker != 1.0) | (then.left_to_maker != 1.0) | lower
    outcome = worst(
        not_met=capacity < mass - LAST_BIT,
        not_assessed=unknown(capacity) & to_be_asked,
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
    index = least_index_for_kg(per_tyre / factor)
    pointer = tyre_pointer(view.name)
    if index is None:
        return Remedy("check the axle's mass: no load index of the table carries it", pointer, "load_index")
    words = f"load index {index} or more"
    if symbol is not None:
        words = f"{words}, with speed symbol {symbol}"
    if factor < 1.0:
        words = f"{words}, or a faster speed symbol that keeps more of its load"
    return Remedy(words, pointer, "load_index", float(index))


def _explain(view: AxleView, grade: Grade) -> Finding:
    facts = view.then.facts
    where = COMMERCIAL if facts.commercial else PASSENGER
    mass = plain(grade.limit)
    remedy = None
    if is_open(grade.outcome):
        message = f"What the tyres carry is not known without load index and speed symbol. The axle needs {mass} kg."
        remedy = index_remedy(view, grade.limit)
        if known(facts.rated_kg):
            speed = plain(view.vehicle.max_speed_kmh)
            message = f"What the tyres carry at {speed} km/h is for their maker to state. The axle needs {mass} kg."
            if grade.outcome == OPEN:
                message = f"{message} The load index is no lower than the present one."
            remedy = Remedy("the tyre maker's statement for this speed", tyre_pointer(view.name), "speed_symbol")
    else:
        carried = apart(grade.measured, grade.limit)
        at_speed = ""
        if facts.load_factor != 1.0:
            speed = plain(min(view.vehicle.max_speed_kmh, facts.speed_capability_kmh))
            at_speed = f" at {speed} km/h ({plain(100.0 * facts.load_factor, 1)} % of the load index)"
        if grade.outcome == NOT_MET:
            message = f"The axle's tyres carry {carried} kg{at_speed}; the axle needs {mass} kg."
            remedy = index_remedy(view, grade.limit)
        else:
            message = f"The axle's tyres carry {plain(grade.measured)} kg{at_speed}, enough for {mass} kg."
    return Finding(
        "load.capacity", view.name, grade.outcome, message, finite(grade.measured), grade.limit, "kg", where, remedy
    )


CAPACITY = AxleCheck("load.capacity", _grade, _explain)
