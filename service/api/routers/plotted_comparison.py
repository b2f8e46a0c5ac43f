"""A comparison as a plot: long work, which runs in the bounded pool."""

from __future__ import annotations

from typing import Annotated, Any, Final

from fastapi import APIRouter, Query, Request, Response

from service.api.errors.problem import BODY_PROBLEMS, HttpProblem, problem_responses
from service.api.inbound import translate
from service.api.inbound.candidate_lists import Read, read_candidates
from service.api.schemas.comparison import PlotRequest
from service.api.transport.language import speech_of
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.api.transport.work_pool import run_bounded
from service.assessment.batch.compare import explained
from service.core.saying import Amount, Said, say
from service.drawing import paper
from service.drawing.plot_sheet import LETTERS, Plotted
from service.drawing.plots import PLOTS, PlotName

router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])

SVG: Final = "image/svg+xml"
# The largest valid body, 12 candidates with every character of their texts and keys escaped, is some 150 KiB; beyond it
# a list of several hundred is still told how many are drawn.
PLOT_BODY_BYTES: Final = 512 * 1024
_PROBLEMS: Final = problem_responses(*BODY_PROBLEMS)
_SVG: Final[dict[int | str, dict[str, Any]]] = {
    200: {
        "content": {
            SVG: {
                "schema": {"type": "string", "description": "A plot without scripts, as narrow as a telephone."},
            },
        },
    }
}


@router.post(
    "/compare.svg",
    summary="Plot a comparison of up to 12 candidates",
    operation_id="compare_fitments_svg",
    response_class=Response,
    responses=_PROBLEMS | _SVG,
)
@body_limit(PLOT_BODY_BYTES)
async def compare_as_plot(
    asked: PlotRequest,
    request: Request,
    plot: Annotated[
        PlotName,
        Query(
            description="`grip`: dry grip against wet reserve, with bands; `balance`: towards understeer or oversteer, "
            "with bands; `outlines`: all wheels over one another at one scale, per axle.",
            examples=["grip"],
        ),
    ] = "grip",
) -> Response:
    """Answer with the candidates in one plot, lettered A to L by their places in the request."""
    drawn = await run_bounded(request, _plotted, asked, request, plot)
    allowed = f"default-src 'none'; style-src {paper.style_hash()}; frame-ancestors 'none'"
    return Response(drawn, media_type=SVG, headers={"Content-Security-Policy": allowed})


def _plotted(asked: PlotRequest, request: Request, plot: PlotName) -> str:
    case = translate.question(asked)
    read = read_candidates(asked.candidates, case.vehicle)
    if not read.candidates:
        raise HttpProblem(422, faults=[fault for each in read.refused for fault in each.faults])
    found = explained(case, read.candidates)
    for each in found:
        observe_verdict(request, each.verdict)
    listed = [
        Plotted(LETTERS[at], each)
        for at, each in zip(read.indices, found, strict=True)
        if each.verdict in asked.verdicts
    ]
    notes = [*_refused(read), *_left_out(len(found) - len(listed))]
    return PLOTS[plot](listed, notes, speech_of(request.scope))


def _refused(read: Read) -> list[Said]:
    return [
        say("{letter} cannot be read: {reason}", letter=LETTERS[each.place], reason=each.faults[0].detail)
        for each in read.refused
    ]


def _left_out(count: int) -> list[Said]:
    if not count:
        return []
    return [say("Left out for their verdicts: {count}.", count=Amount(count))]
