"""Bolt circles: number of bolts and diameter of the circle through their centres, as in `5x112`.

The diameter is in millimetres, or in inches where it carries their mark, as in `5 x 4.5"`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import NoReturn

from service.core.errors import UnreadableDesignation
from service.core.saying import Amount, Said, say
from service.designation.published import published
from service.designation.refusal import explained
from service.designation.text import MAX_LENGTH, Scanner, plain_number

__all__ = ["BOLT_CIRCLE_PATTERN", "MAX_LENGTH", "BoltCircle", "parse_bolt_circle"]

BOLTS = (3, 10)
DIAMETER_MM = (80.0, 340.0)
MM_PER_INCH = 25.4

# Circles as they are drawn in millimetres. 4 1/4 inches is the trade's name for 108 mm, which it misses by 0.05 mm
# (common practice, from memory).
METRIC_CIRCLES_MM = (98.0, 100.0, 105.0, 108.0, 110.0, 112.0, 114.3, 115.0, 118.0, 120.0, 130.0, 139.7)
NEAR_MM = 0.1

_BOLTS = "(?:[3-9]|10)"
_MM = r"(?:(?:[89][0-9]|[12][0-9][0-9]|3[0-3][0-9])(?:\.[0-9]{1,2})?|340(?:\.00?)?)"
_INCHES = (
    r"(?:3\.[5-9][0-9]{0,2}|(?:[4-9]|1[0-2])\.[0-9]{1,3}"
    r"|(?:[4-9]|1[0-2])(?:[ \-] *(?:1/2|[13]/4)| *[\u00bc-\u00be])?)"
)
_MARK = r" *(?:\u0022|\u2033|\u201d|''|INCHES|INCH|IN)"
_CROSS = r" *[/X\-] *"

BOLT_CIRCLE_PATTERN: str = published(
    f"{_BOLTS}{_CROSS}(?:{_MM}|{_INCHES}{_MARK})|(?:{_MM}|{_INCHES}{_MARK}){_CROSS}{_BOLTS}"
)

_DIAMETER = rf"(?:({_MM})|({_INCHES}){_MARK})"
_BOLTS_FIRST = re.compile(rf"({_BOLTS}){_CROSS}{_DIAMETER}(?= *$)")
_DIAMETER_FIRST = re.compile(rf"{_DIAMETER}{_CROSS}({_BOLTS})(?= *$)")

_NUMBER = re.compile("[0-9]+")
_TAKEN_CROSS = re.compile(" *[X/-] *")
_FRACTIONS = {"1/4": 0.25, "1/2": 0.5, "3/4": 0.75, "\u00bc": 0.25, "\u00bd": 0.5, "\u00be": 0.75}
_FRACTION = re.compile(r"([0-9]+)[ \-]*(1/4|1/2|3/4|[\u00bc-\u00be])")


@dataclass(frozen=True, slots=True)
class BoltCircle:
    """A number of bolts and the diameter of their circle."""

    canonical: str
    bolts: int
    diameter_mm: float

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling, which the string keeps."""
        return hash(self.canonical)


def parse_bolt_circle(text: str) -> BoltCircle:
    """Return the number of bolts and the diameter.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, and what was expected there.
    """
    try:
        return _read(text)
    except UnreadableDesignation as error:
        refusal = explained(error, text, _canonical)
    raise refusal


def _canonical(text: str) -> str:
    return _read(text).canonical


def _read(text: str) -> BoltCircle:
    scanner = Scanner("bolt circle", text)
    match = scanner.take(_BOLTS_FIRST)
    if match is not None:
        bolts, metric, inches = match.groups()
    else:
        match = scanner.take(_DIAMETER_FIRST)
        if match is None:
            _refuse(scanner)
        metric, inches, bolts = match.groups()
    diameter_mm = float(metric) if metric else _from_inches(inches)
    return BoltCircle(f"{bolts}x{plain_number(diameter_mm)}", int(bolts), diameter_mm)


def _from_inches(written: str) -> float:
    """Return the diameter [mm] to hundredths, or that of the metric circle that the inches are a name for."""
    fraction = _FRACTION.match(written)
    inches = float(written) if fraction is None else int(fraction[1]) + _FRACTIONS[fraction[2]]
    exact_mm = inches * MM_PER_INCH
    named = [each for each in METRIC_CIRCLES_MM if abs(each - exact_mm) <= NEAR_MM]
    return named[0] if named else round(exact_mm, 2)


def _refuse(scanner: Scanner) -> NoReturn:
    """Refuse at the first character that does not belong to a bolt circle."""
    start = scanner.position
    digits = scanner.take(_NUMBER)
    count = 0 if digits is None else int(digits.group())
    few = BOLTS[0] <= count <= BOLTS[1] and scanner.text[start] != "0"
    if not few and count < DIAMETER_MM[0]:
        scanner.refuse(
            say(
                "the number of bolts, {fewest} to {most}, and then the diameter, as in 5x112",
                fewest=Amount(BOLTS[0]),
                most=Amount(BOLTS[1]),
            ),
            start,
        )
    if not scanner.take(_TAKEN_CROSS):
        scanner.skip_blanks()
        scanner.refuse(say("x between the number of bolts and the diameter"))
    start = scanner.position
    rest = re.match(rf"(?:{_DIAMETER if few else _BOLTS})(?![0-9.])", scanner.text[start:])
    if rest is None:
        scanner.refuse(_diameter_expected() if few else _bolts_expected(), start)
    scanner.position = start + rest.end()
    if scanner.at_end():
        scanner.refuse(say("a diameter and a number of bolts, as in 5x112"), start)
    scanner.refuse(say("the end"))


def _diameter_expected() -> Said:
    # Written in millimetres whatever units the answer is in: so are bolt circles.
    low, high = DIAMETER_MM
    return say(
        "a diameter from {low} to {high} mm with at most two decimals, or in inches with their mark",
        low=Amount(low),
        high=Amount(high),
    )


def _bolts_expected() -> Said:
    return say("the number of bolts, {fewest} to {most}", fewest=Amount(BOLTS[0]), most=Amount(BOLTS[1]))
