"""The pressure of a wheel: how far up a tyre usually goes, what is set in the end, and what the estimates hold for.

`ordered_pressure_kpa` is the only one that is ever named as the pressure to set; floats or arrays alike.
"""

from __future__ import annotations

from service.assessment.view.figures import Load
from service.assessment.view.wheel_facts import WheelFacts
from service.core.findings import Holds
from service.core.numeric import UNKNOWN, Num, known_or, larger, pick, smaller
from service.rules.limits import Limits

# Pressure for the estimates when neither the caller nor the load gives one.
ASSUMED_PRESSURE_KPA = 250.0
# Gauges and job cards show whole numbers: what reads alike is alike.
AS_SHOWN_KPA = 0.5
STEP_KPA = 5.0
# Of a step: rounded up, but not for the last bits of a float.
LAST_BITS = 5.0e-7


def usual_most_kpa(facts: WheelFacts[Num], limits: Limits) -> Num:
    """Return the most that a tyre usually gets, NaN where the pressure for its load index is not known."""
    return facts.reference_pressure_kpa + limits.pressure_above_reference_met_kpa.value


def is_too_low(pressure_kpa: Num, carried: Load[Num]) -> Holds:
    """Return whether a pressure does not carry the axle; one that nobody knows is not too low."""
    return pressure_kpa < carried.required_pressure_kpa - AS_SHOWN_KPA


def is_too_high(pressure_kpa: Num, facts: WheelFacts[Num], limits: Limits) -> Holds:
    """Return whether a pressure is above what the tyre usually gets."""
    return pressure_kpa > usual_most_kpa(facts, limits) + AS_SHOWN_KPA


def ordered_pressure_kpa(facts: WheelFacts[Num], carried: Load[Num], present_kpa: Num, limits: Limits) -> Num:
    """Return the cold pressure to set.

    It is the one stated with the tyre where that is enough and usual. Else it is what the axle needs, or today's
    pressure `present_kpa` (NaN: not known) where that is more and not too much for this tyre: up to the next 5 kPa.

    Parameters
    ----------
    facts : WheelFacts
        The tyre to be fitted, with the pressure stated for it.
    carried : Load
        What it carries and needs.
    present_kpa : float or array
        The pressure of the tyre that it replaces [kPa].
    limits : Limits
        What is usual.

    Returns
    -------
    float or array
        Pressure [kPa], NaN where it is not known what is needed, and where no pressure is enough.
    """
    needed, most = carried.required_pressure_kpa, usual_most_kpa(facts, limits)
    least = smaller(needed, most)
    today = pick(present_kpa <= most, present_kpa, least)
    # Negated twice, since only rounding down is an operator.
    up = STEP_KPA * -((LAST_BITS - larger(least, today) / STEP_KPA) // 1.0)
    down = STEP_KPA * ((most / STEP_KPA + LAST_BITS) // 1.0)
    to_set = larger(smaller(up, down), least)
    stated = facts.pressure_kpa
    sound = (stated >= least - AS_SHOWN_KPA) & (stated <= most + AS_SHOWN_KPA)
    return pick(sound, stated, to_set)


def present_pressure_kpa(facts: WheelFacts[Num], carried: Load[Num], limits: Limits) -> Num:
    """Return the pressure that the estimates of the present fitment hold for.

    It is the stated one where that is sound, else the one that would be set: so the same tyre is the same before and
    after, and a change is not praised for what a pump would do.
    """
    not_known: Num = UNKNOWN
    supposed = ordered_pressure_kpa(facts, carried, not_known, limits)
    usual = known_or(facts.reference_pressure_kpa, ASSUMED_PRESSURE_KPA)
    return known_or(supposed, known_or(facts.pressure_kpa, usual))


def estimate_pressure_kpa(facts: WheelFacts[Num], ordered_kpa: Num, present_kpa: Num, limits: Limits) -> Num:
    """Return the pressure that the estimates of the proposed fitment hold for: the one that will be in the tyre.

    Where none can be ordered it is the stated one, else the present one as far as the tyre usually goes.
    """
    as_now = smaller(present_kpa, known_or(usual_most_kpa(facts, limits), present_kpa))
    return known_or(ordered_kpa, known_or(facts.pressure_kpa, as_now))
