"""Parts of a problem: which kind a status is, what is cut and cleaned, where a fault stands, how many are listed."""

from __future__ import annotations

from http import HTTPStatus

import orjson
import pytest
from fastapi.exceptions import RequestValidationError

from service.api.errors.fault_words import fault_words, required, unknown_field
from service.api.errors.problem import (
    BODY_PROBLEMS,
    HEADERS,
    KINDS,
    HttpProblem,
    body,
    clean,
    kind_of,
    member,
    problem_responses,
    refusal,
)
from service.api.errors.request_faults import CODES, RequestFault
from service.core.errors import DomainError, UnknownName
from service.core.saying import say

# RFC 9110, section 15, and RFC 6585 for 429 and 431: what each status means, in the standard's phrases.
PHRASES = {
    400: "Bad Request",
    401: "Unauthorized",
    403: "Forbidden",
    404: "Not Found",
    405: "Method Not Allowed",
    406: "Not Acceptable",
    408: "Request Timeout",
    413: "Content Too Large",
    415: "Unsupported Media Type",
    422: "Unprocessable Content",
    429: "Too Many Requests",
    431: "Request Header Fields Too Large",
    500: "Internal Server Error",
    503: "Service Unavailable",
}
NAMES = {400: "malformed", 408: "timeout", 413: "too-large", 422: "validation", 431: "head-too-large"}
NAMES |= {500: "failure", 503: "busy"}


def test_each_status_has_its_kind_named_after_the_standard_or_plainly():
    assert set(KINDS) == set(PHRASES)
    for status, phrase in PHRASES.items():
        assert KINDS[status].name == NAMES.get(status, phrase.lower().replace(" ", "-"))


@pytest.mark.parametrize(
    ("status", "like"), [(402, 400), (418, 400), (499, 400), (501, 500), (504, 500), (500, 500), (404, 404)]
)
def test_a_status_without_a_kind_is_one_of_the_caller_or_of_the_service(status, like):
    """RFC 9110, section 15: a client treats an unknown status as the x00 of its class."""
    assert kind_of(status) is KINDS[like]


@pytest.mark.parametrize(
    ("given", "shown"),
    [
        ("a" * 200, "a" * 200),
        ("a" * 201, "a" * 199 + "…"),
        ("a\x00b\x1f", "a\ufffdb\ufffd"),
        ("a\u202eb\ud800", "a\ufffdb\ufffd"),
        ("Larch 200", "Larch 200"),
    ],
)
def test_a_text_is_cut_at_two_hundred_signs_and_cleaned(given, shown):
    assert clean(given) == shown


def test_a_sentence_is_cut_at_four_hundred_signs():
    whole, long = (orjson.loads(body(400, say("{text}", text="a" * many), "1"))["detail"] for many in (400, 401))
    assert (whole, long) == ("a" * 400, "a" * 399 + "…")
    fault = RequestFault("/a", say("{text}", text="b" * 401), "invalid")
    assert member(fault)["detail"] == "b" * 399 + "…"


@pytest.mark.parametrize(
    ("pointer", "place"),
    [
        ("/query/axles", {"parameter": "axles"}),
        ("/path/name", {"parameter": "name"}),
        ("/query/a/b", {"parameter": "a/b"}),
        # A body may have a member of any name but these; alone they name no parameter.
        ("/query", {"pointer": "/query"}),
        ("/vehicle/front", {"pointer": "/vehicle/front"}),
        ("", {"pointer": ""}),
    ],
)
def test_a_fault_says_where_it_is(pointer, place):
    shown = member(RequestFault(pointer, say("A body is required."), "required"))
    assert shown == {**place, "detail": "A body is required.", "code": "required"}


def test_a_designation_s_fault_says_the_place_in_the_text_from_nought_on():
    shown = member(RequestFault("/a", say("A body is required."), "invalid", 0, say("a digit"), "205/55 R16"))
    assert (shown["position"], shown["expected"], shown["did_you_mean"]) == (0, "a digit", "205/55 R16")
    assert member(RequestFault("/a", say("A body is required."), "invalid", 3))["expected"] == ""
    assert "did_you_mean" not in member(RequestFault("/a", say("A body is required."), "invalid", 3))


def test_a_name_in_the_path_that_is_unknown_is_not_there_and_one_in_the_body_is_a_fault():
    assert refusal(UnknownName("table", ("a",)), None)[0].status == HTTPStatus.NOT_FOUND
    assert refusal(UnknownName("table", ("a",)).at("/rule_pack"), None)[0].status == HTTPStatus.UNPROCESSABLE_ENTITY
    problem, count = refusal(DomainError("no", "/a"), None)
    assert (problem.status, count, len(problem.faults)) == (422, 0, 1)
    with pytest.raises(ZeroDivisionError):
        refusal(ZeroDivisionError(), None)


