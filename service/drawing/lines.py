"""Line types: their dashes and widths carry the meaning, so that the drawing reads in black and white.

References
----------
.. [ISO-128-2] Numbers, dash lengths in line widths and the 2:1 ratio of wide to narrow, from memory.
"""

from __future__ import annotations

from typing import Final, NamedTuple


class LineType(NamedTuple):
    """A line type of the standard: its number, its name here, whether it is wide, dashes and gaps in line widths."""

    number: str
    name: str
    wide: bool
    dashes: tuple[float, ...] = ()


WIDE: Final = LineType("01.2", "wide", wide=True)
"""Visible outline: the proposed fitment."""
NARROW: Final = LineType("01.1", "narrow", wide=False)
"""Dimension, extension and leader lines, hatching, and what stands beside the wheel."""
CHAIN: Final = LineType("04.1", "chain", wide=False, dashes=(24.0, 3.0, 0.5, 3.0))
"""Centre lines."""
PHANTOM: Final = LineType("05.1", "phantom", wide=False, dashes=(24.0, 3.0, 0.5, 3.0, 0.5, 3.0))
"""Outline of the alternative: the present fitment."""

NARROW_UNITS: Final = 1.25
"""Width of a narrow line in drawing units; a unit is 0.2 mm of paper, so that this is the standard's 0.25 mm."""
WIDE_UNITS: Final = 2.5
"""Width of a wide line in drawing units."""


def stroke(line: LineType, unit_mm: float) -> dict[str, str]:
    """Return the attributes that make a stroke of this type where a drawing unit is `unit_mm` of the real thing."""
    width = (WIDE_UNITS if line.wide else NARROW_UNITS) * unit_mm
    made = {"stroke-width": f"{width:g}"}
    if line.dashes:
        made["stroke-dasharray"] = " ".join(f"{share * width:g}" for share in line.dashes)
    return made
