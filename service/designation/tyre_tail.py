"""The second half of a tyre designation: service descriptions, load version, load range and markings, in any order."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from service.designation.service_description import ServiceDescription, read_bracketed, read_service
from service.designation.text import Scanner
from service.designation.tyre_size import Size

LoadVersion = Literal["standard", "extra_load", "high_load", "light_load"]

LOAD_RANGES = "ABCDEFGHJLMN"
# The order of the canonical spelling; a ply rating comes before them.
MARKINGS = ("M+S", "3PMSF", "POR", "MPT", "ML", "ET", "FRT", "NHS", "ST", "TL", "TT")

NO_SERVICE = "No service description: load index and speed symbol are not known."
NO_VERSION = "No load version is marked: standard load is assumed."
TRAILING_RF = "RF behind the rim code is read as Reinforced, which is extra load; run-flat tyres print RF before it."
TRAILING_HL = "HL at the end is read as the prefix HL, high load."

_WORDS = re.compile(
    r"(?:(?P<version>XL|EXTRA[ -]*LOAD|REINFORCED|REINF\.?|RF|SL|STANDARD *LOAD|LL|LIGHT *LOAD|HL|HIGH *LOAD)"
    rf"|(?:LOAD *RANGE|LR) *(?P<range>[{LOAD_RANGES}])"
    r"|(?P<snow>M *[-+&/.] *S\.?|MS)"
    r"|(?P<alpine>3 ?PMSF)"
    r"|(?P<ply>2|4|6|8|1[02468]|2[024]) ?PR"
    r"|(?P<other>POR|MPT|ML|ET|FRT|NHS|ST|TL|TT))(?![A-Z])"
)
_BARE_RANGE = re.compile(rf"([{LOAD_RANGES}])(?![-A-Z0-9+&/.])")
_SLASHED_RANGE = re.compile(rf" */ *([{LOAD_RANGES}])(?![A-Z0-9])")
_GLUED_INDEX = re.compile("[0-9]{2}")

_VERSIONS: dict[str, LoadVersion] = {
    "XL": "extra_load",
    "EX": "extra_load",
    "RE": "extra_load",
    "RF": "extra_load",
    "SL": "standard",
    "ST": "standard",
    "LL": "light_load",
    "LI": "light_load",
    "HL": "high_load",
    "HI": "high_load",
}
_EXPECTED = "the end, or one of XL, SL, LL, M+S, 3PMSF, a load range or another known marking"


@dataclass(slots=True)
class Tail:
    """What stands behind the size, as it is being read."""

    service: ServiceDescription | None = None
    bracketed: bool = False
    additional: ServiceDescription | None = None
    stated_version: LoadVersion | None = None
    load_range: str | None = None
    markings: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)

    @property
    def load_version(self) -> LoadVersion:
        """Return the load version that is stated, else standard."""
        return self.stated_version or "standard"


def read_tail(scanner: Scanner, size: Size) -> Tail:
    """Return everything behind the size; the text ends there."""
    tail = Tail()
    if size.prefix == "HL":
        tail.stated_version = "high_load"
    _read_first(scanner, size, tail)
    while not scanner.at_end():
        character = scanner.text[scanner.position]
        words = None if character == "(" else scanner.take(_WORDS)
        if words is not None:
            _note_words(scanner, size, tail, words)
        elif character == "(" or character in "0123456789":
            _read_service(scanner, tail)
        else:
            _read_bare_range(scanner, size, tail)
    if tail.service is None:
        tail.assumed.append(NO_SERVICE)
    if tail.stated_version is None and size.system in ("iso_metric", "p_metric"):
        tail.assumed.append(NO_VERSION)
    if len(tail.markings) > 1:
        tail.markings.sort(key=_canonical_place)
    return tail


def _read_first(scanner: Scanner, size: Size, tail: Tail) -> None:
    """Read what touches the rim code: only a service description may, and one digit there could belong to the code."""
    if size.system == "lt_metric":
        slashed = scanner.take(_SLASHED_RANGE)
        if slashed is not None:
            tail.load_range = slashed.group(1)
    touched = not scanner.skip_blanks()
    if scanner.position >= len(scanner.text) or not touched:
        return
    before, here = scanner.text[scanner.position - 1], scanner.text[scanner.position]
    if here == "(" or (before.isalpha() and here.isdigit()) or _GLUED_INDEX.match(scanner.text, scanner.position):
        _read_service(scanner, tail)
        return
    scanner.refuse("a blank, a load index or the end after the rim code")


def _read_service(scanner: Scanner, tail: Tail) -> None:
    start = scanner.position
    if scanner.text[start] != "(":
        if tail.service is not None:
            scanner.refuse(_EXPECTED)
        tail.service, tail.bracketed = read_service(scanner)
        return
    description, symbol_at = read_bracketed(scanner)
    if tail.service is None:
        if description.load_index_twin is not None or description.speed_symbol != "Y":
            scanner.refuse("Y and one load index: only (.. Y), above 300 km/h, stands in brackets alone", symbol_at)
        tail.service, tail.bracketed = description, True
    elif tail.additional is None and not tail.bracketed:
        tail.additional = description
    else:
        scanner.refuse(_EXPECTED, start)


def _note_words(scanner: Scanner, size: Size, tail: Tail, words: re.Match[str]) -> None:
    start = words.start()
    kind = words.lastgroup
    written = words.group()
    if kind == "version":
        _note_version(scanner, size, tail, written, start)
    elif kind == "range":
        _note_range(scanner, tail, words.group("range"), start)
    else:
        mark = {"snow": "M+S", "alpine": "3PMSF", "ply": f"{words.group('ply')}PR"}.get(kind or "", written)
        if mark not in tail.markings:
            tail.markings.append(mark)


def _note_version(scanner: Scanner, size: Size, tail: Tail, written: str, start: int) -> None:
    version = _VERSIONS[written[:2]]
    if size.system in ("lt_metric", "flotation", "temporary_spare"):
        scanner.refuse("no load version: sizes of this kind do not have one", start)
    if version == "high_load" and size.system != "iso_metric":
        scanner.refuse("no HL: only ISO metric sizes have it", start)
    if tail.stated_version not in (None, version):
        scanner.refuse("one load version, not two that differ", start)
    if version == "high_load" and tail.stated_version is None:
        tail.assumed.append(TRAILING_HL)
    if written == "RF":
        tail.assumed.append(TRAILING_RF)
    tail.stated_version = version


def _note_range(scanner: Scanner, tail: Tail, letter: str, start: int) -> None:
    if tail.load_range not in (None, letter):
        scanner.refuse("one load range, not two that differ", start)
    tail.load_range = letter


def _read_bare_range(scanner: Scanner, size: Size, tail: Tail) -> None:
    start = scanner.position
    letter = scanner.take(_BARE_RANGE) if size.commercial == "LT" else None
    if letter is None:
        scanner.refuse(_EXPECTED)
    _note_range(scanner, tail, letter.group(1), start)


def _canonical_place(marking: str) -> int:
    return MARKINGS.index(marking) if marking in MARKINGS else -1
