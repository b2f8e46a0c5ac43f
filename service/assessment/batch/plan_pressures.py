"""The pressures that make combinations comparable: one rule for all, so that no size is favoured by the pump.

share_of_load_index: every tyre may carry, at its pressure, the same share of its load index as the present tyre of
that axle does at its own; what a larger size carries more stays with it.
load_over_capacity: every tyre carries its load as the same share of what it may carry at its pressure; a larger size is
let down until it has no more in hand than the present one.
"""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.batch.grading import as_column
from service.assessment.batch.plan_case import PressureRule
from service.assessment.view.ordered_pressure import usual_most_kpa
from service.assessment.view.views import AxleView
from service.core.numeric import FloatArray, Num, known_or, larger, pick, smaller
from service.physics.pressure_load import load_at_pressure_kg

# Gauges are read to this, and it moves the share by half a per cent.
STEP_KPA = 5.0


class PlannedPressures(NamedTuple):
    """The pressures of one axle, one for each combination."""

    pressure_kpa: FloatArray
    """NaN where no law of load and pressure is known for the tyre."""
    share_percent: FloatArray
    """What the rule makes alike, as it comes out with this pressure."""
    held: FloatArray
    """1 where the rule alone would have led elsewhere: to less than the axle needs, or to more than is usual."""


def planned_pressures(view: AxleView[Num], rule: PressureRule, size: int) -> PlannedPressures:
    """Return the pressures of an axle of many combinations, whose view holds arrays."""
    now, then = view.now.facts, view.then.facts
    present = view.now.behaviour.pressure_kpa
    share = (present / now.reference_pressure_kpa) ** now.pressure_exponent
    if rule == "load_over_capacity":
        share = share * now.rated_kg / then.rated_kg
    wanted = then.reference_pressure_kpa * share ** (1.0 / then.pressure_exponent)
    least, most = view.then.load.required_pressure_kpa, usual_most_kpa(then, view.limits)
    up = STEP_KPA * -((1e-6 - least / STEP_KPA) // 1.0)
    kept = smaller(larger(STEP_KPA * ((wanted / STEP_KPA + 0.5) // 1.0), known_or(up, wanted)), most)
    same = (then.rated_kg == now.rated_kg) & (then.reference_pressure_kpa == now.reference_pressure_kpa)
    # The present tyre keeps its pressure to the last kilopascal.
    to_set = pick(same & (present >= known_or(least, present)), present, kept)
    held = pick(abs(to_set - wanted) > STEP_KPA, 1.0, 0.0)
    found = (to_set / then.reference_pressure_kpa) ** then.pressure_exponent
    if rule == "load_over_capacity":
        load = view.axle.estimate_mass_kg / view.axle.tyres
        carried = load_at_pressure_kg(then.rated_kg, to_set, then.reference_pressure_kpa, then.pressure_exponent)
        found = load / carried
    return PlannedPressures(*(as_column(each, (size,)) for each in (to_set, 100.0 * found, held)))
