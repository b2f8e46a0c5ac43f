"""One pack file as it is written, before what it inherits is added."""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from pathlib import Path

from service.rules.faults import Lines, PackError, line_of_decode_error
from service.rules.limits import LIMIT_NAMES, SECTION_LIMITS, SECTION_OF, Limit, unit_of
from service.rules.provenance import basis_of
from service.rules.rule import Rule
from service.rules.rule_table import read_rules
from service.rules.table import Table

_EDITION = re.compile(r"\d{4}-(0[1-9]|1[0-2])")
WINTER_FLOOR = "winter_speed_floor_kmh"


@dataclass(frozen=True, slots=True)
class Sheet:
    """What one file says by itself; `top` gives the line of a fault found later."""

    id: str
    title: str
    edition: str
    inherits: tuple[str, ...]
    drops: tuple[str, ...]
    notes: tuple[str, ...]
    limits: dict[str, Limit]
    rules: tuple[Rule, ...]
    top: Table


def read_sheet(path: Path) -> Sheet:
    """Return what one pack file says by itself."""
    top = open_table(path)
    pack = top.text("id")
    if pack != path.stem:
        top.fault("id", f"the id {pack[:60]!r} is not the file's name {path.stem!r}")
    edition = top.text("edition")
    if not _EDITION.fullmatch(edition):
        top.fault("edition", "edition must be a year and month such as 2026-11")
    if not top.has("inherits"):
        top.fault("inherits", "inherits is missing; [] where the pack builds on nothing")
    return Sheet(
        id=pack,
        title=top.text("title"),
        edition=edition,
        inherits=top.texts("inherits"),
        drops=top.texts("drops"),
        notes=top.texts("notes"),
        limits=read_limits(top),
        rules=read_rules(top, pack),
        top=top,
    )


def open_table(path: Path) -> Table:
    """Return the top table of a TOML file.

    Raises
    ------
    PackError
        When the file is not UTF-8 or not TOML.
    """
    try:
        text = path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as fault:
        line = fault.object[: fault.start].count(b"\n") + 1
        raise PackError(path.name, line, "top of the file", "the file is not UTF-8") from fault
    try:
        data = tomllib.loads(text)
    except tomllib.TOMLDecodeError as fault:
        line = line_of_decode_error(str(fault))
        raise PackError(path.name, line, "top of the file", f"not TOML: {str(fault)[:200]}") from fault
    return Table(data, Lines(path.name, text), "")


def read_limits(top: Table) -> dict[str, Limit]:
    """Return the limits that a file gives, by name: those under `limits` and those in sections."""
    found: dict[str, Limit] = {}
    own = top.table("limits")
    for name in own.keys() if own else ():
        if own and name not in LIMIT_NAMES:
            own.fault(name, f"unknown limit {name[:60]!r}; known: {', '.join(LIMIT_NAMES)}")
        if own and name in SECTION_OF:
            own.fault(name, f"write this limit as [{'.'.join(SECTION_OF[name])}]")
        if own and (table := own.table(name)):
            found[name] = read_limit(table, unit_of(name))
    winter = top.table("winter")
    if winter and (floor := winter.table("speed_floor")):
        found[WINTER_FLOOR] = read_limit(floor, unit_of(WINTER_FLOOR))
    for section, keys in SECTION_LIMITS.items():
        within = top.table(section)
        for key in within.keys() if within else ():
            if within and key not in keys:
                within.fault(key, f"unknown field {key[:60]!r}; known: {', '.join(keys)}")
            if within and (table := within.table(key)):
                found[keys[key]] = read_limit(table, unit_of(keys[key]))
    return found


def read_limit(table: Table, unit: str) -> Limit:
    """Return one limit from its table; the unit must be the one the limit is written in."""
    value = table.number("value")
    table.choice("unit", (unit,))
    given = table.provenance()
    table.done()
    return Limit(value, unit, basis_of(given), given.article, given.source, given.checked, given.note)
