"""One pure ASGI layer round every request: id, hosts, keys, default headers, the last resort, log and metrics.

One layer and not six, because each would wrap `send` again and scan the headers again.
"""

from __future__ import annotations

import asyncio
from collections.abc import Mapping, Sequence
from time import perf_counter
from typing import Final

from starlette.types import ASGIApp, Message, Receive, Scope, Send
from structlog.typing import FilteringBoundLogger

from service.api.errors.problem import MEDIA_TYPE, HttpProblem, body, clean
from service.api.transport.api_keys import ApiKeys
from service.api.transport.callers import CALLER, address_of
from service.api.transport.language import SPEECH, language_headers, speech_for, speech_of
from service.api.transport.observability import (
    CLIENT_LEFT,
    REQUEST_ID,
    TRACE_ID,
    UNMATCHED,
    Metrics,
    RequestIds,
    trace_of,
)
from service.api.transport.request_body import ClientGone, let_go_of_body
from service.api.transport.security import (
    DEFAULT_HEADERS,
    KEY_HEADER,
    METRICS_PATH,
    PROBES_PREFIX,
    PROTECTED_PREFIX,
    TrustedHosts,
    needs_key,
)
from service.core.saying import say
from service.settings import Settings

_DEFAULTS: Final = tuple(DEFAULT_HEADERS.items())
# The client may still be sending: closing would reset the connection before it reads the answer.
_NEVER_CLOSED: Final = frozenset({413, 415, 503})


class Lifecycle:
    """Whether the process is about to stop."""

    draining = False


class Envelope:
    """The layer; everything it needs is handed in, nothing is looked up per request."""

    def __init__(self, app: ASGIApp, services: Services) -> None:
        self._app = app
        self._services = services

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on and see its answer out."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        started = perf_counter()
        headers: dict[bytes, bytes] = dict(scope["headers"])
        services = self._services
        exchange = Exchange(self._request_id(scope, headers), scope, send, services.lifecycle)
        scope[REQUEST_ID], scope[SPEECH] = exchange.request_id, speech_for(headers.get(b"accept-language", b""))
        services.metrics.in_flight += 1
        try:
            await self._admit(scope, headers, exchange)
            await self._app(scope, receive, exchange.send)
        except HttpProblem as problem:
            await exchange.answer(problem)
        except ClientGone:
            exchange.status = CLIENT_LEFT
        except asyncio.CancelledError:
            if exchange.status:
                raise
            # The stop took longer than it may; the caller at least hears of it. The task ends here in any case, and
            # the server would log what goes on from here as a fault.
            await exchange.answer(HttpProblem(503, say("The service is stopping."), headers={"Retry-After": "1"}))
        except Exception as error:  # noqa: BLE001 - the last resort: whatever it was, the caller gets a problem
            self._note_failure(scope, exchange, error)
            if exchange.status:
                # Half an answer is out. The text of the error may quote the request and stays here.
                raise RuntimeError("The answer broke off.") from None
            await exchange.answer(HttpProblem(500))
        finally:
            let_go_of_body(scope)
            self._note(scope, exchange, perf_counter() - started)

    def _request_id(self, scope: Scope, headers: Mapping[bytes, bytes]) -> str:
        # One that broke the rules behind its head has its id already.
        given: str | None = scope.get(REQUEST_ID)
        return given or self._services.ids.take(headers.get(b"x-request-id"))

    async def _admit(self, scope: Scope, headers: dict[bytes, bytes], exchange: Exchange) -> None:
        services = self._services
        # An orchestrator's probes come by address; they learn nothing that needs a name.
        is_watched = services.metrics_port is not None and self._keep_apart(scope, services.metrics_port)
        if not services.hosts.all and not is_watched and not scope["path"].startswith(PROBES_PREFIX):
            services.hosts.refuse_unknown(headers.get(b"host"))
        if services.keys is not None and needs_key(scope):
            exchange.is_private = True
            scope[CALLER] = exchange.key = services.keys.owner(headers.get(KEY_HEADER))
            exchange.told = await services.keys.admit(exchange.key)
        else:
            scope[CALLER] = address_of(scope, services.proxy_count)

    def _keep_apart(self, scope: Scope, metrics_port: int) -> bool:
        """Return whether the request came by the port for metrics and probes; 404 for what its port does not have."""
        is_watched: bool = scope["server"] is not None and scope["server"][1] == metrics_port
        path = scope["path"]
        has_place = path == METRICS_PATH if is_watched else path != METRICS_PATH
        if not has_place and not path.startswith(PROBES_PREFIX):
            raise HttpProblem(404)
        return is_watched

    def _note_failure(self, scope: Scope, exchange: Exchange, error: Exception) -> None:
        # `exception` would log the error's text, which may quote the request.
        self._services.log.error(
            "failure",
            request_id=exchange.request_id,
            error=type(error).__qualname__,
            trace=trace_of(error),
            **_trace_id(scope),
        )

    def _note(self, scope: Scope, exchange: Exchange, seconds: float) -> None:
        services = self._services
        matched = scope.get("route")
        route = UNMATCHED if matched is None else matched.path
        method = scope["method"]
        services.metrics.in_flight -= 1
        services.metrics.observe_request(route, method, exchange.status, seconds)
        if services.access_log:
            # The query is payload; an unmatched path is shown, cut and cleaned, for finding broken links.
            services.log.info(
                "request",
                request_id=exchange.request_id,
                method=method,
                route=route if matched is not None else clean(scope["path"], 80),
                status=exchange.status,
                milliseconds=round(seconds * 1000, 3),
                **({} if exchange.key is None else {"key": exchange.key}),
                **_trace_id(scope),
            )


