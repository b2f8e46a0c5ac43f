"""The wire models of an error answer (RFC 9457)."""

from __future__ import annotations

from pydantic import Field

from service.api.schemas.base import Wire


class Fault(Wire):
    """One fault of a request: where, what, and a code that programs may rely on."""

    pointer: str = Field(
        description="RFC 6901 pointer into the request body; for a query parameter `/query/NAME`, for a part of the "
        "path `/path/NAME`; empty for the request as a whole.",
        max_length=200,
        examples=["/candidate/front/tyre/size"],
    )
    detail: str = Field(
        description="What is wrong and what would be right, in a sentence.",
        max_length=400,
        examples=["This tyre designation cannot be read at position 7: expected an aspect ratio."],
    )
    code: str = Field(
        description="The kind of fault: required, unknown_field, wrong_type, out_of_range, wrong_length, wrong_format, "
        "not_one_of, unreadable_designation, unknown_name, inconsistent, repeated, invalid.",
        max_length=60,
        examples=["unreadable_designation"],
    )
    position: int | None = Field(
        default=None,
        description="Where reading a designation stopped, counted in characters from 0; only with it.",
        ge=0,
        le=10_000,
        examples=[7],
    )
    expected: str | None = Field(
        default=None,
        description="What could have stood at that position; only with it.",
        max_length=200,
        examples=["an aspect ratio"],
    )


class Problem(Wire):
    """Why a request was not answered, as `application/problem+json` (RFC 9457)."""

    type: str = Field(
        description="A stable name of the kind of problem, `urn:fitment:problem:NAME`; compare it, do not fetch it.",
        max_length=80,
        examples=["urn:fitment:problem:validation"],
    )
    title: str = Field(
        description="The kind of problem in words, the same each time.",
        max_length=80,
        examples=["The request does not match the contract"],
    )
    status: int = Field(description="The HTTP status.", ge=400, le=599, examples=[422])
    detail: str = Field(
        description="What was wrong with this request and what to do.",
        max_length=400,
        examples=["2 faults were found."],
    )
    instance: str = Field(
        description="Names this one answer: `urn:fitment:request:` and the value of the header X-Request-ID.",
        max_length=160,
        examples=["urn:fitment:request:7c1f0f4a9d3e4b5c8a6b2d1e0f9a8b7c"],
    )
    errors: list[Fault] = Field(
        default=[],
        description="The faults one by one, at most 20; empty where there is nothing to point at.",
        max_length=20,
        examples=[[]],
    )
    error_count: int = Field(
        default=0,
        description="How many faults there were, listed or not.",
        ge=0,
        le=10_000_000,
        examples=[2],
    )
