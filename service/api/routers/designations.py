"""Designations taken apart."""

from __future__ import annotations

from typing import Annotated

from fastapi import APIRouter, Query
from fastapi.responses import JSONResponse

from service.api.errors.problem import problem_responses
from service.api.render.reference import designation
from service.api.schemas.designation import RimParts, TyreParts
from service.api.transport.routes import StrictRoute
from service.core.errors import DomainError
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.tyre import TYRE_PATTERN, parse_tyre

router = APIRouter(prefix="/v1/designations", route_class=StrictRoute, tags=["designations"])
POINTER = "/query/text"


@router.get(
    "/tyre",
    summary="Take a tyre designation apart",
    operation_id="read_tyre_designation",
    response_model=TyreParts,
    responses=problem_responses(405, 422, 500),
)
async def tyre(
    text: Annotated[
        str,
        Query(
            description="The designation as on the sidewall.",
            examples=["225/70R15C 112/110R (115N)"],
            json_schema_extra={"pattern": TYRE_PATTERN, "minLength": 1, "maxLength": 100},
        ),
    ],
) -> JSONResponse:
    """Give its parts, its canonical spelling and what was assumed."""
    try:
        return JSONResponse(designation(parse_tyre(text)))
    except DomainError as error:
        raise error.at(POINTER) from None


@router.get(
    "/rim",
    summary="Take a rim designation apart",
    operation_id="read_rim_designation",
    response_model=RimParts,
    responses=problem_responses(405, 422, 500),
)
async def rim(
    text: Annotated[
        str,
        Query(
            description="The designation as on the wheel.",
            examples=["8J x 18 H2 ET45"],
            json_schema_extra={"pattern": RIM_PATTERN, "minLength": 1, "maxLength": 100},
        ),
    ],
) -> JSONResponse:
    """Give its parts, its canonical spelling and what was assumed."""
    try:
        return JSONResponse(designation(parse_rim(text)))
    except DomainError as error:
        raise error.at(POINTER) from None