def _trace_id(scope: Scope) -> dict[str, str]:
    """Return the id under which the collector has this request, where it is traced."""
    return {TRACE_ID: scope[TRACE_ID]} if TRACE_ID in scope else {}


class Services:
    """What the layer works with, made once per app."""

    def __init__(
        self,
        metrics: Metrics,
        hosts: TrustedHosts,
        keys: ApiKeys | None,
        log: FilteringBoundLogger,
        settings: Settings,
    ) -> None:
        self.metrics = metrics
        self.hosts = hosts
        self.keys = keys
        self.log = log
        self.access_log = settings.access_log
        self.proxy_count = settings.proxy_count
        self.metrics_port = settings.metrics_port
        # What the log says at the start beside the address.
        self.told: Mapping[str, object] = {}
        self.ids = RequestIds()
        self.lifecycle = Lifecycle()


class Exchange:
    """One request's answer on its way out."""

    __slots__ = ("_lifecycle", "_scope", "_send", "is_private", "key", "request_id", "status", "told")

    def __init__(self, request_id: str, scope: Scope, send: Send, lifecycle: Lifecycle) -> None:
        self._scope = scope
        self.request_id = request_id
        self.status = 0
        # Whether the answer is for holders of a key alone: no cache between may hand it to others.
        self.is_private = False
        # The name that the operator gave the caller's key.
        self.key: str | None = None
        self.told: Sequence[tuple[bytes, bytes]] = ()
        self._send = send
        self._lifecycle = lifecycle

    async def send(self, message: Message) -> None:
        """Send a message on; the first one gets the headers that it lacks."""
        if message["type"] == "http.response.start":
            self.status = status = message["status"]
            headers = message["headers"] = list(message.get("headers", ()))
            if self.is_private:
                headers[:] = [(name, value.replace(b"public", b"private")) for name, value in headers]
            present = {name for name, _ in headers}
            headers += [item for item in _DEFAULTS if item[0] not in present]
            headers += self.told
            headers.append((b"x-request-id", self.request_id.encode("ascii")))
            if self._scope["path"].startswith(PROTECTED_PREFIX):
                headers += language_headers(self._scope, present)
            if self._lifecycle.draining and status not in _NEVER_CLOSED:
                headers.append((b"connection", b"close"))
        await self._send(message)

    async def answer(self, problem: HttpProblem) -> None:
        """Send a problem, unless an answer has begun."""
        if self.status:
            return
        said = speech_of(self._scope)
        content = body(problem.status, problem.detail, self.request_id, problem.faults, said=said)
        headers = [(b"content-type", MEDIA_TYPE.encode("ascii")), (b"content-length", b"%d" % len(content))]
        headers += [(k.lower().encode("latin-1"), v.encode("latin-1")) for k, v in (problem.headers or {}).items()]
        await self.send({"type": "http.response.start", "status": problem.status, "headers": headers})
        await self.send({"type": "http.response.body", "body": content})
