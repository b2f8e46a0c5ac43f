"""Strict reading of a JSON body: what most readers let through is refused here, at little cost.

orjson is the gate for the grammar: UTF-8 only, no byte order mark, no NaN or Infinity, no number beyond
a float, no lone surrogates. It lets three things pass, which one walk over the result settles: repeated
keys, deep nesting and objects beyond any use.
"""

from __future__ import annotations

import json
from typing import Any

import orjson

from service.api.transport.json_words import reason
from service.core.saying import Amount, Said, say

MAX_DEPTH = 16
# No object of the contract has as many; each unknown one would cost a fault.
MAX_MEMBERS = 64

_CONTAINERS = frozenset((dict, list))


class MalformedJson(ValueError):
    """A body that is not strict JSON; `detail` says what is wrong and is fit for the answer."""

    def __init__(self, detail: Said) -> None:
        super().__init__(detail)
        self.detail = detail


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
        raise MalformedJson(reason(raw, error)) from None
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
                    raise MalformedJson(say("An object has more than {most} members.", most=Amount(MAX_MEMBERS)))
                items = container.values()
            for item in items:
                if type(item) in _CONTAINERS:
                    push(item)
        level = deeper
    raise MalformedJson(say("The body is nested deeper than {most} levels.", most=Amount(MAX_DEPTH)))


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
                raise MalformedJson(say('The key "{key}" stands twice in one object.', key=key[:60]))
            seen.add(key)
    return members
