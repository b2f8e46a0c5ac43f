"""The same question as a drawing and as a printable report: long work, which runs in the bounded pool."""

from __future__ import annotations

from functools import partial
from typing import Annotated, Any, Final, Literal

from fastapi import APIRouter, Query, Request, Response

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.inbound import translate
from service.api.routers.fitments import CHECK_BODY_BYTES
from service.api.schemas.request import CheckRequest
from service.api.transport.language import speech_of
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.api.transport.work_pool import run_bounded
from service.assessment.answer.assess import assess
from service.drawing import paper
from service.drawing.patches import draw_patches
from service.drawing.scene import AxleChoice
from service.drawing.section import draw_section
from service.locales.speech import Speech
from service.page.report import policy, render_report

router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])

View = Literal["section", "patches"]
SVG: Final = "image/svg+xml"
_PROBLEMS: Final = problem_responses(*BODY_PROBLEMS)


def _document(description: str, media_type: str) -> dict[int | str, dict[str, Any]]:
    return {200: {"description": description, "content": {media_type: {"schema": {"type": "string"}}}}, **_PROBLEMS}


@router.post(
    "/drawing",
    summary="Draw present against proposed, to scale",
    operation_id="draw_fitment",
    response_class=Response,
    responses=_document("A drawing without scripts, lines by ISO 128, light and dark by the reader's choice.", SVG),
)
@body_limit(CHECK_BODY_BYTES)
async def drawing(
    asked: CheckRequest,
    request: Request,
    view: Annotated[
        View,
        Query(
            description="`section`: cut through the wheels, seen from the rear; `patches`: where tyres meet the road.",
            examples=["section"],
        ),
    ] = "section",
    axles: Annotated[AxleChoice, Query(description="Which axles to draw.", examples=["both"])] = "both",
    *,
    window: Annotated[
        bool,
        Query(
            description="Whether a section shows beneath each wheel the offsets that do, as `rims` finds them.",
            examples=[False],
        ),
    ] = False,
) -> Response:
    """Answer with the drawing; what a missing field prevents is left out and named in a note."""
    said = speech_of(request.scope)
    drawn = await run_bounded(request, partial(_drawn, asked, view, axles, said, window=window))
    allowed = f"default-src 'none'; style-src {paper.style_hash()}; frame-ancestors 'none'"
    return Response(drawn, media_type=SVG, headers={"Content-Security-Policy": allowed})


def _drawn(asked: CheckRequest, view: View, axles: AxleChoice, said: Speech, *, window: bool) -> str:
    found = assess(translate.case(asked))
    return draw_section(found, axles, said, window=window) if view == "section" else draw_patches(found, axles, said)


@router.post(
    "/report",
    summary="Write a report to print",
    operation_id="report_fitment",
    response_class=Response,
    responses=_document("One self-contained page of HTML for A4 or Letter, without scripts.", "text/html"),
)
@body_limit(CHECK_BODY_BYTES)
def report(asked: CheckRequest, request: Request) -> Response:
    """Answer with question, verdict, drawings, findings with their sources, actions and cautions."""
    found = assess(translate.case(asked))
    observe_verdict(request, found.verdict)
    speech = speech_of(request.scope)
    headers = {"Content-Security-Policy": policy(speech.language)}
    return Response(render_report(found, speech), media_type="text/html", headers=headers)
