"""Texts for a drawing: the caller's are cleaned and cut, numbers read without idle zeros."""

from __future__ import annotations

import re
import textwrap
from typing import Final

from service.core.numeric import unknown

# XML 1.0 has no way to write these at all, not even escaped.
_NOT_XML: Final = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
CHARACTER_WIDTH: Final = 0.56
"""Mean width of a character as a share of the size of the script; common practice, no source."""
BOLD_WIDTH: Final = 0.63
"""The same of a bold one."""


def clean(text: str, most: int) -> str:
    """Return the text in at most this many characters, without those that XML does not know."""
    allowed = " ".join(_NOT_XML.sub("\N{REPLACEMENT CHARACTER}", text).split())
    return allowed if len(allowed) <= most else f"{allowed[: most - 1].rstrip()}…"


def wrapped(text: str, width: float, size: float, character: float = CHARACTER_WIDTH) -> list[str]:
    """Return the lines that the text takes in this width when set in this size."""
    return textwrap.wrap(text, max(12, int(width / (character * size))))


def plain(value: float, digits: int = 0) -> str:
    """Return the number with at most this many decimals."""
    shown = f"{value:.{digits}f}"
    if digits:
        shown = shown.rstrip("0").rstrip(".")
    return shown.replace("-", "−") if shown not in ("-0", "0") else "0"


def against(proposed: float, present: float, digits: int = 0) -> str:
    """Return the proposed value, followed by the present one in brackets where that is known."""
    if unknown(present):
        return plain(proposed, digits)
    return f"{plain(proposed, digits)} ({plain(present, digits)})"
