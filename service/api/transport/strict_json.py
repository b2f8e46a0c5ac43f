"""Strict reading of a JSON body: what most readers let through is refused here, at little cost.

orjson is the gate for the grammar: UTF-8 only, no byte order mark, no NaN or Infinity, no number beyond
a float, no lone surrogates. It lets three things pass, which one walk over the result settles: repeated
keys, deep nesting and objects beyond any use.
"""

from __future__ import annotations

import json
import re
from typing import Any

import orjson

MAX_DEPTH = 16
# No object of the contract has as many; each unknown one would cost a fault.
MAX_MEMBERS = 64

# In an object a digit that follows a comma can only be meant as the decimals of the number before it.
_DECIMAL_COMMA = re.compile("[0-9],[0-9]")
_CONTAINERS = frozenset((dict, list))


class MalformedJson(ValueError):
    """A body that is not strict JSON; the text says what is wrong and is fit for the answer."""


def parse(raw: bytes) -> object:
    """Return the value that the bytes spell in strict JSON.

    Raises
    ------
    MalformedJson
        When they spell none, spell a key twice in one object, nest deeper than `MAX_DEPTH` or hold an object
        of more than `MAX_MEMBERS`.
    """
    try:
        value: object = orjson.loads(raw)
    except orjson.JSONDecodeError as error:
        if not raw:
            raise MalformedJson("The body is empty; a JSON object is expected.") from None
        raise MalformedJson(f"The body is not valid JSON: {_reason(error)}.") from None
    # Valid JSON has one colon outside strings for each member. As many colons as members kept means that
    # none was dropped as a repetition; more colons may also stand in strings, only then a slow look is due.
    if raw.count(b":") != _count_members(value):
        _refuse_repeated_keys(raw)
    return value


def _count_members(value: Any) -> int:  # noqa: ANN401 - whatever the bytes spell
    """Return how many object members the value has, level by level, or refuse it."""
    members = 0
    level = [value] if type(value) in _CONTAINERS else []
    for _ in range(MAX_DEPTH + 1):
        if not level:
            return members
        deeper: list[Any] = []
        push = deeper.append
        for container in level:
            items = container
            # `type() is`, a bound method and nothing beside it: this runs for every value of every body.
            if type(container) is dict:
                members += len(container)
                if len(container) > MAX_MEMBERS:
                    raise MalformedJson(f"An object has more than {MAX_MEMBERS} members.")
                items = container.values()
            for item in items:
                if type(item) in _CONTAINERS:
                    push(item)
        level = deeper
    raise MalformedJson(f"The body is nested deeper than {MAX_DEPTH} levels.")


def without_nulls(value: object) -> object:
    """Return the value without the members that are null: most serialisers write what is not known that way."""
    if isinstance(value, dict):
        return {key: without_nulls(item) for key, item in value.items() if item is not None}
    if isinstance(value, list):
        return [without_nulls(item) for item in value]
    return value


def whole_numbers_as_integers(value: object) -> object:
    """Return the value with every float that is whole turned into an integer, as JSON Schema understands numbers."""
    if isinstance(value, dict):
        return {key: whole_numbers_as_integers(item) for key, item in value.items()}
    if isinstance(value, list):
        return [whole_numbers_as_integers(item) for item in value]
    if isinstance(value, float) and value.is_integer():
        return int(value)
    return value


def _refuse_repeated_keys(raw: bytes) -> None:
    json.loads(raw, object_pairs_hook=_without_repeated_keys)


def _without_repeated_keys(pairs: list[tuple[str, object]]) -> dict[str, object]:
    members = dict(pairs)
    if len(members) != len(pairs):
        seen: set[str] = set()
        for key, _ in pairs:
            if key in seen:
                raise MalformedJson(f'The key "{key[:60]}" stands twice in one object.')
            seen.add(key)
    return members


def _reason(error: orjson.JSONDecodeError) -> str:
    """Return the place and kind of a grammar error; the message of orjson quotes nothing from the body."""
    place = f"(line {error.lineno}, column {error.colno})"
    around = error.doc[max(error.pos - 2, 0) : error.pos + 1] if isinstance(error.doc, str) else ""
    if _DECIMAL_COMMA.fullmatch(around):
        return f"a number with a comma, a point is expected in its place {place}"
    return f"{error.msg} {place}"
