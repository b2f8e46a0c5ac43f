"""The array path gives what the float path gives for what a change does to driving: 10,000 cases of each formula."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import numpy as np
import pytest

from service.core.findings import Estimate
from service.physics import (
    bands,
    braking,
    heat,
    inertia,
    peak_grip,
    pressure_load,
    repeats,
    rolling_energy,
    turn_in,
    tyre_label,
    wet_reserve,
)

CASES = 10_000
# One in so many figures is not known, one in so many is round, so that steps and edges are met.
UNKNOWN_EVERY, ROUND_EVERY = 23, 5

# Each formula with the ranges of its arguments.
Q, KG, D, MM, KMH, PERCENT = (0.5, 2.0), (200.0, 1500.0), (450.0, 900.0), (0.0, 9.0), (40.0, 320.0), (-40.0, 40.0)
W, R, SHARE = (125.0, 315.0), (203.0, 610.0), (0.0, 1.0)


def _around(value: Any, half: Any) -> Estimate[Any]:
    return Estimate(value, value - half, value + half)


FORMULAS: dict[str, tuple[Callable[..., Any], tuple[tuple[float, float], ...]]] = {
    "load_reserve": (peak_grip.load_reserve, (KG, KG)),
    "relative_peak_grip": (peak_grip.relative_peak_grip, (Q,)),
    "peak_grip_change": (peak_grip.peak_grip_change_percent, (Q,)),
    "front_share": (braking.front_braking_share, (KG, (800.0, 2500.0), (300.0, 1200.0), (1800.0, 3500.0))),
    "known_or_assumed": (braking.known_or_assumed_share, (SHARE,)),
    "braking": (
        lambda share, front, rear: braking.braking_distance_change_percent(
            braking.known_or_assumed_share(share), front, rear
        ),
        (SHARE, Q, Q),
    ),
    "wet_reserve": (wet_reserve.wet_reserve, (KMH,)),
    "wet_reserve_band": (lambda onset: wet_reserve.wet_reserve_percent(_around(onset, 20.0)), (KMH,)),
    "reserve_fall": (wet_reserve.reserve_fall_percent, ((0.0, 60.0), (0.0, 60.0))),
    "onset_band": (wet_reserve.onset_band_kmh, (KMH, MM)),
    "onset_change_band": (wet_reserve.onset_change_band_percent, (PERCENT, MM, MM)),
    "proposed_onset": (
        lambda onset, change: wet_reserve.proposed_onset_kmh(_around(onset, 10.0), _around(change, 8.0)),
        (KMH, PERCENT),
    ),
    "heat": (heat.heat_reserve_change_percent, (W, D, W, D)),
    "turn_in": (turn_in.turn_in, (Q, Q, Q)),
    "wet_braking": (tyre_label.wet_braking_distance_change_percent, (Q, Q)),
    "energy": (rolling_energy.energy_change_kwh_per_100km, ((-6.0, 6.0), KG)),
    "petrol": (lambda energy: rolling_energy.fuel_change_l_per_100km(energy, "petrol"), ((-2.0, 2.0),)),
    "repeats": (repeats.repeats_needed, ((-5.0, 5.0), (0.0, 3.0))),
    "difference": (
        lambda one, half, other, more: bands.difference(_around(one, half), _around(other, more)),
        (KG, MM, KG, MM),
    ),
    "relative_change": (
        lambda one, half, other, more: bands.relative_change_percent(_around(one, half), _around(other, more)),
        (KG, MM, KG, MM),
    ),
    "tyre_mass_estimate": (inertia.tyre_mass_estimate_kg, ((5.0, 20.0), (5.0, 20.0))),
    "wheel_mass_estimate": (
        lambda tyre, rim: inertia.wheel_mass_estimate_kg(_around(tyre, 2.0), rim),
        ((5.0, 20.0), (5.0, 20.0)),
    ),
    "wheel_inertia_estimate": (
        lambda tyre, *rest: inertia.wheel_inertia_estimate_kg_m2(_around(tyre, 2.0), *rest),
        ((5.0, 20.0), (5.0, 20.0), D, R),
    ),
    "addition_by_symbol": (pressure_load.speed_pressure_addition_by_symbol_kpa, (KMH, (80.0, 300.0))),
    "load_range_e": (pressure_load.load_range_e_pressure_kpa, (W,)),
}


def _columns(name: str, ranges: tuple[tuple[float, float], ...]) -> list[Any]:
    chance = np.random.default_rng(list(name.encode()))
    columns = []
    for low, high in ranges:
        column = chance.uniform(low, high, CASES)
        # Whole numbers where the range is wide, the middle of it where it is narrow.
        plain = np.round(column, 0) if high - low > 5.0 else np.full(CASES, 0.5 * (low + high))
        column = np.where(chance.integers(ROUND_EVERY, size=CASES) == 0, np.clip(plain, low, high), column)
        columns.append(np.where(chance.integers(UNKNOWN_EVERY, size=CASES) == 0, np.nan, column))
    return columns


def _parts(answer: Any) -> tuple[Any, ...]:
    return answer if isinstance(answer, tuple) else (answer,)


@pytest.mark.parametrize("name", FORMULAS)
def test_the_array_path_gives_what_the_float_path_gives(name):
    formula, ranges = FORMULAS[name]
    columns = _columns(name, ranges)
    many = _parts(formula(*columns))
    rows = zip(*(column.tolist() for column in columns), strict=True)
    one_by_one = zip(*(_parts(formula(*row)) for row in rows), strict=True)
    for array, floats in zip(many, one_by_one, strict=True):
        # The two libraries' powers may differ in the last digit.
        np.testing.assert_allclose(array, np.array(floats), rtol=1e-12, atol=1e-11)


@pytest.mark.parametrize("name", FORMULAS)
def test_a_float_gives_a_plain_float(name):
    formula, ranges = FORMULAS[name]
    answer = _parts(formula(*(0.5 * (low + high) for low, high in ranges)))
    assert {type(part) for part in answer} == {float}
