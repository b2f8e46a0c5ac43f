"""Printed loads of standard-load passenger tyres at a pressure; the law behind them lives with the physics.

References
----------
.. [ETRTO pressure-load] Automotive Engineering (Butterworth-Heinemann), p. 290, rows 69 to 87.
"""

from __future__ import annotations

from functools import cache

from service.core.numeric import UNKNOWN
from service.core.units import KPA_PER_BAR
from service.standards import catalogue

_TENTHS_OF_BAR = range(15, 26)


@cache
def _cells() -> dict[tuple[int, float], float]:
    """Return every printed load [kg] by load index and pressure [kPa]."""
    indices = catalogue.numbers("pressure-load", "load_index")
    return {
        (int(index), pressure): load
        for pressure in (tenths * KPA_PER_BAR / 10 for tenths in _TENTHS_OF_BAR)
        for index, load in zip(indices, catalogue.numbers("pressure-load", f"load_at_{pressure:.0f}_kpa"), strict=True)
    }


def load_kg(load_index: int, pressure_kpa: float) -> float:
    """Return the printed load of one tyre [kg]; NaN where the table has no cell, nothing is interpolated."""
    # Rounded, because 2.2 bar x 100 is a hair above 220.
    return _cells().get((load_index, round(pressure_kpa, 6)), UNKNOWN)
