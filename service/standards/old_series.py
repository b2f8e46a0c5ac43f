"""Passenger sizes without a printed aspect ratio: their dimensions stand in a table, no ratio gives them.

References
----------
.. [UN-R30 annex 5] Radial sizes in millimetres and diagonal sizes in inches, from memory, each row with its confidence.
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

from service.standards import catalogue


class OldSeries(NamedTuple):
    """The measuring rim [in], design overall diameter and section width [mm] of a size, and how sure the row is."""

    measuring_rim_in: float
    overall_diameter_mm: float
    section_width_mm: float
    confidence: str


@cache
def _rows(name: str, width: str) -> dict[tuple[float, float], OldSeries]:
    """Return the rows of a table by the width in the designation and the rim code."""
    sizes = zip(catalogue.numbers(name, width), catalogue.numbers(name, "rim_code"), strict=True)
    values = map(
        OldSeries,
        catalogue.numbers(name, "measuring_rim_in"),
        catalogue.numbers(name, "overall_diameter_mm"),
        catalogue.numbers(name, "design_section_width_mm"),
        map(str, catalogue.column(name, "confidence")),
    )
    return dict(zip(sizes, values, strict=True))


def row(section_width_mm: float, rim_code: float) -> OldSeries | None:
    """Return the row of a radial size such as 155 R 13; None when the table has none."""
    return _rows("old-series", "section_width_mm").get((section_width_mm, rim_code))


def numeric_row(section_width_in: float, rim_code: float) -> OldSeries | None:
    """Return the row of a diagonal size such as 5.60-15; None when the table has none."""
    return _rows("numeric-series", "section_width_in").get((section_width_in, rim_code))
