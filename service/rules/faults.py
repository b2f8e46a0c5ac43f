"""The fault in a pack, and where in the file it stands; tomllib gives no line for what it has read."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path
from typing import Any, NoReturn, TypeVar

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from service.rules.written import Table, nearest

Kind = TypeVar("Kind")
Step = str | int
Place = tuple[Step, ...]

TOP = "top of the file"

_HEADER = re.compile(r"^\s*(\[{1,2})\s*([A-Za-z0-9_.-]+)\s*\]{1,2}\s*(?:#.*)?$")
_DECODE_LINE = re.compile(r"\(at line (\d+),")

# What pydantic finds, by its word for it; `{key}` is the key, and the rest comes from its details.
_SENTENCES = {
    "missing": "{key} is missing",
    "string_type": "{key} must be a text",
    "string_pattern_mismatch": "{key} must be a text that says something",
    "float_type": "{key} must be a finite number",
    "finite_number": "{key} must be a finite number",
    "greater_than": "{key} must lie above {gt:g}",
    "bool_type": "{key} must be true or false",
    "tuple_type": "{key} must be a list",
    "too_short": "{key} is empty",
    "dict_type": "{key} must be a table",
    "dataclass_type": "{key} must be a table",
    "literal_error": "unknown {key} {given!r}; known: {expected}",
    "unexpected_keyword_argument": "unknown field {key!r}{nearest}",
    "fault": "{reason}",
}


class PackError(Exception):
    """A pack that is refused: the file, the line, the rule (or section), and the reason."""

    def __init__(self, file: str, line: int, rule: str, reason: str) -> None:
        super().__init__(f"{file}:{line}: {rule}: {reason}")
        self.file = file
        self.line = line
        self.rule = rule
        self.reason = reason


class PackFile:
    """One TOML file, whose faults come with their line.

    Raises
    ------
    PackError
        When the file is not UTF-8 or not TOML.
    """

    def __init__(self, path: Path) -> None:
        self.name = path.name
        self.stem = path.stem
        try:
            text = path.read_bytes().decode("utf-8")
            self.data: Table = tomllib.loads(text)
        except UnicodeDecodeError as found:
            line = found.object[: found.start].count(b"\n") + 1
            raise PackError(self.name, line, TOP, "the file is not UTF-8") from found
        except tomllib.TOMLDecodeError as found:
            match = _DECODE_LINE.search(str(found))
            raise PackError(self.name, int(match[1]) if match else 1, TOP, f"not TOML: {str(found)[:200]}") from found
        self._lines = text.splitlines()
        self._headers = _headers(self._lines)

    def read(self, kind: TypeAdapter[Kind], data: Table, context: object = None) -> Kind:
        """Return a part of the file as what it should be, or raise its first fault."""
        try:
            return kind.validate_python(data, context=context)
        except ValidationError as found:
            first = found.errors(include_url=False)[0]
            place = (*first["loc"], *first.get("ctx", {}).get("place", ()))
            self.refuse(_sentence(first, place, kind), *place)

    def refuse(self, reason: str, *place: Step) -> NoReturn:
        """Raise a fault at a place of the file; where its key is not written, at the header of its table."""
        table = next(place[:depth] for depth in range(len(place), -1, -1) if place[:depth] in self._headers)
        header = self._headers[table]
        end = min((line for line in self._headers.values() if line > header), default=len(self._lines) + 1)
        keys = [re.escape(step) for step in place[len(table) :] if isinstance(step, str)]
        patterns = [re.compile(rf"^\s*[\"']?{key}[\"']?\s*=") for key in keys]
        lines = (line for pattern in patterns for line in range(header, end) if pattern.match(self._lines[line - 1]))
        raise PackError(self.name, next(lines, header), self._name(table), reason)

    def _name(self, table: Place) -> str:
        """Return what a message calls a table: by the code or title of the rule that it is of, or by its header."""
        if not table:
            return TOP
        name = f"[{'.'.join(step for step in table if isinstance(step, str))}]"
        found: Any = self.data
        for step in table:
            found = found[step]
            if isinstance(step, int) and isinstance(found, dict):
                given = (found.get(key) for key in ("code", "title"))
                name = next((text for text in given if isinstance(text, str) and text.strip()), name)
        return name


def _headers(lines: list[str]) -> dict[Place, int]:
    """Return the line of every table's header by the keys and positions that lead to the table."""
    found: dict[Place, int] = {(): 1}
    latest: dict[Place, int] = {}
    for number, line in enumerate(lines, start=1):
        if match := _HEADER.match(line):
            place: Place = ()
            *above, last = match[2].split(".")
            for key in above:
                place = (*place, key)
                place = (*place, latest[place]) if place in latest else place
            place = (*place, last)
            if match[1] == "[[":
                latest[place] = latest.get(place, -1) + 1
                place = (*place, latest[place])
            found[place] = number
    return found


def _sentence(error: ErrorDetails, place: Place, kind: TypeAdapter[Any]) -> str:
    """Return what is wrong, in a sentence that names the key."""
    key = next((step for step in reversed(place) if isinstance(step, str)), "the file")
    key = f"item of {key}" if isinstance(place[-1], int) else key
    details: dict[str, Any] = {"key": key, "given": str(error["input"])[:60], "words": error["msg"]}
    details |= error.get("ctx", {})
    if error["type"] == "unexpected_keyword_argument":
        parts = kind.json_schema()
        keys = [name for part in (parts, *parts["$defs"].values()) for name in part.get("properties", ())]
        details["nearest"] = nearest(key, keys)
    template = _SENTENCES.get(error["type"], "{key}: {words}")
    return template.format(**details).replace("{key}", key)
