"""Tables as plain text: columns of a fixed width, long cells wrapped."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import Final

from service.core.saying import MINUS

WIDTH: Final = 110


def lines_of(columns: Sequence[tuple[str, int]], rows: Sequence[tuple[str, ...]]) -> list[str]:
    """Return the lines of a table, none without rows; a cell that is too long for its column goes on below."""
    if not rows:
        return []
    heads, widths = zip(*columns, strict=True)
    ruled = [heads, tuple("-" * width for width in widths), *rows]
    return [line for row in ruled for line in _row(row, widths)]


def block(title: str, sentences: Sequence[str]) -> list[str]:
    """Return the sentences as a list under a title, with an empty line behind it; nothing without sentences."""
    if not sentences:
        return []
    lines = [title]
    for sentence in sentences:
        first, *more = wrapped(sentence, WIDTH - 2)
        lines += [f"- {first}", *(f"  {line}" for line in more)]
    return [*lines, ""]


def heading(words: str) -> list[str]:
    """Return a heading with a line beneath it."""
    return [words, "=" * len(words)]


def cell(value: object) -> str:
    """Return a value of an answer as a table shows it; nothing where there is none."""
    return f"{value:g}".replace("-", MINUS) if isinstance(value, int | float) else str(value or "")


def wrapped(text: str, width: int) -> list[str]:
    """Return the text in lines of at most this width, broken at blanks where there are any."""
    return textwrap.wrap(text, width, break_on_hyphens=False) or [""]


def _row(cells: Sequence[str], widths: Sequence[int]) -> list[str]:
    columns = [wrapped(cell, width) for cell, width in zip(cells, widths, strict=True)]
    height = max(map(len, columns))
    return [
        "  ".join(
            (column[at] if at < len(column) else "").ljust(width) for column, width in zip(columns, widths, strict=True)
        ).rstrip()
        for at in range(height)
    ]
