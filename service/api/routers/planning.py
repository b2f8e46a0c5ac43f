"""The plan to compare combinations: long work, so a plain function, which runs in the bounded pool."""

from __future__ import annotations

from typing import Any, Final

import orjson
from fastapi import APIRouter, Request, Response

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.inbound import translate
from service.api.inbound.plan_question import plan_asked
from service.api.render.comparison_answer import CSV_MEDIA_TYPE
from service.api.render.numbers import Json
from service.api.render.plan_answer import plan_result, plan_table
from service.api.schemas.planned import PlanRequest, PlanResult
from service.api.transport.accept import preferred
from service.api.transport.language import speech_of, spoken
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.assessment.batch.plan import Plan
from service.assessment.batch.plan import plan as make_plan
from service.assessment.case import Case
from service.page.plan_report import render_plan
from service.page.report import policy

router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])

JSON_MEDIA_TYPE: Final = "application/json"
HTML_MEDIA_TYPE: Final = "text/html"
_OFFERED: Final = (JSON_MEDIA_TYPE, CSV_MEDIA_TYPE, HTML_MEDIA_TYPE)
_VARY: Final = {"Vary": "Accept, Accept-Language"}
# The largest valid body, 12 combinations with every character of their texts and keys escaped, is some 150 KiB.
PLAN_BODY_BYTES: Final = 192 * 1024
_PROBLEMS: Final = problem_responses(*BODY_PROBLEMS)
_CSV: Final[dict[int | str, dict[str, Any]]] = {
    200: {
        "content": {
            CSV_MEDIA_TYPE: {
                "schema": {
                    "type": "string",
                    "description": "The combinations as a table with a header line (RFC 4180).",
                },
            },
        },
    }
}
_HTML: Final[dict[int | str, dict[str, Any]]] = {
    200: {
        "content": {
            HTML_MEDIA_TYPE: {
                "schema": {"type": "string", "description": "The plan as a page to print, without scripts."},
            },
        },
    }
}


@router.post(
    "/plan",
    summary="Plan a comparison of up to 12 combinations",
    operation_id="plan_fitments",
    response_model=PlanResult,
    responses=_PROBLEMS,
)
@body_limit(PLAN_BODY_BYTES)
def plan(asked: PlanRequest, request: Request) -> object:
    """Answer with rims, pressures, effects, what a test may show and in which order to drive.

    With `Accept: text/csv` or `text/html` it answers as `plan.csv` and `plan.html` do.
    """
    wanted = preferred(request.headers.get("accept", "*/*"), _OFFERED)
    if wanted == HTML_MEDIA_TYPE:
        return plan_as_page(asked, request)
    if wanted == CSV_MEDIA_TYPE:
        return plan_as_csv(asked, request)
    return Response(orjson.dumps(_plan_in_words(asked, request)), headers=_VARY, media_type=JSON_MEDIA_TYPE)


@router.post(
    "/plan.csv",
    summary="Plan a comparison, as a table",
    operation_id="plan_fitments_csv",
    response_class=Response,
    responses=_PROBLEMS | _CSV,
)
@body_limit(PLAN_BODY_BYTES)
def plan_as_csv(asked: PlanRequest, request: Request) -> Response:
    """Answer with a row for each combination, for a spreadsheet.

    In a text an apostrophe stands before what a spreadsheet would take for a formula, in an id too:
    `-2` comes back as `'-2`.
    """
    return Response(plan_table(_plan_in_words(asked, request)), headers=_VARY, media_type=CSV_MEDIA_TYPE)


@router.post(
    "/plan.html",
    summary="Plan a comparison, as a page to print",
    operation_id="plan_fitments_page",
    response_class=Response,
    responses=_PROBLEMS | _HTML,
)
@body_limit(PLAN_BODY_BYTES)
def plan_as_page(asked: PlanRequest, request: Request) -> Response:
    """Answer with the plan as a page, self-contained and printable."""
    said = speech_of(request.scope)
    headers = _VARY | {"Content-Security-Policy": policy(said.language)}
    return Response(render_plan(*_counted(asked, request), said), media_type=HTML_MEDIA_TYPE, headers=headers)


def _plan_in_words(asked: PlanRequest, request: Request) -> Json:
    """Return the answer as plain data in the caller's language."""
    spoken_answer: Json = spoken(plan_result(*_counted(asked, request)), speech_of(request.scope))
    return spoken_answer


def _counted(asked: PlanRequest, request: Request) -> tuple[Case, Plan]:
    """Return the case and its plan, whose verdicts are counted."""
    case, found = planned(asked)
    for each in found.combinations:
        observe_verdict(request, each.verdict)
    return case, found


def planned(asked: PlanRequest) -> tuple[Case, Plan]:
    """Return the case and the plan that answers a question."""
    case = translate.question(asked)
    return case, make_plan(case, plan_asked(asked))
