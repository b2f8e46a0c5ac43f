"""What each kind of problem means, for whoever follows the `type` of an error answer (RFC 9457, section 3.1.1)."""

from __future__ import annotations

from typing import Annotated, Final

from fastapi import APIRouter, Path, Response
from markupsafe import escape

from service.api.errors.problem import KINDS, HttpProblem
from service.api.transport.routes import StrictRoute

router = APIRouter(route_class=StrictRoute)

_HEADERS: Final = {
    "Cache-Control": "public, max-age=3600",
    "Content-Security-Policy": "default-src 'none'; frame-ancestors 'none'",
}
_PAGE: Final = """<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="color-scheme" content="light dark">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
</head>
<body>
<h1>{title}</h1>
{body}
</body>
</html>
"""
_BY_NAME: Final = {kind.name: (status, kind) for status, kind in KINDS.items()}


def _page(title: str, body: str) -> Response:
    return Response(_PAGE.format(title=title, body=body), media_type="text/html", headers=_HEADERS)


@router.get("/problems", include_in_schema=False)
async def problems() -> Response:
    """List the kinds of problems."""
    lines = "\n".join(
        f'<li><a href="problems/{kind.name}">{status}: {escape(str(kind.title))}</a></li>'
        for status, kind in KINDS.items()
    )
    return _page("Problems that the service answers", f"<ul>\n{lines}\n</ul>")


@router.get("/problems/{name}", include_in_schema=False)
async def problem(name: Annotated[str, Path(max_length=40)]) -> Response:
    """Say what one kind means and what helps."""
    if name not in _BY_NAME:
        raise HttpProblem(404)
    status, kind = _BY_NAME[name]
    told = f'<p>Status {status}. {escape(str(kind.detail))}</p>\n<p><a href="../problems">All problems</a></p>'
    return _page(str(escape(str(kind.title))), told)
