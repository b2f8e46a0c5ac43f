"""Reading of a request body within its limits: media type, size, time, strict JSON."""

from __future__ import annotations

import asyncio
from typing import Final

from starlette.types import Receive, Scope

from service.api.errors.problem import HttpProblem
from service.api.transport import strict_json
from service.core.saying import Amount, say

# The protocol beneath sets this in the scope when the whole body is there: waiting then needs no clock.
BODY_ARRIVED: Final = "fitment.body_arrived"

JSON_MEDIA_TYPE: Final = "application/json"
NDJSON_MEDIA_TYPE: Final = "application/x-ndjson"
FORM_MEDIA_TYPE: Final = "application/x-www-form-urlencoded"
# Spellings that need no closer look.
_PLAIN_TYPES: Final = frozenset(
    {b"application/json", b"application/json; charset=utf-8", b"application/json;charset=utf-8"}
)


# Where the scope says how much of the space its body holds.
_TAKEN: Final = "fitment.body_space"
# Bodies up to this size are always taken: the server beneath holds as much of each connection anyway.
_SMALL_BYTES: Final = 64 * 1024


class BodySpace:
    """The memory that large bodies may hold together, from their first byte to the end of their request.

    Many slow senders would fill all there is, and so would a queue of long work with large bodies.
    """

    def __init__(self, max_bytes: int, retry_after_s: int) -> None:
        self._free = max_bytes
        self._retry_after_s = retry_after_s

    def take(self, size: int) -> None:
        """Take some of it, or refuse with 503."""
        if size > self._free:
            detail = say("Too many large bodies are on their way in; wait as long as Retry-After says.")
            raise HttpProblem(503, detail, headers={"Retry-After": str(self._retry_after_s)})
        self._free -= size

    def give_back(self, size: int) -> None:
        """Give back what was taken."""
        self._free += size


class ClientGone(Exception):
    """The client left before its request was complete or its answer due; there is nobody to answer."""


async def read_json(scope: Scope, receive: Receive, max_bytes: int) -> object:
    """Return the value in the body, or refuse: 400, 408, 413, 415."""
    return parse(await read_body(scope, receive, max_bytes))


def parse(raw: bytes) -> object:
    """Return the value that a body spells in strict JSON, or refuse: 400."""
    try:
        value = strict_json.parse(raw)
    except strict_json.MalformedJson as error:
        raise HttpProblem(400, error.detail) from None
    # Most bodies have none, and a look at the bytes is quicker than one at every member.
    return strict_json.without_nulls(value) if b"null" in raw else value


async def read_body(scope: Scope, receive: Receive, max_bytes: int, taken: str = JSON_MEDIA_TYPE) -> bytes:
    """Return the body of the media type taken, or refuse: 408, 413, 415. Nothing is read of one refused by its head."""
    headers: dict[bytes, bytes] = dict(scope["headers"])
    media_type = headers.get(b"content-type", b"")
    if media_type not in _PLAIN_TYPES or taken != JSON_MEDIA_TYPE:
        _check_media_type(media_type, taken)
    if b"content-encoding" in headers:
        detail = say("The body came compressed (Content-Encoding); send it uncompressed.")
        raise HttpProblem(415, detail, headers=_taken(taken))
    length = headers.get(b"content-length")
    if length is not None and int(length) > max_bytes:
        raise _too_large(max_bytes)
    if BODY_ARRIVED in scope:
        return await _read(receive, max_bytes, scope)
    return await _read_in_time(receive, max_bytes, scope)


async def _read(receive: Receive, max_bytes: int, scope: Scope) -> bytes:
    message = await receive()
    first: bytes = message.get("body", b"")
    if message["type"] == "http.request" and not message.get("more_body", False) and len(first) <= max_bytes:
        return first
    space: BodySpace = scope["app"].state.body_space
    parts: list[bytes] = []
    size = 0
    while message["type"] == "http.request":
        parts.append(message.get("body", b""))
        size += len(parts[-1])
        if size > max_bytes:
            raise _too_large(max_bytes)
        if size > _SMALL_BYTES:
            space.take(size - scope.get(_TAKEN, 0))
            scope[_TAKEN] = size
        if not message.get("more_body", False):
            return b"".join(parts)
        message = await receive()
    raise ClientGone


def let_go_of_body(scope: Scope) -> None:
    """Give back the space that the request's body took, at the end of the request."""
    if _TAKEN in scope:
        space: BodySpace = scope["app"].state.body_space
        space.give_back(scope.pop(_TAKEN))


async def _read_in_time(receive: Receive, max_bytes: int, scope: Scope) -> bytes:
    timeout_s: float = scope["app"].state.settings.body_timeout_s
    try:
        async with asyncio.timeout(timeout_s):
            return await _read(receive, max_bytes, scope)
    except TimeoutError:
        # The rest of the body may still come and would be taken for a request, so this connection ends.
        detail = say("The body did not arrive within {time}.", time=Amount(timeout_s, "s", 1))
        raise HttpProblem(408, detail, headers={"Connection": "close"}) from None


def _check_media_type(media_type: bytes, taken: str) -> None:
    kind, *parameters = [part.strip() for part in media_type.decode("latin-1").lower().split(";")]
    if kind != taken:
        detail = say("Send the body as {media_type}, with the header Content-Type saying so.", media_type=taken)
        raise HttpProblem(415, detail, headers=_taken(taken))
    for parameter in parameters:
        if parameter and parameter.replace('"', "") not in ("charset=utf-8", "charset=utf8"):
            detail = say("Content-Type takes no parameter but charset=utf-8; send the body in UTF-8.")
            raise HttpProblem(415, detail, headers=_taken(taken))


def _taken(media_type: str) -> dict[str, str]:
    return {"Accept": media_type, "Accept-Post": media_type, "Accept-Encoding": "identity"}


def _too_large(max_bytes: int) -> HttpProblem:
    return HttpProblem(413, say("The body may have {most} bytes at most here.", most=Amount(max_bytes)))
