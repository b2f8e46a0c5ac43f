"""Design overall diameters of flotation sizes, which lie below the diameter that the designation names.

References
----------
.. [ETRTO] Two sizes, from memory.
.. [PROJECT] The half inch for all other sizes, which both rows show.
"""

from __future__ import annotations

from functools import cache

from service.core.numeric import UNKNOWN
from service.core.units import MM_PER_INCH
from service.standards import catalogue

BELOW_NOMINAL_IN = 0.5


@cache
def _rows() -> dict[tuple[float, float, float], float]:
    """Return the design diameters [mm] by nominal diameter [in], section width [in] and rim code."""
    printed = (
        catalogue.numbers("flotation", heading) for heading in ("overall_diameter_in", "section_width_in", "rim_code")
    )
    return dict(zip(zip(*printed, strict=True), catalogue.numbers("flotation", "overall_diameter_mm"), strict=True))


def from_table(diameter_in: float, section_width_in: float, rim_code: float) -> float:
    """Return the design overall diameter of a size [mm]; NaN when the table has none."""
    return _rows().get((diameter_in, section_width_in, rim_code), UNKNOWN)


def estimate_mm(diameter_in: float) -> float:
    """Return an estimate of the design overall diameter [mm] from the diameter in the designation [in]."""
    return (diameter_in - BELOW_NOMINAL_IN) * MM_PER_INCH
