"""The page, with its scripts, styles and icon; and its form, where a browser runs no script."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from functools import cache, partial
from typing import Annotated, Final, cast
from urllib.parse import parse_qsl

import orjson
from fastapi import APIRouter, Query, Request, Response
from fastapi.exceptions import RequestValidationError
from starlette.types import Scope

from service.api.errors.problem import HttpProblem, refusal
from service.api.inbound import translate
from service.api.routers.fitments import CHECK_BODY_BYTES, check_route
from service.api.schemas.request import CheckRequest
from service.api.schemas.vocabulary import LanguageCode
from service.api.transport.language import SPEECH, language_headers, speech_of
from service.api.transport.observability import observe_verdict
from service.api.transport.request_body import FORM_MEDIA_TYPE, read_body
from service.api.transport.routes import StrictRoute
from service.api.transport.work_pool import run_bounded
from service.assessment.answer.assess import Assessment, assess
from service.core.errors import DomainError
from service.core.saying import say
from service.locales.speech import Speech, speech
from service.page import form, try_it
from service.page.rendering import asset
from service.page.report import policy, render_report

router = APIRouter(route_class=StrictRoute)

Chosen = Annotated[LanguageCode | None, Query()]
_CACHED: Final = {"Cache-Control": "public, max-age=300"}
# Some three times as many as the form has.
_MOST_ENTRIES: Final = 300


@router.get("/", include_in_schema=False)
async def index(request: Request, language: Chosen = None) -> Response:
    """Give the page in the language of the link, else in the browser's."""
    _choose(request.scope, language)
    said = speech_of(request.scope)
    return _page(request, try_it.page(said.language), {**_CACHED, "Content-Security-Policy": try_it.policy()})


@router.post("/", include_in_schema=False)
async def submit(request: Request, language: Chosen = None) -> Response:
    """Answer the form with the report, or with what is to be corrected."""
    _choose(request.scope, language)
    raw = await read_body(request.scope, request.receive, CHECK_BODY_BYTES, FORM_MEDIA_TYPE)
    asked = form.body_of(_entries(raw), speech_of(request.scope).language)
    try:
        question = cast("CheckRequest", check_route().read(orjson.dumps(asked), request.scope))
        found, told = await run_bounded(request, partial(_report, question, speech_of(request.scope)))
    except (DomainError, RequestValidationError) as error:
        problem, _ = refusal(error, check_route())
        return _corrections(request, problem)
    observe_verdict(request, found.verdict)
    return _page(request, told, {"Content-Security-Policy": policy(speech_of(request.scope).language)})


def _report(question: CheckRequest, said: Speech) -> tuple[Assessment, str]:
    found = assess(translate.case(question))
    return found, render_report(found, said)


def _corrections(request: Request, problem: HttpProblem) -> Response:
    own = [each for each in problem.faults if each.code != "required" or not form.is_followed(each.pointer)]
    faults = [(form.label_of(each.pointer), each.detail) for each in own or problem.faults]
    headers = {"Content-Security-Policy": try_it.policy()}
    return _page(request, try_it.faults(faults, speech_of(request.scope)), headers, problem.status)


def _choose(scope: Scope, language: LanguageCode | None) -> None:
    if language is not None:
        scope[SPEECH] = speech(language)


def _entries(raw: bytes) -> list[tuple[str, str]]:
    try:
        return parse_qsl(raw.decode("ascii"), max_num_fields=_MOST_ENTRIES, errors="strict")
    except ValueError:
        raise HttpProblem(400, say("The form cannot be read; send it from the page.")) from None


def _page(request: Request, content: str, headers: dict[str, str], status: int = 200) -> Response:
    told = {name.decode(): value.decode() for name, value in language_headers(request.scope, set())}
    return Response(content, status, {**headers, **told}, "text/html")


@cache
def _content(name: str) -> bytes:
    """Return the bytes of a file: the same for every connection that takes its time."""
    return asset(name).encode()


def _file(media_type: str, name: str) -> Callable[[], Coroutine[None, None, Response]]:
    async def file() -> Response:
        return Response(_content(name), media_type=media_type, headers=_CACHED)

    return file


for _path, (_media_type, _name) in try_it.FILES.items():
    router.add_api_route(_path, _file(_media_type, _name), include_in_schema=False)
