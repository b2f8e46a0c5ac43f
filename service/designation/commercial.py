"""What tells a commercial tyre (classes C2 and C3) from a passenger one: letters, load indices, rim codes.

References
----------
.. [UN-R54] C behind the rim code, light truck sizes and load indices from 122 on, from memory.
.. [NL-RV] Art. 50(2): of two load indices the first is for single, the second for twin mounting (read).
.. [COMMON-PRACTICE] 15 degree rims, code 17.5 and its kin, are made for commercial vehicles alone.
"""

from __future__ import annotations

from typing import NamedTuple

from service.core.findings import BasisStatus
from service.core.saying import Amount, Said, say
from service.core.sources import SOURCES

FROM_LOAD_INDEX = 122
RIM_CODES = frozenset((17.5, 19.5, 22.5, 24.5))


class CommercialSign(NamedTuple):
    """What on the sidewall says so, and the document behind it."""

    text: Said
    source: str

    @property
    def status(self) -> BasisStatus:
        """Return how far that document was read."""
        return SOURCES[self.source].status


LETTERS = CommercialSign(say("C, CP or LT in the size"), "UN-R54")
TWIN_INDEX = CommercialSign(say("a second load index, for twin mounting"), "NL-RV")
HIGH_INDEX = CommercialSign(say("a load index from {least} on", least=Amount(FROM_LOAD_INDEX)), "UN-R54")
TRUCK_RIM = CommercialSign(say("a rim code of commercial vehicles"), "COMMON-PRACTICE")


def sign(letters: str, load_index: int | None, load_index_twin: int | None, rim_code: float) -> CommercialSign | None:
    """Return what makes a tyre a commercial one; None for a passenger tyre."""
    if letters:
        return LETTERS
    if load_index_twin is not None:
        return TWIN_INDEX
    if load_index is not None and load_index >= FROM_LOAD_INDEX:
        return HIGH_INDEX
    return TRUCK_RIM if rim_code in RIM_CODES else None
