"""Strict JSON against the reader of the standard library, which keeps pairs apart and so sees repetitions."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from service.api.transport.strict_json import MAX_DEPTH, MalformedJson, parse, whole_numbers_as_integers

# Names and texts that hold what the test for repetitions counts, and what could be spelt in two ways.
WORDS = st.text(alphabet=':",{}[]\\/ab\u003aäü轮\U0001f6de', max_size=6)
NUMBERS = st.integers(-(2**53), 2**53) | st.floats(allow_nan=False, allow_infinity=False)
VALUES = st.recursive(
    st.none() | st.booleans() | NUMBERS | WORDS,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(WORDS, inner, max_size=4),
    max_leaves=30,
)


class Pairs(list[Any]):
    """An object as the list of its members."""


def repeats_a_key(value: object) -> bool:
    if isinstance(value, Pairs):
        keys = [key for key, _ in value]
        return len(keys) != len(set(keys)) or any(repeats_a_key(item) for _, item in value)
    return isinstance(value, list) and any(repeats_a_key(item) for item in value)


def spell(value: object) -> str:
    """Return JSON for a value whose objects are pairs, so that keys may repeat."""
    if isinstance(value, Pairs):
        return "{" + ",".join(f"{json.dumps(key)}:{spell(item)}" for key, item in value) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(spell, value)) + "]"
    return json.dumps(value)


PAIRS = st.recursive(
    st.none() | st.booleans() | NUMBERS | WORDS,
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.lists(st.tuples(st.sampled_from(["a", "b", ":", "a:b"]), inner), max_size=3).map(Pairs)
    ),
    max_leaves=20,
)


@given(VALUES, st.booleans(), st.sampled_from([None, 2]))
def test_every_value_comes_back_as_it_was(value: object, ascii_only: bool, indent: int | None) -> None:
    assert parse(json.dumps(value, ensure_ascii=ascii_only, indent=indent).encode()) == value


@given(PAIRS)
def test_a_repeated_key_is_refused_wherever_it_stands_and_nothing_else_is(value: object) -> None:
    if repeats_a_key(value):
        with pytest.raises(MalformedJson, match="twice"):
            parse(spell(value).encode())
    else:
        assert parse(spell(value).encode()) == json.loads(spell(value))


@given(st.binary(max_size=60))
def test_any_bytes_are_read_or_refused(raw: bytes) -> None:
    try:
        value = parse(raw)
    except MalformedJson:
        return
    assert value == json.loads(raw)


@pytest.mark.parametrize("opening", ["[", '{"a":'])
def test_the_deepest_nesting_allowed_is_read(opening: str) -> None:
    closing = "]" if opening == "[" else "}"
    inner = "1" if opening != "[" else ""
    assert parse((opening * MAX_DEPTH + inner + closing * MAX_DEPTH).encode())


@pytest.mark.parametrize("opening", ["[", '{"a":'])
def test_one_level_more_is_refused(opening: str) -> None:
    closing = "]" if opening == "[" else "}"
    inner = "1" if opening != "[" else ""
    with pytest.raises(MalformedJson, match="deeper"):
        parse((opening * (MAX_DEPTH + 1) + inner + closing * (MAX_DEPTH + 1)).encode())


def test_whole_floats_become_integers_at_every_depth() -> None:
    made = whole_numbers_as_integers({"a": [200.0, {"b": 3.0}], "c": 2.5, "d": "4.0"})
    assert json.dumps(made) == '{"a": [200, {"b": 3}], "c": 2.5, "d": "4.0"}'


@pytest.mark.parametrize("body", [b'{"a": 57,1}', b'{"a": {"b": -0,25}, "c": 1}', b'{"a": 57,1, "b": 2}'])
def test_a_decimal_comma_is_called_so(body: bytes) -> None:
    with pytest.raises(MalformedJson, match="a number with a comma, a point is expected in its place"):
        parse(body)


@pytest.mark.parametrize("body", [b'{"a": 57, b: 1}', b'{"a": "57,1}', b"{'a': 1}", b'{"a": 57,}', b'{"a",1}'])
def test_another_comma_is_not(body: bytes) -> None:
    with pytest.raises(MalformedJson, match=r"^The body is not valid JSON: (?!a number with a comma)"):
        parse(body)
