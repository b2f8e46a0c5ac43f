"""Estimates from a value and the honest width of its band."""

from __future__ import annotations

from typing import NamedTuple

from service.core.findings import Estimate
from service.core.numeric import Num, exponential, larger, natural_log, smaller


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


def difference(present: Estimate[Num], proposed: Estimate[Num]) -> Estimate[Num]:
    """Return the change between two estimates that are off independently; equal values are the same thing.

    The half-widths combine as the root of the sum of squares, each side on its own: the greatest change goes with
    the present thing at its least and the proposed one at its most. No change has no band.

    Parameters
    ----------
    present, proposed : Estimate
        The two quantities, of one unit [any unit].

    Returns
    -------
    Estimate
        Proposed minus present [the same unit].
    """
    value = proposed.value - present.value
    changed = (value != 0.0) * 1.0
    down = _root_of_squares(proposed.value - proposed.low, present.high - present.value)
    up = _root_of_squares(proposed.high - proposed.value, present.value - present.low)
    return Estimate(value, value - changed * down, value + changed * up)


def relative_change_percent(present: Estimate[Num], proposed: Estimate[Num]) -> Estimate[Num]:
    """Return the same change in per cent of the present one; the logarithms of the bands combine as above.

    Parameters
    ----------
    present, proposed : Estimate
        The two quantities, greater than zero with their bands [any unit].

    Returns
    -------
    Estimate
        Change [%]; the reciprocal when the two are swapped.
    """
    now, then = (Estimate(*(natural_log(each) for each in end)) for end in (present, proposed))
    return Estimate(*(100.0 * (exponential(change) - 1.0) for change in difference(now, then)))


def _root_of_squares(one: Num, other: Num) -> Num:
    root: Num = (one**2 + other**2) ** 0.5
    return root
