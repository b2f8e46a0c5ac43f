"""The rims that are read, written for normalised text; the reader and the published pattern share the numbers.

A width code is below the whole of its diameter code, so that of two bare numbers the smaller one is the width.
"""

from __future__ import annotations

NARROWEST_IN = 3.0
WIDEST_IN = 16.0
DIAMETER_CODE = (8.0, 30.0)
HIGHEST_OFFSET_MM = 190.0

FLANGES = ("JJ", "JK", "J", "K", "B", "P", "D", "E", "F", "G", "S", "T", "V")
HUMPS = ("EH2+", "EH2", "EH", "FH1-H", "FHA", "FH2", "FH", "CH", "H2", "H")

_QUARTERS = r"(?:\.(?:00?|25|50?|75)|[ \-] *(?:1/2|[13]/4)| *[\u00bc-\u00be])?"
_HALVES = r"(?:\.(?:00?|50?))?"
_FLANGE = f"(?: *(?:{'|'.join(FLANGES)}))?"
_CROSS = r" *[X\-] *"
MILLIMETRES = r"(?:(?:[0-9]{1,2}|1[0-8][0-9])(?:\.[0-9]{1,2})?|190(?:\.00?)?)"

_HUMP = f" *(?:{'|'.join(hump.replace('+', '[+]') for hump in HUMPS)})"
_OFFSET = rf"(?: *(?:ET|IS|X) *[+\-]? *| +[+\-] *){MILLIMETRES}(?: *MM)?"


def widest_in(diameter_code: float) -> float:
    """Return the widest rim of a diameter code that is read [in]."""
    return WIDEST_IN if diameter_code > WIDEST_IN else diameter_code // 1.0 - 0.25


def _diameters_from(code: int) -> str:
    """Return the diameter codes from a whole one up to 30."""
    tens, ones = divmod(code, 10)
    whole = f"1[{ones}-9]|2[0-9]" if tens else f"[{ones}-9]|[12][0-9]"
    return rf"(?:(?:{whole}){_HALVES}|30(?:\.00?)?)"


def _bands() -> list[tuple[str, str]]:
    """Return widths with the diameters that they go with."""
    bands = [(f"[3-7]{_QUARTERS}", _diameters_from(8))]
    bands += [(f"{width}{_QUARTERS}", _diameters_from(width + 1)) for width in range(8, 16)]
    return [*bands, (r"16(?:\.00?)?", rf"(?:16\.50?|{_diameters_from(17)})")]


_SIZES = "|".join(
    f"{width}{_FLANGE}{_CROSS}{diameter}|{diameter}{_CROSS}{width}{_FLANGE}" for width, diameter in _bands()
)
RIM = f"(?:{_SIZES})(?:{_HUMP}(?:{_OFFSET})?|{_OFFSET}(?:{_HUMP})?)?"
