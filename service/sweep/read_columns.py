"""The columns of a record batch as arrays, and what is wrong in them: each distinct text is read once.

A text that recurs is the rule in a catalogue: a thousand rows name a hundred tyres. So a column of texts is kept as
numbers, and whatever depends on a text alone is asked once for each distinct one.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import date
from typing import NamedTuple

import numpy as np
import pandas as pd
import pyarrow as pa
import pyarrow.compute as pc
from numpy.typing import NDArray

from service.core.errors import DomainError
from service.core.numeric import FloatArray
from service.designation.bolt_circle import parse_bolt_circle
from service.sweep import remembered
from service.sweep.columns import LONGEST_DESIGNATION, LONGEST_ID, Column

Places = NDArray[np.int64]
_PARSERS: dict[str, Callable[[str], object]] = {
    "tyre": remembered.tyre,
    "rim": remembered.rim,
    "bolt_circle": parse_bolt_circle,
}
_MOST_QUOTED = 60
# The years that rules speak of, as the web interface takes them.
_FIRST_YEAR, _LAST_YEAR = 1900, 2099
NOT_GIVEN = -1


class Texts(NamedTuple):
    """A column of texts: for each row the place of its text, `NOT_GIVEN` where there is none."""

    places: Places
    distinct: list[str]

    def at(self, row: int) -> str | None:
        """Return the text of a row."""
        place = int(self.places[row])
        return None if place == NOT_GIVEN else self.distinct[place]


class Fault(NamedTuple):
    """Why a row cannot be graded."""

    row: int
    column: str
    reason: str


def texts(given: pa.Array) -> Texts:
    """Return a column as texts; whole numbers and days are texts too.

    Raises
    ------
    pa.ArrowException
        When it holds what is no text.
    """
    if isinstance(given.type, pa.DictionaryType):
        coded, words = given.indices, given.dictionary.cast(pa.string())
    else:
        encoded = given.cast(pa.string()).dictionary_encode()
        coded, words = encoded.indices, encoded.dictionary
    places = np.asarray(coded.cast(pa.int64()).fill_null(NOT_GIVEN))
    # The dictionary of a slice may hold the texts of the whole.
    again, found_places = pd.factorize(places)
    used = found_places.tolist()
    found = words.take(pa.array([each for each in used if each != NOT_GIVEN], pa.int64())).to_pylist()
    if NOT_GIVEN not in used:
        return Texts(again, found)
    at = used.index(NOT_GIVEN)
    return Texts(np.where(again == at, NOT_GIVEN, again - (again > at)), found)


def numbers(given: pa.Array) -> FloatArray:
    """Return a column as numbers, NaN where nothing is given, and infinity for a text that is no number."""
    if pa.types.is_string(given.type) or pa.types.is_large_string(given.type) or pa.types.is_dictionary(given.type):
        words = texts(given)
        read = np.array([*(_number(each) for each in words.distinct), np.nan])
        return read[words.places]
    found: FloatArray = given.cast(pa.float64()).to_numpy(zero_copy_only=False)
    return found


def _number(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        # One slip of the pen is the fault of its row and not of the column; infinity never passes.
        return float("inf")


def number_faults(column: Column, read: FloatArray, given: pa.Array) -> Iterator[Fault]:
    """Yield the rows whose number is missing or out of its range."""
    if column.required:
        for row in np.flatnonzero(np.isnan(read)).tolist():
            yield Fault(row, column.name, "is missing")
    out = (read < column.low) | (read > column.high)
    if column.kind == "whole":
        with np.errstate(invalid="ignore"):
            out |= np.isfinite(read) & (read % 1.0 != 0.0)
    words = "a whole number" if column.kind == "whole" else "a number"
    for row in np.flatnonzero(out).tolist():
        reason = f"{quoted(given[row].as_py())} is not {words} from {column.low:g} to {column.high:g} {column.unit}"
        yield Fault(row, column.name, reason.rstrip())


def text_faults(column: Column, read: Texts) -> Iterator[Fault]:
    """Yield the rows whose text is missing or cannot be read."""
    if column.required:
        for row in np.flatnonzero(read.places == NOT_GIVEN).tolist():
            yield Fault(row, column.name, "is missing")
    # Names are as many as rows: their length alone is looked at.
    named = column.kind == "text"
    suspects = [at for at, text in enumerate(read.distinct) if not (named and 0 < len(text) <= LONGEST_ID)]
    reasons = {at: reason for at in suspects if (reason := text_reason(column, read.distinct[at]))}
    if reasons:
        for row in np.flatnonzero(np.isin(read.places, list(reasons))).tolist():
            yield Fault(row, column.name, reasons[int(read.places[row])])


def text_reason(column: Column, text: str) -> str:
    """Return why a text does not pass, an empty one where it does."""
    if column.kind == "word":
        return "" if text in column.words else f"{quoted(text)} is none of {', '.join(column.words)}"
    if column.kind == "day":
        return "" if is_day(text) else f"{quoted(text)} is not a day as in 2019-05-20"
    if column.kind == "text":
        return "" if 0 < len(text) <= LONGEST_ID else f"has {len(text)} characters; 1 to {LONGEST_ID} are taken"
    if len(text) > LONGEST_DESIGNATION:
        return f"has {len(text)} characters; {LONGEST_DESIGNATION} at most are taken"
    try:
        _PARSERS[column.kind](text)
    except DomainError as error:
        return error.detail
    return ""


def is_day(text: str) -> bool:
    """Return whether a text is an ISO day of the years that rules speak of."""
    try:
        day = date.fromisoformat(text)
    except ValueError:
        return False
    # Days are compared as texts: a week's day, 2019-W21-1, is a date too, and not one of these.
    return day.isoformat() == text and _FIRST_YEAR <= day.year <= _LAST_YEAR


def quoted(value: object) -> str:
    """Return a value in quotation marks, its head alone where it is long."""
    return repr(str(value)[:_MOST_QUOTED])


def flags(given: pa.Array) -> FloatArray:
    """Return a column of yes and no as 1, 0 and NaN; infinity for anything else."""
    if pa.types.is_boolean(given.type) or pa.types.is_null(given.type):
        return numbers(given.cast(pa.bool_()))
    try:
        read = numbers(given)
    except pa.ArrowException:
        return np.where(np.asarray(pc.is_null(given)), np.nan, np.inf)
    return np.where(np.isnan(read) | np.isin(read, (0.0, 1.0)), read, np.inf)


def flag_faults(column: Column, read: FloatArray, given: pa.Array) -> Iterator[Fault]:
    """Yield the rows that say neither yes nor no."""
    for row in np.flatnonzero(np.isinf(read)).tolist():
        yield Fault(row, column.name, f"{quoted(given[row].as_py())} is neither true nor false")
