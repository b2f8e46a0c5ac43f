"""Rim widths of the design guide as a share of the nominal section width: theoretical, measuring, narrowest, widest.

References
----------
.. [ETRTO] Design guide, from memory. The regulation leaves the theoretical factor to the tyre maker.
"""

from __future__ import annotations

from bisect import bisect_right
from functools import cache

from service.core.numeric import UNKNOWN, known, round_half_up
from service.core.units import MM_PER_INCH
from service.standards import catalogue


@cache
def _ladder(heading: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the lowest aspect ratio of every step, rising, and the factor of the step."""
    lowest = catalogue.numbers("rim-width", "aspect_from")
    steps = sorted(zip(lowest, catalogue.numbers("rim-width", heading), strict=True))
    return tuple(aspect for aspect, _ in steps), tuple(factor for _, factor in steps)


def factor(heading: str, aspect: float) -> float:
    """Return the factor of one ladder for an aspect ratio [%]; NaN below 20.

    Between two steps the lower one counts (48 as 45): the guide calls 0.70 the theoretical factor "from 50 up".
    """
    lowest, factors = _ladder(heading)
    step = bisect_right(lowest, aspect)
    return factors[step - 1] if step and known(aspect) else UNKNOWN


def to_half_inch(width_mm: float) -> float:
    """Return a rim width [in], rounded to the nearest half inch, from millimetres."""
    return round_half_up(2.0 * width_mm / MM_PER_INCH) / 2.0


def theoretical_factor(aspect: float) -> float:
    """Return the theoretical rim width divided by the nominal section width [-]; NaN below aspect ratio 20."""
    return factor("theoretical_factor", aspect)


def measuring_factor(aspect: float) -> float:
    """Return the measuring rim width divided by the nominal section width [-], before rounding; NaN below 20."""
    return factor("measuring_factor", aspect)


def measuring_rim_in(width_mm: float, aspect: float) -> float:
    """Return the measuring rim width of a size [in], rounded to half an inch; NaN below aspect ratio 20."""
    return to_half_inch(measuring_factor(aspect) * width_mm)
