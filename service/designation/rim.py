"""Rim designations: from text, in either order, to plain data."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, cast

from service.core.errors import UnreadableDesignation
from service.core.saying import Amount, Said, say
from service.designation import rim_grammar as grammar
from service.designation.refusal import explained
from service.designation.rim_pattern import RIM_PATTERN
from service.designation.text import MAX_LENGTH, Scanner, plain_number

__all__ = ["MAX_LENGTH", "RIM_PATTERN", "RimDesignation", "parse_rim"]

Flange = Literal["J", "JJ", "JK", "K", "B", "P", "D", "E", "F", "G", "S", "T", "V"]
Hump = Literal["H", "H2", "FH", "FH2", "CH", "EH", "EH2", "EH2+"]


NO_FLANGE = say("No flange letter is stated: the shape of the flange is not known.")
NO_HUMP = say("No hump is stated: the shape of the bead seat is not known.")

# Truck rims whose bead seats slope by 15 degrees: they have neither a flange letter nor a hump (common practice, from
# memory).
FIFTEEN_DEGREE_CODES = frozenset((17.5, 19.5, 22.5, 24.5))

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
# E and F may also begin the hump or the offset.
_FLANGE = re.compile(" *(JJ|JK|J|K|B|P|D|E(?![HT])|F(?!H)|G|S|T|V)")
_CROSS = re.compile(" *([X-]) *")
_HUMP = re.compile("|".join(map(re.escape, grammar.HUMPS)))
# The codes of older standards, as the handbook translates them (Automotive Engineering, p. 301).
_OLD_HUMPS = {"FHA": "FH", "FH1-H": "CH"}
# ET, IS (inset), a third x or, behind a blank, a sign alone.
_OFFSET = re.compile(" *(?:ET|IS|X) *(?P<marked>[+-]?)| +(?P<bare>[+-])")
_MILLIMETRES = re.compile(rf" *({grammar.MILLIMETRES})(?![0-9.])(?: *MM)?")


def smaller_is_width(width_in: float) -> Said:
    """Return the assumption on two numbers of which no flange letter tells which the width is."""
    return say("The smaller number, {width}, is read as the rim width.", width=Amount(width_in, "", 2))


@dataclass(frozen=True, slots=True)
class RimDesignation:
    """What a rim designation says; two are equal when every field is, what was assumed included."""

    canonical: str
    width_in: float
    diameter_code: float
    flange: Flange | None
    hump: Hump | None
    one_piece: bool
    offset_mm: float | None
    assumed: tuple[str, ...]

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling, which the string keeps."""
        return hash(self.canonical)

    @property
    def is_fifteen_degree(self) -> bool:
        """Return whether this is a truck rim with 15 degree bead seats, of which nobody asks for a hump."""
        return self.diameter_code in FIFTEEN_DEGREE_CODES


@dataclass(slots=True)
class _Number:
    value: float
    position: int
    fraction_at: int | None
    flange: Flange | None
    flange_at: int


def parse_rim(text: str) -> RimDesignation:
    """Return what the designation says.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, what was expected there and, where one is near, the designation that
        may have been meant.
    """
    try:
        return _read(text)
    except UnreadableDesignation as error:
        refusal = explained(error, text, _canonical)
    raise refusal


def _canonical(text: str) -> str:
    return _read(text).canonical


def _read(text: str) -> RimDesignation:
    scanner = Scanner("rim", text)
    first = _read_number(scanner)
    cross = scanner.take(_CROSS)
    if cross is None:
        scanner.skip_blanks()
        if first.flange:
            scanner.refuse(say("x, or - for a rim of several pieces"))
        scanner.refuse(say("a flange letter, x, or - for a rim of several pieces"))
    second = _read_number(scanner)
    width, diameter = _in_order(scanner, first, second)
    hump, offset_mm = _read_end(scanner)
    pieces = "x" if cross.group(1) == "X" else "-"
    size = f"{plain_number(width.value)}{width.flange or ''} {pieces} {plain_number(diameter.value)}"
    return RimDesignation(
        _spell(size, hump, offset_mm),
        width.value,
        diameter.value,
        width.flange,
        hump,
        pieces == "x",
        offset_mm,
        _assumed(width, diameter, hump),
    )


