"""The server's HTTP/1.1 protocol with what it lacks: limits of size, one reading of every message.

A request that asks for an upgrade is read again without the wish, because the parser takes the body of such a
request for another protocol. Fields behind a body are dropped: nobody may change a head that has been acted upon.
What a client sent before it broke the rules is answered before the refusal.
"""

from __future__ import annotations

import asyncio
from http import HTTPStatus
from typing import Any, Final

import httptools
from typing_extensions import override
from uvicorn.config import Config
from uvicorn.protocols.http.httptools_impl import STATUS_LINE, RequestResponseCycle
from uvicorn.server import ServerState

from service.api.errors.problem import MEDIA_TYPE, body
from service.api.transport.observability import REQUEST_ID, UNMATCHED
from service.api.transport.patience import ConnectionLimits, WatchedProtocol, request_id_of
from service.api.transport.request_body import BODY_ARRIVED
from service.api.transport.security import DEFAULT_HEADERS

# What a client may send without a byte of body: a head, the fields behind a body, or a chunk's own line.
MAX_FIELDS_BYTES: Final = 32 * 1024
# How long a refused connection is still read from, so that the refusal arrives before a reset could.
LINGER_S: Final = 1.0


class TooManyFields(Exception):
    """Ends the parser's work on fields that are larger than a request's may be."""


class UnclearHead(Exception):
    """Ends the parser's work on a head that two readers could read in two ways."""


