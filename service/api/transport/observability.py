"""Metrics, logs and request ids: what an operator sees of the service, and nothing of what callers send."""

from __future__ import annotations

import itertools
import os
import re
import sys
import traceback
from collections.abc import Callable
from typing import Final

import orjson
import structlog
from fastapi import Request
from prometheus_client import CollectorRegistry, Counter, Gauge, Histogram, Info, generate_latest
from prometheus_client.gc_collector import GCCollector
from prometheus_client.platform_collector import PlatformCollector
from prometheus_client.process_collector import ProcessCollector
from structlog.typing import FilteringBoundLogger

from service.api.transport.log_lines import LogLines
from service.assessment.answer.verdict import VERDICTS
from service.core.version import VERSION

_REQUEST_ID = re.compile(rb"[A-Za-z0-9._-]{1,64}")
METHODS: Final = frozenset({"GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS"})
_BUCKETS_S: Final = (0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)
_OUTCOMES: Final = ("left", "answered", "answered", "answered", "refused", "failed")
# Why connections are ended, see `door.py`.
_ENDS: Final = ("too_many", "unread")
UNMATCHED: Final = "unmatched"
# Where the tracing layer leaves the id of a request's trace in the scope, and what the log calls it.
TRACE_ID: Final = "trace_id"
# Where the scope has the id of a request.
REQUEST_ID: Final = "request_id"
# What is noted where the client left before its answer; it is never sent.
CLIENT_LEFT: Final = 499


class RequestIds:
    """Gives each request its id: the caller's where it is well-formed, else one of our own, unique across processes."""

    def __init__(self) -> None:
        self._prefix = os.urandom(8).hex()
        self._numbers = itertools.count()

    def take(self, offered: bytes | None) -> str:
        """Return the id offered or a new one."""
        if offered is not None and _REQUEST_ID.fullmatch(offered):
            return offered.decode("ascii")
        return f"{self._prefix}{next(self._numbers):08x}"


class Metrics:
    """The numbers behind /metrics, in a registry of their own, so that two apps in one process do not mix."""

    def __init__(self, queue_length: Callable[[], float], dropped_lines: Callable[[], float]) -> None:
        self.registry = CollectorRegistry()
        self._requests = Counter(
            "http_requests",
            "Requests by route template, method, status and outcome.",
            ("route", "method", "status", "outcome"),
            registry=self.registry,
        )
        self._seconds = Histogram(
            "http_request_duration_seconds",
            "Time from the head of a request to the end of its answer.",
            ("route",),
            buckets=_BUCKETS_S,
            registry=self.registry,
        )
        self._verdicts = Counter("fitment_verdicts", "Verdicts given.", ("verdict",), registry=self.registry)
        self._ended = Counter(
            "http_connections_refused",
            "Connections ended by the service: too_many were open, or an answer was left unread.",
            ("reason",),
            registry=self.registry,
        )
        self._store_failures = Counter(
            "rate_storage_failures",
            "Times that the store of rates did not answer; rates are counted by this process alone meanwhile.",
            registry=self.registry,
        )
        # A series that begins with its first event shows no step: no rate and no alert would tell that event.
        for verdict in VERDICTS:
            self._verdicts.labels(verdict)
        for reason in _ENDS:
            self._ended.labels(reason)
        self.in_flight = 0
        Gauge(
            "http_requests_in_flight",
            "Requests whose answer is not out yet, the one for these numbers among them.",
            registry=self.registry,
        ).set_function(lambda: self.in_flight)
        Gauge("work_queue_length", "Long jobs waiting or running.", registry=self.registry).set_function(queue_length)
        Gauge(
            "log_lines_dropped", "Lines of the log that nobody took in time, since the start.", registry=self.registry
        ).set_function(dropped_lines)
        Info("fitment_build", "What is running.", registry=self.registry).info(
            {"version": VERSION, "python": sys.version.split()[0]}
        )
        ProcessCollector(registry=self.registry)
        PlatformCollector(registry=self.registry)
        GCCollector(registry=self.registry)
        # Looking children up by label costs more than counting, so each is looked up once.
        self._children: dict[tuple[str, str, int], tuple[Callable[[], None], Callable[[float], None]]] = {}

    def observe_request(self, route: str, method: str, status: int, seconds: float) -> None:
        """Count one answer. `route` is a template or `UNMATCHED`: paths made up by callers make no new series."""
        key = (route, method if method in METHODS else "other", status)
        child = self._children.get(key)
        if child is None:
            counter = self._requests.labels(route, key[1], str(status), _outcome(status))
            child = self._children[key] = (counter.inc, self._seconds.labels(route).observe)
        count, observe = child
        count()
        observe(seconds)

    def observe_verdict(self, verdict: str, count: int = 1) -> None:
        """Count verdicts of one kind."""
        self._verdicts.labels(verdict).inc(count)

    def observe_connection_end(self, reason: str) -> None:
        """Count a connection that the service ended."""
        self._ended.labels(reason).inc()

    def observe_store_failure(self) -> None:
        """Count a failure of the store of rates."""
        self._store_failures.inc()

    def exposition(self) -> bytes:
        """Return all numbers in the Prometheus text format."""
        return generate_latest(self.registry)


def observe_verdict(request: Request, verdict: str, count: int = 1) -> None:
    """Count verdicts of one kind that the answer to this request gives."""
    request.app.state.metrics.observe_verdict(verdict, count)


def make_logger(level: str, lines: LogLines) -> FilteringBoundLogger:
    """Return a logger that writes one JSON object per line; not the process-wide one, so that nothing global is set."""
    number = {"debug": 10, "info": 20, "warning": 30, "error": 40}[level]
    logger: FilteringBoundLogger = structlog.wrap_logger(
        lines,
        processors=[
            structlog.processors.add_log_level,
            structlog.processors.TimeStamper(fmt="iso", utc=True),
            structlog.processors.JSONRenderer(serializer=orjson.dumps),
        ],
        wrapper_class=structlog.make_filtering_bound_logger(number),
        cache_logger_on_first_use=True,
    )
    return logger


def trace_of(error: BaseException) -> list[str]:
    """Return where an error came from, without its text and values: those may hold what a caller sent."""
    frames = traceback.extract_tb(error.__traceback__)[-20:]
    return [f"{frame.filename}:{frame.lineno} {frame.name}" for frame in frames]


def _outcome(status: int) -> str:
    if status == CLIENT_LEFT:
        return "left"
    return _OUTCOMES[status // 100]
