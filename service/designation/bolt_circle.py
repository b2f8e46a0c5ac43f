"""Bolt circles: number of bolts and diameter of the circle through their centres, as in `5x112`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from service.designation.text import MAX_LENGTH, PATTERN_BLANK, PATTERN_CROSSES, PATTERN_DASHES, Scanner, plain_number

__all__ = ["BOLT_CIRCLE_PATTERN", "MAX_LENGTH", "BoltCircle", "parse_bolt_circle"]

CACHED_DESIGNATIONS = 1024
BOLTS = (3, 10)
DIAMETER_MM = (80.0, 340.0)

BOLT_CIRCLE_PATTERN = (
    rf"^(?:[3-9]|10){PATTERN_BLANK}?[\/{PATTERN_CROSSES}{PATTERN_DASHES}]{PATTERN_BLANK}?"
    "(?:[89][0-9]|[12][0-9][0-9]|3[0-3][0-9])(?:[.,][0-9][0-9]?)?$"
)

_BOLTS = re.compile("[1-9][0-9]*")
_CROSS = re.compile(" *[X/-] *")
_DIAMETER = re.compile(r"[1-9][0-9]*(?:\.[0-9]{1,2})?(?![0-9.])")


@dataclass(frozen=True, slots=True)
class BoltCircle:
    """A number of bolts and the diameter of their circle."""

    canonical: str
    bolts: int
    diameter_mm: float

    def __hash__(self) -> int:
        """Return the hash of the canonical spelling, which the string keeps."""
        return hash(self.canonical)


@lru_cache(maxsize=CACHED_DESIGNATIONS)
def parse_bolt_circle(text: str) -> BoltCircle:
    """Return the number of bolts and the diameter.

    Raises
    ------
    UnreadableDesignation
        With the position in the text as given, and what was expected there.
    """
    scanner = Scanner("bolt circle", text)
    start = scanner.position
    digits = scanner.take(_BOLTS)
    if digits is None or not BOLTS[0] <= int(digits.group()) <= BOLTS[1]:
        scanner.refuse(f"the number of bolts, {BOLTS[0]} to {BOLTS[1]}, and then the diameter, as in 5x112", start)
    if not scanner.take(_CROSS):
        scanner.skip_blanks()
        scanner.refuse("x between the number of bolts and the diameter")
    start = scanner.position
    number = scanner.take(_DIAMETER)
    if number is None or not DIAMETER_MM[0] <= float(number.group()) <= DIAMETER_MM[1]:
        scanner.refuse(f"a diameter from {DIAMETER_MM[0]:g} to {DIAMETER_MM[1]:g} mm with at most two decimals", start)
    if not scanner.at_end():
        scanner.refuse("the end")
    bolts, diameter_mm = int(digits.group()), float(number.group())
    return BoltCircle(f"{bolts}x{plain_number(diameter_mm)}", bolts, diameter_mm)
