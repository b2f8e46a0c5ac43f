"""The page to try the service on, with its script, style and icon; none of it comes from elsewhere."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from functools import cache
from typing import Final

from fastapi import APIRouter, Response

from service.api.transport.routes import StrictRoute
from service.page import try_it
from service.page.rendering import asset

router = APIRouter(route_class=StrictRoute)

_CACHED: Final = {"Cache-Control": "public, max-age=300"}


@router.get("/", include_in_schema=False)
async def index() -> Response:
    """Give the page."""
    headers = {**_CACHED, "Content-Security-Policy": try_it.policy()}
    return Response(try_it.page(), media_type="text/html", headers=headers)


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
