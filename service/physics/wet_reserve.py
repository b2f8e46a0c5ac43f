"""What is left of a tyre's grip on the road in standing water, and how far the estimate of its onset can be off."""

from __future__ import annotations

from typing import Final

from service.core.findings import Estimate
from service.core.numeric import Num, filled, larger, pick
from service.physics.aquaplaning import CHANGE_BAND, ONSET_BAND
from service.physics.bands import multiple, symmetric

RESERVE_SPEED_KMH: Final = 80.0
"""Speed at which the reserve is stated; project's choice."""
RESERVE_FILM_MM: Final = 2.0
"""Water at which it is stated; project's choice."""
SLOWEST_ONSET_KMH: Final = 1.0
"""No tyre floats at less (own): the reserve is long gone there."""
PATTERN_POINTS: Final = 8.0
"""What another tread pattern adds to either side of the change of the onset [percentage points]; own. Published single
tests of one plus-size step range from 0 to 7 % earlier [COMMON-PRACTICE] (second hand)."""
WORN_BELOW_MM: Final = 3.0
"""Tread depth below which the onset formula is too kind [mm]; own. Wet braking is some 30 % longer at 3 mm than new
[COMMON-PRACTICE] (second hand)."""
WORN_SHARE_PER_MM: Final = 0.10
"""By what share the onset may lie lower for each millimetre of tread below that [1/mm]; own."""


def wet_reserve(onset_kmh: Num, speed_kmh: float = RESERVE_SPEED_KMH) -> Num:
    """Return the share of the load that still rests on the road and not on the water.

    W = 1 - (V / V_h)^2, between 0 and 1: lift goes with the square of speed and carries all at the onset.

    Parameters
    ----------
    onset_kmh : float or array
        V_h, speed at which the tyre floats in `RESERVE_FILM_MM` of water [km/h]; at zero or below, where the low end
        of a wide band may lie, nothing rests on the road.
    speed_kmh : float
        V [km/h].

    Returns
    -------
    float or array
        W [1].

    References
    ----------
    .. [HORNE-DREHER-1963 lift] the share is derived from it, from memory.
    """
    lifted: Num = (speed_kmh / larger(onset_kmh, filled(onset_kmh, SLOWEST_ONSET_KMH))) ** 2
    share = 1.0 - lifted
    return larger(share, share - share)


def wet_reserve_percent(onset_kmh: Estimate[Num]) -> Estimate[Num]:
    """Return the wet reserve with the band that the onset's gives it.

    Parameters
    ----------
    onset_kmh : Estimate
        V_h, greater than zero [km/h].

    Returns
    -------
    Estimate
        W at `RESERVE_SPEED_KMH` and `RESERVE_FILM_MM` [%].

    References
    ----------
    .. [HORNE-DREHER-1963 lift] the share is derived from it, from memory.
    .. [PROJECT] the band.
    """
    value, low, high = (100.0 * wet_reserve(each) for each in onset_kmh)
    return Estimate(value, low, high)


def reserve_fall_percent(present_percent: Num, proposed_percent: Num) -> Num:
    """Return how much of its wet reserve an axle loses, 0 where it loses none or has none to lose.

    Parameters
    ----------
    present_percent : float or array
        W [%].
    proposed_percent : float or array
        W' [%].

    Returns
    -------
    float or array
        100 (W - W') / W, from 0 to 100 [%].
    """
    lost = present_percent - proposed_percent
    none = lost - lost
    # Who has no reserve loses none, whatever the divisor.
    return 100.0 * larger(lost, none) / pick(present_percent == 0.0, none + 1.0, present_percent)


def onset_band_kmh(onset_kmh: Num, tread_depth_mm: Num) -> Estimate[Num]:
    """Return the onset with the band of its level, which reaches further down for a worn tyre.

    Parameters
    ----------
    onset_kmh : float or array
        V_h [km/h].
    tread_depth_mm : float or array
        Tread depth, known or assumed [mm].

    Returns
    -------
    Estimate
        V_h [km/h].

    References
    ----------
    .. [PROJECT] the band.
    """
    value, low, high = symmetric(onset_kmh, ONSET_BAND)
    return Estimate(value, low * (1.0 - WORN_SHARE_PER_MM * _worn_mm(tread_depth_mm)), high)


def onset_change_band_percent(
    change_percent: Num, tread_depth_present_mm: Num, tread_depth_proposed_mm: Num
) -> Estimate[Num]:
    """Return the change of the onset with its band, tread pattern and wear counted.

    The multiples of the change for its size, `PATTERN_POINTS` on either side for the pattern, which no formula knows,
    and on the worse side of a worn tyre 100 `WORN_SHARE_PER_MM` points for each millimetre below `WORN_BELOW_MM`.
    The same tyre has its own pattern and wear: no change has no band.

    Parameters
    ----------
    change_percent : float or array
        Proposed over present onset, less one [%].
    tread_depth_present_mm, tread_depth_proposed_mm : float or array
        Tread depth, known or assumed [mm].

    Returns
    -------
    Estimate
        The change [%], never below -100; exactly 0, 0, 0 when nothing changes.

    References
    ----------
    .. [PROJECT] the band.
    """
    value, low, high = multiple(change_percent, CHANGE_BAND)
    same = change_percent == 0.0
    none = change_percent - change_percent
    points_per_mm = 100.0 * WORN_SHARE_PER_MM
    down = PATTERN_POINTS + points_per_mm * _worn_mm(tread_depth_proposed_mm)
    up = PATTERN_POINTS + points_per_mm * _worn_mm(tread_depth_present_mm)
    return Estimate(
        value,
        larger(low - pick(same, none, down), none - 100.0),
        high + pick(same, none, up),
    )


def proposed_onset_kmh(present_kmh: Estimate[Num], change_percent: Estimate[Num]) -> Estimate[Num]:
    """Return the onset of the proposed tyre: the level may be off, and the change on top of it.

    Parameters
    ----------
    present_kmh : Estimate
        V_h [km/h].
    change_percent : Estimate
        Proposed over present onset, less one [%].

    Returns
    -------
    Estimate
        V_h' [km/h].

    References
    ----------
    .. [PROJECT] the band.
    """
    value, low, high = (
        onset * (1.0 + change / 100.0) for onset, change in zip(present_kmh, change_percent, strict=True)
    )
    return Estimate(value, low, high)


def _worn_mm(tread_depth_mm: Num) -> Num:
    missing = WORN_BELOW_MM - tread_depth_mm
    return larger(missing, missing - missing)
