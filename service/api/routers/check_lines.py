"""Many vehicles in one request: a check a line, each answered by a line of its own (NDJSON)."""

from __future__ import annotations

from functools import partial
from typing import Any, Final

import orjson
from fastapi import APIRouter, Request, Response
from fastapi.exceptions import RequestValidationError
from starlette.routing import Match
from starlette.types import Scope

from service.api.errors.problem import BODY_PROBLEMS, HttpProblem, body, problem_responses, refusal
from service.api.routers.fitments import CHECK_BODY_BYTES, check_route, checked
from service.api.schemas.request import CheckRequest
from service.api.transport.language import SPEECH, speech_of, spoken
from service.api.transport.observability import observe_verdict
from service.api.transport.request_body import NDJSON_MEDIA_TYPE, read_body
from service.api.transport.routes import StrictRoute
from service.api.transport.work_pool import WorkPool
from service.core.errors import DomainError
from service.core.saying import Amount, Said, say

MAX_LINES: Final = 1000
# About as long as a large comparison, so that one caller's list does not hold up the others' work.
LINES_A_TURN: Final = 50
# As many of the largest checks.
LINES_BODY_BYTES: Final = MAX_LINES * CHECK_BODY_BYTES


class LinesRoute(StrictRoute):
    """A route that suits a request only where its body comes as lines."""

    def matches(self, scope: Scope) -> tuple[Match, Scope]:
        """Return whether path and media type suit."""
        match, child_scope = super().matches(scope)
        if match is Match.NONE or not _has_lines(scope):
            return Match.NONE, {}
        return match, child_scope


def _has_lines(scope: Scope) -> bool:
    sent = dict(scope["headers"]).get(b"content-type", b"")
    return bool(sent.lower().startswith(NDJSON_MEDIA_TYPE.encode("ascii")))


router = APIRouter(prefix="/v1/fitments", route_class=StrictRoute, tags=["fitments"])
on_check = APIRouter(prefix="/v1/fitments", route_class=LinesRoute)
"""The same at the address of a single check; it goes before that one's route."""

_REQUEST: Final[dict[str, Any]] = {
    "requestBody": {
        "required": True,
        "content": {
            NDJSON_MEDIA_TYPE: {
                "schema": {
                    "type": "string",
                    "description": f"1 to {MAX_LINES} lines, each a body as for a check (CheckRequest).",
                }
            }
        },
    }
}
_ANSWER: Final[dict[int | str, dict[str, Any]]] = {
    200: {
        "content": {
            NDJSON_MEDIA_TYPE: {
                "schema": {
                    "type": "string",
                    "description": "A line for each line sent, in the same order: `line` (its number, from 1), "
                    "`status` (as the check alone would have), and `assessment` (Assessment) or `problem` (Problem).",
                }
            }
        }
    }
}


@router.post(
    "/check.ndjson",
    summary="Assess up to 1,000 vehicles, a line each",
    operation_id="check_fitment_lines",
    response_class=Response,
    responses=problem_responses(*BODY_PROBLEMS) | _ANSWER,
    openapi_extra=_REQUEST,
)
@on_check.post("/check", include_in_schema=False)
async def check_lines(request: Request) -> Response:
    """Answer each line with its assessment or its problem; one that cannot be read is not the end of the others.

    A check itself takes such a body too. Empty lines are passed over and counted.
    """
    raw = await read_body(request.scope, request.receive, LINES_BODY_BYTES, NDJSON_MEDIA_TYPE)
    lines = [(number, line) for number, line in enumerate(raw.split(b"\n"), 1) if line.strip()]
    if not lines:
        raise HttpProblem(400, say("The body is empty; a JSON object is expected."))
    if len(lines) > MAX_LINES:
        detail = say(
            "The body has {count} lines; {most} are the most.", count=Amount(len(lines)), most=Amount(MAX_LINES)
        )
        raise HttpProblem(422, detail)
    pool: WorkPool = request.app.state.work_pool
    parts = (lines[start : start + LINES_A_TURN] for start in range(0, len(lines), LINES_A_TURN))
    answers = await pool.run_in_turns(request, partial(_answers, request), parts)
    return Response(b"".join(answers), media_type=NDJSON_MEDIA_TYPE)


def _answers(request: Request, lines: list[tuple[int, bytes]]) -> bytes:
    return b"".join(_answer(number, line, request) for number, line in lines)


def _answer(number: int, line: bytes, request: Request) -> bytes:
    """Return the line that answers one; each may ask for a language and units of its own."""
    scope: Scope = {SPEECH: speech_of(request.scope)}
    status, name, content = 200, "assessment", b""
    try:
        found = checked(_read(number, line, scope))
        observe_verdict(request, found["verdict"])
        content = orjson.dumps(spoken(found, speech_of(scope)))
    except (DomainError, RequestValidationError, HttpProblem) as error:
        problem, count = refusal(error, check_route())
        status, name = problem.status, "problem"
        request_id = request.scope.get("request_id", "")
        content = body(status, problem.detail, request_id, problem.faults, count=count, said=speech_of(scope))
    return b'{"line":%d,"status":%d,"%s":%s}\n' % (number, status, name.encode("ascii"), content)


def _in_line(number: int, words: Said) -> Said:
    """Return the same sentence with the line's number in the whole body, where it names one."""
    if "line" not in words.parameters:
        return words
    return Said(words.template, {**words.parameters, "line": Amount(number)}, capital=words.capital)


def _read(number: int, line: bytes, scope: Scope) -> CheckRequest:
    if len(line) > CHECK_BODY_BYTES:
        raise HttpProblem(413, say("The body may have {most} bytes at most here.", most=Amount(CHECK_BODY_BYTES)))
    try:
        asked = check_route().read(line, scope)
    except HttpProblem as problem:
        # What reads a check takes the line for a whole body, whose first line it is.
        raise HttpProblem(problem.status, _in_line(number, problem.words), faults=problem.faults) from None
    if not isinstance(asked, CheckRequest):
        raise TypeError("The route of a check reads checks.")
    return asked
