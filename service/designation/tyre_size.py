"""The first half of a tyre designation: prefix, width, ratio, construction, rim code and the letters after it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Literal

from service.designation.text import Scanner

System = Literal["iso_metric", "p_metric", "lt_metric", "commercial", "temporary_spare", "flotation", "old_series"]
Construction = Literal["radial", "diagonal", "bias_belted"]
Commercial = Literal["", "C", "CP", "LT"]

MM_PER_INCH = 25.4

# Bounds of what is read at all: wide enough for every tyre in use, narrow enough to catch a slip of the pen.
WIDTH_MM = (60, 500)
RATIO_PERCENT = (15, 100)
FLOTATION_DIAMETER_IN = (24, 54)
FLOTATION_WIDTH_IN = (4, 20)

_PREFIX = re.compile("(HL|LT|P|T)(?= *[0-9]) *")
_NUMBER = re.compile(r"[1-9][0-9]*(?:\.[0-9]{1,2})?(?![0-9.])")
_INTEGER = re.compile("[1-9][0-9]*")
_CROSS = re.compile(" *X *")
_SLASH = re.compile(" */ *")
_CONSTRUCTION = re.compile(" *(ZRF|ZR|RF|R|D|B|-) *")
_RIM_CODE = re.compile(r"30(?:\.0)?|[12][0-9](?:\.[05])?|[89](?:\.[05])?")
_COMMERCIAL = re.compile(" *(CP|C)(?![A-Z])")
_LIGHT_TRUCK = re.compile(" *(LT)(?![A-Z])")

_SYSTEMS: dict[str, System] = {
    "": "iso_metric",
    "HL": "iso_metric",
    "P": "p_metric",
    "LT": "lt_metric",
    "T": "temporary_spare",
}
_CONSTRUCTIONS: dict[str, Construction] = {"D": "diagonal", "-": "diagonal", "B": "bias_belted"}


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
    rim_code: float = 0.0
    commercial: Commercial = ""
    assumed: list[str] = field(default_factory=list)


def read_size(scanner: Scanner) -> Size:
    """Return the size at the start of the text and leave the scanner behind it."""
    size = Size()
    prefix = scanner.take(_PREFIX)
    if prefix is not None:
        size.prefix = prefix.group(1)
    size.system = _SYSTEMS[size.prefix]
    start = scanner.position
    number = scanner.take(_NUMBER)
    if number is None:
        scanner.refuse("a tyre size such as 205/55 R16, P215/65 R15, LT235/85 R16, T125/80 D16 or 31x10.50 R15LT")
    if not size.prefix and scanner.take(_CROSS):
        _read_flotation(scanner, size, float(number.group()), start)
    else:
        _read_metric(scanner, size, number.group(), start)
    return size


def _read_metric(scanner: Scanner, size: Size, written: str, start: int) -> None:
    low, high = WIDTH_MM
    if "." in written or not low <= int(written) <= high:
        scanner.refuse(f"a section width from {low} to {high} mm, or an overall diameter in inches and x", start)
    size.width = size.section_width_mm = float(written)
    if scanner.take(_SLASH):
        size.aspect_ratio = _read_ratio(scanner)
    elif size.prefix:
        scanner.refuse(f"a slash and the aspect ratio, as every size that begins with {size.prefix} has")
    _read_construction(scanner, size)
    _read_rim_code(scanner, size)
    if size.prefix:
        size.commercial = "LT" if size.prefix == "LT" else ""
        return
    letters = scanner.take(_COMMERCIAL)
    if letters is not None:
        size.system = "commercial"
        size.commercial = "CP" if letters.group(1) == "CP" else "C"
    elif size.aspect_ratio is None:
        size.system = "old_series"
    if size.aspect_ratio is None:
        size.assumed.append("No aspect ratio is printed: the designation alone does not give the height of the tyre.")


def _read_flotation(scanner: Scanner, size: Size, diameter_in: float, start: int) -> None:
    low, high = FLOTATION_DIAMETER_IN
    if not low <= diameter_in <= high:
        scanner.refuse(f"an overall diameter from {low} to {high} inches", start)
    size.system = "flotation"
    size.overall_diameter_in = diameter_in
    width_at = scanner.position
    number = scanner.take(_NUMBER)
    low, high = FLOTATION_WIDTH_IN
    if number is None or not low <= float(number.group()) < high:
        scanner.refuse(f"a section width from {low} to {high} inches", width_at)
    size.width = float(number.group())
    size.section_width_mm = size.width * MM_PER_INCH
    _read_construction(scanner, size)
    rim_at = scanner.position
    _read_rim_code(scanner, size)
    if size.rim_code > diameter_in - 4:
        scanner.refuse("a rim code at least 4 inches below the overall diameter", rim_at)
    if scanner.take(_LIGHT_TRUCK):
        size.commercial = "LT"


def _read_ratio(scanner: Scanner) -> float:
    start = scanner.position
    digits = scanner.take(_INTEGER)
    low, high = RATIO_PERCENT
    if digits is None or not low <= int(digits.group()) <= high:
        scanner.refuse(f"an aspect ratio from {low} to {high} per cent", start)
    return float(digits.group())


def _read_construction(scanner: Scanner, size: Size) -> None:
    letters = scanner.take(_CONSTRUCTION)
    if letters is None:
        scanner.skip_blanks()
        # Most sizes have a ratio, and what stands in place of the slash is what is wrong with them.
        before = "a slash and the aspect ratio, or " if size.aspect_ratio is None and size.system != "flotation" else ""
        scanner.refuse(f"{before}the construction: R, ZR, RF, ZRF, D, B or a dash")
    written = letters.group(1)
    size.construction = _CONSTRUCTIONS.get(written, "radial")
    size.z_rated = written[0] == "Z"
    size.run_flat = written[-1] == "F"
    if written == "-":
        size.assumed.append("The dash before the rim code is read as diagonal construction.")


def _read_rim_code(scanner: Scanner, size: Size) -> None:
    code = scanner.take(_RIM_CODE)
    if code is None:
        scanner.refuse("a rim diameter code from 8 to 30")
    size.rim_code = float(code.group())
