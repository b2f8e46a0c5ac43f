"""Who may call and from where: API keys with their rates, hosts, origins; and the headers every answer carries."""

from __future__ import annotations

import hashlib
import hmac
import time
from collections.abc import Mapping, Sequence
from http import HTTPStatus
from typing import Any, Final, cast

from limits import RateLimitItem, parse
from limits.aio.storage import Storage
from limits.storage import storage_from_string
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
# What the policy of the keys is called in the RateLimit headers.
_POLICY: Final = "key"

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

# The client that the extra `redis` installs; a store that does not answer at once must not hold up every caller.
_REDIS: Final[Mapping[str, Any]] = {
    "implementation": "redispy",
    "socket_timeout": 0.25,
    "socket_connect_timeout": 0.25,
}

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


class ApiKeys:
    """The keys that open the protected paths, by hash, and what each may still ask."""

    def __init__(self, entries: Sequence[str], rate: str, storage_uri: str) -> None:
        self._entries = [
            (name, bytes.fromhex(digest)) for name, _, digest in (entry.partition(":") for entry in entries)
        ]
        self._rate: RateLimitItem = parse(rate)
        options: Mapping[str, Any] = _REDIS if storage_uri.startswith("redis") else {}
        # The address decides which kind comes back; an async one does.
        self._storage = cast("Storage", storage_from_string(f"async+{storage_uri}", **options))
        self._policy = f'"{_POLICY}";q={self._rate.amount};w={self._rate.get_expiry()}'

    async def admit(self, presented: bytes | None) -> tuple[str, Sequence[tuple[bytes, bytes]]]:
        """Let the request pass, or refuse it: 401 without a valid key, 429 when its rate is used up.

        Return whose key it is, and the headers that tell the caller what it may still ask.

        References
        ----------
        .. draft-ietf-httpapi-ratelimit-headers, from memory: `RateLimit-Policy` has the quota q and the window w in
           seconds, `RateLimit` what remains (r) and the seconds until the count begins anew (t).
        """
        name = self._owner(presented or b"")
        if name is None:
            raise HttpProblem(401, headers={"WWW-Authenticate": 'ApiKey realm="fitment", header="X-API-Key"'})
        counted = self._rate.key_for(name)
        try:
            count = await self._storage.incr(counted, self._rate.get_expiry())
            ends = await self._storage.get_expiry(counted)
        except self._storage.base_exceptions:
            # A valid key whose count cannot be kept is let in: the store's failure is not the caller's.
            return name, ()
        left, wait_s = max(0, self._rate.amount - count), max(1, round(ends - time.time() + 0.5))
        told = {"RateLimit-Policy": self._policy, "RateLimit": f'"{_POLICY}";r={left};t={wait_s}'}
        if count > self._rate.amount:
            raise HttpProblem(429, headers={"Retry-After": str(wait_s), **told})
        return name, [(header.lower().encode("ascii"), value.encode("ascii")) for header, value in told.items()]

    def _owner(self, presented: bytes) -> str | None:
        """Return whose key it is, comparing with every hash, so that the time tells nothing."""
        digest = hashlib.sha256(presented).digest()
        owner = None
        for name, known in self._entries:
            if hmac.compare_digest(digest, known):
                owner = name
        return owner


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
