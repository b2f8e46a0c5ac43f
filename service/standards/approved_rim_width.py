"""Rim widths that a tyre size may be mounted on: the table of sizes, and an estimate for the sizes it lacks.

References
----------
.. [ETRTO] Standards manual, thirty-one sizes from memory; design-guide factors from memory and, for aspect ratios of
   50 to 65, this project's fit to those sizes. An estimate must be labelled as one.
"""

from __future__ import annotations

from functools import cache

from service.standards import catalogue, rim_width


@cache
def _rows() -> dict[tuple[float, float, float, str], tuple[float, float, float]]:
    """Return narrowest, measuring and widest rim [in] by section width, aspect ratio, rim code and construction."""
    name = "approved-rim-width"
    sizes = zip(
        catalogue.numbers(name, "section_width_mm"),
        catalogue.numbers(name, "aspect_ratio"),
        catalogue.numbers(name, "rim_code"),
        map(str, catalogue.column(name, "construction")),
        strict=True,
    )
    widths = zip(
        *(catalogue.numbers(name, f"{which}_in") for which in ("narrowest", "measuring", "widest")), strict=True
    )
    return dict(zip(sizes, widths, strict=True))


def from_table(
    section_width_mm: float, aspect: float, rim_code: float, construction: str
) -> tuple[float, float, float] | None:
    """Return the narrowest, measuring and widest rim of a size [in] as tabulated; None when the size has no row."""
    return _rows().get((section_width_mm, aspect, rim_code, construction))


def by_design_guide(section_width_mm: float, aspect: float) -> tuple[float, float]:
    """Return an estimate of the narrowest and widest rim of a size [in], to half an inch; NaN below aspect ratio 20."""
    narrowest = rim_width.factor("narrowest_factor", aspect)
    widest = rim_width.factor("widest_factor", aspect)
    return rim_width.to_half_inch(narrowest * section_width_mm), rim_width.to_half_inch(widest * section_width_mm)
