"""The published regular expression of rim designations.

It is narrower than the reader: whatever it admits is read. No rim is wider than its diameter code, and two equal
numbers are refused; without look-around that takes one branch per band of widths, so that a few odd rims (14 x 15) are
read but not admitted here.
"""

from __future__ import annotations

from service.designation.text import PATTERN_BLANK, PATTERN_CROSSES, PATTERN_DASHES

_MAYBE = f"{PATTERN_BLANK}?"
_QUARTERS = rf"(?:[.,](?:00?|25|50?|75)|(?:{PATTERN_BLANK}|-)(?:1/2|[13]/4)|{_MAYBE}[\u00bc-\u00be])?"
_HALVES = "(?:[.,][05])?"
_CROSS = f"{_MAYBE}[{PATTERN_CROSSES}{PATTERN_DASHES}]{_MAYBE}"
_FLANGE = f"(?:{_MAYBE}(?:[Jj][JjKk]?|[KkBbPpDd]))?"

_BANDS = (
    (f"[3-7]{_QUARTERS}", f"[89]{_HALVES}"),
    (f"[3-9]{_QUARTERS}", f"(?:[12][0-9]{_HALVES}|30)"),
    (f"1[0-2]{_QUARTERS}", f"(?:(?:1[3-9]|2[0-9]){_HALVES}|30)"),
    (f"(?:1[3-5]{_QUARTERS}|16)", f"(?:(?:1[7-9]|2[0-9]){_HALVES}|30)"),
)
_SIZES = "|".join(
    f"{width}{_FLANGE}{_CROSS}{diameter}|{diameter}{_CROSS}{width}{_FLANGE}" for width, diameter in _BANDS
)
_HUMP = r"(?:[FfCc]?[Hh]|[Ff]?[Hh]2|[Ee][Hh](?:2\+?)?)"
_OFFSET = f"[Ee][Tt]{_MAYBE}[+{PATTERN_DASHES}]?{_MAYBE}(?:[0-9][0-9]?|1[0-4][0-9])(?:[.,][0-9][0-9]?)?"

RIM_PATTERN: str = f"^(?:{_SIZES})(?:{_MAYBE}{_HUMP}(?:{_MAYBE}{_OFFSET})?|{_MAYBE}{_OFFSET}(?:{_MAYBE}{_HUMP})?)?$"
