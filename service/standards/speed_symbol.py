"""Speed symbols and their speeds.

The order of the symbols is not the alphabet's: H stands between U and V.

References
----------
.. [UN-R30 speed symbol] F to P, R to T, H, V, W and Y were read; A1 to E, Q, U and (Y) are from memory.
"""

from __future__ import annotations

from functools import cache

from service.core.numeric import UNKNOWN
from service.standards import catalogue

# "(Y)" stands for more than 300 km/h, up to what the tyre maker states.
OPEN_ENDED = "(Y)"


@cache
def _speeds() -> dict[str, float]:
    """Return the speed of each symbol, in rising order of speed [km/h]."""
    symbols = map(str, catalogue.column("speed-symbol", "symbol"))
    return dict(zip(symbols, catalogue.numbers("speed-symbol", "speed_kmh"), strict=True))


# Every symbol with a speed of its own, slowest first.
SYMBOLS: tuple[str, ...] = tuple(symbol for symbol in _speeds() if symbol != OPEN_ENDED)


def speed_kmh(symbol: str) -> float:
    """Return the speed of a symbol [km/h], NaN for an unknown one; for "(Y)" the least that it stands for, 300."""
    return _speeds().get(symbol, UNKNOWN)


def least_symbol_for_kmh(speed: float) -> str | None:
    """Return the slowest symbol that reaches this speed [km/h]; None above 300, where the tyre maker states it."""
    speeds = _speeds()
    return next((symbol for symbol in SYMBOLS if speeds[symbol] >= speed), None)
