"""Does the pressure to be used carry the axle, and is it one that the tyre usually gets?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.ordered_pressure import AS_SHOWN_KPA, is_too_high, is_too_low, usual_most_kpa
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, worst
from service.core.numeric import Num, known, known_or, pick, unknown
from service.core.sources import basis
from service.physics.pressure_load import pressure_for_load_kpa

LAW = basis("ETRTO pressure-load", "exponent 0.8, with an addition for speed")


def in_words(pressure_kpa: float) -> str:
    """Return a pressure as a gauge of either kind shows it: `245 kPa (2.45 bar)`."""
    return f"{plain(pressure_kpa)} kPa ({plain(pressure_kpa / 100.0, 2)} bar)"


def _grade(view: AxleView[Num]) -> Grade[Num]:
    facts, carried = view.then.facts, view.then.load
    # A pressure that nobody stated is the one that will be set.
    pressure = known_or(facts.pressure_kpa, view.ordered_pressure_kpa)
    needed, reference = carried.required_pressure_kpa, facts.reference_pressure_kpa
    high = is_too_high(pressure, facts, view.limits)
    too_weak = carried.capacity_kg < carried.required_kg - LAST_BIT
    # Among tyres of one class the sidewall is read as ever; where the class changes, what it says decides.
    other_class = known(carried.capacity_kg) & (facts.commercial != view.now.facts.commercial)
    outcome = worst(
        not_met=too_weak,
        not_assessed=unknown(needed) & other_class,
        open_question=unknown(needed),
        advisory=is_too_low(pressure, carried) | high,
    )
    limit = pick(high, usual_most_kpa(facts, view.limits), needed)
    # By the same law the axle would take more than the reference pressure, above which nothing is gained.
    beyond = pressure_for_load_kpa(carried.required_kg, carried.capacity_kg, reference, facts.pressure_exponent)
    return Grade(outcome, pick(too_weak, reference, pressure), pick(too_weak, beyond, limit))


def _explain(view: AxleView, grade: Grade) -> Finding:
    remedy: Remedy | None
    if grade.outcome == NOT_MET:
        message, remedy = _too_weak(view), index_remedy(view, view.axle.max_axle_mass_kg)
    elif unknown(grade.limit):
        message, remedy = _without_reference(view)
    elif grade.outcome == ADVISORY:
        message, remedy = _wrong(view, grade), _set(view)
    else:
        message, remedy = _enough(view, grade), None
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("load.pressure", view.name, grade.outcome, message, measured, limit, "kPa", LAW, remedy)


def _too_weak(view: AxleView) -> str:
    # Shares of what `load.capacity` says of the axle, so that both sentences have the same sum.
    tyres, mass = view.axle.tyres, view.axle.max_axle_mass_kg
    capacity, required = apart(view.then.load.axle_capacity_kg / tyres, mass / tyres), plain(mass / tyres)
    return f"No pressure is enough. Each tyre must carry {required} kg, and it carries {capacity} kg at most."


def _wrong(view: AxleView, grade: Grade) -> str:
    stated, needed = apart(grade.measured, grade.limit), view.then.load.required_pressure_kpa
    if not grade.measured < needed:
        reference, most = plain(view.then.facts.reference_pressure_kpa), plain(grade.limit)
        message = f"{stated} kPa is too much: the tyre carries its load index at {reference} kPa."
        return f"{message} Usually it gets {most} kPa at most."
    speed = plain(view.vehicle.max_speed_kmh)
    return f"{stated} kPa is too little for the full axle at {speed} km/h. It needs at least {plain(needed)} kPa."


def _set(view: AxleView) -> Remedy:
    """Return the remedy for a wrong pressure: the one pressure that the whole answer orders."""
    to_set, most = view.ordered_pressure_kpa, usual_most_kpa(view.then.facts, view.limits)
    pointer = f"/candidate/{view.name}/pressure_kpa"
    if unknown(to_set):
        return Remedy(f"set {in_words(most)} or less, cold", pointer, "pressure_kpa", at_most=most, unit="kPa")
    return Remedy(f"set {in_words(to_set)}, cold", pointer, "pressure_kpa", to_set, most, unit="kPa")


def _enough(view: AxleView, grade: Grade) -> str:
    pressure, needed = plain(grade.measured), plain(grade.limit)
    if unknown(view.then.facts.pressure_kpa):
        return f"The tyres carry the axle at the {pressure} kPa to be set. It needs at least {needed} kPa."
    message = f"{pressure} kPa carries the axle, which needs at least {needed} kPa."
    if grade.measured < view.now.facts.pressure_kpa - AS_SHOWN_KPA:
        message = f"{message} It is below the {plain(view.now.facts.pressure_kpa)} kPa of today."
    return message


def _without_reference(view: AxleView) -> tuple[str, Remedy]:
    facts, pointer = view.then.facts, tyre_pointer(view.name)
    if known(facts.rated_kg) and unknown(facts.load_factor * facts.speed_capability_kmh):
        speed = plain(view.vehicle.max_speed_kmh)
        message = f"The least pressure is not known: what the tyre needs at {speed} km/h is for its maker to state."
        text = f"ask the tyre's maker for the pressure at {speed} km/h"
        return message, Remedy(text, pointer, "speed_symbol")
    if unknown(facts.rated_kg):
        message = "The least pressure is not known, since the tyre states no load index or speed symbol."
        text = "state load index and speed symbol of the proposed tyre"
        return message, Remedy(text, pointer, "service_description")
    message = "The least pressure is not known. It follows from the pressure that is marked on the tyre's sidewall."
    if not view.now.facts.commercial:
        message = f"The proposed tyres are commercial ones and the present tyres are not. {message}"
    return message, Remedy(
        "read the pressure beside the maximum load on the sidewall, and state it as the tyre's reference pressure",
        f"/candidate/{view.name}/tyre/reference_pressure_kpa",
        "reference_pressure_kpa",
        unit="kPa",
    )


PRESSURE = AxleCheck("load.pressure", _grade, _explain)
