"""Designations taken apart."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any

from fastapi import APIRouter, Query, Request
from fastapi.responses import JSONResponse

from service.api.errors.problem import problem_responses
from service.api.render.reference import designation
from service.api.schemas.designation import RimParts, TyreParts
from service.api.schemas.request import MAX_DESIGNATION
from service.api.transport.language import speech_of, spoken
from service.api.transport.routes import StrictRoute
from service.core.errors import DomainError
from service.designation.rim import RIM_PATTERN, RimDesignation, parse_rim
from service.designation.tyre import TYRE_PATTERN, TyreDesignation, parse_tyre

router = APIRouter(prefix="/v1/designations", route_class=StrictRoute, tags=["designations"])
POINTER = "/query/text"


def _designation(description: str, example: str, pattern: str) -> Any:  # noqa: ANN401 - as FastAPI's Query
    """Return the query parameter whose pattern is published; the reader itself refuses, since it says where and why."""
    extra: dict[str, Any] = {"pattern": pattern, "minLength": 1, "maxLength": MAX_DESIGNATION}
    return Query(description=description, examples=[example], json_schema_extra=extra)


def _parts(read: Callable[[str], TyreDesignation | RimDesignation], text: str, request: Request) -> JSONResponse:
    try:
        return JSONResponse(spoken(designation(read(text)), speech_of(request.scope)))
    except DomainError as error:
        raise error.at(POINTER) from None


@router.get(
    "/tyre",
    summary="Take a tyre designation apart",
    operation_id="read_tyre_designation",
    response_model=TyreParts,
    responses=problem_responses(405, 422, 500),
)
async def tyre(
    text: Annotated[
        str, _designation("The designation as on the sidewall.", "225/70R15C 112/110R (115N)", TYRE_PATTERN)
    ],
    request: Request,
) -> JSONResponse:
    """Give its parts, its canonical spelling and what was assumed."""
    return _parts(parse_tyre, text, request)


@router.get(
    "/rim",
    summary="Take a rim designation apart",
    operation_id="read_rim_designation",
    response_model=RimParts,
    responses=problem_responses(405, 422, 500),
)
async def rim(
    text: Annotated[str, _designation("The designation as on the wheel.", "8J x 18 H2 ET45", RIM_PATTERN)],
    request: Request,
) -> JSONResponse:
    """Give its parts, its canonical spelling and what was assumed."""
    return _parts(parse_rim, text, request)
