"""The questions about fitments."""

from __future__ import annotations

from functools import cache

from fastapi import APIRouter, Request

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.inbound import translate
from service.api.render.assessment_answer import assessment, told_in
from service.api.render.driving_answer import measured_first
from service.api.render.numbers import Json
from service.api.schemas.assessment import Assessment
from service.api.schemas.request import CheckRequest
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.assessment.answer.assess import assess
from service.assessment.answer.measure_first import measure_first

router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])

# The largest valid body, four fitments by text and by numbers, with every character escaped, is some 25 KiB.
CHECK_BODY_BYTES = 32 * 1024


@router.post(
    "/check",
    summary="Assess one candidate on one vehicle",
    operation_id="check_fitment",
    response_model=Assessment,
    responses=problem_responses(*BODY_PROBLEMS),
)
@body_limit(CHECK_BODY_BYTES)
async def check(asked: CheckRequest, request: Request) -> object:
    """Answer with a verdict, its findings, the numbers behind them, what to do and what to beware of."""
    found = checked(asked)
    observe_verdict(request, found["verdict"])
    return found


@cache
def check_route() -> StrictRoute:
    """Return the route of a check, which knows how to read one."""
    return next(route for route in router.routes if isinstance(route, StrictRoute) and route.name == "check")


def checked(asked: CheckRequest) -> Json:
    """Return the answer to a check as plain data."""
    case = translate.case(asked)
    found = assessment(assess(case, told_in(asked.detail)), asked.detail)
    if asked.measure_first:
        found["measure_first"] = measured_first(measure_first(case))
    return found
