"""Traces of requests for OpenTelemetry: an optional extra, by route template and without anything that callers send.

Not the framework's own tracing and not the ready-made instrumentation: both record paths, queries, host names and the
texts of errors, and would have to be kept from each. What a span holds here is only what this file puts into it.
"""

from __future__ import annotations

from typing import Any, Final

from opentelemetry.exporter.otlp.proto.http.trace_exporter import OTLPSpanExporter
from opentelemetry.sdk.resources import OTELResourceDetector, Resource
from opentelemetry.sdk.trace import SpanProcessor, TracerProvider
from opentelemetry.sdk.trace.export import BatchSpanProcessor
from opentelemetry.trace import Span, SpanKind, Status, StatusCode, format_trace_id
from opentelemetry.trace.propagation.tracecontext import TraceContextTextMapPropagator
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from service.api.transport.observability import METHODS, TRACE_ID
from service.core.version import VERSION

# Asked every second or two by machines: traces of them would drown the others.
_UNTRACED: Final = frozenset({"/health/live", "/health/ready", "/metrics"})
_PARENT_HEADERS: Final = (b"traceparent", b"tracestate")
# A collector that does not answer must not use up the time that an orchestrator gives for the stop.
EXPORT_TIMEOUT_S: Final = 2.0


class Tracing:
    """The outermost ASGI layer: one span for each request, a child of the caller's where it names one."""

    def __init__(self, app: ASGIApp, provider: TracerProvider) -> None:
        self._app = app
        self._tracer = provider.get_tracer("service", VERSION)
        self._propagator = TraceContextTextMapPropagator()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a request on and describe its answer in a span."""
        if scope["type"] != "http" or scope["path"] in _UNTRACED:
            await self._app(scope, receive, send)
            return
        parent = {
            name.decode("ascii"): value.decode("latin-1") for name, value in scope["headers"] if name in _PARENT_HEADERS
        }
        method = scope["method"] if scope["method"] in METHODS else "_OTHER"
        # The text of an error may quote the request.
        with self._tracer.start_as_current_span(
            method,
            context=self._propagator.extract(parent),
            kind=SpanKind.SERVER,
            attributes={"http.request.method": method, "url.scheme": scope["scheme"]},
            record_exception=False,
            set_status_on_exception=False,
        ) as span:
            if span.get_span_context().is_valid:
                scope[TRACE_ID] = format_trace_id(span.get_span_context().trace_id)
            try:
                await self._app(scope, receive, _Watch(span, send).send)
            finally:
                _name(span, scope, method)


class _Watch:
    """Notes the status of the answer on its way out."""

    def __init__(self, span: Span, send: Send) -> None:
        self._span = span
        self._send = send

    async def send(self, message: Message) -> None:
        """Send a message on."""
        if message["type"] == "http.response.start":
            status = message["status"]
            self._span.set_attribute("http.response.status_code", status)
            if status // 100 == 5:  # noqa: PLR2004 - the class of a status
                self._span.set_status(Status(StatusCode.ERROR))
        await self._send(message)


def _name(span: Span, scope: Scope, method: str) -> None:
    """Name the span by its route, and the request by the id that the log has it under."""
    route: Any = scope.get("route")
    if route is not None:
        span.update_name(f"{method} {route.path}")
        span.set_attribute("http.route", route.path)
    request_id = scope.get("request_id")
    if request_id is not None:
        span.set_attribute("http.request.header.x-request-id", [request_id])


def provider_with(processor: SpanProcessor) -> TracerProvider:
    """Return a provider of its own, nothing global: sampling and resource by the standard OTEL_ variables."""
    own = Resource.create({"service.name": "fitment-service", "service.version": VERSION})
    provider = TracerProvider(resource=own.merge(OTELResourceDetector().detect()))
    provider.add_span_processor(processor)
    return provider


def exporting_provider() -> TracerProvider:
    """Return a provider that sends in the background to where the standard OTEL_EXPORTER_OTLP_ variables say."""
    return provider_with(BatchSpanProcessor(OTLPSpanExporter(timeout=EXPORT_TIMEOUT_S)))
