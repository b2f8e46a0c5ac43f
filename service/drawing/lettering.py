"""Texts for a drawing: the caller's are cleaned and cut, lines are broken, sizes fit the room."""

from __future__ import annotations

import re
import textwrap
from typing import Final

from service.core.numeric import unknown
from service.core.saying import Amount, Said

# XML 1.0 has no way to write these at all, not even escaped.
_NOT_XML: Final = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
CHARACTER_WIDTH: Final = 0.56
"""Mean width of a character as a share of the size of the script; common practice, no source."""
BOLD_WIDTH: Final = 0.63
"""The same of a bold one."""
LEAST_UNITS: Final = 12.0
"""No words are set smaller [drawing units]: two axles across the text of A4 then still have 7 points."""


def clean(text: str, most: int) -> str:
    """Return the text in at most this many characters, without those that XML does not know."""
    allowed = " ".join(_NOT_XML.sub("\N{REPLACEMENT CHARACTER}", text).split())
    return allowed if len(allowed) <= most else f"{allowed[: most - 1].rstrip()}…"


def wrapped(text: str, width: float, size: float, character: float = CHARACTER_WIDTH) -> list[str]:
    """Return the lines that the text takes in this width when set in this size."""
    return textwrap.wrap(text, max(12, int(width / (character * size))))


def width_of(text: str, size: float, character: float = CHARACTER_WIDTH) -> float:
    """Return about how wide the text is when set in this size."""
    return len(text) * character * size


def fitting(text: str, room: float, size: float, character: float = CHARACTER_WIDTH) -> float:
    """Return the size in which the text takes no more than this room, `size` at most, `LEAST_UNITS` at least."""
    usual = width_of(text, size, character)
    return size if usual <= room else max(LEAST_UNITS, size * room / usual)


def length(value_mm: float, digits: int = 0, *, bare: bool = True) -> Amount:
    """Return a length [mm] with at most this many decimals; without its unit, as along a dimension line, if `bare`."""
    return Amount(value_mm, "mm", digits, bare=bare)


def against(proposed: str, present: str) -> Said:
    """Return the proposed value, followed by the present one in brackets."""
    # Numbers and a sign: no catalogue has to say them otherwise.
    return Said("{proposed} ({present})", {"proposed": proposed, "present": present})


def lengths(proposed_mm: float, present_mm: float, digits: int = 0, *, bare: bool = True) -> str:
    """Return the proposed length [mm], followed by the present one in brackets where that is known."""
    then = length(proposed_mm, digits, bare=bare)
    return then if unknown(present_mm) else against(then, length(present_mm, digits, bare=bare))


def offsets(proposed_mm: float, present_mm: float) -> str:
    """Return the proposed offset (ET) against the present one; everywhere in millimetres, as rims are stamped."""
    then = Amount(proposed_mm, "", 1)
    return then if unknown(present_mm) else against(then, Amount(present_mm, "", 1))


def labelled(label: str, value: str) -> Said:
    """Return what is measured and its value, as along a dimension line."""
    return Said("{label} {value}", {"label": label, "value": value})
