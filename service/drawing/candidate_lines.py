"""A line type for each candidate of a comparison, told apart by their dashes alone.

References
----------
.. [ISO-128-2] Numbers and the lengths of dashes, gaps and dots in line widths, from memory.
"""

from __future__ import annotations

from typing import Final

from service.drawing.lines import LineType

_GAP, _DOT, _SHORT, _DASH, _LONG = 3.0, 0.5, 6.0, 12.0, 24.0

CANDIDATE_LINES: Final[tuple[LineType, ...]] = (
    LineType("01.1", "narrow", wide=False),
    LineType("02.1", "narrow", wide=False, dashes=(_DASH, _GAP)),
    LineType("07.1", "narrow", wide=False, dashes=(_DOT, _GAP)),
    LineType("10.1", "narrow", wide=False, dashes=(_DASH, _GAP, _DOT, _GAP)),
    LineType("03.1", "narrow", wide=False, dashes=(_DASH, 18.0)),
    LineType("12.1", "narrow", wide=False, dashes=(_DASH, _GAP, _DOT, _GAP, _DOT, _GAP)),
    LineType("08.1", "narrow", wide=False, dashes=(_LONG, _GAP, _SHORT, _GAP)),
    LineType("04.1", "narrow", wide=False, dashes=(_LONG, _GAP, _DOT, _GAP)),
    LineType("11.1", "narrow", wide=False, dashes=(_DASH, _GAP, _DASH, _GAP, _DOT, _GAP)),
    LineType("09.1", "narrow", wide=False, dashes=(_LONG, _GAP, _SHORT, _GAP, _SHORT, _GAP)),
    LineType("06.1", "narrow", wide=False, dashes=(_LONG, *(_GAP, _DOT) * 3, _GAP)),
    LineType("14.1", "narrow", wide=False, dashes=(_DASH, *(_GAP, _DOT) * 3, _GAP)),
)
"""In the order of the letters, the plainest first; narrow, so that several dashes stand on a sidewall."""
