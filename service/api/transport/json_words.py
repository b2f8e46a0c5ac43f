"""Why a body is no JSON, in words of our own: what the reader of JSON calls it, and what would be right."""

from __future__ import annotations

import re
from collections.abc import Mapping

import orjson

from service.core.saying import Amount, Said, say

# In an object a digit that follows a comma can only be meant as the decimals of the number before it.
_DECIMAL_COMMA = re.compile("[0-9],[0-9]")

_VALUE = say("a value is expected: a number, a text in double quotation marks, true, false, a list or an object")
_DIGIT = say("a digit is expected, as in 5 or 0.5; + and a point do not begin a number")
_REASONS: Mapping[str, Said] = {
    "unexpected character, expected a string key": say("a name in double quotation marks is expected"),
    "unexpected character, expected a JSON value": _VALUE,
    "unexpected character, expected ':' after key": say("a colon is expected after the name"),
    "unexpected character, expected ',' or ']'": say("a comma or {bracket} is expected", bracket="]"),
    "unexpected character, expected ',' or '}'": say("a comma or {bracket} is expected", bracket="}"),
    "invalid literal, expected 'true'": _VALUE,
    "invalid literal, expected 'false'": _VALUE,
    "invalid literal, expected 'null'": _VALUE,
    "trailing comma is not allowed": say("a trailing comma stands before the closing bracket"),
    "unexpected end of data": say("it ends too early"),
    "unexpected content after document": say("something stands behind its end"),
    "unexpected control character in string": say("a text holds a control character that is not escaped"),
    "invalid escaped sequence in string": say("a text holds an escape that JSON does not have"),
    "no low surrogate in string": say("a text holds half a surrogate pair"),
    "invalid high surrogate in string": say("a text holds half a surrogate pair"),
    "invalid low surrogate in string": say("a text holds half a surrogate pair"),
    "number with leading zero is not allowed": say("a number begins with a zero too many"),
    "number is infinity when parsed as double": say("a number is too large"),
    "depth limit exceeded": say("it is nested too deep"),
    "no digit after sign": _DIGIT,
    "no digit after decimal point": say("a digit is expected after the point"),
    "no digit after exponent sign": say("a digit is expected after the e"),
}


def reason(raw: bytes, error: orjson.JSONDecodeError) -> Said:
    """Return what is wrong with a body that the reader refused; nothing is quoted from it."""
    if not raw.strip():
        return say("The body is empty; a JSON object is expected.")
    if error.msg.startswith("UTF-8 byte order mark"):
        return say("The body begins with a byte order mark; send UTF-8 without it.")
    try:
        raw.decode("utf-8")
    except UnicodeDecodeError as found:
        return say(
            "The body is not UTF-8: the byte at position {position} belongs to no character. Send it in UTF-8.",
            position=Amount(found.start),
        )
    line, column = Amount(error.lineno), Amount(error.colno)
    around = error.doc[max(error.pos - 2, 0) : error.pos + 1]
    known = _REASONS.get(error.msg)
    if _DECIMAL_COMMA.fullmatch(around):
        known = say("a number with a comma, a point is expected in its place")
    if known is None:
        return say("The body is not valid JSON (line {line}, column {column}).", line=line, column=column)
    return say(
        "The body is not valid JSON: {reason} (line {line}, column {column}).", reason=known, line=line, column=column
    )
