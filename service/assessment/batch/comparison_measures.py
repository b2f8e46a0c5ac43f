"""The measures by which fitments are compared: each is defined here and nowhere else.

NaN where a measure is not known. The present fitment has 0 everywhere but for the load margin.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.answer.trade_offs import WORTH_A_WORD_MM, WORTH_A_WORD_PERCENT
from service.assessment.batch.grading import Graded, as_column
from service.assessment.batch.plan_effects import EFFECTS
from service.assessment.case import Axle
from service.assessment.checks.balance import degree_code
from service.assessment.view.change import Wheel, percent
from service.assessment.view.driving import Reserve
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Estimate
from service.core.numeric import UNKNOWN, FloatArray, Num, Number, known, larger, magnitude, pick, smaller

Flags = NDArray[np.bool_]
Sets = NDArray[np.int64]
"""For each candidate a set of `TRADES`, written as a number."""

RankBy = Literal["closest_to_present", "dry_grip", "wet_margin", "load_margin", "balance", "braking"]
RANK_BY: tuple[RankBy, ...] = ("closest_to_present", "dry_grip", "wet_margin", "load_margin", "balance", "braking")

Trade = Literal["dry_grip", "braking", "wet_margin", "load_margin", "balance", "diameter", "room"]
# A set of these is written as a number: the first counts 1, the second 2, the third 4 ...
TRADES: tuple[Trade, ...] = ("dry_grip", "braking", "wet_margin", "load_margin", "balance", "diameter", "room")


class Measures(NamedTuple):
    """What each fitment is worth, one element for each; `MEANING` says of each measure what it is."""

    dry_grip_percent: FloatArray
    braking_distance_percent: FloatArray
    wet_margin_percent: FloatArray
    balance_deg_per_g: FloatArray
    load_margin_percent: FloatArray
    diameter_deviation_percent: FloatArray


MEANING: Mapping[str, str] = MappingProxyType(
    {
        "dry_grip_percent": "Dry grip: the lesser of both axles' changes of peak grip on a dry road, an estimate. It "
        "is a proxy: compound, tread pattern and temperature decide grip as much, and no designation tells of them",
        "braking_distance_percent": "Braking: change of the braking distance on a dry road, an estimate for the same "
        "make and compound; less is better. Absent for a trailer",
        "wet_margin_percent": "Wet margin: change of the rear's wet reserve in percentage points, new tyres compared "
        "with new, an estimate; the front's where the rear does not change. Tread pattern and compound are not in it",
        "balance_deg_per_g": "Balance: size of the change of the understeer gradient, an estimate; 0 is as now",
        "load_margin_percent": "Load margin: by how much the tyres carry more than the maximum axle mass at the "
        "vehicle's top speed, on the axle where that is less",
        "diameter_deviation_percent": "Deviation: the greater of both axles' changes of overall diameter, without sign",
    }
)


def measures(graded: Graded) -> Measures:
    """Return the measures of what was graded."""
    car, size = graded.car, graded.verdicts.shape
    front, rear = car.front, car.rear
    return Measures(
        dry_grip_percent=as_column(dry_grip_band_percent(car).value, size),
        braking_distance_percent=as_column(
            UNKNOWN if car.vehicle.is_trailer else car.driving.braking_distance_percent.value, size
        ),
        wet_margin_percent=as_column(_wet_margin_percent(car), size),
        balance_deg_per_g=as_column(magnitude(car.change.gradient_deg_per_g.value), size),
        load_margin_percent=as_column(_least(load_margin_percent(front), load_margin_percent(rear)), size),
        diameter_deviation_percent=as_column(
            _greatest(
                magnitude(front.change.overall_diameter_percent), magnitude(rear.change.overall_diameter_percent)
            ),
            size,
        ),
    )


def dry_grip_band_percent(car: CarView[Num]) -> Estimate[Num]:
    """Return the measure of dry grip with its band: at each end of it the lesser of both axles [%]."""
    road = car.driving
    front, rear = road.front.peak_grip_percent, road.rear.peak_grip_percent
    return Estimate(*(_least(one, other) for one, other in zip(front, rear, strict=True)))


def wet_margin_band_points(car: CarView[Num]) -> Estimate[Num]:
    """Return the measure of wet margin with its band, that of the same change in a plan [percentage points]."""
    front, rear = EFFECTS["front_wet_reserve_points"].of(car), EFFECTS["rear_wet_reserve_points"].of(car)
    stays = reserve_gain_percent(car.rear_reserve) == 0.0
    return Estimate(*(pick(stays, one, other) for one, other in zip(front, rear, strict=True)))


def load_margin_percent(view: AxleView[Num]) -> Num:
    """Return by how much the proposed tyres of an axle carry more than its maximum mass at the vehicle's top speed [%].

    It tells of the tyres and not of the law: what a place lets a bus carry beyond it is for that place's own rule.
    """
    return _margin_percent(view.axle, view.then)


def _margin_percent(axle: Axle[Num], wheel: Wheel[Num]) -> Num:
    return percent(axle.max_axle_mass_kg, wheel.load.axle_capacity_kg)


def _wet_margin_percent(car: CarView[Num]) -> Num:
    """Return how many percentage points of wet reserve the rear gains, the front where the rear stays as it is."""
    front, rear = reserve_gain_percent(car.front_reserve), reserve_gain_percent(car.rear_reserve)
    return pick(rear == 0.0, front, rear)


def reserve_gain_percent(axle: Reserve[Num]) -> Num:
    """Return how many percentage points of wet reserve an axle gains, new tyres compared with new."""
    return axle.proposed_percent - axle.present_percent


def _least(front: Num, rear: Num) -> Num:
    return pick(known(rear), smaller(front, rear), rear)


def _greatest(front: Num, rear: Num) -> Num:
    return pick(known(rear), larger(front, rear), rear)


# Each measure as a merit: the greater the better.
MERITS: tuple[Callable[[Measures], FloatArray], ...] = (
    lambda found: -found.diameter_deviation_percent,
    lambda found: found.dry_grip_percent,
    lambda found: -found.braking_distance_percent,
    lambda found: found.wet_margin_percent,
    lambda found: found.load_margin_percent,
    lambda found: -found.balance_deg_per_g,
)


def gains(car: CarView[Number], found: Measures) -> Sets:
    """Return what is better than with the present fitment, as sets of `TRADES` (see there)."""
    return _sets(
        found,
        {
            "dry_grip": found.dry_grip_percent > WORTH_A_WORD_PERCENT,
            "braking": found.braking_distance_percent < -WORTH_A_WORD_PERCENT,
            "wet_margin": found.wet_margin_percent > WORTH_A_WORD_PERCENT,
            "load_margin": _load_gain_percent(car, found) > WORTH_A_WORD_PERCENT,
            "room": _room_lost_mm(car) < -WORTH_A_WORD_MM,
        },
    )


def losses(car: CarView[Number], found: Measures) -> Sets:
    """Return what is worse than with the present fitment, as sets of `TRADES` (see there)."""
    near = car.limits.overall_diameter_met_percent.value
    return _sets(
        found,
        {
            "dry_grip": found.dry_grip_percent < -WORTH_A_WORD_PERCENT,
            "braking": found.braking_distance_percent > WORTH_A_WORD_PERCENT,
            "wet_margin": found.wet_margin_percent < -WORTH_A_WORD_PERCENT,
            "load_margin": _load_gain_percent(car, found) < -WORTH_A_WORD_PERCENT,
            "balance": degree_code(car) > 0,
            "diameter": found.diameter_deviation_percent > near,
            "room": _room_lost_mm(car) > WORTH_A_WORD_MM,
        },
    )


def _sets(found: Measures, holds: Mapping[Trade, bool | Flags]) -> Sets:
    members = np.zeros(found.load_margin_percent.shape, np.int64)
    for trade, flags in holds.items():
        members += np.where(flags, 1 << TRADES.index(trade), 0)
    return members


def trades(members: int) -> list[Trade]:
    """Return the words of a set of trades."""
    return [name for place, name in enumerate(TRADES) if members >> place & 1]


def _load_gain_percent(car: CarView[Number], found: Measures) -> FloatArray:
    front, rear = (_margin_percent(view.axle, view.now) for view in (car.front, car.rear))
    return found.load_margin_percent - _least(front, rear)


def _room_lost_mm(car: CarView[Num]) -> Num:
    """Return by how much the nearest edge of either axle comes nearer to the car."""
    front, rear = (
        _greatest(
            _greatest(view.change.inboard_edge_mm, view.change.outboard_edge_mm),
            view.change.radial_edge_mm,
        )
        for view in (car.front, car.rear)
    )
    return _greatest(front, rear)
