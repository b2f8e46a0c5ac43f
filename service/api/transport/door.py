"""How many connections there may be, and how much of their answers may wait to be taken, all together."""

from __future__ import annotations

import asyncio
from time import monotonic
from typing import Final, NamedTuple

from structlog.typing import FilteringBoundLogger

from service.api.transport.observability import Metrics
from service.api.transport.sockets import reset, unsent_bytes

# Beyond the most, so many more are told so with 503; the rest are reset.
TOLD: Final = 32
# The log says it once in a while, the metrics count each.
SILENCE_S: Final = 10.0


class Untaken(NamedTuple):
    """An answer, or answers behind one another, that wait to be taken."""

    size_bytes: int
    request_id: str


class Door:
    """The connections of one listener."""

    def __init__(self, most: int, answer_bytes: int, metrics: Metrics, log: FilteringBoundLogger) -> None:
        self._most = most
        self._answer_bytes = answer_bytes
        self._metrics = metrics
        self._log = log
        self._open = 0
        self._quiet_until = 0.0
        # Connections that have not taken an answer, the longest wait first, with how much of it there was.
        self._waiting: dict[asyncio.Transport, Untaken] = {}
        self._waiting_bytes = 0

    def enter(self, transport: asyncio.Transport) -> bool:
        """Count a connection in; return whether it may ask anything. One too many to be even told is reset."""
        self._open += 1
        if self._open <= self._most:
            return True
        self._metrics.observe_connection_end("too_many")
        self._say_full()
        if self._open > self._most + TOLD:
            reset(transport)
        return False

    def leave(self, transport: asyncio.Transport) -> None:
        """Count a connection out."""
        self._open -= 1
        self.has_taken(transport)

    def waits(self, transport: asyncio.Transport, request_id: str) -> None:
        """Note that an answer waits to be taken; where all are too much together, the longest wait ends."""
        self.has_taken(transport)
        size = unsent_bytes(transport)
        self._waiting[transport] = Untaken(size, request_id)
        self._waiting_bytes += size
        while self._waiting_bytes > self._answer_bytes and len(self._waiting) > 1:
            longest, untaken = next(iter(self._waiting.items()))
            self.end(longest, untaken.request_id)

    def has_taken(self, transport: asyncio.Transport) -> None:
        """Note that no answer of this connection waits any more."""
        if transport in self._waiting:
            self._waiting_bytes -= self._waiting.pop(transport).size_bytes

    def end(self, transport: asyncio.Transport, request_id: str) -> None:
        """Reset a connection that does not take its answer."""
        self.has_taken(transport)
        self._metrics.observe_connection_end("unread")
        # The line of the request says how it was answered, since that was before.
        self._log.warning("answer cut off", request_id=request_id, reason="unread", open=self._open)
        reset(transport)

    def _say_full(self) -> None:
        now = monotonic()
        if now >= self._quiet_until:
            self._quiet_until = now + SILENCE_S
            self._log.warning("connections refused", reason="too_many", open=self._open, most=self._most)
