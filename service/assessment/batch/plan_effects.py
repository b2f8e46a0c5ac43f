"""What each combination is expected to do, with bands: the estimates of the view, under one list of names.

A band counts what is not known of the formulas. What two combinations have in common (the exponent of grip on load,
the share of the front axle) moves both the same way and is counted once when they are held against each other, because
the one is then computed as a change from the other. What is off at each axle by itself combines as the root of the sum
of squares.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple, Protocol

from service.assessment.answer.trade_offs import WORTH_A_WORD_PERCENT
from service.assessment.view.change import Wheel, new_onset_kmh
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, Num
from service.core.saying import Said, say
from service.physics.bands import difference
from service.physics.wet_reserve import wet_reserve

EffectName = Literal[
    "braking_distance_percent",
    "front_peak_grip_percent",
    "rear_peak_grip_percent",
    "balance_deg_per_g",
    "front_aquaplaning_onset_percent",
    "rear_aquaplaning_onset_percent",
    "front_wet_reserve_points",
    "rear_wet_reserve_points",
    "wet_balance_points",
]
Better = Literal["less", "more", "neither"]


class CarEstimate(Protocol):
    """An estimate of the whole vehicle, with one candidate or with many."""

    def __call__(self, car: CarView[Num], /) -> Estimate[Num]:
        """Return the estimate."""


class Effect(NamedTuple):
    """One thing that a test may measure: its unit, its words, what is better, and the least difference worth a test."""

    unit: str
    words: Said
    better: Better
    least: float
    of: CarEstimate


def _braking(car: CarView[Num]) -> Estimate[Num]:
    if car.vehicle.is_trailer:
        return Estimate(UNKNOWN, UNKNOWN, UNKNOWN)
    return car.driving.braking_distance_percent


def _reserves(car: CarView[Num], view: AxleView[Num]) -> tuple[Estimate[Num], Estimate[Num]]:
    """Return the wet reserve of an axle now, without a band, and then, with that of the change; new tyres [%].

    The level of the onset is off for both alike and is left out.
    """
    patch = car.front.now.behaviour.patch_width_mm
    onset = _onset(view.now, patch)
    present = 100.0 * wet_reserve(onset)
    ends = (100.0 * wet_reserve(onset * (1.0 + end / 100.0)) for end in view.change.aquaplaning_onset_percent)
    return Estimate(present, present, present), Estimate(*ends)


def _onset(wheel: Wheel[Num], patch_mm: Num) -> Num:
    return new_onset_kmh(wheel, patch_mm)


def _reserve_change(car: CarView[Num], view: AxleView[Num]) -> Estimate[Num]:
    return difference(*_reserves(car, view))


def _wet_balance(car: CarView[Num]) -> Estimate[Num]:
    """Return by how many points the rear gains more wet reserve than the front; negative: the rear lets go sooner."""
    return difference(_reserve_change(car, car.front), _reserve_change(car, car.rear))


# No driver feels less: half a point of the reserve, a twentieth of a degree per g (project's judgement).
_LEAST_POINTS = 0.5
_LEAST_DEG_PER_G = 0.05

EFFECTS: Mapping[EffectName, Effect] = MappingProxyType(
    {
        "braking_distance_percent": Effect(
            "%", say("braking distance in the dry"), "less", WORTH_A_WORD_PERCENT, _braking
        ),
        "front_peak_grip_percent": Effect(
            "%",
            say("peak grip of the front in the dry"),
            "more",
            WORTH_A_WORD_PERCENT,
            lambda car: car.driving.front.peak_grip_percent,
        ),
        "rear_peak_grip_percent": Effect(
            "%",
            say("peak grip of the rear in the dry"),
            "more",
            WORTH_A_WORD_PERCENT,
            lambda car: car.driving.rear.peak_grip_percent,
        ),
        "balance_deg_per_g": Effect(
            "deg/g",
            say("balance in the dry (more is towards understeer)"),
            "neither",
            _LEAST_DEG_PER_G,
            lambda car: car.change.gradient_deg_per_g,
        ),
        "front_aquaplaning_onset_percent": Effect(
            "%",
            say("speed at which the front floats"),
            "more",
            WORTH_A_WORD_PERCENT,
            lambda car: car.front.change.aquaplaning_onset_percent,
        ),
        "rear_aquaplaning_onset_percent": Effect(
            "%",
            say("speed at which the rear floats"),
            "more",
            WORTH_A_WORD_PERCENT,
            lambda car: car.rear.change.aquaplaning_onset_percent,
        ),
        "front_wet_reserve_points": Effect(
            "points",
            say("wet reserve of the front"),
            "more",
            _LEAST_POINTS,
            lambda car: _reserve_change(car, car.front),
        ),
        "rear_wet_reserve_points": Effect(
            "points",
            say("wet reserve of the rear"),
            "more",
            _LEAST_POINTS,
            lambda car: _reserve_change(car, car.rear),
        ),
        "wet_balance_points": Effect(
            "points",
            say("balance in the wet (rear reserve beside the front's)"),
            "more",
            _LEAST_POINTS,
            _wet_balance,
        ),
    }
)
EFFECT_NAMES: tuple[EffectName, ...] = tuple(EFFECTS)


def effects_of(car: CarView[Num]) -> dict[EffectName, Estimate[Num]]:
    """Return every effect of what is proposed against what is on the car, floats or arrays."""
    return {name: effect.of(car) for name, effect in EFFECTS.items()}
