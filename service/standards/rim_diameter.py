"""Nominal rim diameters by diameter code; the table shows the specified (bead seat) diameters beside them.

References
----------
.. [UN-R30 6.1.2.1] The nominal diameter, from memory but for codes 10 and 25; the rounding rule was read second-hand.
.. [ISO-4000-2 table 4] The specified (bead seat) diameter, from memory.
"""

from __future__ import annotations

from functools import cache

from service.core.numeric import UNKNOWN, round_half_up
from service.core.units import MM_PER_INCH
from service.standards import catalogue


@cache
def _nominal_mm() -> dict[float, float]:
    """Return the tabulated nominal diameters by code [mm]."""
    codes = catalogue.numbers("rim-diameter", "rim_code")
    return dict(zip(codes, catalogue.numbers("rim-diameter", "nominal_diameter_mm"), strict=True))


def nominal_mm(code: float) -> float:
    """Return the nominal rim diameter of a code [mm], the one that an overall diameter is built on.

    Between the rows of the table (16.5, 27 ...) the rule of the table holds: code x 25.4, halves rounded up.
    NaN outside the table, and for diameters given in millimetres.
    """
    printed = _nominal_mm()
    if code in printed:
        return printed[code]
    if not min(printed) <= code <= max(printed):
        return UNKNOWN
    # The product of a decimal code can fall a hair below a half (12.5 x 25.4 = 317.5) and must still round up.
    return round_half_up(round(code * MM_PER_INCH, 6))
