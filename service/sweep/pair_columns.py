"""Vehicles beside what might be fitted, one pair a row: the columns of a batch, read and held against their ranges."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from typing import NamedTuple

import numpy as np
import pyarrow as pa

from service.core.numeric import FloatArray
from service.sweep.columns import CANDIDATE_COLUMNS, CANDIDATE_TOGETHER, OWN_PREFIX, TOGETHER, VEHICLE_COLUMNS, Column
from service.sweep.job import BadSweep
from service.sweep.read_columns import (
    NOT_GIVEN,
    Fault,
    Places,
    Texts,
    flag_faults,
    flags,
    number_faults,
    numbers,
    quoted,
    text_faults,
    texts,
)

# Both tables name a front and a rear wheel; beside each other in one row the candidate's are told apart by this.
CANDIDATE_PREFIX = "candidate_"


def beside(column: Column) -> Column:
    """Return a column of the candidates as it is named beside a vehicle."""
    if column.name.startswith(CANDIDATE_PREFIX):
        return column
    return column._replace(name=f"{CANDIDATE_PREFIX}{column.name}")


PAIR_COLUMNS: tuple[Column, ...] = (*VEHICLE_COLUMNS, *(beside(each) for each in CANDIDATE_COLUMNS))
PAIR_TOGETHER = (
    *TOGETHER,
    *((f"{CANDIDATE_PREFIX}{one}", f"{CANDIDATE_PREFIX}{other}") for one, other in CANDIDATE_TOGETHER),
)


class ReadTable(NamedTuple):
    """A table whose columns are arrays; a column that is not there holds nothing in any row."""

    rows: int
    texts: dict[str, Texts]
    numbers: dict[str, FloatArray]
    """Yes and no are 1 and 0."""
    faults: list[Fault]

    def text(self, name: str) -> Texts:
        """Return a column of texts."""
        found = self.texts.get(name)
        return Texts(np.full(self.rows, NOT_GIVEN, np.int64), []) if found is None else found

    def number(self, name: str) -> FloatArray:
        """Return a column of numbers."""
        found = self.numbers.get(name)
        return np.full(self.rows, np.nan) if found is None else found

    def number_or(self, name: str, default: float) -> FloatArray:
        """Return a column of numbers with what stands for one that is not given."""
        found = self.number(name)
        return np.where(np.isnan(found), default, found)

    def row(self, at: int) -> dict[str, object]:
        """Return one row by the names of its columns; what is not given is None."""
        found: dict[str, object] = {name: column.at(at) for name, column in self.texts.items()}
        for name, column in self.numbers.items():
            value = float(column[at])
            found[name] = None if np.isnan(value) else value
        return found

    def take(self, rows: Places) -> ReadTable:
        """Return some of the rows."""
        kept = {name: Texts(each.places[rows], each.distinct) for name, each in self.texts.items()}
        return ReadTable(len(rows), kept, {name: each[rows] for name, each in self.numbers.items()}, [])


def check_names(names: Sequence[str], columns: Sequence[Column], table: str) -> None:
    """Refuse a table that lacks a required column or has one that nobody reads.

    Raises
    ------
    BadSweep
        With the name, and the one that was meant.
    """
    known = [column.name for column in columns]
    for name in names:
        if name not in known and not name.startswith(OWN_PREFIX):
            near = difflib.get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}?" if near else f"a column of your own begins with {OWN_PREFIX}"
            raise BadSweep(f"the {table} have no column {quoted(name)}; {hint} (see --columns)")
    lacking = [column.name for column in columns if column.required and column.name not in names]
    if lacking:
        raise BadSweep(f"the {table} lack the column {lacking[0]!r} (see --columns)")
    if len(set(names)) != len(names):
        raise BadSweep(f"a column of the {table} stands twice")


def read(batch: pa.RecordBatch, columns: Iterable[Column], together: Sequence[tuple[str, str]]) -> ReadTable:
    """Return the columns of a batch as arrays, with everything that keeps a row from being graded."""
    found = ReadTable(batch.num_rows, {}, {}, [])
    names = set(batch.schema.names)
    for column in columns:
        if column.name in names:
            _read_one(column, batch.column(column.name), found)
    for first, second in together:
        lacks_first, lacks_second = np.isnan(found.number(first)), np.isnan(found.number(second))
        for row in np.flatnonzero(lacks_first != lacks_second).tolist():
            name = first if lacks_first[row] else second
            found.faults.append(Fault(row, name, f"{first} and {second} go together"))
    return found


def _read_one(column: Column, given: pa.Array, found: ReadTable) -> None:
    try:
        if column.kind in ("number", "whole"):
            read_numbers = numbers(given)
            faults = number_faults(column, read_numbers, given)
        elif column.kind == "yes_no":
            read_numbers = flags(given)
            faults = flag_faults(column, read_numbers, given)
        else:
            words = texts(given)
            found.texts[column.name] = words
            found.faults.extend(text_faults(column, words))
            return
    except pa.ArrowException:
        kind = column.kind.replace("_", "/")
        reason = f"the column cannot be read as {kind}"
        found.faults.extend(Fault(row, column.name, reason) for row in range(len(given)))
        return
    found.numbers[column.name] = read_numbers
    found.faults.extend(faults)
