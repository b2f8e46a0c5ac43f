"""Tables as plain text: columns of a fixed width, long cells wrapped."""

from __future__ import annotations


def table(title: str, heads: tuple[str, ...], widths: tuple[int, ...], rows: list[tuple[str, ...]]) -> None:
    """Print a table; a cell that is too long for its column goes on below."""
    print(f"\n{title}\n")
    _row(heads, widths)
    _row(tuple("-" * width for width in widths), widths)
    for row in rows:
        _row(row, widths)


def _row(cells: tuple[str, ...], widths: tuple[int, ...]) -> None:
    columns = [_wrapped(cell, width) for cell, width in zip(cells, widths, strict=True)]
    for number in range(max(map(len, columns))):
        parts = (column[number] if number < len(column) else "" for column in columns)
        print("  ".join(part.ljust(width) for part, width in zip(parts, widths, strict=True)).rstrip())


def _wrapped(text: str, width: int) -> list[str]:
    lines = [""]
    for word in text.split():
        longer = f"{lines[-1]} {word}".strip()
        if len(longer) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines
