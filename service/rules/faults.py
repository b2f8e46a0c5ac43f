"""The fault in a pack, and where in the file it stands; tomllib gives no line for what it has read."""

from __future__ import annotations

import re

_HEADER = re.compile(r"^\s*(\[{1,2})\s*([A-Za-z0-9_.-]+)\s*\]{1,2}\s*(?:#.*)?$")
_DECODE_LINE = re.compile(r"\(at line (\d+),")


class PackError(Exception):
    """A pack that is refused: the file, the line, the rule (or section), and the reason."""

    def __init__(self, file: str, line: int, rule: str, reason: str) -> None:
        super().__init__(f"{file}:{line}: {rule}: {reason}")
        self.file = file
        self.line = line
        self.rule = rule
        self.reason = reason


class Lines:
    """The lines of one file by table header, for messages only."""

    def __init__(self, file: str, text: str) -> None:
        self.file = file
        self._lines = text.splitlines()
        self._headers = [
            (number, match[2]) for number, line in enumerate(self._lines, start=1) if (match := _HEADER.match(line))
        ]

    def line_of(self, table: str, ordinal: int = 0, key: str = "") -> int:
        """Return the line of a key in the n-th table of this name; the header's line where the key is missing.

        `table` is "" for the top of the file.
        """
        starts = [1] if table == "" else [number for number, name in self._headers if name == table]
        if ordinal >= len(starts):
            return 1
        start = starts[ordinal]
        after = next((number for number, _ in self._headers if number > start), len(self._lines) + 1)
        written = re.compile(rf"^\s*[\"']?{re.escape(key)}[\"']?\s*=")
        found = (number for number in range(start, after) if key and written.match(self._lines[number - 1]))
        return next(found, start)


def line_of_decode_error(message: str) -> int:
    """Return the line that tomllib names in its message, 1 where it names none."""
    match = _DECODE_LINE.search(message)
    return int(match[1]) if match else 1