class GuardedProtocol(WatchedProtocol):
    """One connection; `protocol_with` makes the class that a server needs."""

    def __init__(
        self,
        config: Config,
        server_state: ServerState,
        app_state: dict[str, Any],
        _loop: asyncio.AbstractEventLoop | None = None,
    ) -> None:
        super().__init__(config, server_state, app_state, _loop)
        # At least as much as has come since the last byte of a body, or the end of a head or a message.
        self._fields_bytes = 0
        self._too_many_fields = False
        # The status of a refusal that waits for the answers before it.
        self._refusal_due: int | None = None

    @override
    def data_received(self, data: bytes) -> None:
        """Feed the parser, within the limits of what is no body."""
        if self._refused:
            return
        self._unset_keepalive_if_required()
        if self._owing_since is None and self._is_idle():
            self._owing_since = self.loop.time()
        self._fields_bytes += len(data)
        try:
            self._read(memoryview(data))
        except httptools.HttpParserError:
            self._refuse(431 if self._too_many_fields else 400)
        else:
            if self._fields_bytes > MAX_FIELDS_BYTES:
                self._refuse(431)

    def _read(self, data: memoryview) -> None:
        """Feed the parser; a request that asks for an upgrade is fed again without the wish."""
        while True:
            try:
                self.parser.feed_data(data)
            except httptools.HttpParserUpgrade as stopped:
                head = self._head_without_upgrade()
                # The old one may hold that nothing can follow.
                self.parser = httptools.HttpRequestParser(self)
                self.parser.set_dangerous_leniencies(lenient_data_after_close=True)
                self.parser.feed_data(head)
                data = data[stopped.args[0] :]
            else:
                return

    def _head_without_upgrade(self) -> bytes:
        version = self.parser.get_http_version().encode("ascii")
        lines = [b"%b %b HTTP/%b" % (self.parser.get_method(), self.url, version)]
        lines += [b"%b: %b" % field for field in self.headers if field[0] != b"upgrade"]
        return b"\r\n".join([*lines, b"", b""])

    @override
    def on_message_begin(self) -> None:
        """Note that a head has begun."""
        super().on_message_begin()
        self._in_head = True
        if self._owing_since is None:
            self._owing_since = self.loop.time()

    @override
    def on_headers_complete(self) -> None:
        """Note that a head is complete, or refuse it for its size or its target."""
        self._check_size(self.url)
        self._check_clear()
        if self.parser.should_upgrade():
            return
        super().on_headers_complete()
        if self._is_stopping:
            self.cycle.keep_alive = False
        self._in_head = False
        self._in_body = True
        self._owing_since = None
        # The scope keeps the list it has; fields behind the body go to this one and to nobody.
        self.headers = []

    @override
    def on_body(self, body: bytes) -> None:
        """Take a piece of a body."""
        self._fields_bytes = 0
        super().on_body(body)

    @override
    def on_message_complete(self) -> None:
        """Note that the body is there too: whoever reads it needs no clock."""
        if self.parser.should_upgrade():
            # The head comes again, and then the body.
            return
        self._check_size()
        self._in_body = False
        super().on_message_complete()
        self.cycle.scope[BODY_ARRIVED] = True  # type: ignore[typeddict-unknown-key] # ASGI lets servers add keys

    @override
    def on_response_complete(self) -> None:
        """Go on with the next request, or send the refusal that waited for this answer."""
        is_last = not self.pipeline
        super().on_response_complete()
        if is_last and self._refusal_due is not None and not self.transport.is_closing():
            self._send_refusal(self._refusal_due)

    def _check_size(self, target: bytes = b"") -> None:
        """Refuse the fields just read if they are too large together, or begin to count anew."""
        if len(target) + sum([len(name) + len(value) + 4 for name, value in self.headers]) > MAX_FIELDS_BYTES:
            self._too_many_fields = True
            raise TooManyFields
        self._fields_bytes = 0

    def _check_clear(self) -> None:
        """Refuse what two readers could read in two ways (RFC 9112, 3.2 and 6.1), and tunnels, which lead nowhere."""
        names = [name for name, _ in self.headers]
        is_old = self.parser.get_http_version() == "1.0"
        if names.count(b"host") != 1 and (not is_old or b"host" in names):
            raise UnclearHead
        if b"transfer-encoding" in names and (is_old or self._values(b"transfer-encoding") != [b"chunked"]):
            raise UnclearHead
        if not self.url.startswith(b"/"):
            authority = self.url.partition(b"://")[2].partition(b"/")[0].lower()
            if authority and [authority] != self._values(b"host"):
                raise UnclearHead
        if self.parser.get_method() == b"CONNECT":
            raise UnclearHead

    def _values(self, wanted: bytes) -> list[bytes]:
        return [value.lower() for name, value in self.headers if name == wanted]

    def _refuse(self, status: int) -> None:
        """Answer with a problem after the answers that are due, and end the connection; read no more."""
        self._refused = True
        if self.transport.is_closing():
            return
        cycle = self.cycle
        if self._in_body and self.pipeline:
            # The request that broke off is the youngest and has not begun.
            self.pipeline.popleft()
            self._refusal_due = status
        elif self._is_idle() and not self._in_body:
            self._send_refusal(status)
        elif not self._in_body:
            self._refusal_due = status
        elif cycle.response_started:
            self.transport.close()
        else:
            cycle.disconnected = True
            cycle.message_event.set()
            self._send_refusal(status, self._name(cycle))

    def _name(self, cycle: RequestResponseCycle) -> str:
        """Return the id of a request that has begun, and see to it that it gets no other."""
        given = dict(cycle.scope["headers"]).get(b"x-request-id")
        request_id = request_id_of(cycle) or self.limits.ids.take(given)
        cycle.scope[REQUEST_ID] = request_id  # type: ignore[typeddict-unknown-key] # ASGI lets servers add keys
        return request_id

    def _send_refusal(self, status: int, request_id: str = "") -> None:
        """Send a problem and close once the client had time to read it; the request may have an id already."""
        self._unset_keepalive_if_required()
        request_id = request_id or self.limits.ids.take(None)
        self._note_refusal(status, request_id)
        content = body(status, None, request_id)
        headers = {
            **DEFAULT_HEADERS,
            b"content-type": MEDIA_TYPE.encode("ascii"),
            b"content-length": b"%d" % len(content),
            b"x-request-id": request_id.encode("ascii"),
            b"connection": b"close",
        }
        if status == HTTPStatus.SERVICE_UNAVAILABLE:
            headers[b"retry-after"] = b"%d" % self.limits.retry_after_s
        lines = [b"%b: %b\r\n" % item for item in [*self.server_state.default_headers, *headers.items()]]
        self.transport.write(b"".join([STATUS_LINE[status], *lines, b"\r\n", content]))
        self.transport.write_eof()
        self.loop.call_later(LINGER_S, self.transport.close)

    def _note_refusal(self, status: int, request_id: str) -> None:
        self.limits.metrics.observe_request(UNMATCHED, "other", status, 0.0)
        # Of connections beyond the most the door tells, once in a while.
        if self.limits.log is not None and status != HTTPStatus.SERVICE_UNAVAILABLE:
            told = {"method": "other", "route": UNMATCHED, "status": status, "milliseconds": 0.0}
            self.limits.log.info("request", request_id=request_id, **told)


def protocol_with(limits: ConnectionLimits) -> type[GuardedProtocol]:
    """Return the protocol class of a server with these limits."""
    return type("LimitedProtocol", (GuardedProtocol,), {"limits": limits})
