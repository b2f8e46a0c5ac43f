"""What a change of tyre and rim does to the mass of a wheel and to its inertia; weighed parts count as weighed."""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.view.change import Wheel
from service.core.findings import Estimate
from service.core.numeric import Num
from service.physics import bands
from service.physics.inertia import (
    tyre_mass_estimate_kg,
    tyre_mass_kg,
    wheel_inertia_estimate_kg_m2,
    wheel_mass_estimate_kg,
)


class MassChange(NamedTuple, Generic[Num]):
    """Proposed minus present, of one wheel; NaN where a rim's mass is not given."""

    mass_kg: Estimate[Num]
    inertia_percent: Estimate[Num]


def mass_change(now: Wheel[Num], then: Wheel[Num]) -> MassChange[Num]:
    """Return the change of mass and inertia of one wheel, each with its band."""
    mass_now, inertia_now = _mass_and_inertia(now)
    mass_then, inertia_then = _mass_and_inertia(then)
    return MassChange(
        mass_kg=bands.difference(mass_now, mass_then),
        inertia_percent=bands.relative_change_percent(inertia_now, inertia_then),
    )


def _mass_and_inertia(wheel: Wheel[Num]) -> tuple[Estimate[Num], Estimate[Num]]:
    facts = wheel.facts
    estimated = tyre_mass_kg(facts.overall_diameter_mm, facts.nominal_width_mm, facts.rim_diameter_mm)
    tyre = tyre_mass_estimate_kg(facts.tyre_mass_kg, estimated)
    return (
        wheel_mass_estimate_kg(tyre, facts.rim_mass_kg),
        wheel_inertia_estimate_kg_m2(tyre, facts.rim_mass_kg, facts.overall_diameter_mm, facts.rim_diameter_mm),
    )
