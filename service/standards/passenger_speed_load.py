"""Share of its load index that a passenger tyre (class C1) carries at a vehicle speed.

References
----------
.. [UN-R30 2.31] Values for V, W and Y as printed in Automotive Engineering (Butterworth-Heinemann), ch. 10.1,
   p. 291, fig. 10.1-14; linear interpolation by the text of the same chapter.
"""

from __future__ import annotations

from bisect import bisect_left
from functools import cache

from service.core.numeric import UNKNOWN, known, unknown
from service.standards import catalogue, speed_symbol

PER_CENT = 100.0


@cache
def _curve(symbol: str) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Return the speeds [km/h] and load shares [-] of one column, without the blanks above the symbol's speed."""
    speeds = catalogue.numbers("passenger-speed-load", "speed_kmh")
    shares = catalogue.numbers("passenger-speed-load", symbol)
    points = [(speed, share / PER_CENT) for speed, share in zip(speeds, shares, strict=True) if known(share)]
    return tuple(speed for speed, _ in points), tuple(share for _, share in points)


def load_factor(symbol: str, speed_kmh: float) -> float:
    """Return the share of its load index that the tyre carries at this vehicle speed [-].

    1.0 up to 210 km/h or the symbol's speed, the interpolated table for V, W and Y above 210, 0.0 above the
    symbol's speed. NaN for an unknown symbol or speed, and for "(Y)" above 300 km/h, where the tyre maker states it.
    """
    reach = speed_symbol.speed_kmh(symbol)
    if unknown(reach) or unknown(speed_kmh):
        return UNKNOWN
    if speed_kmh > reach:
        return UNKNOWN if symbol == speed_symbol.OPEN_ENDED else 0.0
    letter = "Y" if symbol == speed_symbol.OPEN_ENDED else symbol
    if letter not in {"V", "W", "Y"}:
        return 1.0
    speeds, shares = _curve(letter)
    if speed_kmh <= speeds[0]:
        return shares[0]
    above = bisect_left(speeds, speed_kmh)
    part = (speed_kmh - speeds[above - 1]) / (speeds[above] - speeds[above - 1])
    return shares[above - 1] + part * (shares[above] - shares[above - 1])
