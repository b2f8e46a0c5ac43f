"""Share of its load index that a commercial tyre (classes C2, C3) carries at a speed.

The raw factor of the table: above 1.0 at low speed, where only some laws let it be used, and below 1.0 above the
symbol's speed, which such a tyre may exceed with less load.

The table leaves three questions open, answered so:

- A speed between two rows takes the next row up, the smaller load: the source does not speak of interpolation.
- Symbols above P "may" use the P column, which ends at 160 km/h. They gain what it grants at low speed; a load
  index counts up to its symbol's speed, so from there they carry it whole up to that speed, and nothing above.
- Symbols below F, and N and above with a load index from 122, have no column: no gain, the whole load index up
  to the symbol's speed, nothing above.

References
----------
.. [UN-R54 annex 8] As printed in Regeling voertuigen, Bijlage VIII, annex 5, with its footnotes 1 and 2.
"""

from __future__ import annotations

from bisect import bisect_left
from functools import cache

from service.core.numeric import UNKNOWN, known, unknown
from service.standards import catalogue, speed_symbol

PER_CENT = 100.0
LEAST_HEAVY_INDEX = 122


@cache
def _speeds() -> tuple[float, ...]:
    """Return the tabulated speeds [km/h]."""
    return catalogue.numbers("commercial-speed-load", "speed_kmh")


@cache
def _factors() -> dict[str, tuple[float, ...]]:
    """Return the load factors of every column [-], up to its last filled row."""
    headings = [column.name for column in catalogue.table("commercial-speed-load").columns[1:]]
    return {
        heading: tuple(
            1.0 + change / PER_CENT for change in catalogue.numbers("commercial-speed-load", heading) if known(change)
        )
        for heading in headings
    }


@cache
def _heading(symbol: str, *, heavy: bool) -> str | None:
    """Return the column of a symbol, or None where the table has none."""
    if speed_symbol.speed_kmh(symbol) > speed_symbol.speed_kmh("P"):
        symbol = "P"
    split = f"{symbol}_ge122" if heavy else f"{symbol}_le121"
    return next((heading for heading in (symbol, split) if heading in _factors()), None)


def load_factor(symbol: str, load_index_single: int, speed_kmh: float) -> float:
    """Return the share of its load index that the tyre carries at this speed [-], NaN for an unknown symbol or speed.

    `load_index_single` is the index for single mounting, which chooses the column also for a tyre in a twin.
    """
    symbol_speed = speed_symbol.speed_kmh(symbol)
    if unknown(symbol_speed) or unknown(speed_kmh):
        return UNKNOWN
    heading = _heading(symbol, heavy=load_index_single >= LEAST_HEAVY_INDEX)
    factors = _factors()[heading] if heading else ()
    row = bisect_left(_speeds(), speed_kmh)
    printed = factors[row] if row < len(factors) else 0.0
    if heading is None or symbol_speed > speed_symbol.speed_kmh("P"):
        return max(printed, 1.0) if speed_kmh <= symbol_speed else 0.0
    return printed


def speed_reach_kmh(symbol: str, load_index_single: int) -> float:
    """Return the highest speed at which the tyre may run, with less load if need be [km/h]; NaN if unknown."""
    symbol_speed = speed_symbol.speed_kmh(symbol)
    if unknown(symbol_speed) or symbol_speed > speed_symbol.speed_kmh("P"):
        return symbol_speed
    heading = _heading(symbol, heavy=load_index_single >= LEAST_HEAVY_INDEX)
    if heading is None:
        return symbol_speed
    return _speeds()[len(_factors()[heading]) - 1]
