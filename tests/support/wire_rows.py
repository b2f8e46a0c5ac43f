"""A request as one row of the table of pairs, and many as a batch: the way of the sweep, with the web's questions."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import pyarrow as pa

Json = dict[str, Any]
# What of the speedometer has another name in a table.
_READING = {"tolerance_percent": "speedometer_tolerance_percent"}


def _wheel(fitment: Json, axle: str) -> Json:
    tyre, rim = dict(fitment["tyre"]), dict(fitment["rim"])
    widths = tyre.pop("approved_rim_widths_in", {})
    row = {
        "tyre": tyre.pop("size"),
        "rim": rim.pop("size"),
        "pressure_kpa": fitment.get("pressure_kpa"),
        "approved_min_in": widths.get("min"),
        "approved_max_in": widths.get("max"),
        "tyre_mass_kg": tyre.pop("mass_kg", None),
        "rim_mass_kg": rim.pop("mass_kg", None),
        **tyre,
        **rim,
    }
    return {f"{axle}_{name}": value for name, value in row.items()}


def _axle(axle: Json, name: str) -> Json:
    told = dict(axle)
    fitted, hub, room = told.pop("fitted"), told.pop("hub", {}), told.pop("clearance", {})
    told |= {f"hub_{key}": value for key, value in hub.items()}
    told |= {f"clearance_{key}": value for key, value in room.items()}
    return {f"{name}_{key}": value for key, value in told.items()} | _wheel(fitted, name)


def row(vehicle: Json, candidate: Json) -> Json:
    """Return a vehicle and a candidate of requests as a row of the table of pairs."""
    told = dict(vehicle)
    axles = _axle(told.pop("front"), "front") | _axle(told.pop("rear"), "rear")
    speedometer = told.pop("speedometer", {})
    wheels = {axle: _wheel(candidate[axle], f"candidate_{axle}") for axle in ("front", "rear")}
    names = {"vehicle_id": "v", "candidate_id": "c"}
    reading = {_READING.get(key, key): value for key, value in speedometer.items()}
    return names | told | reading | axles | wheels["front"] | wheels["rear"]


def batch(rows: Sequence[Json]) -> pa.RecordBatch:
    """Return rows as a batch; what a row does not tell is empty."""
    names = list(dict.fromkeys(name for each in rows for name in each))
    table = pa.table({name: pa.array([each.get(name) for each in rows]) for name in names})
    return table.combine_chunks().to_batches()[0]
