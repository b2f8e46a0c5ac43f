"""Rim designations: from text, in either order, to plain data."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Literal, cast

from service.designation.rim_pattern import RIM_PATTERN
from service.designation.text import MAX_LENGTH, Scanner, plain_number

__all__ = ["MAX_LENGTH", "RIM_PATTERN", "RimDesignation", "parse_rim"]

Flange = Literal["J", "JJ", "JK", "K", "B", "P", "D"]
Hump = Literal["H", "H2", "FH", "FH2", "CH", "EH", "EH2", "EH2+"]

CACHED_DESIGNATIONS = 8192
WIDTH_IN = (3.0, 16.0)
DIAMETER_CODE = (8.0, 30.0)
HIGHEST_OFFSET_MM = 150.0

NO_FLANGE = "No flange letter is stated: the shape of the flange is not known."
NO_HUMP = "No hump is stated: the shape of the bead seat is not known."

_NUMBER = re.compile(
    r"(?P<whole>[1-9][0-9]*)"
    r"(?:\.(?P<decimals>[0-9]+)|[ -] *(?P<fraction>1/2|1/4|3/4)(?![0-9])| *(?P<sign>[\u00bc\u00bd\u00be]))?"
)
_QUARTERS = {
    **dict.fromkeys(("", "0", "00"), 0.0),
    **dict.fromkeys(("25", "1/4", "\u00bc"), 0.25),
    **dict.fromkeys(("5", "50", "1/2", "\u00bd"), 0.5),
    **dict.fromkeys(("75", "3/4", "\u00be"), 0.75),
}
_FLANGE = re.compile(" *(JJ|JK|J|K|B|P|D)")
_CROSS = re.compile(" *([X-]) *")
_HUMP = re.compile(r"EH2\+|EH2|EH|FH2|FH|CH|H2|H")
_OFFSET = re.compile("ET *")
_MILLIMETRES = re.compile(r"([+-]?) *([0-9]{1,3}(?:\.[0-9]{1,2})?)(?![0-9.])")


@dataclass(frozen=True, slots=True)
class RimDesignation:
    """What a rim designation says; two are equal when everything but the assumptions is."""

    canonical: str
    width_in: float
    diameter_code: float
    flange: Flange | None
    hump: Hump | None
    one_piece: bool
    offset_mm: float | None
    assumed: tuple[str, ...] = field(compare=False)

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling, which the string keeps."""
        return hash(self.canonical)


@dataclass(slots=True)
class _Number:
    value: float
    position: int
    flange: Flange | None
    flange_at: int


@lru_cache(maxsize=CACHED_DESIGNATIONS)
def parse_rim(text: str) -> RimDesignation:
    """Return what the designation says.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, and what was expected there.
    """
    scanner = Scanner("rim", text)
    first = _read_number(scanner)
    cross = scanner.take(_CROSS)
    if cross is None:
        scanner.skip_blanks()
        letter = "" if first.flange else "a flange letter, "
        scanner.refuse(f"{letter}x, or - for a rim of several pieces")
    second = _read_number(scanner)
    assumed: list[str] = []
    width, diameter = _in_order(scanner, first, second, assumed)
    hump, offset_mm = _read_end(scanner)
    if hump is None:
        assumed.append(NO_HUMP)
    pieces = "x" if cross.group(1) == "X" else "-"
    return RimDesignation(
        _spell(
            (f"{plain_number(width.value)}{width.flange or ''}", pieces, plain_number(diameter.value)), hump, offset_mm
        ),
        width.value,
        diameter.value,
        width.flange,
        hump,
        pieces == "x",
        offset_mm,
        tuple(assumed),
    )


def _read_number(scanner: Scanner) -> _Number:
    start = scanner.position
    match = scanner.take(_NUMBER)
    if match is None:
        scanner.refuse("a rim width or a rim diameter code, such as 6.5, 6 1/2 or 16", start)
    quarters = _QUARTERS.get(match["decimals"] or match["fraction"] or match["sign"] or "")
    if quarters is None:
        scanner.refuse("whole, half or quarter inches", start)
    value = int(match["whole"]) + quarters
    flange = scanner.take(_FLANGE)
    if flange is None:
        return _Number(value, start, None, start)
    return _Number(value, start, cast("Flange", flange.group(1)), flange.start(1))


def _in_order(scanner: Scanner, first: _Number, second: _Number, assumed: list[str]) -> tuple[_Number, _Number]:
    """Return width and diameter: the flange letter follows the width, and no rim is wider than its diameter code."""
    if first.flange and second.flange:
        scanner.refuse("one flange letter, after the width", second.flange_at)
    if first.flange or second.flange:
        width, diameter = (first, second) if first.flange else (second, first)
        if width.value > diameter.value:
            scanner.refuse("the flange letter after the width, which is the smaller number", width.flange_at)
    else:
        if first.value == second.value:
            scanner.refuse("a number that differs, or a flange letter after the width", second.position)
        width, diameter = (first, second) if first.value < second.value else (second, first)
        assumed.append(f"The smaller number, {plain_number(width.value)}, is read as the rim width.")
        assumed.append(NO_FLANGE)
    if not WIDTH_IN[0] <= width.value <= WIDTH_IN[1]:
        scanner.refuse(f"a rim width from {WIDTH_IN[0]:g} to {WIDTH_IN[1]:g} inches", width.position)
    if not DIAMETER_CODE[0] <= diameter.value <= DIAMETER_CODE[1] or diameter.value % 0.5:
        bounds = f"from {DIAMETER_CODE[0]:g} to {DIAMETER_CODE[1]:g}, whole or half"
        scanner.refuse(f"a rim diameter code {bounds}", diameter.position)
    return width, diameter


def _read_end(scanner: Scanner) -> tuple[Hump | None, float | None]:
    hump: Hump | None = None
    offset_mm: float | None = None
    while not scanner.at_end():
        if offset_mm is None and scanner.take(_OFFSET):
            offset_mm = _read_offset(scanner)
            continue
        letters = scanner.take(_HUMP) if hump is None else None
        if letters is None:
            scanner.refuse("the end, a hump (H, H2, FH, FH2, CH, EH, EH2, EH2+) or the offset, such as ET45")
        hump = cast("Hump", letters.group())
    return hump, offset_mm


def _read_offset(scanner: Scanner) -> float:
    start = scanner.position
    match = scanner.take(_MILLIMETRES)
    if match is None or float(match[2]) > HIGHEST_OFFSET_MM:
        scanner.refuse(f"an offset from -{HIGHEST_OFFSET_MM:g} to {HIGHEST_OFFSET_MM:g} mm", start)
    value = float(match[2])
    # Adding zero turns the minus zero of ET-0 into zero.
    return (-value if match[1] == "-" else value) + 0.0


def _spell(size: tuple[str, str, str], hump: Hump | None, offset_mm: float | None) -> str:
    words = list(size)
    if hump is not None:
        words.append(hump)
    if offset_mm is not None:
        words.append(f"ET{plain_number(offset_mm)}")
    return " ".join(words)
