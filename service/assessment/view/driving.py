"""What a change of size does on the road: grip, braking, water, heat and turn-in.

An identical fitment gives exactly zero everywhere; floats or arrays alike. All loads are the axle's estimate load, so
a ratio of load reserves is one of capacities.
"""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.case import Vehicle
from service.assessment.view.axle_view import AxleView
from service.assessment.view.change import Wheel, new_onset_kmh, onset_kmh
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.wheel_facts import WheelFacts
from service.core.findings import Estimate, Holds
from service.core.numeric import UNKNOWN, Num, filled, known_or, pick
from service.physics.braking import braking_distance_change_percent, front_braking_share, known_or_assumed_share
from service.physics.contact_patch import tread_width_mm
from service.physics.heat import heat_reserve_change_percent
from service.physics.peak_grip import peak_grip_change_percent
from service.physics.pressure_load import load_at_pressure_kg
from service.physics.turn_in import TurnIn, turn_in
from service.physics.wet_reserve import onset_band_kmh, reserve_fall_percent, wet_reserve, wet_reserve_percent


class Reserve(NamedTuple, Generic[Num]):
    """What of the load rests on the road in standing water, with new tread on both sides: the size alone speaks."""

    present_percent: Num
    proposed_percent: Num
    fall_percent: Num
    """How much of itself it loses; 0 where it loses none."""


class AxleDriving(NamedTuple, Generic[Num]):
    """What changes on the road at one axle."""

    load_reserve_ratio: Num
    peak_grip_percent: Estimate[Num]
    heat_reserve_percent: Num
    wet_reserve_present: Estimate[Num]
    """In per cent, with the tread as stated."""
    wet_reserve_proposed: Estimate[Num]


class Driving(NamedTuple, Generic[Num]):
    """What changes on the road."""

    front: AxleDriving[Num]
    rear: AxleDriving[Num]
    front_share: Estimate[Num]
    """Of the braking; without a band where masses, wheelbase and height of the centre of gravity give it."""
    braking_distance_percent: Estimate[Num]
    turn_in: TurnIn[Num]


def reserves(front: AxleView[Num], rear: AxleView[Num]) -> tuple[Reserve[Num], Reserve[Num]]:
    """Return the wet reserves of both axles; the patch of the present front wheel measures all onsets."""
    patch_mm = front.now.behaviour.patch_width_mm
    return _reserve(front, patch_mm), _reserve(rear, patch_mm)


def _reserve(view: AxleView[Num], patch_mm: Num) -> Reserve[Num]:
    proposed = 100.0 * wet_reserve(new_onset_kmh(view.then, patch_mm))
    present = 100.0 * wet_reserve(new_onset_kmh(view.now, patch_mm))
    return Reserve(present, proposed, reserve_fall_percent(filled(proposed, present), proposed))


def driving(vehicle: Vehicle[Num], front: AxleView[Num], rear: AxleView[Num]) -> Driving[Num]:
    """Return what changes on the road; the patch of the present front wheel measures all onsets."""
    patch_mm = front.now.behaviour.patch_width_mm
    on_front, on_rear = _axle(front, patch_mm), _axle(rear, patch_mm)
    masses = vehicle.front.estimate_mass_kg, vehicle.rear.estimate_mass_kg
    share = front_braking_share(
        masses[0], masses[0] + masses[1], vehicle.centre_of_gravity_height_mm, vehicle.wheelbase_mm
    )
    known_share = known_or_assumed_share(share)
    ratios = on_front.load_reserve_ratio, on_rear.load_reserve_ratio
    wide_share = Estimate(*(filled(ratios[0], end) for end in known_share))
    return Driving(
        front=on_front,
        rear=on_rear,
        front_share=known_share,
        braking_distance_percent=braking_distance_change_percent(wide_share, *ratios),
        turn_in=turn_in(
            front.then.behaviour.patch_length_mm / front.now.behaviour.patch_length_mm,
            front.then.facts.section_height_mm / front.now.facts.section_height_mm,
            front.change.cornering_stiffness.value,
        ),
    )


def _axle(view: AxleView[Num], patch_mm: Num) -> AxleDriving[Num]:
    now, then = view.now, view.then
    # No model here speaks of both a radial and a diagonal tyre, and friction is that of tyres of one kind.
    alike = pick((then.facts.radial == now.facts.radial) & of_one_kind(now.facts, then.facts), 1.0, UNKNOWN)
    ratio = alike * _carried_kg(then) / _carried_kg(now)
    return AxleDriving(
        load_reserve_ratio=ratio,
        peak_grip_percent=peak_grip_change_percent(ratio),
        heat_reserve_percent=heat_reserve_change_percent(
            _tread_mm(now), now.facts.overall_diameter_mm, _tread_mm(then), then.facts.overall_diameter_mm
        ),
        wet_reserve_present=_stated_reserve(now, patch_mm),
        wet_reserve_proposed=_stated_reserve(then, patch_mm),
    )


def of_one_kind(now: WheelFacts[Num], then: WheelFacts[Num]) -> Holds:
    """Return whether two tyres are of one kind, so that their size alone may be compared; floats or arrays alike."""
    return (
        (then.commercial == now.commercial)
        & (then.winter_mark == now.winter_mark)
        & (then.temporary_spare == now.temporary_spare)
    )


def _carried_kg(wheel: Wheel[Num]) -> Num:
    """Return what a tyre carries at its pressure; its load index where no pressure law is known for it."""
    facts = wheel.facts
    rated = facts.rated_kg
    at_pressure = load_at_pressure_kg(
        rated, wheel.behaviour.pressure_kpa, facts.reference_pressure_kpa, facts.pressure_exponent
    )
    return known_or(at_pressure, rated)


def _tread_mm(wheel: Wheel[Num]) -> Num:
    return tread_width_mm(wheel.facts.nominal_width_mm, wheel.facts.aspect_percent)


def _stated_reserve(wheel: Wheel[Num], patch_mm: Num) -> Estimate[Num]:
    depth = known_or(wheel.facts.tread_depth_mm, NEW_TREAD_DEPTH_MM)
    return wet_reserve_percent(onset_band_kmh(onset_kmh(wheel, patch_mm), depth))
