"""The page that shows the OpenAPI document, all from this process: no outside network."""

from __future__ import annotations

from collections.abc import Callable, Coroutine
from functools import cache
from importlib import resources
from typing import Final

from fastapi import FastAPI, Request, Response
from fastapi.concurrency import run_in_threadpool
from fastapi.routing import APIRoute

from service.api.contract.openapi_document import document_bytes
from service.api.transport.routes import StrictRoute
from service.api.transport.validators import cacheable, entity_tag

_PAGE_POLICY: Final = (
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
    "connect-src 'self'; frame-ancestors 'none'"
)
_PAGE: Final = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Fitment service: the contract</title>
<meta name="color-scheme" content="light dark">
<link rel="icon" href="page.svg" type="image/svg+xml">
<link rel="stylesheet" href="docs/page.css">
<link rel="stylesheet" href="docs/house.css">
</head>
<body>
<nav><a href="./">Try the service</a> <a href="openapi.json">openapi.json</a> <a href="problems">Problems</a></nav>
<div id="contract"></div>
<script src="docs/page.js"></script>
<script src="docs/start.js"></script>
</body>
</html>
"""
# The page's own style knows no dark side: its colours are turned round, pictures back again.
_HOUSE: Final = """body { margin: 0; background: #fff; }
nav { padding: 0.75rem 1rem; font-family: sans-serif; }
nav a { margin-right: 1rem; color: #0b57a4; }
@media (prefers-color-scheme: dark) {
  body { background: #111; }
  nav a { color: #9cc7f3; }
  #contract { filter: invert(1) hue-rotate(180deg); background: #fff; }
  #contract svg, #contract img { filter: invert(1) hue-rotate(180deg); }
}
"""
_START: Final = 'SwaggerUIBundle({url: "openapi.json", dom_id: "#contract", deepLinking: true, validatorUrl: null});\n'
_CACHED: Final = {"Cache-Control": "public, max-age=300"}
_ASSETS: Final = resources.files("service.api.contract") / "assets"


def routes() -> list[APIRoute]:
    """Return the routes of the document and its page."""
    files = {
        "/docs": ("text/html", _PAGE.encode()),
        "/docs/house.css": ("text/css", _HOUSE.encode()),
        "/docs/start.js": ("text/javascript", _START.encode()),
        "/docs/page.js": ("text/javascript", (_ASSETS / "swagger-ui-bundle.js").read_bytes()),
        "/docs/page.css": ("text/css", (_ASSETS / "swagger-ui.css").read_bytes()),
    }
    made: list[APIRoute] = [StrictRoute("/openapi.json", _document(), include_in_schema=False)]
    for path, (media_type, content) in files.items():
        made.append(StrictRoute(path, _file(media_type, content), include_in_schema=False))
    return made


def _document() -> Callable[[Request], Coroutine[None, None, Response]]:
    @cache
    def made(app: FastAPI) -> tuple[bytes, str]:
        content = document_bytes(app)
        return content, entity_tag(content)

    async def openapi(request: Request) -> Response:
        # The first time it takes a second to make, in which others are answered.
        content, tag = await run_in_threadpool(made, request.app)
        return cacheable(request, content, "application/json", _CACHED, tag)

    return openapi


def _file(media_type: str, content: bytes) -> Callable[[], Coroutine[None, None, Response]]:
    headers = {**_CACHED, "Content-Security-Policy": _PAGE_POLICY}

    async def file() -> Response:
        return Response(content, media_type=media_type, headers=headers)

    return file
