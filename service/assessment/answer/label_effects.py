"""What the tyre's label says beside the width: rolling resistance, wet braking and noise, where labels are given."""

from __future__ import annotations

from math import exp, log
from typing import NamedTuple

from service.assessment.case import Axle, Fitment, TyreLabel
from service.assessment.checks.words import plain, signed
from service.assessment.view.driving import Driving
from service.assessment.view.views import CarView
from service.core.findings import Estimate
from service.core.numeric import known
from service.core.saying import Said, say, sentences
from service.core.sources import basis
from service.physics.rolling_energy import FuelName, energy_change_kwh_per_100km, fuel_change_l_per_100km
from service.physics.tyre_label import (
    LabelClass,
    rolling_resistance_change_kg_per_t,
    wet_class_distance_change_percent,
)

LABEL = basis("EU-2020-740", "class limits of Regulation (EC) 1222/2009, annex I; letters A to E from memory")
NO_LABEL = TyreLabel()


class LabelEffects(NamedTuple):
    """Changes that the labels tell of; None where a class is not given on an axle that changes its tyres."""

    energy_kwh_per_100km: Estimate[float] | None
    """At the wheel."""
    petrol_l_per_100km: Estimate[float] | None
    diesel_l_per_100km: Estimate[float] | None
    wet_braking_distance_percent: Estimate[float] | None
    front_noise_db: float | None
    rear_noise_db: float | None
    text: str


def label_effects(car: CarView, road: Driving, proposed: tuple[Fitment, Fitment]) -> LabelEffects | None:
    """Return what the labels tell of front and rear; None where neither side of any axle has one."""
    axles = tuple(zip((car.vehicle.front, car.vehicle.rear), proposed, strict=True))
    if all(axle.fitted.tyre.label is None and then.tyre.label is None for axle, then in axles):
        return None
    energy, wet = _energy(axles), _wet(road.front_share.value, axles)
    noise = [_noise(axle, then) for axle, then in axles]
    return LabelEffects(
        energy_kwh_per_100km=energy,
        petrol_l_per_100km=None if energy is None else _fuel(energy, "petrol"),
        diesel_l_per_100km=None if energy is None else _fuel(energy, "diesel"),
        wet_braking_distance_percent=wet,
        front_noise_db=noise[0],
        rear_noise_db=noise[1],
        text=_text(road.braking_distance_percent.value, energy, wet),
    )


def _classes(axle: Axle, then: Fitment, which: str) -> tuple[LabelClass, LabelClass] | None:
    """Return the class of this kind before and after, None where either is not given."""
    before: LabelClass | None = getattr(axle.fitted.tyre.label or NO_LABEL, which)
    after: LabelClass | None = getattr(then.tyre.label or NO_LABEL, which)
    return None if before is None or after is None else (before, after)


def _energy(axles: tuple[tuple[Axle, Fitment], ...]) -> Estimate[float] | None:
    value = low = high = 0.0
    for axle, then in axles:
        classes = _classes(axle, then, "rolling_resistance_class")
        if classes is None:
            return None
        found = rolling_resistance_change_kg_per_t(*classes)
        mass = axle.estimate_mass_kg
        value += energy_change_kwh_per_100km(found.value, mass)
        low += energy_change_kwh_per_100km(found.low, mass)
        high += energy_change_kwh_per_100km(found.high, mass)
    return Estimate(value, low, high)


def _fuel(energy: Estimate[float], name: FuelName) -> Estimate[float]:
    ends = [fuel_change_l_per_100km(end, name) for end in energy]
    return Estimate(ends[0].value, min(each.low for each in ends), max(each.high for each in ends))


def _wet(share: float, axles: tuple[tuple[Axle, Fitment], ...]) -> Estimate[float] | None:
    """Return what the classes do to the braking distance; `share` is the front axle's of the braking."""
    logs = [0.0, 0.0, 0.0]
    for (axle, then), part in zip(axles, (share, 1.0 - share), strict=True):
        classes = _classes(axle, then, "wet_grip_class")
        if classes is None:
            return None
        for place, end in enumerate(wet_class_distance_change_percent(*classes)):
            logs[place] += part * log(1.0 + 0.01 * end)
    return Estimate(*(100.0 * (exp(each) - 1.0) for each in logs))


def _noise(axle: Axle, then: Fitment) -> float | None:
    before = (axle.fitted.tyre.label or NO_LABEL).noise_db
    after = (then.tyre.label or NO_LABEL).noise_db
    return after - before if known(before) and known(after) else None


def _text(width: float, energy: Estimate[float] | None, wet: Estimate[float] | None) -> Said:
    """Return which is larger, the label's effect or the width's, in plain sentences."""
    found = []
    if wet is not None and known(width):
        label, size = signed(wet.value, 0, "%"), signed(width, 1, "%")
        if abs(wet.value) > abs(width):
            text = say(
                "The wet grip classes change the wet braking distance by about {label}; the size changes the dry one "
                "by about {size}: the label matters more.",
                label=label,
                size=size,
            )
        else:
            text = say(
                "The wet grip classes change the wet braking distance by about {label}; the size changes the dry one "
                "by about {size}: the size matters as much or more.",
                label=label,
                size=size,
            )
        found.append(text)
    if energy is not None:
        size = plain(abs(energy.value), 2, "kWh/100 km")
        found.append(
            say("The rolling resistance classes save {energy} at the wheel.", energy=size)
            if energy.value < 0.0
            else say("The rolling resistance classes take {energy} more at the wheel.", energy=size)
        )
    if not found:
        return say("The label's classes are not given on both sides, so their effect is not told.")
    return sentences(*found)
