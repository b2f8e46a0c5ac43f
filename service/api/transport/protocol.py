"""The server's HTTP/1.1 protocol with the limits it lacks: size and time of a head, time to take an answer.

One timer per connection looks at marks that requests leave; a timer per request would cost each of them
more than all of this.
"""

from __future__ import annotations

import asyncio
from typing import Any, Final, NamedTuple

from uvicorn.config import Config
from uvicorn.protocols.http.httptools_impl import STATUS_LINE, HttpToolsProtocol
from uvicorn.server import ServerState

from service.api.errors.problem import MEDIA_TYPE, body
from service.api.transport.observability import UNMATCHED, Metrics, RequestIds
from service.api.transport.request_body import BODY_ARRIVED
from service.api.transport.security import DEFAULT_HEADERS

MAX_HEAD_BYTES: Final = 32 * 1024
# How long a refused connection is still read from, so that the refusal arrives before a reset could.
LINGER_S: Final = 1.0
# A client that takes less of its answer holds memory for nothing.
LEAST_BYTES_PER_S: Final = 1024


class HeadTooLarge(Exception):
    """Ends the parser's work on a head that is larger than a request's may be."""


class UnclearHost(Exception):
    """Ends the parser's work on a head that names no host, or several."""


class ConnectionLimits(NamedTuple):
    """What the connections of one server are held to, and where their refusals are counted."""

    head_timeout_s: float
    metrics: Metrics
    ids: RequestIds


class GuardedProtocol(HttpToolsProtocol):
    """One connection; `protocol_with` makes the class that a server needs."""

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
        self._in_message = False
        # At least as much as has come of the head under way.
        self._head_bytes = 0
        self._refused = False
        # Since when the client owes us the rest of a head, or the head itself; None while it owes nothing.
        self._owing_since: float | None = None
        # When the watch last saw an answer waiting to be taken, and how much of it.
        self._unsent: tuple[float, int] | None = None
        self._watch: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override] # as the base class has it
        """Take the connection and start its watch."""
        super().connection_made(transport)
        self._owing_since = self.loop.time()
        self._watch = self.loop.call_later(self.limits.head_timeout_s, self._look)

    def connection_lost(self, exc: Exception | None) -> None:
        """Let go of the connection."""
        if self._watch is not None:
            self._watch.cancel()
        super().connection_lost(exc)

    def data_received(self, data: bytes) -> None:
        """Feed the parser, within the limits of a head."""
        if self._refused:
            return
        in_message = self._in_message
        self._head_bytes = self._head_bytes + len(data) if self._in_head else len(data)
        if self._owing_since is None and self._is_idle():
            self._owing_since = self.loop.time()
        super().data_received(data)
        if self._in_head and self._head_bytes > MAX_HEAD_BYTES:
            if in_message and not self._began_before:
                # Most of this was the message before; the exact size is looked at when the head is complete.
                self._head_bytes = 0
            elif not self._refused:
                self._refuse(431)
        self._began_before = self._in_head

    _began_before = False

    def on_message_begin(self) -> None:
        """Note that a head has begun."""
        super().on_message_begin()
        self._in_head = self._in_message = True
        if self._owing_since is None:
            self._owing_since = self.loop.time()

    def on_headers_complete(self) -> None:
        """Note that a head is complete, or refuse it for its size or its hosts."""
        if self._head_bytes > MAX_HEAD_BYTES:
            exact = len(self.url) + sum(len(name) + len(value) + 4 for name, value in self.headers)
            if exact > MAX_HEAD_BYTES:
                raise HeadTooLarge
        # Two hosts would be read in two ways by two readers (RFC 9112, 3.2), so this is no request.
        if [name for name, _ in self.headers].count(b"host") != 1 and self.parser.get_http_version() != "1.0":
            raise UnclearHost
        self._in_head = False
        self._owing_since = None
        super().on_headers_complete()

    def on_message_complete(self) -> None:
        """Note that the body is there too: whoever reads it needs no clock."""
        self._in_message = False
        super().on_message_complete()
        self.cycle.scope[BODY_ARRIVED] = True  # type: ignore[typeddict-unknown-key] # ASGI lets servers add keys

    def resume_writing(self) -> None:
        """Note that the client has taken what was sent."""
        self._unsent = None
        super().resume_writing()

    def send_400_response(self, msg: str) -> None:  # noqa: ARG002 - our own words are better
        """Refuse what the parser could not read, or what was too large for it."""
        # Reached from the parser's `except`, so the cause is at hand only as what has been counted.
        self._refuse(431 if self._in_head and self._head_bytes > MAX_HEAD_BYTES else 400)

    def _unsupported_upgrade_warning(self) -> None:
        """Stay silent: anybody may ask for an upgrade, the request is answered without."""

    def _is_idle(self) -> bool:
        return self.cycle is None or self.cycle.response_complete

    def _refuse(self, status: int) -> None:
        """Answer with a problem and end the connection once the client had time to read it."""
        self._refused = True
        if self.transport.is_closing():
            return
        cycle = self.cycle
        if cycle is not None and not cycle.response_complete:
            if not cycle.more_body:
                # The request before this one is whole and gets its answer; what came after gets none.
                cycle.keep_alive = False
                self.pipeline.clear()
                return
            cycle.disconnected = True
            cycle.message_event.set()
            if cycle.response_started:
                self.transport.close()
                return
        self._unset_keepalive_if_required()
        self.limits.metrics.observe_request(UNMATCHED, "other", status, 0.0)
        request_id = self.limits.ids.take(None)
        content = body(status, None, request_id)
        headers = {
            **DEFAULT_HEADERS,
            b"content-type": MEDIA_TYPE.encode("ascii"),
            b"content-length": b"%d" % len(content),
            b"x-request-id": request_id.encode("ascii"),
            b"connection": b"close",
        }
        lines = [b"%b: %b\r\n" % item for item in [*self.server_state.default_headers, *headers.items()]]
        self.transport.write(b"".join([STATUS_LINE[status], *lines, b"\r\n", content]))
        self.transport.write_eof()
        self.loop.call_later(LINGER_S, self.transport.close)

    def _look(self) -> None:
        """End the connection if the client is overdue with a head or with taking an answer, else look again later."""
        now = self.loop.time()
        timeout_s = self.limits.head_timeout_s
        if self._is_stalled(now):
            self.transport.abort()
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
        size = self.transport.get_write_buffer_size()
        before = self._unsent
        if size == 0:
            self._unsent = None
            return False
        if before is None:
            self._unsent = (now, size)
            return False
        since, size_then = before
        if now - since < self.limits.head_timeout_s / 2:
            return False
        self._unsent = (now, size)
        return size > size_then - LEAST_BYTES_PER_S * (now - since)


def protocol_with(limits: ConnectionLimits) -> type[GuardedProtocol]:
    """Return the protocol class of a server with these limits."""
    return type("LimitedProtocol", (GuardedProtocol,), {"limits": limits})
