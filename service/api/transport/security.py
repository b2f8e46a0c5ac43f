"""From where one may call, by which hosts and origins; and the headers every answer carries."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from http import HTTPStatus
from typing import Final

from starlette.datastructures import Headers
from starlette.middleware.cors import CORSMiddleware
from starlette.responses import Response
from starlette.types import Scope

from service.api.errors.problem import MEDIA_TYPE, HttpProblem, body
from service.core.saying import say

PROTECTED_PREFIX: Final = "/v1/"
# The form of the page asks what a check asks.
_FORM: Final = ("POST", "/")
PROBES_PREFIX: Final = "/health/"
METRICS_PATH: Final = "/metrics"
KEY_HEADER: Final = b"x-api-key"

# What a page of another origin may send; the last two are put there by tracing in browsers (W3C Trace Context).
ALLOWED_HEADERS: Final = (
    "Accept",
    "Content-Type",
    "If-None-Match",
    "X-API-Key",
    "X-Request-ID",
    "traceparent",
    "tracestate",
)

# For every answer that does not bring its own; pages state a wider policy themselves.
DEFAULT_HEADERS: Final[Mapping[bytes, bytes]] = {
    b"x-content-type-options": b"nosniff",
    b"content-security-policy": b"default-src 'none'; frame-ancestors 'none'",
    b"referrer-policy": b"no-referrer",
    b"cache-control": b"no-store",
}


def needs_key(scope: Scope) -> bool:
    """Return whether a request must bring a key, where there are keys."""
    path: str = scope["path"]
    return path.startswith(PROTECTED_PREFIX) or (scope["method"], path) == _FORM


class TrustedHosts:
    """The host names that the service answers to."""

    def __init__(self, patterns: Sequence[str]) -> None:
        self.all = "*" in patterns
        self._exact = {pattern.lower() for pattern in patterns}
        self._suffixes = tuple(pattern[1:].lower() for pattern in patterns if pattern.startswith("*."))

    def refuse_unknown(self, host: bytes | None) -> None:
        """Refuse a request for another host with 400."""
        name = (host or b"").decode("latin-1").lower()
        name = name.partition("]")[0] + "]" if name.startswith("[") else name.partition(":")[0]
        if name not in self._exact and not (self._suffixes and name.endswith(self._suffixes)):
            raise HttpProblem(400, say("This service does not answer to the host that the request names."))


class Cors(CORSMiddleware):
    """Starlette's middleware, outermost so that errors carry its headers too, with its refusals as problems."""

    def preflight_response(self, request_headers: Headers) -> Response:
        """Return the answer to a preflight."""
        response = super().preflight_response(request_headers)
        if response.status_code == HTTPStatus.OK:
            return response
        refusal = say("This origin, method or header is not allowed by the service's CORS settings.")
        content = body(403, refusal, "preflight")
        headers = {
            name: value for name, value in response.headers.items() if name not in ("content-length", "content-type")
        }
        return Response(content, 403, headers, MEDIA_TYPE)
