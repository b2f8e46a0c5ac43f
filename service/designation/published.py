"""From the readers' own alphabet to a regular expression that admits every way of writing it.

The grammars are written for normalised text: capitals, one blank, one dash. What is published must admit the text as it
is typed, and keeps to what ECMA-262 and Rust share: no flags, no look-around, no named groups, ASCII throughout.
"""

from __future__ import annotations

import re

from service.designation.text import CROSSES, DASHES, SPACES

# A letter, a sign or an escape stands for itself; a class and a group's opening are taken whole.
_PIECE = re.compile(r"\(\?(?:P<[a-z_]+>|:)|\[(?:\\.|[^\]\\])*\]|\\u[0-9a-f]{4}|\\.|.")
_MEMBER = re.compile(r"(\\u[0-9a-f]{4}|\\.|.)(?:-(\\u[0-9a-f]{4}|.))?")

# What one character of the normal text may have been in the text as given.
_SEVERAL = {" ": SPACES, "-": DASHES, "X": CROSSES, ".": ".,", "/": "/\u2044"}
_ESCAPED_SIGNS = frozenset((r"\-", r"\.", r"\/"))

# The members of a class that every engine wants escaped, pages that use the pattern of an input field included.
_ESCAPED = frozenset(r"()[]{}/-\|")
_CONTROLS = {"\t": r"\t", "\r": r"\r"}


def published(grammar: str) -> str:
    """Return the anchored pattern of a grammar; blanks may stand before and behind."""
    return f"^{_translate(f' *(?:{grammar}) *')}$"


def _translate(grammar: str) -> str:
    return "".join(_piece(match.group()) for match in _PIECE.finditer(grammar))


def _piece(piece: str) -> str:
    if piece.startswith("(?"):
        return "(?:"
    if piece.startswith("["):
        return f"[{''.join(_members(*match.groups()) for match in _MEMBER.finditer(piece[1:-1]))}]"
    members = _members(piece, None)
    return piece if members in (piece, piece[-1]) else f"[{members}]"


def _members(first: str, last: str | None) -> str:
    """Return the members of a class that are normalised to one character or to a range of them."""
    if last is None:
        return _spellings(first)
    if first.isdigit() or first.startswith("\\"):
        return f"{first}-{last}"
    crosses = _spellings("X").replace("Xx", "") if first <= "X" <= last else ""
    return f"{first}-{last}{first.lower()}-{last.lower()}{crosses}"


def _spellings(piece: str) -> str:
    """Return every character that is normalised to this one, written for a class."""
    sign = piece.removeprefix("\\") if piece in _ESCAPED_SIGNS else piece
    if sign in _SEVERAL:
        return _ranges(_SEVERAL[sign])
    return sign + sign.lower() if sign.isalpha() else piece


def _ranges(characters: str) -> str:
    """Return characters as the members of a class, neighbours drawn together."""
    codes = sorted(map(ord, characters))
    runs: list[list[int]] = []
    for code in codes:
        if runs and code == runs[-1][1] + 1:
            runs[-1][1] = code
        else:
            runs.append([code, code])
    return "".join(_code(low) if low == high else f"{_code(low)}-{_code(high)}" for low, high in runs)


def _code(code: int) -> str:
    character = chr(code)
    if character in _ESCAPED:
        return f"\\{character}"
    if character in _CONTROLS:
        return _CONTROLS[character]
    return character if " " <= character <= "~" else f"\\u{code:04x}"
