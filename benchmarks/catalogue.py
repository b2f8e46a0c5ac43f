"""A catalogue of invented vehicles and candidates as two Parquet files, the same in every run."""

from __future__ import annotations

import random
from pathlib import Path

import pandas as pd
import pyarrow as pa

_AXLES = ("front", "rear")
_RIM_WIDTHS = {185: "6", 195: "6.5", 205: "6.5", 215: "7", 225: "7.5", 235: "8", 245: "8.5", 255: "9"}


def _wheel(dice: random.Random) -> dict[str, object]:
    width, aspect, code = dice.choice(list(_RIM_WIDTHS)), dice.choice((35, 40, 45, 50, 55, 60)), dice.randint(16, 19)
    return {
        "tyre": f"{width}/{aspect} R{code} {dice.randint(86, 102)}{dice.choice('HVWY')}",
        "rim": f"{_RIM_WIDTHS[width]}J x {code} H2 ET{dice.randint(30, 50)}",
        "tread_depth_mm": 8.0,
        "bolt_circle": "5x112",
        "centre_bore_mm": 66.6,
        "load_rating_kg": 690.0,
    }


def _vehicle(number: int, dice: random.Random) -> dict[str, object]:
    row: dict[str, object] = {
        "vehicle_id": f"larch-{number}",
        "max_speed_kmh": float(dice.randint(160, 250)),
        "driven_axle": dice.choice(("front", "rear", "all")),
        "centre_of_gravity_height_mm": 540.0,
        "displayed_kmh": 100.0,
        "true_kmh": 97.0,
    }
    wheel = _wheel(dice)
    for axle in _AXLES:
        row |= {f"{axle}_{name}": value for name, value in wheel.items()}
        row |= {
            f"{axle}_max_axle_mass_kg": float(dice.randint(800, 1300)),
            f"{axle}_track_mm": 1540.0,
            f"{axle}_hub_bolt_circle": "5x112",
            f"{axle}_hub_centre_bore_mm": 66.6,
            f"{axle}_clearance_inboard_mm": 14.0,
            f"{axle}_clearance_outboard_mm": 16.0,
            f"{axle}_clearance_radial_mm": 25.0,
            f"{axle}_min_rim_diameter_in": 16.0,
        }
    return row


def pairs(count: int, candidates_each: int) -> pa.Table:
    """Return pairs beside each other, so many candidates for each vehicle."""
    dice = random.Random(7)
    cars = [_vehicle(number, dice) for number in range(count // candidates_each)]
    wheels = [_wheel(dice) for _ in range(count)]
    rows = [
        cars[at // candidates_each]
        | {f"candidate_{axle}_{name}": value for axle in _AXLES for name, value in wheel.items()}
        | {"candidate_id": f"c{at}"}
        for at, wheel in enumerate(wheels)
    ]
    return pa.Table.from_pylist(rows)


def write(place: Path, vehicles: int, candidates: int) -> tuple[Path, Path]:
    """Write both files and return where they are."""
    dice = random.Random(7)
    cars = pd.DataFrame([_vehicle(number, dice) for number in range(vehicles)])
    rows = []
    for number in range(candidates):
        wheel = _wheel(dice)
        rows.append({f"{axle}_{name}": value for axle in _AXLES for name, value in wheel.items()})
        rows[-1]["candidate_id"] = f"c{number}"
    cars.to_parquet(place / "vehicles.parquet")
    pd.DataFrame(rows).to_parquet(place / "candidates.parquet")
    return place / "vehicles.parquet", place / "candidates.parquet"
