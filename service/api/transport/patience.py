"""How long a connection is waited for: for a head, for an answer to be taken, and at the stop.

One timer per connection looks at marks that requests leave; a timer per request would cost each of them
more than all of this.
"""

from __future__ import annotations

import asyncio
from typing import Any, Final, NamedTuple

from structlog.typing import FilteringBoundLogger
from typing_extensions import override
from uvicorn._types import ASGI3Application
from uvicorn.config import Config
from uvicorn.protocols.http.httptools_impl import HttpToolsProtocol, RequestResponseCycle
from uvicorn.server import ServerState

from service.api.transport.door import Door
from service.api.transport.observability import REQUEST_ID, Metrics, RequestIds
from service.api.transport.sockets import WRITE_BUFFER_BYTES, taken_bytes, unread_bytes, unsent_bytes

# A client that takes less of its answer holds memory for nothing.
LEAST_BYTES_PER_S: Final = 1024
# How long a connection may be new at the stop: its first request may be on the way.
NEW_S: Final = 1.0


class ConnectionLimits(NamedTuple):
    """What the connections of one server are held to, and where their refusals are counted and told."""

    head_timeout_s: float
    metrics: Metrics
    ids: RequestIds
    door: Door
    retry_after_s: int
    # None where requests are not logged.
    log: FilteringBoundLogger | None


def request_id_of(cycle: RequestResponseCycle) -> str:
    """Return the id that a request was given, or nothing where it was given none yet."""
    return str(cycle.scope.get(REQUEST_ID, ""))


class WatchedProtocol(HttpToolsProtocol):
    """One connection and its clock; what it reads is `GuardedProtocol`'s matter."""

    limits: ConnectionLimits

    def __init__(
        self,
        config: Config,
        server_state: ServerState,
        app_state: dict[str, Any],
        _loop: asyncio.AbstractEventLoop | None = None,
    ) -> None:
        super().__init__(config, server_state, app_state, _loop)
        self._in_head = False
        self._in_body = False
        self._refused = False
        self._is_stopping = False
        # Since when the client owes us the rest of a head, or the head itself; None while it owes nothing.
        self._owing_since: float | None = None
        # When the watch last saw an answer waiting to be taken, and how much the client had taken by then.
        self._unsent: tuple[float, int] | None = None
        self._answering: RequestResponseCycle | None = None
        self._watch: asyncio.TimerHandle | None = None

    @override
    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override] # as the base class has it
        """Take the connection and start its watch."""
        super().connection_made(transport)
        transport.set_write_buffer_limits(WRITE_BUFFER_BYTES)
        if not self.limits.door.enter(transport):
            self._refuse(503)
            return
        self._owing_since = self.loop.time()
        self._watch = self.loop.call_later(self.limits.head_timeout_s, self._look)

    @override
    def connection_lost(self, exc: Exception | None) -> None:
        """Let go of the connection."""
        if self._watch is not None:
            self._watch.cancel()
        self.limits.door.leave(self.transport)
        if self._answering is not None and not self._answering.response_complete:
            # The base class tells the youngest request alone, and those before it would write to nobody.
            self._answering.disconnected = True
            self._answering.message_event.set()
        super().connection_lost(exc)

    @override
    def _start_asgi_task(self, cycle: RequestResponseCycle, app: ASGI3Application) -> None:
        """Begin to answer a request, and note which."""
        self._answering = cycle
        super()._start_asgi_task(cycle, app)

    @override
    def pause_writing(self) -> None:
        """Note that the client does not take its answer as fast as it is made."""
        super().pause_writing()
        self.limits.door.waits(self.transport, self._answered_id())

    @override
    def resume_writing(self) -> None:
        """Note that the client has taken what was sent."""
        self._unsent = None
        self.limits.door.has_taken(self.transport)
        super().resume_writing()

    @override
    def shutdown(self) -> None:
        """Let go of the connection at the stop, once nothing of it is under way."""
        self._is_stopping = True
        is_new = self.cycle is None
        if is_new and not self._in_head:
            self.loop.call_later(NEW_S, self._close_if_idle)
        elif self._is_idle():
            self._close_if_idle()
        else:
            super().shutdown()

    def _close_if_idle(self) -> None:
        """Close unless a request is under way or waits in the socket; its answer then ends the connection."""
        if self.transport.is_closing() or self._in_head or not self._is_idle():
            return
        if unread_bytes(self.transport) == 0:
            self.transport.close()

    def _answered_id(self) -> str:
        """Return the id of the request whose answer is, or was last, on its way."""
        return "" if self._answering is None else request_id_of(self._answering)

    def _refuse(self, status: int) -> None:
        """Answer with a problem and end the connection."""
        raise NotImplementedError

    def _is_idle(self) -> bool:
        return self.cycle is None or self.cycle.response_complete

    def _look(self) -> None:
        """End the connection if the client is overdue with a head or with taking an answer, else look again later."""
        now = self.loop.time()
        timeout_s = self.limits.head_timeout_s
        if self._is_stalled(now):
            self.limits.door.end(self.transport, self._answered_id())
            return
        wait_s = timeout_s
        if self._owing_since is not None and self._is_idle() and not self._refused:
            wait_s = self._owing_since + timeout_s - now
            if wait_s <= 0.0:
                if self._in_head:
                    self._refuse(408)
                else:
                    self.transport.close()
                wait_s = timeout_s
        self._watch = self.loop.call_later(wait_s, self._look)

    def _is_stalled(self, now: float) -> bool:
        """Return whether too little of an answer was taken since the last look."""
        if unsent_bytes(self.transport) == 0:
            self._unsent = None
            return False
        taken, before = taken_bytes(self.transport), self._unsent
        if before is None:
            self._unsent = (now, taken)
            return False
        since, taken_then = before
        if now - since < self.limits.head_timeout_s / 2:
            return False
        self._unsent = (now, taken)
        return taken - taken_then < LEAST_BYTES_PER_S * (now - since)
