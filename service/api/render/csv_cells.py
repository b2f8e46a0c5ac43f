"""Tables as CSV (RFC 4180) whose texts begin no formula, whatever the reader takes for a separator.

That a spreadsheet takes a cell which begins with one of = + - @ for a formula, and some their wide forms too, is common
practice, no source. Quotation marks do not help: a reader with another separator does not see them as such.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Mapping, Sequence
from typing import Final

# The four signs, wide, small, raised, lowered and with straight feet: all that Unicode's NFKC turns into them.
_SIGNS: Final = r"=+\-@＝＋－＠﹦﹢﹣﹫⁼⁺₌₊\ufb29"
# What a reader may be told to part cells by, and what always ends a line.
_SEPARATORS: Final = r";,|\t\r\n\v\f\x1c-\x1e\x85\u2028\u2029"
# Blanks of all kinds and what nobody sees; quotation marks are taken off by some readers.
_BLANKS: Final = r"\s\xad\u200b-\u200f\u2060\ufeff"
_NUMBER: Final = rf"[+\-＋－][\d.,]+%?[).]*(?=[{_BLANKS}{_SEPARATORS}]|$)"
_BEGINS: Final = re.compile(
    rf'(?:^|[{_SEPARATORS}])[{_BLANKS}"]*(?=[{_SIGNS}])'
    # A blank and a colon part cells too where asked to: no sign that stands alone, as in "A - B", and no number.
    rf'|[{_BLANKS}:][{_BLANKS}:"]*(?=[{_SIGNS}][^{_BLANKS}{_SEPARATORS}])(?!{_NUMBER})'
)
_LINE_ENDS: Final = ("\t", "\r", "\n")


def written(columns: Sequence[str], rows: Iterable[Mapping[str, object]]) -> str:
    """Return a table with a header line; a column that a row lacks stays empty."""
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(columns)
    writer.writerows([safe(row.get(name, "")) for name in columns] for row in rows)
    return text.getvalue()


def safe(cell: object) -> object:
    """Return the cell; in a text an apostrophe stands before whatever a spreadsheet could take for a formula."""
    if not isinstance(cell, str):
        return cell
    guarded = _BEGINS.sub(r"\g<0>'", cell)
    return f"'{guarded}" if guarded.startswith(_LINE_ENDS) else guarded
