"""The wire models of an error answer (RFC 9457)."""

from __future__ import annotations

from typing import Literal

from service.api.schemas.base import AnswerPart, Wire, part, text, whole

FaultCode = Literal[
    "required",
    "unknown_field",
    "wrong_type",
    "out_of_range",
    "wrong_length",
    "wrong_format",
    "not_one_of",
    "unreadable_designation",
    "out_of_scope",
    "wrong_number",
    "unknown_name",
    "inconsistent",
    "repeated",
    "invalid",
]


class Fault(AnswerPart):
    """One fault of a request: where, what, and a code that programs may rely on."""

    pointer: str = text(
        "RFC 6901 pointer into the request body; empty for the body as a whole, absent where `parameter` is there.",
        200,
        "/candidate/front/tyre/size",
        default=None,
    )
    parameter: str = text("The parameter of query or path that is at fault.", 200, "text", default=None)
    detail: str = text(
        "What is wrong and what would be right, in a sentence.",
        400,
        "This tyre designation cannot be read at position 7: expected an aspect ratio.",
    )
    code: FaultCode = part("The kind of fault.", "unreadable_designation")
    position: int = whole(
        "Where reading a designation stopped, counted in characters from 0; only with it", "1", (0, 10_000), 7, None
    )
    expected: str = text("What could have stood at that position; only with it.", 200, "an aspect ratio", default=None)
    did_you_mean: str = text(
        "The designation that was perhaps meant, in its usual spelling; absent where none is near.",
        200,
        "205/55 R16",
        default=None,
    )


class Problem(Wire):
    """Why a request was not answered, as `application/problem+json` (RFC 9457)."""

    type: str = text(
        "The kind of problem, a stable path of this service; what it means can be read there.",
        80,
        "/problems/validation",
        r"^/problems/[a-z-]+$",
    )
    title: str = text("The kind of problem in words, the same each time.", 80, "The request has faults")
    status: int = whole("The HTTP status", "1", (400, 599), 422)
    detail: str = text("What was wrong with this request and what to do.", 400, "2 faults were found.")
    instance: str = text(
        "Names this one answer: `urn:fitment:request:` and the value of the header X-Request-ID.",
        160,
        "urn:fitment:request:7c1f0f4a9d3e4b5c8a6b2d1e0f9a8b7c",
    )
    errors: list[Fault] = part(
        "The faults one by one, at most 20; empty where there is nothing to point at.", max_length=20
    )
    error_count: int = whole("How many faults there were, listed or not", "1", (0, 10_000_000), 2)
