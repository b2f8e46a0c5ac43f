"""What the readers share: one character for each way of writing it, and a scanner that knows where it stands."""

from __future__ import annotations

import re
from typing import NoReturn

from service.core.errors import DesignationKind, UnreadableDesignation
from service.core.saying import Amount, Said, say

MAX_LENGTH = 100

SPACES = "\t\n\v\f\r \u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u3000"
DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2015\u2212"
CROSSES = "Xx\u00d7\u2715"
_LOWER = "abcdefghijklmnopqrstuvwxyz"

# Every entry maps one character to one character, so that a position in the normal text is a position in the text as
# given. str.upper() would not do: it turns one sharp s into two letters.
_NORMAL = str.maketrans(
    SPACES + DASHES + CROSSES + _LOWER + ",\u2044",
    " " * len(SPACES) + "-" * len(DASHES) + "X" * len(CROSSES) + _LOWER.upper() + "./",
)

_BLANKS = re.compile(" *")


def normal(text: str) -> str:
    """Return the text in the readers' own alphabet: capitals, one blank, one dash, X, point and slash."""
    return text.translate(_NORMAL)


def plain_number(value: float) -> str:
    """Return the shortest spelling of a number that was read with at most two decimals."""
    return f"{value:.6g}"


class Scanner:
    """A place in a normalised text; reads on from there or refuses there."""

    __slots__ = ("kind", "position", "text")

    def __init__(self, kind: DesignationKind, text: str) -> None:
        self.kind = kind
        self.position = 0
        if len(text) > MAX_LENGTH:
            self.refuse(say("no more than {most} characters", most=Amount(MAX_LENGTH)), MAX_LENGTH)
        self.text = text.translate(_NORMAL)
        self.skip_blanks()

    def refuse(self, expected: Said, position: int | None = None) -> NoReturn:
        """Raise the error that names the position, the current one unless another is given."""
        raise UnreadableDesignation(self.kind, self.position if position is None else position, expected)

    def skip_blanks(self) -> None:
        """Move past blanks."""
        if self.text.startswith(" ", self.position):
            self.take(_BLANKS)

    def take(self, pattern: re.Pattern[str]) -> re.Match[str] | None:
        """Return the match that starts here and move past it, or None and stay."""
        match = pattern.match(self.text, self.position)
        if match is not None:
            self.position = match.end()
        return match

    def at_end(self) -> bool:
        """Return whether nothing but blanks is left."""
        self.skip_blanks()
        return self.position >= len(self.text)
