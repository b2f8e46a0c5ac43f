"""The first half of a tyre designation: prefix, width, ratio, construction, rim code and the letters after it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from service.core.saying import say
from service.designation import tyre_size_grammar as grammar
from service.designation.text import Scanner
from service.designation.tyre_size_fault import refuse_size

System = Literal[
    "iso_metric", "p_metric", "lt_metric", "commercial", "temporary_spare", "flotation", "old_series", "numeric"
]
Construction = Literal["radial", "diagonal", "bias_belted"]
Commercial = Literal["", "C", "CP", "LT"]

MM_PER_INCH = 25.4

NO_RATIO = say("No aspect ratio is printed: the designation alone does not give the height of the tyre.")
DASH = say("The dash before the rim code is read as diagonal construction; if the sidewall says RADIAL, write R there.")
CROSS = say("The x before the rim code is read as diagonal construction; if the sidewall says RADIAL, write R there.")
NO_LETTER = say("No construction is printed: radial is assumed; if the sidewall says otherwise, write D or B there.")
# S and H without R stood on diagonal tyres, where they meant less than on radial ones: common practice, from memory.
LETTER_ALONE = say("A speed letter without R is read as diagonal construction; its speed depends on the size.")
STRUCTURE_ASSUMED = frozenset((DASH, CROSS, NO_LETTER))

_SYSTEMS: dict[str, System] = {
    "": "iso_metric",
    "HL": "iso_metric",
    "P": "p_metric",
    "LT": "lt_metric",
    "T": "temporary_spare",
}
_CONSTRUCTIONS: dict[str, Construction] = {"D": "diagonal", "-": "diagonal", "X": "diagonal", "B": "bias_belted"}

_METRIC = re.compile(grammar.METRIC_PARTS)
_NUMERIC = re.compile(grammar.NUMERIC)
_NUMERIC_PARTS = re.compile(grammar.NUMERIC_PARTS)
_FLOTATION = re.compile(grammar.FLOTATION)
_FLOTATION_PARTS = re.compile(grammar.FLOTATION_PARTS)

# Letters that touch the rim code, or stand alone behind a blank.
_C = re.compile(r"(?:(CP?)(?=[ (0-9]|$)| +(CP?)(?=[ (]|$))")
_LT = re.compile(rf"(?: *LT(?={grammar.SLASHED_RANGE}(?:[ (0-9]|$))|LT(?=[ (0-9]|$)|( +LT)(?=[ (]|$))")


@dataclass(slots=True)
class Size:
    """What stands before the service description, as it is being read."""

    prefix: str = ""
    system: System = "iso_metric"
    width: float = 0.0
    section_width_mm: float = 0.0
    aspect_ratio: float | None = None
    overall_diameter_in: float | None = None
    construction: Construction = "radial"
    z_rated: bool = False
    run_flat: bool = False
    speed_letter: str | None = None
    rim_code: float = 0.0
    commercial: Commercial = ""
    assumed: list[str] = field(default_factory=list)


def read_size(scanner: Scanner) -> Size:
    """Return the size at the start of the text and leave the scanner behind it."""
    match = scanner.take(_METRIC)
    if match is not None:
        return _metric(scanner, match)
    start = scanner.position
    if scanner.take(_NUMERIC) is not None:
        return _numeric(scanner, _parts(_NUMERIC_PARTS, scanner, start))
    if scanner.take(_FLOTATION) is None:
        refuse_size(scanner, start)
    return _flotation(scanner, _parts(_FLOTATION_PARTS, scanner, start))


def _parts(pattern: re.Pattern[str], scanner: Scanner, start: int) -> re.Match[str]:
    """Return the parts of what a stricter pattern has just admitted."""
    match = pattern.match(scanner.text, start)
    if match is None:
        refuse_size(scanner, start)
    return match


def _metric(scanner: Scanner, match: re.Match[str]) -> Size:
    prefix, width, ratio, letters, code, bare = match.groups()
    if (ratio is None and (prefix or bare)) or (bare and prefix == "T"):
        refuse_size(scanner, match.start())
    size = Size(prefix=prefix or "", width=float(width))
    size.system = _SYSTEMS[size.prefix]
    size.section_width_mm = size.width
    size.rim_code = float(code or bare)
    _construct(size, letters)
    if prefix:
        size.aspect_ratio = float(ratio)
        size.commercial = "LT" if prefix == "LT" else ""
        return size
    suffix = scanner.take(_C)
    if suffix is not None:
        size.system = "commercial"
        size.commercial = "CP" if suffix.group().endswith("P") else "C"
    if ratio is None:
        size.assumed.append(NO_RATIO)
        if suffix is None:
            size.system = "old_series"
        return size
    size.aspect_ratio = float(ratio)
    # Only letters that touch the code tell a van's tyre of such a width; the published pattern has no room for more.
    vouched = suffix is not None and suffix[1] is not None
    if width[-1] == "0" and not vouched and not grammar.for_the_road(size.width, size.aspect_ratio, size.rim_code):
        refuse_size(scanner, match.start())
    return size


def _numeric(scanner: Scanner, match: re.Match[str]) -> Size:
    width, letters, code = match.groups()
    size = Size(system="numeric", width=float(width), rim_code=float(code))
    size.section_width_mm = size.width * MM_PER_INCH
    # For these sizes the dash is the standard's own letter for diagonal construction.
    _construct(size, "D" if letters == "-" else letters)
    size.assumed.append(NO_RATIO)
    suffix = scanner.take(_C)
    if suffix is not None:
        size.commercial = "CP" if suffix.group().endswith("P") else "C"
    elif scanner.take(_LT) is not None:
        size.commercial = "LT"
    return size


def _flotation(scanner: Scanner, match: re.Match[str]) -> Size:
    prefix, diameter, width, letters, code = match.groups()
    size = Size(prefix=prefix or "", system="flotation", width=float(width), rim_code=float(code))
    size.section_width_mm = size.width * MM_PER_INCH
    size.overall_diameter_in = float(diameter)
    _construct(size, letters)
    suffix = scanner.take(_LT)
    if prefix or suffix is not None:
        size.commercial = "LT"
    vouched = prefix or (suffix is not None and suffix[1] is None)
    if "." not in width and not vouched:
        refuse_size(scanner, match.start())
    return size


def _construct(size: Size, letters: str | None) -> None:
    """Note what the letters before the rim code say, or that there are none."""
    if letters is None:
        size.assumed.append(NO_LETTER)
        return
    first = letters[0]
    size.construction = _CONSTRUCTIONS.get(first, "radial")
    if letters == "R":
        return
    size.run_flat = letters[-1] == "F"
    size.z_rated = first == "Z"
    if first in grammar.LETTERS_INSIDE:
        size.speed_letter = first
        if "R" not in letters:
            size.construction = "diagonal"
            size.assumed.append(LETTER_ALONE)
    elif first == "-":
        size.assumed.append(DASH)
    elif first == "X":
        size.assumed.append(CROSS)
