"""Ways to break a value of a data file: a cell of a printed table, a line of a rule pack."""

from __future__ import annotations

import csv
import re
from pathlib import Path

from tests.mutants.python_lines import Site

_NUMBER = re.compile(r"(?<![\w.-])-?\d+(?:\.\d+)?(?![\w.-])")
_DATE = re.compile(r"(?<!\d)(\d{4}-\d{2}-)(\d{2})(?!\d)")
_OTHER_WORD = {
    "read": "memory",
    "second_hand": "read",
    "memory": "read",
    "common_practice": "read",
    "front": "rear",
    "rear": "front",
    "at_least": "at_most",
    "at_most": "at_least",
    "advisory": "not_met",
    "not_met": "advisory",
} | dict.fromkeys(("M1", "M1G", "M2", "M3", "N1", "N1G", "N2", "N3", "O1", "O2", "O3"), "O4")
_WORD = re.compile(f'"({"|".join(_OTHER_WORD)})"')
# What is told about a rule, not what it asks.
_TOLD = {
    "title",
    "message",
    "note",
    "text",
    "summary",
    "article",
    "place",
    "document",
    "reference",
    "why",
    "url",
    "edition",
    "id",
}


def data_sites(path: Path) -> list[Site]:
    """Return the values of a file that can be broken, in their order."""
    text = path.read_text(encoding="utf-8")
    sites: list[Site] = []
    offset = 0
    for line, content in enumerate(text.splitlines(keepends=True), start=1):
        taken = _cells(content) if path.suffix == ".csv" else _values(content)
        if path.suffix == ".csv" and (line == 1 or content.startswith("#")):
            taken = []
        for start, end, after in taken:
            before = content[start:end]
            place = offset + len(content[:start].encode())
            sites.append(Site(path, line, place, place + len(before.encode()), before, after))
        offset += len(content.encode())
    return sites


def _cells(content: str) -> list[tuple[int, int, str]]:
    """Return the numeric cells of a row, each moved by a unit of its last printed digit."""
    if '"' in content or len(next(csv.reader([content]), [])) == 0:
        return []
    found, place = [], 0
    for cell in content.rstrip("\r\n").split(","):
        if re.fullmatch(r"-?\d+(\.\d+)?", cell):
            found.append((place, place + len(cell), _moved(cell)))
        place += len(cell) + 1
    return found


def _values(content: str) -> list[tuple[int, int, str]]:
    """Return the dates, numbers, words of the vocabulary and truths of a line `key = value`."""
    key, equals, _ = content.partition("=")
    if not equals or content.lstrip().startswith("#") or key.strip() in _TOLD:
        return []
    from_ = len(key)
    dates = [(each.start(), each.end(), _next_day(each)) for each in _DATE.finditer(content, from_)]
    numbers = [
        (each.start(), each.end(), _moved(each[0]))
        for each in ([] if dates else _NUMBER.finditer(content, from_))
        if content[: each.start()].count('"') % 2 == 0
    ]
    words = [(each.start(1), each.end(1), _OTHER_WORD[each[1]]) for each in _WORD.finditer(content, from_)]
    truths = [
        (each.start(), each.end(), "false" if each[0] == "true" else "true")
        for each in re.compile(r"\b(?:true|false)\b").finditer(content, from_)
    ]
    return sorted(dates + numbers + words + truths)


def _next_day(date: re.Match[str]) -> str:
    return date[1] + ("02" if date[2] == "01" else "01")


def _moved(number: str) -> str:
    if "." not in number:
        return str(int(number) + 1)
    digits = len(number.partition(".")[2])
    return f"{float(number) + 10**-digits:.{digits}f}"
