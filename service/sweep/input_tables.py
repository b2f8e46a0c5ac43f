"""From Parquet to tables whose every row can be assessed; rows that cannot are set aside with their reason."""

from __future__ import annotations

import difflib
import math
from collections.abc import Callable, Iterable, Sequence
from datetime import date
from pathlib import Path
from typing import NamedTuple

import numpy as np
import pandas as pd
import pandera.pandas as pandera
import pyarrow as pa
import pyarrow.parquet as pq
from pandera.errors import SchemaErrors

from service.core.errors import DomainError
from service.designation.bolt_circle import parse_bolt_circle
from service.designation.rim import parse_rim
from service.designation.tyre import parse_tyre
from service.sweep.columns import (
    CANDIDATE_COLUMNS,
    LONGEST_DESIGNATION,
    LONGEST_ID,
    OWN_PREFIX,
    PAIRED_VEHICLE,
    REJECTED_MEANINGS,
    TOGETHER,
    VEHICLE_COLUMNS,
    Column,
)
from service.sweep.job import BadSweep

_PARSERS: dict[str, Callable[[str], object]] = {"tyre": parse_tyre, "rim": parse_rim, "bolt_circle": parse_bolt_circle}
_MOST_QUOTED = 60


class Inputs(NamedTuple):
    """The rows that can be assessed, and the reasons of those that cannot."""

    vehicles: pd.DataFrame
    candidates: pd.DataFrame
    rejected: pd.DataFrame


def read_inputs(vehicles: str, candidates: str, *, pairs: bool) -> Inputs:
    """Return both tables without the rows at fault.

    Raises
    ------
    BadSweep
        When a file is no Parquet table or its columns are not those of `columns.py`.
    """
    vehicle_table = _read(vehicles, "vehicles", VEHICLE_COLUMNS)
    columns = (*CANDIDATE_COLUMNS, PAIRED_VEHICLE) if pairs else CANDIDATE_COLUMNS
    candidate_table = _read(candidates, "candidates", columns)
    known, bad_vehicles = _sieve(vehicle_table, "vehicles", VEHICLE_COLUMNS, ("vehicle_id",))
    key = ("vehicle_id", "candidate_id") if pairs else ("candidate_id",)
    asked, bad_candidates = _sieve(candidate_table, "candidates", columns, key)
    rejected = [bad_vehicles, bad_candidates]
    if pairs:
        lost = asked[~asked["vehicle_id"].isin(known["vehicle_id"])]
        reason = "there is no vehicle of this id that could be read"
        rejected.append(_rejects("candidates", lost, [(row, "vehicle_id", reason) for row in lost.index]))
        asked = asked.drop(lost.index)
        # Together in the order of the vehicles, so that a vehicle's candidates are one array.
        place = pd.Series(range(len(known)), index=known["vehicle_id"])
        asked = asked.iloc[asked["vehicle_id"].map(place).argsort(kind="stable")]
    return Inputs(known.reset_index(drop=True), asked.reset_index(drop=True), pd.concat(rejected, ignore_index=True))


def _read(path: str, table: str, columns: Sequence[Column]) -> pd.DataFrame:
    try:
        names = pq.read_schema(path).names
    except FileNotFoundError:
        raise BadSweep(f"there is no file {Path(path).name} for the {table}") from None
    except (pa.ArrowException, OSError):
        raise BadSweep(f"{Path(path).name} cannot be read as a Parquet table") from None
    known = [column.name for column in columns]
    for name in names:
        if name not in known and not name.startswith(OWN_PREFIX):
            near = difflib.get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}?" if near else f"a column of your own begins with {OWN_PREFIX}"
            raise BadSweep(f"the {table} have no column {name[:_MOST_QUOTED]!r}; {hint} (see --columns)")
    lacking = [column.name for column in columns if column.required and column.name not in names]
    if lacking:
        raise BadSweep(f"the {table} lack the column {lacking[0]!r} (see --columns)")
    if len(set(names)) != len(names):
        raise BadSweep(f"a column of the {table} stands twice")
    wanted = [name for name in names if name in known]
    frame: pd.DataFrame = pq.read_table(path, columns=wanted).to_pandas()
    return frame.reset_index(drop=True)


def _sieve(
    frame: pd.DataFrame, table: str, columns: Sequence[Column], key: tuple[str, ...]
) -> tuple[pd.DataFrame, pd.DataFrame]:
    """Return the rows that pass, typed, and the reasons of the others."""
    present = [column for column in columns if column.name in frame.columns]
    as_given, frame = frame, _with_numbers(frame, present)
    faults = _faults(as_given, frame, present)
    faulty = {row for row, _, _ in faults}
    rest = frame.drop(index=list(faulty))
    typed = _schema(present).validate(rest)
    for first, second in TOGETHER:
        if first in frame.columns or second in frame.columns:
            faults += _alone(typed, first, second)
    again = typed.index[typed.duplicated(list(key))]
    faults += [(int(row), key[-1], f"{' and '.join(key)} stand here for the second time") for row in again]
    return typed.drop(index=list({row for row, _, _ in faults} - faulty)), _rejects(table, frame, faults)


