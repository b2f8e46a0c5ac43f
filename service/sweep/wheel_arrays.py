"""Wheels as arrays of facts, from columns: what a text says is asked once for each text that occurs."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import pandas as pd

from service.assessment.case import Measured
from service.assessment.view.facts import with_measured
from service.assessment.view.wheel_facts import (
    FACTS,
    ROW,
    RimFacts,
    ServiceFacts,
    TyreFacts,
    group_table,
    rows_of,
)
from service.core.numeric import UNKNOWN, FloatArray, unknown
from service.designation.bolt_circle import parse_bolt_circle
from service.sweep import remembered
from service.sweep.pair_columns import ReadTable
from service.sweep.read_columns import Places, Texts
from service.sweep.remembered import KnownTyre, ServiceKind

_TYRE, _SERVICE, _RIM = rows_of(TyreFacts), rows_of(ServiceFacts), rows_of(RimFacts)
# What of a measurement changes other facts of the tyre; the rest of it is a fact by itself.
_MEASURED = ("overall_diameter_mm", "approved_min_in", "approved_max_in", "reference_pressure_kpa")
# The facts that stand in a column as they are, by the column's name without the axle.
_AS_GIVEN = {
    "tread_depth_mm": "tread_depth_mm",
    "section_width_mm": "measured_width_mm",
    "rolling_circumference_mm": "measured_circumference_mm",
    "tyre_mass_kg": "tyre_mass_kg",
    "pressure_kpa": "pressure_kpa",
    "centre_bore_mm": "centre_bore_mm",
    "load_rating_kg": "rim_rating_kg",
    "rim_mass_kg": "rim_mass_kg",
}


def distinct(*columns_of_one_table: np.ndarray) -> tuple[Places, Places]:
    """Return for each row the number of its combination of values, and the first row of each combination."""
    codes = np.zeros(len(columns_of_one_table[0]), np.int64)
    for column in columns_of_one_table:
        codes_here, values = pd.factorize(column, use_na_sentinel=True)
        # What is not given is a value as well, the last one.
        here = np.where(codes_here < 0, len(values), codes_here)
        codes = pd.factorize(codes * (len(values) + 1) + here)[0]
    _, firsts = np.unique(codes, return_index=True)
    return codes, firsts


def circles(written: Texts) -> tuple[FloatArray, FloatArray]:
    """Return number of bolts and diameter [mm] of bolt circles, NaN where none is given."""
    read = [parse_bolt_circle(each) for each in written.distinct]
    bolts = np.array([*(float(each.bolts) for each in read), UNKNOWN])
    diameters = np.array([*(each.diameter_mm for each in read), UNKNOWN])
    return bolts[written.places], diameters[written.places]


def wheels(
    read: ReadTable, axle: str, wheels_per_side: FloatArray, speeds_kmh: tuple[FloatArray, FloatArray]
) -> FloatArray:
    """Return the wheels of one axle of a table as a table of facts, of shape (facts, rows).

    Parameters
    ----------
    read : ReadTable
        The table; its tyres and rims can be read.
    axle : str
        What stands before the names of the columns: `front_`, `candidate_rear_`.
    wheels_per_side : array
        1, or 2 for twins, of the vehicle in each row [1].
    speeds_kmh : two arrays
        The vehicle's top speed, and the one at which the law reads the load, NaN where that is the top speed [km/h].
    """
    made = np.empty((len(FACTS), read.rows))
    tyres, rims = read.text(f"{axle}tyre"), read.text(f"{axle}rim")
    known = [remembered.tyre(each) for each in tyres.distinct]
    made[_TYRE] = _tyres(read, axle, tyres, known)
    made[_RIM] = _table(map(remembered.rim, rims.distinct), len(_RIM))[:, rims.places]
    made[ROW["bolts"]], made[ROW["bolt_circle_mm"]] = circles(read.text(f"{axle}bolt_circle"))
    for name, fact in _AS_GIVEN.items():
        made[ROW[fact]] = read.number(f"{axle}{name}")
    made[_SERVICE] = _services(tyres.places, known, wheels_per_side, *speeds_kmh)
    return made


def _table(rows: Iterable[tuple[float, ...]], width: int) -> FloatArray:
    """Return rows of facts as a table of shape (facts, rows)."""
    return np.array(list(rows), np.float64).reshape(-1, width).T


def _tyres(read: ReadTable, axle: str, tyres: Texts, known: list[KnownTyre]) -> FloatArray:
    made: FloatArray = _table((each.row for each in known), len(_TYRE))[:, tyres.places]
    measured = [read.number(f"{axle}{name}") for name in _MEASURED]
    rows = np.flatnonzero(~np.isnan(measured).all(axis=0))
    if rows.size:
        codes, firsts = distinct(tyres.places[rows], *(each[rows] for each in measured))
        changed = [
            with_measured(
                known[tyres.places[row]].facts,
                Measured(**{name: float(each[row]) for name, each in zip(_MEASURED, measured, strict=True)}),
            )
            for row in rows[firsts].tolist()
        ]
        made[:, rows] = group_table(TyreFacts, changed)[:, codes]
    return made


def _services(
    places: Places,
    known: list[KnownTyre],
    wheels_per_side: FloatArray,
    top_kmh: FloatArray,
    law_kmh: FloatArray,
) -> FloatArray:
    """Return what the tyres carry, asked once for each service description, speed and number of wheels."""
    kinds: dict[ServiceKind, int] = {}
    kind = np.array([kinds.setdefault(each.service, len(kinds)) for each in known], np.int64)[places]
    codes, firsts = distinct(kind, wheels_per_side, top_kmh, law_kmh)
    examples = list(kinds)
    asked = zip(
        kind[firsts].tolist(),
        wheels_per_side[firsts].tolist(),
        top_kmh[firsts].tolist(),
        law_kmh[firsts].tolist(),
        strict=True,
    )
    rows = (
        remembered.service(examples[at], int(twins), top, None if unknown(law) else law)
        for at, twins, top, law in asked
    )
    return _table(rows, len(_SERVICE))[:, codes]
