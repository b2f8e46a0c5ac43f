"""The plan to compare combinations: long work, so a plain function, which runs in the bounded pool."""

from __future__ import annotations

from typing import Any, Final

import orjson
from fastapi import APIRouter, Request, Response

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.inbound import translate
from service.api.inbound.plan_question import plan_asked
from service.api.render.comparison_answer import CSV_MEDIA_TYPE
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
_MEDIA: Final[dict[int | str, dict[str, Any]]] = {
    200: {
        "content": {
            CSV_MEDIA_TYPE: {
                "schema": {
                    "type": "string",
                    "description": "The combinations as a table with a header line (RFC 4180).",
                },
                "example": "index,id,label,change,verdict\r\n0,C,255 and 285,Front: 255,suitable_with_conditions\r\n",
            },
            HTML_MEDIA_TYPE: {
                "schema": {"type": "string", "description": "The plan as a page to print, without scripts."},
                "example": "<!doctype html><html>…</html>",
            },
        },
        "headers": {"Vary": {"description": "The answer depends on Accept.", "schema": {"type": "string"}}},
    }
}


@router.post(
    "/plan",
    summary="Plan a comparison of up to 12 combinations",
    operation_id="plan_fitments",
    response_model=PlanResult,
    responses=problem_responses(*BODY_PROBLEMS) | _MEDIA,
)
@body_limit(PLAN_BODY_BYTES)
def plan(asked: PlanRequest, request: Request) -> object:
    """Answer with rims, pressures, effects, what a test may show and in which order to drive; or as table or page."""
    (case, found), said = planned(asked), speech_of(request.scope)
    for each in found.combinations:
        observe_verdict(request, each.verdict)
    wanted = preferred(request.headers.get("accept", "*/*"), _OFFERED)
    if wanted == HTML_MEDIA_TYPE:
        headers = _VARY | {"Content-Security-Policy": policy(said.language)}
        return Response(render_plan(case, found, said), media_type=HTML_MEDIA_TYPE, headers=headers)
    answer = spoken(plan_result(case, found), said)
    if wanted == CSV_MEDIA_TYPE:
        return Response(plan_table(answer), headers=_VARY, media_type=CSV_MEDIA_TYPE)
    return Response(orjson.dumps(answer), headers=_VARY, media_type=JSON_MEDIA_TYPE)


def planned(asked: PlanRequest) -> tuple[Case, Plan]:
    """Return the case and the plan that answers a question."""
    case = translate.question(asked)
    return case, make_plan(case, plan_asked(asked))
