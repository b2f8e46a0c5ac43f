"""Does the pressure to be used carry the axle, and is it no lower than the present one?"""

from __future__ import annotations

from service.assessment.checks.grade import Check, Grade, finite
from service.assessment.checks.load_capacity import index_remedy
from service.assessment.checks.words import plain
from service.assessment.view.views import AxleView
from service.core.findings import ADVISORY, MET, NOT_MET, Finding, Remedy, is_open, worst
from service.core.numeric import known, known_or, larger, pick, smaller, unknown
from service.core.sources import basis
from service.physics.pressure_load import load_at_pressure_kg, speed_pressure_addition_kpa

LAW = basis("ETRTO pressure-load", "exponent 0.8, with an addition for speed")
STEP_KPA = 5.0
LAST_STEPS = 5.0e-7


def proposed_pressure_kpa(view: AxleView) -> float:
    """Return the cold pressure to propose, in steps of 5 kPa: enough for the axle, and for what is carried now.

    Floats or arrays alike.
    """
    needed = known_or(view.then.load.required_pressure_kpa, view.proposed_pressure_kpa)
    steps = larger(view.proposed_pressure_kpa, needed) / STEP_KPA
    # Rounded up, but not for the last bits of a float; negated twice, since only rounding down is an operator.
    return STEP_KPA * -((LAST_STEPS - steps) // 1.0)


def least_pressure_kpa(view: AxleView) -> float:
    """Return the least cold pressure that carries the axle and is not below the present one, in steps of 5 kPa.

    A present pressure that is too much for the proposed tyre is not asked for.
    """
    needed, (usual, _) = view.then.load.required_pressure_kpa, _greatest(view)
    steps = larger(needed, known_or(view.now.facts.pressure_kpa, needed)) / STEP_KPA
    return larger(needed, smaller(STEP_KPA * -((LAST_STEPS - steps) // 1.0), usual))


def _greatest(view: AxleView) -> tuple[float, float]:
    """Return up to which pressure nothing needs saying, and the most that common practice allows."""
    reference, limits = view.then.facts.reference_pressure_kpa, view.limits
    return (
        reference + limits.pressure_above_reference_met_kpa.value,
        reference + limits.pressure_above_reference_most_kpa.value,
    )


def pressure_is_sound(view: AxleView) -> bool:
    """Return whether the pressure of the request carries the axle and is not beyond use."""
    return _grade(view).outcome in (MET, ADVISORY) and view.then.facts.pressure_kpa <= _greatest(view)[0]


def _grade(view: AxleView) -> Grade:
    pressure, needed = view.then.facts.pressure_kpa, view.then.load.required_pressure_kpa
    carried, (usual, most) = view.then.load, _greatest(view)
    # Beyond its reference pressure a tyre carries no more, so what it cannot carry there it never will.
    too_weak = (carried.capacity_kg < carried.required_kg) & known(needed)
    low = (pressure < needed) | too_weak
    outcome = worst(
        not_met=low | (pressure > most),
        open_question=unknown(pressure - needed),
        advisory=(pressure > usual) | (pressure < smaller(view.now.facts.pressure_kpa, usual)),
    )
    above = pick(pressure > most, most, pick((outcome == ADVISORY) & (pressure > usual), usual, needed))
    return Grade(outcome, pressure, pick(low, needed, above))


def _explain(view: AxleView, grade: Grade) -> Finding:
    usual, most = _greatest(view)
    remedy: Remedy | None = None
    if grade.outcome in (ADVISORY, NOT_MET) and grade.measured > usual and grade.limit in (usual, most):
        message, remedy = _too_high(view, grade)
    elif unknown(grade.limit):
        message, remedy = _without_reference(view)
    elif view.then.load.capacity_kg < view.then.load.required_kg:
        reference = plain(view.then.facts.reference_pressure_kpa)
        message = f"No pressure is enough: the tyres carry their load index at {reference} kPa and no more above it."
        remedy = _stronger_remedy(view)
    else:
        message, remedy = _by_load(view, grade)
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("load.pressure", view.name, grade.outcome, message, measured, limit, "kPa", LAW, remedy)


def _too_high(view: AxleView, grade: Grade) -> tuple[str, Remedy]:
    usual, _ = _greatest(view)
    reference = plain(view.then.facts.reference_pressure_kpa)
    message = (
        f"{plain(grade.measured)} kPa is far above the {reference} kPa at which the tyre carries its load index; "
        f"{plain(grade.limit)} kPa is taken as the most, unless the sidewall says otherwise."
    )
    text = f"{plain(usual)} kPa ({plain(usual / 100.0, 2)} bar) or less, cold"
    return message, Remedy(text, f"/candidate/{view.name}/pressure_kpa", "pressure_kpa", at_most=usual, unit="kPa")


def _by_load(view: AxleView, grade: Grade) -> tuple[str, Remedy | None]:
    proposed = proposed_pressure_kpa(view)
    to_set = proposed if is_open(grade.outcome) else least_pressure_kpa(view)
    needed, words = plain(grade.limit), f"{plain(to_set)} kPa ({plain(to_set / 100.0, 2)} bar) or more, cold"
    if proposed > to_set:
        words = f"{words}; {plain(proposed)} kPa carries what the present tyres carry"
    remedy = Remedy(words, f"/candidate/{view.name}/pressure_kpa", "pressure_kpa", to_set, unit="kPa")
    if is_open(grade.outcome):
        return f"No pressure is given for the proposed tyres; the axle needs at least {needed} kPa.", remedy
    if grade.outcome == NOT_MET:
        return (
            f"At {plain(grade.measured)} kPa the tyres do not carry the axle; it needs at least {needed} kPa.",
            remedy,
        )
    if grade.outcome == ADVISORY:
        now = plain(view.now.facts.pressure_kpa)
        return f"{plain(grade.measured)} kPa carries the axle, but is below the present {now} kPa.", remedy
    return f"{plain(grade.measured)} kPa carries the axle, which needs at least {needed} kPa.", None


def _stronger_remedy(view: AxleView) -> Remedy:
    """Return the load index that carries the axle at the pressure given, or at the reference pressure."""
    facts, speed = view.then.facts, view.vehicle.max_speed_kmh
    reference = facts.reference_pressure_kpa
    pressure = facts.pressure_kpa - speed_pressure_addition_kpa(speed)
    pressure = reference if not 0.0 < pressure < reference else pressure
    share = load_at_pressure_kg(1.0, pressure, reference, facts.pressure_exponent)
    return index_remedy(view, view.axle.max_axle_mass_kg / share)


def _without_reference(view: AxleView) -> tuple[str, Remedy]:
    facts = view.then.facts
    if unknown(facts.rated_kg) or unknown(facts.load_factor):
        return "The least pressure is not known, since the tyre states no load index or speed symbol.", Remedy(
            f"state load index and speed symbol of candidate.{view.name}.tyre",
            f"/candidate/{view.name}/tyre/size",
            "service_description",
        )
    return (
        "The least pressure is not known: it follows from the pressure that is marked on a commercial tyre's sidewall.",
        Remedy(
            f"state candidate.{view.name}.tyre.reference_pressure_kpa as marked on the sidewall",
            f"/candidate/{view.name}/tyre/reference_pressure_kpa",
            "reference_pressure_kpa",
            unit="kPa",
        ),
    )


PRESSURE = Check("load.pressure", _grade, _explain)
