"""The printed tables as they stand, with unit, source and status; the readers beside this file look values up here."""

from __future__ import annotations

import csv
import tomllib
from functools import cache
from importlib.resources import files
from typing import Any, NamedTuple

from service.core.errors import UnknownName
from service.core.findings import BasisStatus
from service.core.sources import SOURCES

Cell = str | int | float | None

_DATA = files(__package__) / "data"


class Column(NamedTuple):
    """One column of a table: its name, unit (empty for a bare number or text) and what it holds."""

    name: str
    unit: str
    description: str


class Table(NamedTuple):
    """A printed table with what it rests on; a blank cell is None."""

    name: str
    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[Cell, ...], ...]
    source: str
    status: BasisStatus
    edition: str
    note: str
    interpolate: bool


@cache
def _declared() -> dict[str, dict[str, Any]]:
    """Return what `tables.toml` says of each table."""
    return tomllib.loads((_DATA / "tables.toml").read_text(encoding="utf-8"))


TABLE_NAMES: tuple[str, ...] = tuple(_declared())


def _cell(text: str, kind: str) -> Cell:
    """Return a cell in the type its column declares; blank only where the column allows it."""
    if not text and kind.endswith("?"):
        return None
    match kind.rstrip("?"):
        case "integer":
            return int(text)
        case "number":
            return float(text)
        case _:
            return text


@cache
def table(name: str) -> Table:
    """Return the table of this name.

    Raises
    ------
    UnknownName
        When there is no such table; the error lists the names.
    """
    declared = _declared().get(name)
    if declared is None:
        raise UnknownName("table", TABLE_NAMES)
    kinds = [kind for _, _, kind, _ in declared["columns"]]
    source = SOURCES[declared["source"]]
    lines = csv.reader((_DATA / declared["file"]).read_text(encoding="utf-8").splitlines())
    next(lines)
    return Table(
        name=name,
        title=declared["title"],
        columns=tuple(Column(column, unit, description) for column, unit, _, description in declared["columns"]),
        rows=tuple(tuple(map(_cell, line, kinds)) for line in lines),
        source=source.key,
        status=source.status,
        edition=source.edition,
        note=declared["note"],
        interpolate=declared["interpolate"],
    )


def column(name: str, heading: str) -> tuple[Cell, ...]:
    """Return one column of a table, top to bottom."""
    printed = table(name)
    at = [each.name for each in printed.columns].index(heading)
    return tuple(row[at] for row in printed.rows)


def numbers(name: str, heading: str) -> tuple[float, ...]:
    """Return one column of a table as numbers, NaN where the cell is blank."""
    return tuple(float("nan") if cell is None else float(cell) for cell in column(name, heading))
