"""Load-capacity index and the mass that one tyre carries.

References
----------
.. [UN-R30 load index] Indices 0 to 200 as printed in Regeling voertuigen, Bijlage VIII, annex 4; indices 50 and 59
   from memory, as are indices 201 to 279 (see the note of the table).
"""

from __future__ import annotations

from bisect import bisect_left
from functools import cache

from service.core.numeric import UNKNOWN
from service.standards import catalogue


@cache
def _masses_kg() -> tuple[float, ...]:
    """Return the masses in order of the index, which counts from 0 without a gap."""
    return catalogue.numbers("load-index", "mass_kg")


def load_kg(load_index: int) -> float:
    """Return the mass that one tyre of this load index carries [kg]; NaN when the table has none."""
    masses = _masses_kg()
    return masses[load_index] if 0 <= load_index < len(masses) else UNKNOWN


def least_index_for_kg(mass_kg: float) -> int | None:
    """Return the least load index that carries this mass [kg]; None when no index of the table does."""
    masses = _masses_kg()
    return bisect_left(masses, mass_kg) if mass_kg <= masses[-1] else None
