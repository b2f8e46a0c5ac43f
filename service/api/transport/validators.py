"""Answers that a caller may keep: an entity tag, and 304 where the caller's copy is still right (RFC 9110, 13.1.2)."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping

from starlette.requests import Request
from starlette.responses import Response


def entity_tag(content: bytes) -> str:
    """Return the tag of these bytes."""
    return f'"{hashlib.sha256(content).hexdigest()[:32]}"'


def cacheable(
    request: Request, content: bytes, media_type: str, headers: Mapping[str, str], tag: str | None = None
) -> Response:
    """Return the content with its tag, or 304 without it where the request names the tag."""
    tag = entity_tag(content) if tag is None else tag
    tagged = {"ETag": tag, **headers}
    wanted = request.headers.get("if-none-match", "")
    if wanted == "*" or tag in [each.strip().removeprefix("W/") for each in wanted.split(",")]:
        return Response(status_code=304, headers=tagged)
    return Response(content, media_type=media_type, headers=tagged)
