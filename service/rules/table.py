"""Typed reading of one TOML table: a fault names file, line, rule and reason."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from typing import NoReturn, TypeVar, get_args

from service.core.findings import BasisStatus
from service.core.sources import SOURCES
from service.rules.faults import Lines, PackError
from service.rules.provenance import Provenance

Chosen = TypeVar("Chosen", bound=str)

STATUSES: tuple[BasisStatus, ...] = get_args(BasisStatus)
_COMPARED: tuple[BasisStatus, ...] = ("read", "second_hand")


class Table:
    """One table of a pack, read key by key; `done` refuses what nobody asked for."""

    def __init__(self, data: Mapping[str, object], lines: Lines, name: str, ordinal: int = 0) -> None:
        self._data = data
        self._lines = lines
        self._asked: set[str] = set()
        self.name = name
        self.ordinal = ordinal
        self.label = f"[{name}]" if name else "top of the file"
        # A table written inside an array has no lines of its own: its faults stand at the array's key.
        self.inside = ""

    def fault(self, key: str, reason: str) -> NoReturn:
        """Raise the fault of a key of this table."""
        line = self._lines.line_of(self.name, self.ordinal, self.inside or key)
        raise PackError(self._lines.file, line, self.label, reason)

    def has(self, key: str) -> bool:
        """Return whether the key is given."""
        return key in self._data

    def raw(self, key: str) -> object:
        """Return what stands under the key, None where nothing does."""
        self._asked.add(key)
        return self._data.get(key)

    def text(self, key: str, default: str | None = None) -> str:
        """Return the text of a key; without a default it must be given and not empty."""
        value = self.raw(key)
        if value is None and default is not None:
            return default
        if value is None:
            self.fault(key, f"{key} is missing")
        if not isinstance(value, str) or not value.strip():
            self.fault(key, f"{key} must be a text that says something")
        return value

    def choice(self, key: str, known: Sequence[Chosen], default: Chosen | None = None) -> Chosen:
        """Return the word of a key, one of the known ones."""
        value = self.text(key, default)
        found = next((word for word in known if word == value), None)
        if found is None:
            self.fault(key, f"unknown {key} {value[:60]!r}; known: {', '.join(known)}")
        return found

    def number(self, key: str) -> float:
        """Return the finite number of a key, which must be given."""
        value = self.raw(key)
        if value is None:
            self.fault(key, f"{key} is missing")
        if isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            self.fault(key, f"{key} must be a finite number")
        return float(value)

    def numbers(self, key: str) -> tuple[float, ...]:
        """Return the list of finite numbers of a key, which must be given."""
        value = self.raw(key)
        items: list[object] = value if isinstance(value, list) else [None]
        found = [float(v) for v in items if isinstance(v, int | float) and not isinstance(v, bool) and math.isfinite(v)]
        if len(found) != len(items):
            self.fault(key, f"{key} must be a list of finite numbers")
        return tuple(found)

    def number_or_none(self, key: str) -> float | None:
        """Return the number of a key, None where it is not given."""
        return self.number(key) if self.has(key) else None

    def flag_or_none(self, key: str) -> bool | None:
        """Return the yes or no of a key, None where it is not given."""
        value = self.raw(key)
        if value is not None and not isinstance(value, bool):
            self.fault(key, f"{key} must be true or false")
        return value

    def day(self, key: str) -> str | None:
        """Return the date of a key as an ISO text, None where it is not given."""
        value = self.raw(key)
        if value is None:
            return None
        if isinstance(value, dt.datetime) or not isinstance(value, dt.date):
            self.fault(key, f"{key} must be a date such as 2026-11-24, without quotes")
        return value.isoformat()

    def window(self, first: str, last: str) -> tuple[str | None, str | None]:
        """Return two dates in order, each None where it is not given."""
        begin, end = self.day(first), self.day(last)
        if begin is not None and end is not None and begin > end:
            self.fault(first, f"{first} {begin} lies after {last} {end}")
        return begin, end

    def texts(self, key: str) -> tuple[str, ...]:
        """Return the list of texts of a key, empty where it is not given."""
        value = self.raw(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(item, str) and item for item in value):
            self.fault(key, f"{key} must be a list of texts")
        return tuple(value)

    def tables(self, key: str, name: str | None = None) -> tuple[Table, ...]:
        """Return the tables of an array of tables; `name` says whose lines an inline array stands in."""
        value = self.raw(key)
        if value is None:
            return ()
        if not isinstance(value, list) or not all(isinstance(item, dict) for item in value):
            self.fault(key, f"{key} must be an array of tables")
        path = f"{self.name}.{key}" if self.name else key
        if name is None:
            return tuple(Table(item, self._lines, path, ordinal) for ordinal, item in enumerate(value))
        inline = tuple(Table(item, self._lines, self.name, self.ordinal) for item in value)
        for table in inline:
            table.label, table.inside = name, key
        return inline

    def table(self, key: str) -> Table | None:
        """Return the table under a key, None where it is not given."""
        value = self.raw(key)
        if value is None:
            return None
        if not isinstance(value, dict):
            self.fault(key, f"{key} must be a table")
        return Table(value, self._lines, f"{self.name}.{key}" if self.name else key)

    def keys(self) -> tuple[str, ...]:
        """Return the keys of the table, in the file's order."""
        return tuple(self._data)

    def provenance(self, prefix: str = "") -> Provenance:
        """Return article, source, status and day checked of the number or rule in this table."""
        article = self.text(f"{prefix}article")
        status = self.choice(f"{prefix}status", STATUSES)
        source = self.text(f"{prefix}source")
        if source not in SOURCES:
            self.fault(f"{prefix}source", f"unknown source {source[:60]!r}{_nearest(source, tuple(SOURCES))}")
        checked = self.day(f"{prefix}checked")
        if status in _COMPARED and checked is None:
            self.fault(f"{prefix}checked", f"{prefix}checked is missing: a {status} number has a day of comparison")
        if status not in _COMPARED and status != "derived" and checked is not None:
            self.fault(f"{prefix}checked", f"{prefix}checked is given, but status {status} says that no text was read")
        return Provenance(article, source, status, checked, "" if prefix else self.text("note", ""))

    def done(self) -> None:
        """Refuse the first key that nobody asked for, with the nearest known one."""
        for key in self._data:
            if key not in self._asked:
                self.fault(key, f"unknown field {key[:60]!r}{_nearest(key, tuple(self._asked))}")


def _nearest(word: str, known: tuple[str, ...]) -> str:
    close = get_close_matches(word, known, n=1)
    return f"; nearest known: {close[0]!r}" if close else ""
