"""One shape for each verdict and outcome, so that nobody needs to see its colour to tell it from the others.

Each stands in a square of 20 units: an outline that is filled, and a sign in it in the colour of the paper.
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final, NamedTuple


class Mark(NamedTuple):
    """The outline and the sign of a mark, as paths of SVG."""

    outline: str
    sign: str


SIDE: Final = 20.0
_ROUND: Final = Mark("M10 1a9 9 0 1 0 0 18a9 9 0 1 0 0-18z", "M5.5 10.4l3.2 3.2 5.8-7")
_UPRIGHT: Final = Mark("M10 1.2L19.6 18.6H.4z", "M10 7.4v5M10 15.2v.3")
_DIAMOND: Final = Mark("M10 .4L19.6 10 10 19.6 .4 10z", "M7.7 7.9a2.3 2.3 0 1 1 3.5 2c-.8.5-1.2 1-1.2 2M10 14.3v.2")
_HANGING: Final = Mark("M.4 1.4h19.2L10 18.8z", "M6.2 6.2h7.6")
_SQUARE: Final = Mark("M1.5 1.5h17v17h-17z", "M6 6l8 8M14 6l-8 8")
_RING: Final = Mark("M10 3a7 7 0 1 0 0 14a7 7 0 1 0 0-14zm0 2.4a4.6 4.6 0 1 1 0 9.2a4.6 4.6 0 1 1 0-9.2z", "")

MARKS: Final = MappingProxyType(
    {
        "suitable": _ROUND,
        "suitable-with-conditions": _UPRIGHT,
        "undetermined": _DIAMOND,
        "not-recommended": _HANGING,
        "unsuitable": _SQUARE,
        "met": _ROUND,
        "open": _RING,
        "advisory": _UPRIGHT,
        "not-assessed": _DIAMOND,
        "not-met": _SQUARE,
    }
)
"""By the name of a verdict or an outcome, with hyphens."""
