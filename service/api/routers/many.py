"""The questions about many fitments at once: long work, so plain functions, which run in the bounded pool."""

from __future__ import annotations

from typing import Any

import numpy as np
import orjson
from fastapi import APIRouter, Request, Response

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.inbound import translate
from service.api.inbound.candidate_lists import read_candidates, read_stock
from service.api.render import comparison_answer as render_comparison
from service.api.render import rims_answer as render_rims
from service.api.render import search_answer as render_search
from service.api.render.comparison_answer import CSV_MEDIA_TYPE
from service.api.render.numbers import Json
from service.api.schemas.comparison import CompareRequest, Comparison
from service.api.schemas.rims import RimsRequest, RimsResult
from service.api.schemas.search import SearchRequest, SearchResult
from service.api.transport.accept import preferred
from service.api.transport.language import speech_of, spoken
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.compare import Compared
from service.assessment.batch.compare import compare as compare_candidates
from service.assessment.batch.rim_search import rims_for
from service.assessment.batch.size_search import search as search_sizes
from service.assessment.batch.sizes import grid, marking_for
from service.assessment.batch.sizes import stock as stock_of
from service.locales.speech import Speech

router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])

JSON_MEDIA_TYPE = "application/json"
_VARY = {"Vary": "Accept, Accept-Language"}
# The largest valid body, 500 candidates by text and by numbers, with every character of their texts and keys escaped,
# is some 5.7 MiB.
COMPARE_BODY_BYTES = 6 * 1024 * 1024
# The same of a stock of 5,000 lines, each with an id, a size and all numbers, is some 15 MiB.
SEARCH_BODY_BYTES = 16 * 1024 * 1024
# The same of 48 tyres, each with its designation and all its numbers, is some 200 KiB.
RIMS_BODY_BYTES = 256 * 1024

_PROBLEMS = problem_responses(*BODY_PROBLEMS)
_CSV: dict[int | str, dict[str, Any]] = {
    200: {
        "content": {
            CSV_MEDIA_TYPE: {
                "schema": {"type": "string", "description": "The rows as a table with a header line (RFC 4180)."},
            }
        },
    }
}


@router.post(
    "/compare",
    summary="Compare up to 500 candidates on one vehicle",
    operation_id="compare_fitments",
    response_model=Comparison,
    responses=_PROBLEMS,
)
@body_limit(COMPARE_BODY_BYTES)
def compare(asked: CompareRequest, request: Request) -> object:
    """Answer with a row for each candidate, best first; with `Accept: text/csv`, as `compare.csv` does."""
    wanted = preferred(request.headers.get("accept", "*/*"), (JSON_MEDIA_TYPE, CSV_MEDIA_TYPE))
    if wanted == CSV_MEDIA_TYPE:
        return compare_as_csv(asked, request)
    return Response(orjson.dumps(_comparison(asked, request)), headers=_VARY, media_type=JSON_MEDIA_TYPE)


@router.post(
    "/compare.csv",
    summary="Compare up to 500 candidates as a table",
    operation_id="compare_fitments_csv",
    response_class=Response,
    responses=_PROBLEMS | _CSV,
)
@body_limit(COMPARE_BODY_BYTES)
def compare_as_csv(asked: CompareRequest, request: Request) -> Response:
    """Answer with the rows of a comparison, best first, then the refused ones, for a spreadsheet.

    In a text an apostrophe stands before what a spreadsheet would take for a formula, in an id too:
    `-2` comes back as `'-2`.
    """
    table = render_comparison.table(_comparison(asked, request))
    return Response(table, headers=_VARY, media_type=CSV_MEDIA_TYPE)


def _comparison(asked: CompareRequest, request: Request) -> Json:
    """Return the answer to a comparison in the caller's language."""
    said = speech_of(request.scope)
    answer, found = compared(asked, said)
    _count_verdicts(request, found)
    spoken_answer: Json = spoken(answer, said)
    return spoken_answer


def compared(asked: CompareRequest, said: Speech) -> tuple[Json, Compared | None]:
    """Return the answer to a comparison as plain data, and what it is drawn from, if anything could be read."""
    case = translate.question(asked)
    read = read_candidates(asked.candidates, case.vehicle)
    found = compare_candidates(case, read.candidates, asked.rank_by) if read.candidates else None
    return render_comparison.comparison(case, read, found, asked, said), found


def _count_verdicts(request: Request, found: Compared | None) -> None:
    if found is None:
        return
    counts = np.bincount(found.graded.verdicts, minlength=len(VERDICTS)).tolist()
    for verdict, count in zip(VERDICTS, counts, strict=True):
        observe_verdict(request, verdict, count)


@router.post(
    "/search",
    summary="Find sizes that would suit a vehicle",
    operation_id="search_fitments",
    response_model=SearchResult,
    responses=_PROBLEMS,
)
@body_limit(SEARCH_BODY_BYTES)
def search(asked: SearchRequest, request: Request) -> object:
    """Answer with the best sizes of a grid or of a stock on the rims offered, what they need, and why so few."""
    answer, found = searched(asked, speech_of(request.scope))
    _count_verdicts(request, found)
    return answer


def searched(asked: SearchRequest, said: Speech) -> tuple[Json, Compared | None]:
    """Return the answer to a search as plain data, and what it is drawn from, if anything was found."""
    case = translate.question(asked)
    stock = read_stock(asked.stock) if asked.stock else None
    front = [translate.rim(each) for each in asked.rims.front]
    rear = [translate.rim(each) for each in asked.rims.rear] or front
    sizes = grid(marking_for(case)) if stock is None else stock_of(stock.designations)
    found = search_sizes(case, sizes, (front, rear), translate.wanted(asked))
    indices, refused = (None, ()) if stock is None else (stock.indices, stock.refused)
    return render_search.search_result(asked, case, found, indices, refused, said), found.compared


@router.post(
    "/rims",
    summary="Find the rims that would do for the tyres of a vehicle",
    operation_id="find_rims",
    response_model=RimsResult,
    responses=_PROBLEMS,
)
@body_limit(RIMS_BODY_BYTES)
def rims(asked: RimsRequest) -> Json:
    """Answer with the widths and windows of offsets for each tyre, what bounds them, and the fewest rims for all."""
    case = translate.question(asked)
    return render_rims.rims_result(case, rims_for(case, translate.rims_asked(asked)))
