"""From Parquet to tables whose every row can be assessed; rows that cannot are set aside with their reason."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np
import pandas as pd
import pyarrow as pa
import pyarrow.parquet as pq

from service.sweep.columns import (
    CANDIDATE_COLUMNS,
    CANDIDATE_TOGETHER,
    LONGEST_ID,
    PAIRED_VEHICLE,
    TOGETHER,
    VEHICLE_COLUMNS,
    Column,
)
from service.sweep.job import BadSweep
from service.sweep.pair_columns import ReadTable, check_names, read
from service.sweep.place import Place
from service.sweep.read_columns import NOT_GIVEN, Fault, Places

_REJECTED = pa.schema(
    [
        ("table", pa.string()),
        ("row", pa.int64()),
        ("id", pa.string()),
        ("column", pa.string()),
        ("reason", pa.string()),
    ]
)


class Inputs(NamedTuple):
    """The rows that can be assessed, and the reasons of those that cannot."""

    vehicles: pa.Table
    candidates: pa.Table
    rejected: pa.Table


class _Sieved(NamedTuple):
    """A table, which of its rows pass, and why the others do not."""

    name: str
    read: ReadTable
    sound: Places
    faults: list[Fault]


def read_inputs(vehicles: Place, candidates: Place, *, pairs: bool) -> Inputs:
    """Return both tables without the rows at fault.

    Raises
    ------
    BadSweep
        When a file is no Parquet table or its columns are not those of `columns.py`.
    """
    columns = (*CANDIDATE_COLUMNS, PAIRED_VEHICLE) if pairs else CANDIDATE_COLUMNS
    given = _read(vehicles, "vehicles", VEHICLE_COLUMNS), _read(candidates, "candidates", columns)
    known = _sieve("vehicles", read(given[0], VEHICLE_COLUMNS, TOGETHER), ("vehicle_id",))
    key = ("vehicle_id", "candidate_id") if pairs else ("candidate_id",)
    asked = _sieve("candidates", read(given[1], columns, CANDIDATE_TOGETHER), key)
    if pairs:
        asked = _of_known_vehicles(asked, known)
    return Inputs(_table(known, VEHICLE_COLUMNS), _table(asked, columns), _rejects((known, asked)))


def _read(place: Place, table: str, columns: Sequence[Column]) -> pa.RecordBatch:
    try:
        with place.files.open_input_file(place.path) as file:
            names = pq.read_schema(file).names
        check_names(names, columns, table)
        known = {column.name for column in columns}
        wanted = [name for name in names if name in known]
        found = pq.read_table(place.path, columns=wanted, filesystem=place.files).combine_chunks()
    except FileNotFoundError:
        raise BadSweep(f"there is no file {place.name} for the {table}") from None
    except (pa.ArrowException, OSError):
        raise BadSweep(f"{place.name} cannot be read as a Parquet table") from None
    batches = found.to_batches()
    empty = pa.RecordBatch.from_arrays([pa.array([], each.type) for each in found.schema], schema=found.schema)
    return batches[0] if batches else empty


def _sieve(name: str, table: ReadTable, key: tuple[str, ...]) -> _Sieved:
    """Return which rows pass: without a fault, and the first of their name."""
    faults = sorted(table.faults)
    passes = np.ones(table.rows, np.bool_)
    passes[[fault.row for fault in faults]] = False
    sound = np.flatnonzero(passes)
    names = pd.DataFrame({each: table.text(each).places[sound] for each in key})
    again = names.duplicated().to_numpy()
    reason = f"{' and '.join(key)} stand here for the second time"
    faults += [Fault(int(row), key[-1], reason) for row in sound[again]]
    return _Sieved(name, table, sound[~again], faults)


def _of_known_vehicles(asked: _Sieved, known: _Sieved) -> _Sieved:
    """Return the candidates whose vehicle is there, together in the order of the vehicles."""
    names = known.read.text("vehicle_id")
    order = {names.distinct[place]: at for at, place in enumerate(names.places[known.sound].tolist())}
    owners = asked.read.text("vehicle_id")
    place = np.array([order.get(each, NOT_GIVEN) for each in owners.distinct], np.int64)[owners.places[asked.sound]]
    lost = place == NOT_GIVEN
    reason = "there is no vehicle of this id that could be read"
    faults = [Fault(int(row), "vehicle_id", reason) for row in asked.sound[lost]]
    sound = asked.sound[~lost][np.argsort(place[~lost], kind="stable")]
    return asked._replace(sound=sound, faults=asked.faults + faults)


def _table(sieved: _Sieved, columns: Iterable[Column]) -> pa.Table:
    """Return the rows that pass, each column of its own kind."""
    made: dict[str, pa.Array] = {}
    for column in columns:
        if column.name in sieved.read.texts:
            texts = sieved.read.texts[column.name]
            places = texts.places[sieved.sound]
            made[column.name] = pa.array(texts.distinct, pa.string()).take(pa.array(places, mask=places == NOT_GIVEN))
        elif column.name in sieved.read.numbers:
            numbers = pa.array(sieved.read.numbers[column.name][sieved.sound], from_pandas=True)
            made[column.name] = numbers.cast(pa.bool_()) if column.kind == "yes_no" else numbers
    return pa.table(made)


def _rejects(tables: Iterable[_Sieved]) -> pa.Table:
    rows: list[tuple[str, int, str | None, str, str]] = []
    for name, table, _, faults in tables:
        names = table.text(f"{name[:-1]}_id")
        for row, column, reason in faults:
            own = names.at(row)
            rows.append((name, row, None if own is None else own[:LONGEST_ID], column, reason))
    columns = [pa.array([row[at] for row in rows], field.type) for at, field in enumerate(_REJECTED)]
    return pa.Table.from_arrays(columns, schema=_REJECTED)
