"""Runs the application and stops it without losing a request."""

from __future__ import annotations

import asyncio
import logging
import os
import socket
import sys
from collections.abc import Sequence
from functools import partial
from time import monotonic
from types import FrameType
from typing import Final

import orjson
import structlog
import uvicorn
from fastapi import FastAPI
from typing_extensions import override

from service.api.transport.door import Door
from service.api.transport.envelope import Services
from service.api.transport.listening import take_no_more
from service.api.transport.log_lines import LinesHandler, LogLines
from service.api.transport.patience import ConnectionLimits
from service.api.transport.protocol import GuardedProtocol, protocol_with
from service.api.transport.sockets import bound_answers, most_connections
from service.settings import BadSettings, Settings

# Python's own 5 ms let a job on the worker thread hold up the event loop for that long, again and again.
SWITCH_INTERVAL_S: Final = 0.0005

# How long connections under way take to come out of the system's queue.
SETTLE_S: Final = 0.3


# Collectors and probes are few.
WATCHING_CONNECTIONS: Final = 32

Listener = tuple[socket.socket, type[GuardedProtocol]]


class DrainingServer(uvicorn.Server):
    """A server that drains first: readiness turns 503 and connections are let go while it still takes requests."""

    def __init__(self, config: uvicorn.Config, services: Services, drain_s: float, watching: Listener | None) -> None:
        super().__init__(config)
        self._watching = watching
        self._services = services
        self._drain_s = drain_s
        self._stop_at: float | None = None

    @override
    def handle_exit(self, sig: int, frame: FrameType | None) -> None:
        """Start the drain; stop at once when asked again. Unlike the base class, do not raise the signal anew."""
        if self._stop_at is None:
            self._services.lifecycle.draining = True
            self._stop_at = monotonic() + self._drain_s
        elif not self.should_exit:
            self.should_exit = True
        else:
            self.force_exit = True

    @override
    async def on_tick(self, counter: int) -> bool:
        """Return whether to stop now."""
        if self._stop_at is not None and monotonic() >= self._stop_at:
            self.should_exit = True
        return await super().on_tick(counter)

    @override
    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        """Take no more connections, serve those that wait to be accepted, then stop."""
        dropping = [take_no_more(each.fileno()) for server in self.servers for each in server.sockets]
        if not all(dropping):
            self._services.log.warning("stopping", lost="connections that are made while the listening socket closes")
        await asyncio.sleep(SETTLE_S)
        await super().shutdown(sockets)

    @override
    async def startup(self, sockets: list[socket.socket] | None = None) -> None:
        """Start to listen, at the port for metrics and probes too."""
        try:
            await super().startup(sockets)
        except SystemExit as ended:
            # So the base class ends where it cannot listen, and elsewhere without such a cause.
            if isinstance(ended.__context__, OSError):
                raise _no_listening("FITMENT_HOST, FITMENT_PORT", ended.__context__) from None
            raise
        except UnicodeError as error:
            raise _no_listening("FITMENT_HOST", error) from None
        if self._watching is not None:
            listener, protocol = self._watching
            make = partial(protocol, self.config, self.server_state, self.lifespan.state)
            self.servers.append(await asyncio.get_running_loop().create_server(make, sock=listener))

    @override
    def _log_started_message(self, listeners: Sequence[socket.SocketType]) -> None:
        """Say where the service listens, the port may have been the system's choice; bound its answers before."""
        for listener in listeners:
            bound_answers(listener)
        host, port = listeners[0].getsockname()[:2]
        self._services.log.info("serving", host=host, port=port, **self._services.told)


def serve(app: FastAPI, settings: Settings) -> None:
    """Run the application until the process is told to stop; bounded by the drain and the stop timeout."""
    services: Services = app.state.services
    lines: LogLines = app.state.log_lines
    _log_as_json(settings.log_level, lines)
    sys.setswitchinterval(SWITCH_INTERVAL_S)
    most = most_connections(settings.max_connections)
    config = uvicorn.Config(
        app,
        host=settings.host,
        port=settings.port,
        http=_protocol(settings, services, most),
        ws="none",
        log_config=None,
        access_log=False,
        proxy_headers=False,
        server_header=False,
        timeout_keep_alive=settings.keep_alive_s,
        timeout_graceful_shutdown=settings.stop_timeout_s,
    )
    services.told = {"most_connections": most, "keys": len(settings.api_keys)}
    DrainingServer(config, services, settings.drain_s, _watching(settings, services)).run()
    services.log.info("stopped")
    lines.finish()


def _watching(settings: Settings, services: Services) -> Listener | None:
    """Return the listener for metrics and probes, where they have a port of their own."""
    if settings.metrics_port is None:
        return None
    family = socket.AF_INET6 if ":" in settings.host else socket.AF_INET
    try:
        listener = socket.create_server((settings.host, settings.metrics_port), family=family)
    except (OSError, UnicodeError) as error:
        raise _no_listening("FITMENT_HOST, FITMENT_METRICS_PORT", error) from None
    bound_answers(listener)
    return listener, _protocol(settings, services, WATCHING_CONNECTIONS)


def _no_listening(names: str, error: OSError | UnicodeError) -> BadSettings:
    reason = "it cannot be a host name"
    if isinstance(error, OSError):
        # Where a name has no address the number is none of the system's errors, and the text says it alone.
        reason = os.strerror(error.errno) if error.errno and error.errno > 0 else str(error.strerror)
    return BadSettings(f"{names}: an address of this machine and a free port are expected ({reason})")


def _protocol(settings: Settings, services: Services, most: int) -> type[GuardedProtocol]:
    door = Door(most, settings.answer_space_mib * 1024 * 1024, services.metrics, services.log)
    limits = ConnectionLimits(
        settings.head_timeout_s,
        services.metrics,
        services.ids,
        door,
        settings.retry_after_s,
        services.log if services.access_log else None,
    )
    return protocol_with(limits)


def _log_as_json(level: str, lines: LogLines) -> None:
    """Make what libraries log look like what we log; of the server only errors, refusals are counted in the metrics."""
    handler = LinesHandler(lines)
    handler.setFormatter(
        structlog.stdlib.ProcessorFormatter(
            foreign_pre_chain=[
                structlog.stdlib.add_log_level,
                structlog.stdlib.add_logger_name,
                structlog.processors.TimeStamper(fmt="iso", utc=True),
            ],
            processors=[
                structlog.stdlib.ProcessorFormatter.remove_processors_meta,
                structlog.processors.format_exc_info,
                structlog.processors.JSONRenderer(serializer=lambda event, **_: orjson.dumps(event).decode()),
            ],
        )
    )
    logging.basicConfig(handlers=[handler], level=level.upper(), force=True)
    logging.getLogger("uvicorn").setLevel(logging.ERROR)