def _schema(columns: Iterable[Column]) -> pandera.DataFrameSchema:
    return pandera.DataFrameSchema({column.name: _column_schema(column) for column in columns})


def _column_schema(column: Column) -> pandera.Column:
    checks: list[pandera.Check]
    dtype: object = float
    if column.kind in ("number", "whole"):
        checks = [pandera.Check.in_range(column.low, column.high)]
        if column.kind == "whole":
            checks.append(pandera.Check(lambda series: series % 1.0 == 0.0, name="whole"))
    elif column.kind == "yes_no":
        dtype, checks = "boolean", []
    else:
        dtype, checks = (
            str,
            [pandera.Check(lambda text: _reason(column, text) == "", element_wise=True, name="readable")],
        )
    return pandera.Column(dtype, checks, nullable=not column.required, coerce=True)


def _with_numbers(frame: pd.DataFrame, columns: Sequence[Column]) -> pd.DataFrame:
    """Return the table with numbers where they stand as texts, and infinity for texts that are none."""
    changed = {}
    for column in columns:
        given = frame[column.name]
        if column.kind in ("number", "whole") and not pd.api.types.is_numeric_dtype(given):
            # One slip of the pen is the fault of its row and not of the whole column; infinity never passes.
            changed[column.name] = pd.to_numeric(given, errors="coerce").where(
                given.isna() | _is_number(given), math.inf
            )
    return frame.assign(**changed)


def _is_number(given: pd.Series) -> pd.Series:
    return pd.to_numeric(given, errors="coerce").notna()


def _faults(given: pd.DataFrame, frame: pd.DataFrame, columns: Sequence[Column]) -> list[tuple[int, str, str]]:
    """Return row, column and reason of everything that does not pass."""
    by_name = {column.name: column for column in columns}
    try:
        _schema(columns).validate(frame, lazy=True)
    except SchemaErrors as errors:
        found = errors.failure_cases
    else:
        return []
    faults: dict[tuple[int, str], str] = {}
    for row, name in found[["index", "column"]].itertuples(index=False):
        if pd.isna(row):
            # Not one value but the whole column is of another kind.
            kind = by_name[name].kind.replace("_", "/")
            faults |= {(int(each), str(name)): f"the column cannot be read as {kind}" for each in frame.index}
        else:
            faults.setdefault((int(row), str(name)), _reason(by_name[name], given[name][row]))
    return [(row, name, reason) for (row, name), reason in sorted(faults.items())]


def _reason(column: Column, value: object) -> str:
    """Return why a value of a column does not pass, an empty text where it does."""
    if value is None or value is pd.NA or (isinstance(value, float | np.floating) and np.isnan(value)):
        return "is missing" if column.required else ""
    if column.kind in ("number", "whole"):
        words = "a whole number" if column.kind == "whole" else "a number"
        return f"{_quoted(value)} is not {words} from {column.low:g} to {column.high:g} {column.unit}".rstrip()
    if column.kind == "yes_no":
        return f"{_quoted(value)} is neither true nor false"
    return _text_reason(column, str(value))


def _text_reason(column: Column, text: str) -> str:
    if column.kind == "word":
        return "" if text in column.words else f"{_quoted(text)} is none of {', '.join(column.words)}"
    if column.kind == "day":
        return "" if is_day(text) else f"{_quoted(text)} is not a day as in 2019-05-20"
    if column.kind == "text":
        return "" if 0 < len(text) <= LONGEST_ID else f"has {len(text)} characters; 1 to {LONGEST_ID} are taken"
    if len(text) > LONGEST_DESIGNATION:
        return f"has {len(text)} characters; {LONGEST_DESIGNATION} at most are taken"
    try:
        _PARSERS[column.kind](text)
    except DomainError as error:
        return error.detail
    return ""


def is_day(text: str) -> bool:
    """Return whether a text is an ISO day of the years that rules speak of."""
    try:
        return len(text) == len("2019-05-20") and 1900 <= date.fromisoformat(text).year < 2100  # noqa: PLR2004 - as the web takes them
    except ValueError:
        return False


def _alone(frame: pd.DataFrame, first: str, second: str) -> list[tuple[int, str, str]]:
    """Return the faults of rows that have one of two columns but not the other."""
    empty = pd.Series(data=True, index=frame.index)
    lacks_first = frame[first].isna() if first in frame.columns else empty
    lacks_second = frame[second].isna() if second in frame.columns else empty
    alone = frame.index[lacks_first != lacks_second]
    return [(int(row), first if lacks_first[row] else second, f"{first} and {second} go together") for row in alone]


def _quoted(value: object) -> str:
    return repr(str(value)[:_MOST_QUOTED])


def _rejects(table: str, frame: pd.DataFrame, faults: Iterable[tuple[int, str, str]]) -> pd.DataFrame:
    ids = frame[f"{table[:-1]}_id"]
    rows = [
        (table, row, None if pd.isna(ids[row]) else str(ids[row])[:LONGEST_ID], column, reason)
        for row, column, reason in faults
    ]
    made = pd.DataFrame(rows, columns=list(REJECTED_MEANINGS))
    return made.astype({name: "int64" if name == "row" else "str" for name in REJECTED_MEANINGS})
