"""Does the pressure to be used carry the axle, and is it one that the tyre usually gets?"""

from __future__ import annotations

from service.assessment.checks.grade import LAST_BIT, AxleCheck, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import apart, plain, tyre_pointer
from service.assessment.view.ordered_pressure import AS_SHOWN_KPA, is_too_high, is_too_low, usual_most_kpa
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, NOT_MET, Finding, Remedy, worst
from service.core.numeric import Num, known, known_or, pick, unknown
from service.core.saying import Said, say, sentences
from service.core.sources import basis
from service.physics.pressure_load import pressure_for_load_kpa

LAW = basis("ETRTO pressure-load", "exponent 0.8, with an addition for speed")


def in_words(pressure_kpa: float) -> Said:
    """Return a pressure as a gauge of either kind shows it: `245 kPa (2.45 bar)`."""
    return say("{kpa} ({bar})", kpa=plain(pressure_kpa, 0, "kPa"), bar=plain(pressure_kpa / 100.0, 2, "bar"))


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


def _too_weak(view: AxleView) -> Said:
    # Shares of what `load.capacity` says of the axle, so that both sentences have the same sum.
    tyres, mass = view.axle.tyres, view.axle.max_axle_mass_kg
    return say(
        "No pressure is enough. Each tyre must carry {required}, and it carries {capacity} at most.",
        required=plain(mass / tyres, 0, "kg"),
        capacity=apart(view.then.load.axle_capacity_kg / tyres, mass / tyres, 0, "kg"),
    )


def _wrong(view: AxleView, grade: Grade) -> Said:
    stated, needed = apart(grade.measured, grade.limit, 0, "kPa"), view.then.load.required_pressure_kpa
    if not grade.measured < needed:
        return say(
            "{stated} is too much: the tyre carries its load index at {reference}. Usually it gets {most} at most.",
            stated=stated,
            reference=plain(view.then.facts.reference_pressure_kpa, 0, "kPa"),
            most=plain(grade.limit, 0, "kPa"),
        )
    return say(
        "{stated} is too little for the full axle at {speed}. It needs at least {needed}.",
        stated=stated,
        speed=plain(view.vehicle.max_speed_kmh, 0, "km/h"),
        needed=plain(needed, 0, "kPa"),
    )


def _set(view: AxleView) -> Remedy:
    """Return the remedy for a wrong pressure: the one pressure that the whole answer orders."""
    to_set, most = view.ordered_pressure_kpa, usual_most_kpa(view.then.facts, view.limits)
    pointer = f"/candidate/{view.name}/pressure_kpa"
    if unknown(to_set):
        text = say("set {pressure} or less, cold", pressure=in_words(most))
        return Remedy(text, pointer, "pressure_kpa", at_most=most, unit="kPa")
    text = say("set {pressure}, cold", pressure=in_words(to_set))
    return Remedy(text, pointer, "pressure_kpa", to_set, most, unit="kPa")


def _enough(view: AxleView, grade: Grade) -> Said:
    pressure, needed = plain(grade.measured, 0, "kPa"), plain(grade.limit, 0, "kPa")
    if unknown(view.then.facts.pressure_kpa):
        return say(
            "The tyres carry the axle at the {pressure} to be set. It needs at least {needed}.",
            pressure=pressure,
            needed=needed,
        )
    message = say("{pressure} carries the axle, which needs at least {needed}.", pressure=pressure, needed=needed)
    if grade.measured < view.now.facts.pressure_kpa - AS_SHOWN_KPA:
        today = plain(view.now.facts.pressure_kpa, 0, "kPa")
        return sentences(message, say("It is below the {pressure} of today.", pressure=today))
    return message


def _without_reference(view: AxleView) -> tuple[Said, Remedy]:
    facts, pointer = view.then.facts, tyre_pointer(view.name)
    if known(facts.rated_kg) and unknown(facts.load_factor * facts.speed_capability_kmh):
        speed = plain(view.vehicle.max_speed_kmh, 0, "km/h")
        message = say(
            "The least pressure is not known: what the tyre needs at {speed} is for its maker to state.", speed=speed
        )
        text = say("ask the tyre's maker for the pressure at {speed}", speed=speed)
        return message, Remedy(text, pointer, "speed_symbol")
    if unknown(facts.rated_kg):
        message = say("The least pressure is not known, since the tyre states no load index or speed symbol.")
        text = say("state load index and speed symbol of the proposed tyre")
        return message, Remedy(text, pointer, "service_description")
    message = say(
        "The least pressure is not known. It follows from the pressure that is marked on the tyre's sidewall."
    )
    if not view.now.facts.commercial:
        message = sentences(say("The proposed tyres are commercial ones and the present tyres are not."), message)
    return message, Remedy(
        say("read the pressure beside the maximum load on the sidewall, and state it as the tyre's reference pressure"),
        f"/candidate/{view.name}/tyre/reference_pressure_kpa",
        "reference_pressure_kpa",
        unit="kPa",
    )


PRESSURE = AxleCheck("load.pressure", _grade, _explain)
