"""The kinds of value that the keys of a pack take, and the faults that a pack's own checks find in them.

The classes of this room are plain dataclasses: these checks are made when a pack is read, and at no other time.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import fields
from difflib import get_close_matches
from typing import Annotated, Any

from pydantic import (
    AfterValidator,
    BeforeValidator,
    ConfigDict,
    Field,
    GetPydanticSchema,
    StringConstraints,
    ValidationInfo,
)
from pydantic_core import PydanticCustomError, core_schema

from service.core.saying import Said

Table = dict[str, Any]

CLOSED = ConfigDict(extra="forbid")


def fault(reason: str, *place: str | int) -> PydanticCustomError:
    """Return the fault for a check to raise; `place` leads on from what is checked, `{key}` becomes the key there."""
    return PydanticCustomError("fault", "{reason}", {"reason": reason, "place": place})


def known(word: str, words: Iterable[str], *place: str | int) -> str:
    """Return a word that must be one of those known."""
    if word not in words:
        raise fault(f"unknown {{key}} {word[:60]!r}; known: {', '.join(words)}", *place)
    return word


def nearest(word: str, words: Iterable[str]) -> str:
    """Return the end of a sentence on an unknown word: the nearest known one, where there is one."""
    close = get_close_matches(word, [each for each in words if each != word], n=1)
    return f"; nearest known: {close[0]!r}" if close else ""


def filled(table: Table, **values: object) -> Table:
    """Return a table with keys that the reader fills in; a file that writes one of them is at fault."""
    for key in values:
        if key in table:
            raise fault("unknown field '{key}'", key)
    return table | values


def gathered(table: Table, name: str, keys: Iterable[str]) -> Table:
    """Return a table with some of its keys gathered in a table of their own."""
    inner = {key: table[key] for key in keys if key in table}
    return filled({key: value for key, value in table.items() if key not in inner}, **{name: inner})


def shaped(shape: Callable[[Table, Any], Table]) -> BeforeValidator:
    """Return the step that brings a table, as a file writes it, into the shape of its class."""

    def step(given: object, info: ValidationInfo) -> object:
        return shape(given, info.context) if isinstance(given, dict) else given

    return BeforeValidator(step)


def keys_of(kind: type) -> tuple[str, ...]:
    """Return the keys of a dataclass, as a file writes them."""
    return tuple(field.name for field in fields(kind) if field.init)


def not_before(first: str) -> AfterValidator:
    """Return the check that the last day of a window does not lie before its first, the key `first`."""

    def check(last: str | None, info: ValidationInfo) -> str | None:
        begin = info.data.get(first)
        if last is not None and begin is not None and last < begin:
            raise fault(f"{{key}} {last} lies before {first} {begin}")
        return last

    return AfterValidator(check)


def _iso(given: object) -> str:
    # A date and time is a date too, for Python.
    if isinstance(given, dt.datetime) or not isinstance(given, dt.date):
        raise fault("{key} must be a date such as 2026-11-24, without quotes")
    return given.isoformat()


def _said(given: object, read: core_schema.ValidatorFunctionWrapHandler) -> Said:
    # What has been read before comes by again where a pack builds on another.
    return given if isinstance(given, Said) else Said(read(given), {})


Text = Annotated[str, StringConstraints(pattern=r"\S")]
Texts = tuple[Text, ...]
# A text for callers: its English words are the message id of the catalogues, which read the packs' files.
Sentence = Annotated[
    Said, GetPydanticSchema(lambda _, schema: core_schema.no_info_wrap_validator_function(_said, schema(Text)))
]
Sentences = tuple[Sentence, ...]
Number = Annotated[float, Field(strict=True, allow_inf_nan=False)]
Positive = Annotated[Number, Field(gt=0.0)]
Flag = Annotated[bool, Field(strict=True)]
Day = Annotated[str, BeforeValidator(_iso)]
