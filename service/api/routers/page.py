"""The page to try the service on, with its script, style and icon; none of it comes from elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from typing import Annotated, Final

from fastapi import APIRouter, Query, Request, Response

from service.api.schemas.vocabulary import LanguageCode
from service.api.transport.language import SPEECH, speech_of
from service.api.transport.routes import StrictRoute
from service.locales.speech import speech
from service.page import try_it
from service.page.rendering import asset

router = APIRouter(route_class=StrictRoute)

_CACHED: Final = {"Cache-Control": "public, max-age=300"}


@router.get("/", include_in_schema=False)
async def index(request: Request, language: Annotated[LanguageCode | None, Query()] = None) -> Response:
    """Give the page in the language of the link, else in the browser's."""
    if language is not None:
        request.scope[SPEECH] = speech(language)
    headers = {**_CACHED, "Content-Security-Policy": try_it.policy()}
    return Response(try_it.page(speech_of(request.scope).language), media_type="text/html", headers=headers)


def _file(media_type: str, name: str) -> Callable[[], Coroutine[None, None, Response]]:
    async def file() -> Response:
        return Response(asset(name), media_type=media_type, headers=_CACHED)

    return file


for _path, (_media_type, _name) in try_it.FILES.items():
    router.add_api_route(_path, _file(_media_type, _name), include_in_schema=False)
