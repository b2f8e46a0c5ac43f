"""Estimates from a value and the honest width of its band."""

from __future__ import annotations

from typing import NamedTuple

from service.core.findings import Estimate
from service.core.numeric import Num, larger, smaller


class Multiples(NamedTuple):
    """A band that is given as multiples of the value: `low` times it to `high` times it."""

    low: float
    high: float


def symmetric(value: Num, half_width: float) -> Estimate[Num]:
    """Return the estimate of a positive quantity whose band is plus or minus a share of it.

    Parameters
    ----------
    value : float or array
        The quantity, not negative [any unit].
    half_width : float
        The share, 0.10 for plus or minus 10 % [1].
    """
    return Estimate(value, value * (1.0 - half_width), value * (1.0 + half_width))


def multiple(value: Num, band: Multiples) -> Estimate[Num]:
    """Return the estimate of a change of either sign whose band is a multiple of it; no change has no band.

    Parameters
    ----------
    value : float or array
        The change, of either sign [any unit].
    band : Multiples
        The least and the greatest multiple of it that is expected [1].
    """
    one_end = value * band.low
    other_end = value * band.high
    return Estimate(value, smaller(one_end, other_end), larger(one_end, other_end))