def _read_number(scanner: Scanner) -> _Number:
    start = scanner.position
    match = scanner.take(_NUMBER)
    if match is None:
        scanner.refuse(say("a rim width or a rim diameter code, such as 6.5, 6 1/2 or 16"), start)
    fraction = match.lastgroup or "whole"
    quarters = 0.0 if fraction == "whole" else _QUARTERS.get(match[fraction])
    if quarters is None:
        scanner.refuse(say("whole, half or quarter inches"), match.start(fraction))
    value = int(match["whole"]) + quarters
    fraction_at = match.start(fraction) if fraction in ("fraction", "sign") else None
    flange = scanner.take(_FLANGE)
    if flange is None:
        return _Number(value, start, fraction_at, None, start)
    return _Number(value, start, fraction_at, cast("Flange", flange.group(1)), flange.start(1))


def _in_order(scanner: Scanner, first: _Number, second: _Number) -> tuple[_Number, _Number]:
    """Return width and diameter: the flange letter follows the width, and the width is the smaller number."""
    if first.flange and second.flange:
        scanner.refuse(say("one flange letter, after the width"), second.flange_at)
    if first.flange or second.flange:
        width, diameter = (first, second) if first.flange else (second, first)
        if width.value > diameter.value:
            scanner.refuse(say("the flange letter after the width, which is the smaller number"), width.flange_at)
    else:
        if first.value == second.value:
            scanner.refuse(say("a number that differs, or a flange letter after the width"), second.position)
        width, diameter = (first, second) if first.value < second.value else (second, first)
    low, high = grammar.DIAMETER_CODE
    widest = grammar.widest_in(min(max(diameter.value, low), high))
    if not grammar.NARROWEST_IN <= width.value <= grammar.WIDEST_IN:
        narrowest, broadest = Amount(grammar.NARROWEST_IN, "", 2), Amount(grammar.WIDEST_IN, "", 2)
        scanner.refuse(
            say("a rim width from {narrowest} to {widest} inches", narrowest=narrowest, widest=broadest), width.position
        )
    if not low <= diameter.value <= high or diameter.value % 0.5 or diameter.fraction_at is not None:
        scanner.refuse(
            say("a rim diameter code from {low} to {high}, whole or half", low=Amount(low), high=Amount(high)),
            diameter.position,
        )
    if width.value > widest:
        scanner.refuse(
            say("a rim width up to {widest} inches for this diameter", widest=Amount(widest, "", 2)), width.position
        )
    return width, diameter


def _read_end(scanner: Scanner) -> tuple[Hump | None, float | None]:
    hump: Hump | None = None
    offset_mm: float | None = None
    while scanner.position < len(scanner.text):
        offset = scanner.take(_OFFSET) if offset_mm is None else None
        if offset is not None:
            offset_mm = _read_offset(scanner, offset["marked"] or offset["bare"])
            continue
        if scanner.at_end():
            break
        letters = scanner.take(_HUMP) if hump is None else None
        if letters is None:
            scanner.refuse(
                say(
                    "the end, a hump (H, H2, FH, FH2, CH, EH, EH2, EH2+) or the offset, such as ET45; the bolt circle "
                    "has a field of its own"
                )
            )
        hump = cast("Hump", _OLD_HUMPS.get(letters.group(), letters.group()))
    return hump, offset_mm


def _read_offset(scanner: Scanner, sign: str) -> float:
    start = scanner.position
    match = scanner.take(_MILLIMETRES)
    if match is None:
        scanner.skip_blanks()
        low, high = Amount(-grammar.HIGHEST_OFFSET_MM), Amount(grammar.HIGHEST_OFFSET_MM)
        # Written in millimetres whatever units the answer is in: so are offsets.
        scanner.refuse(
            say("an offset from {low} to {high} mm", low=low, high=high), start if scanner.at_end() else None
        )
    value = float(match[1])
    # Adding zero turns the minus zero of ET-0 into zero.
    return (-value if sign == "-" else value) + 0.0


def _assumed(width: _Number, diameter: _Number, hump: Hump | None) -> tuple[str, ...]:
    if diameter.value in FIFTEEN_DEGREE_CODES:
        return ()
    assumed: list[str] = []
    if width.flange is None:
        assumed.append(smaller_is_width(width.value))
        assumed.append(NO_FLANGE)
    if hump is None:
        assumed.append(NO_HUMP)
    return tuple(assumed)


def _spell(size: str, hump: Hump | None, offset_mm: float | None) -> str:
    words = [size]
    if hump is not None:
        words.append(hump)
    if offset_mm is not None:
        words.append(f"ET{plain_number(offset_mm)}")
    return " ".join(words)
