"""The keys that open the protected paths, by hash, and what each may still ask."""

from __future__ import annotations

import hashlib
import hmac
import time
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final, cast

from limits import RateLimitItem, parse
from limits.aio.storage import MemoryStorage, Storage
from limits.aio.strategies import SlidingWindowCounterRateLimiter
from limits.storage import storage_from_string

from service.api.errors.problem import HttpProblem

# What the policy of the keys is called in the RateLimit headers.
_POLICY: Final = "key"
# Nobody is sent away for longer at a time: a client that obeys would sleep through a day after one burst.
LONGEST_WAIT_S: Final = 600
# How long a store that failed is left alone, so that its time-out does not hold up every request.
STORE_REST_S: Final = 5.0

# The client that the extra `redis` installs; a store that does not answer at once must not hold up every caller.
_REDIS: Final[Mapping[str, Any]] = {
    "implementation": "redispy",
    "socket_timeout": 0.25,
    "socket_connect_timeout": 0.25,
}


class ApiKeys:
    """The keys; rates are counted over a moving window, by two counters a key, however high the rate."""

    def __init__(self, entries: Sequence[str], rate: str, storage_uri: str, note_failure: Callable[[], None]) -> None:
        self._entries = [
            (name, bytes.fromhex(digest)) for name, _, digest in (entry.partition(":") for entry in entries)
        ]
        self._rate: RateLimitItem = parse(rate)
        options: Mapping[str, Any] = _REDIS if storage_uri.startswith("redis") else {}
        # The address decides which kind comes back; an async one does.
        self._storage = cast("Storage", storage_from_string(f"async+{storage_uri}", **options))
        self._shared = SlidingWindowCounterRateLimiter(self._storage)
        # Counts for this process alone while the store is away: neither open to all nor closed to valid keys.
        self._own = SlidingWindowCounterRateLimiter(MemoryStorage())
        self._store_again_at = 0.0
        self._note_failure = note_failure
        self._policy = f'"{_POLICY}";q={self._rate.amount};w={self._rate.get_expiry()}'

    def owner(self, presented: bytes | None) -> str:
        """Return whose key it is, or refuse: 401."""
        name = self._known(presented or b"")
        if name is None:
            raise HttpProblem(401, headers={"WWW-Authenticate": 'ApiKey realm="fitment", header="X-API-Key"'})
        return name

    async def admit(self, name: str) -> Sequence[tuple[bytes, bytes]]:
        """Let a request of this owner pass, or refuse it when its rate is used up: 429.

        Return the headers that tell the caller what it may still ask.

        References
        ----------
        .. draft-ietf-httpapi-ratelimit-headers, from memory: `RateLimit-Policy` has the quota q and the window w in
           seconds, `RateLimit` what remains (r) and the seconds until there is more (t).
        """
        may_pass, left, more_at = await self._count(name)
        wait_s = max(1, round(more_at - time.time() + 0.5))
        told = {"RateLimit-Policy": self._policy, "RateLimit": f'"{_POLICY}";r={left};t={wait_s}'}
        if not may_pass:
            raise HttpProblem(429, headers={"Retry-After": str(min(wait_s, LONGEST_WAIT_S)), **told})
        return [(header.lower().encode("ascii"), value.encode("ascii")) for header, value in told.items()]

    async def _count(self, name: str) -> tuple[bool, int, float]:
        """Return whether one more request is within the rate, how many more are, and when there will be more."""
        if time.monotonic() >= self._store_again_at:
            try:
                return await self._counted_by(self._shared, name)
            except self._storage.base_exceptions:
                self._store_again_at = time.monotonic() + STORE_REST_S
                self._note_failure()
        return await self._counted_by(self._own, name)

    async def _counted_by(self, limiter: SlidingWindowCounterRateLimiter, name: str) -> tuple[bool, int, float]:
        may_pass = await limiter.hit(self._rate, name)
        more_at, left = await limiter.get_window_stats(self._rate, name)
        return may_pass, left if may_pass else 0, more_at

    def _known(self, presented: bytes) -> str | None:
        """Return whose key it is, if it is one, comparing with every hash, so that the time tells nothing."""
        digest = hashlib.sha256(presented).digest()
        owner = None
        for name, known in self._entries:
            if hmac.compare_digest(digest, known):
                owner = name
        return owner