@pytest.mark.parametrize(
    ("many", "words", "listed"),
    [
        (1, "A finite number is expected here.", 1),
        (2, "2 faults were found; see errors.", 2),
        (20, "20 faults were found; see errors.", 20),
        (21, "21 faults were found; errors lists the first 20.", 20),
        (900, "900 faults were found; errors lists the first 20.", 20),
    ],
)
def test_of_many_faults_the_first_twenty_are_listed_and_all_are_counted(many, words, listed):
    found = [{"type": "finite_number", "loc": ("body", "a"), "input": 1.0}] * many
    problem, count = refusal(RequestValidationError(found, body={"a": 1.0}), None)
    assert (problem.status, str(problem.words), len(problem.faults), count) == (422, words, listed, many)
    sent = orjson.loads(body(422, problem.detail, "7", problem.faults, count=count))
    assert (len(sent["errors"]), sent["error_count"]) == (listed, many)
    assert (sent["type"], sent["status"], sent["instance"]) == ("/problems/validation", 422, "urn:fitment:request:7")


def test_faults_that_nobody_counted_are_counted_and_cut():
    faults = [RequestFault("/a", say("A body is required."), "required")] * 25
    sent = orjson.loads(body(422, None, "7", faults))
    assert (len(sent["errors"]), sent["error_count"]) == (20, 25)
    assert sent["detail"] == "The list errors says what is wrong, and where."


def test_a_problem_without_words_gives_the_usual_advice():
    assert HttpProblem(415).words == KINDS[415].detail
    assert HttpProblem(415, say("A body is required.")).words == "A body is required."


def test_the_headers_of_a_problem_are_those_of_the_standard():
    """RFC 9110: WWW-Authenticate with 401, Allow with 405, Accept with 415, Retry-After with 503; RFC 6585 with 429."""
    told = {status: set(headers) for status, headers in HEADERS.items()}
    assert told == {
        401: {"WWW-Authenticate"},
        405: {"Allow"},
        415: {"Accept", "Accept-Post"},
        429: {"Retry-After"},
        503: {"Retry-After"},
    }
    documented = problem_responses(503, 404)
    assert list(documented) == [404, 503]
    assert "headers" not in documented[404]
    seconds = documented[503]["headers"]["Retry-After"]["schema"]
    assert seconds == {"type": "integer"}
    assert documented[404]["description"] == KINDS[404].title


def test_a_route_with_a_body_may_answer_what_any_body_may_cause():
    assert set(BODY_PROBLEMS) == {400, 405, 408, 413, 415, 422, 500, 503}


@pytest.mark.parametrize(
    ("number", "shown"),
    [
        (0, "0"),
        (0.000001, "0.000001"),
        (0.0000009, "9e-07"),
        (-0.0000009, "-9e-07"),
        (999999999999999, "999999999999999"),
        (1e15, "1e+15"),
        (1.23456789, "1.234568"),
        (-2.5, "−2.5"),
    ],
)
def test_a_number_that_came_is_shown_plainly_or_as_a_computer_writes_it(number, shown):
    found = fault_words("list_type", number, {}, None)
    assert found == f"A list in square brackets is expected here; {shown} came."


@pytest.mark.parametrize(("many", "shown"), [(40, "a" * 40), (41, "a" * 40 + "…")])
def test_a_text_that_came_is_cut_at_forty_signs(many, shown):
    assert fault_words("list_type", "a" * many, {}, None) == (
        f'A list in square brackets is expected here; the text "{shown}" came.'
    )
    assert unknown_field("a" * many, []) == f'There is no field "{shown}" here.'


def test_what_is_missing_is_named_by_its_place():
    assert required("body", "", None) == "A body is required."
    assert required("query", "axles", None) == 'The query parameter "axles" is required.'
    assert required("path", "name", None) == 'The field "name" is required.'


def test_a_kind_of_fault_is_a_code_of_the_contract():
    assert set(CODES.values()) == {
        "required",
        "unknown_field",
        "out_of_range",
        "wrong_length",
        "wrong_format",
        "not_one_of",
        "inconsistent",
    }


def test_a_problem_without_faults_counts_none():
    sent = orjson.loads(body(404, None, "7"))
    assert (sent["errors"], sent["error_count"]) == ([], 0)
