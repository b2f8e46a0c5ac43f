"""Which form of an answer a caller prefers: the rules and the examples of RFC 9110, section 12.5.1."""

from __future__ import annotations

import pytest
from starlette.requests import Request

from service.api.transport.accept import preferred, quality
from service.api.transport.validators import cacheable, entity_tag

JSON, CSV, HTML = "application/json", "text/csv", "text/html"


@pytest.mark.parametrize(
    ("accept", "expected"),
    [
        # Nothing is said: the first one.
        ("", JSON),
        ("*/*", JSON),
        ("text/csv", CSV),
        ("TEXT/CSV", CSV),
        ("text/*", CSV),
        ("text/html, text/csv", CSV),
        ("text/csv;q=0.5, text/html", HTML),
        ("text/csv; q=0.5 , text/html ; q=0.4", CSV),
        # The most specific range counts, whatever stands before it.
        ("text/*;q=0.9, text/csv;q=0.1, application/json;q=0.5", HTML),
        ("text/csv;q=0.1, text/*;q=0.9, application/json;q=0.5", HTML),
        ("*/*;q=0.8, application/json;q=0.2", CSV),
        ("application/json;q=0, */*", CSV),
        # Not acceptable, and nothing else is: the first one, rather than none.
        ("image/png", JSON),
        ("text/csv;q=0", JSON),
        # What is no weight is none.
        ("text/csv;q=2", JSON),
        # A weight has three decimals (section 12.4.2): this is the least there is.
        ("text/csv;q=0.001", CSV),
        ("text/csv;q=high, text/html;q=0.1", HTML),
        ("text/csv;header=present;q=0.2, text/html;q=0.1", CSV),
    ],
)
def test_the_form_that_a_caller_prefers(accept, expected):
    assert preferred(accept, (JSON, CSV, HTML)) == expected


@pytest.mark.parametrize(
    ("parameters", "weight"),
    [([], 1.0), (["q=0"], 0.0), (["q=1"], 1.0), (["q=0.001"], 0.001), (["q=-0.1"], 0.0), (["q=1.1"], 0.0)],
)
def test_a_weight_lies_between_nought_and_one(parameters, weight):
    assert quality(parameters) == weight


def _asked(tag: str) -> Request:
    headers = [(b"if-none-match", tag.encode())] if tag else []
    return Request({"type": "http", "method": "GET", "path": "/", "headers": headers, "query_string": b""})


@pytest.mark.parametrize(
    ("tags", "status"),
    # RFC 9110, section 13.1.2: any, one of a list, weakly compared.
    [("", 200), ("*", 304), ("{}", 304), ("W/{}", 304), ('"other", {}', 304), ('"other"', 200)],
)
def test_what_a_caller_has_already_is_not_sent_again(tags, status):
    content = b"content"
    answer = cacheable(_asked(tags.replace("{}", entity_tag(content))), content, JSON, {"Cache-Control": "no-cache"})
    assert answer.status_code == status
    assert answer.headers["etag"] == entity_tag(content)
    assert answer.headers["cache-control"] == "no-cache"
    assert bytes(answer.body) == (content if status == 200 else b"")


def test_other_bytes_have_another_tag_in_quotation_marks():
    one, other = entity_tag(b"one"), entity_tag(b"other")
    assert one != other
    assert one[0] == one[-1] == '"'
    assert one == entity_tag(b"one")
