"""Does the pressure to be used carry the axle, and is it no lower than the present one?"""

from __future__ import annotations

from service.assessment.checks.load import index_remedy
from service.assessment.comparison import AxleView
from service.assessment.grade import Check, Grade, finite
from service.assessment.words import plain
from service.core.findings import ADVISORY, NOT_ASSESSED, NOT_MET, Finding, Remedy
from service.core.numeric import known_or, larger
from service.core.sources import basis
from service.physics.pressure_load import load_at_pressure_kg, speed_pressure_addition_kpa

LAW = basis("ETRTO pressure-load", "exponent 0.8, with the handbook's addition for speed")
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


def _grade(view: AxleView) -> Grade:
    pressure, needed = view.then.facts.pressure_kpa, view.then.load.required_pressure_kpa
    carried = view.then.load
    # Beyond its reference pressure a tyre carries no more, so what it cannot carry there it never will.
    too_weak = (carried.capacity_kg < carried.required_kg) & (needed == needed)
    enough = carried.capacity_kg >= carried.required_kg
    below_present = ADVISORY * ((pressure < view.now.facts.pressure_kpa) & (pressure >= needed) & enough)
    not_known = (pressure - needed != pressure - needed) & (enough | (needed != needed))
    outcome = NOT_MET * ((pressure < needed) | too_weak) + below_present + NOT_ASSESSED * not_known
    return Grade(outcome, pressure, needed)


def _explain(view: AxleView, grade: Grade) -> Finding:
    pointer = f"/candidate/{view.name}/pressure_kpa"
    remedy: Remedy | None = None
    if grade.limit != grade.limit:
        message, remedy = _without_reference(view)
    elif view.then.load.capacity_kg < view.then.load.required_kg:
        most = plain(view.then.facts.reference_pressure_kpa)
        message = f"No pressure carries the axle: they carry their load index at {most} kPa and no more above it."
        remedy = _stronger_remedy(view)
    else:
        to_set = proposed_pressure_kpa(view)
        needed, words = plain(grade.limit), f"{plain(to_set)} kPa ({plain(to_set / 100.0, 2)} bar) or more, cold"
        remedy = Remedy(words, pointer, "pressure_kpa", to_set, unit="kPa")
        if grade.outcome == NOT_ASSESSED:
            message = f"No pressure is given for the proposed tyres; the axle needs {needed} kPa at the least."
        elif grade.outcome == NOT_MET:
            message = f"At {plain(grade.measured)} kPa the tyres do not carry the axle; {needed} kPa is the least."
        elif grade.outcome == ADVISORY:
            now = plain(view.now.facts.pressure_kpa)
            message = f"{plain(grade.measured)} kPa carries the axle, but is below the present {now} kPa."
        else:
            message, remedy = f"{plain(grade.measured)} kPa carries the axle; {needed} kPa is the least.", None
    measured, limit = finite(grade.measured), finite(grade.limit)
    return Finding("load.pressure", view.name, grade.outcome, message, measured, limit, "kPa", LAW, remedy)


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
    if facts.rated_kg != facts.rated_kg or facts.load_factor != facts.load_factor:
        return "The least pressure is not known, since the tyre states no load index or speed symbol.", Remedy(
            "state load index and speed symbol", f"/candidate/{view.name}/tyre/size", "service_description"
        )
    return "The least pressure is not known: a commercial tyre's reference pressure stands on its sidewall.", Remedy(
        f"state candidate.{view.name}.tyre.reference_pressure_kpa as marked on the sidewall",
        f"/candidate/{view.name}/tyre/reference_pressure_kpa",
        "reference_pressure_kpa",
        unit="kPa",
    )


PRESSURE = Check("load.pressure", _grade, _explain)
