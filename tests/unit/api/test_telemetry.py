"""Traces: one span for each request, named by its route, and nothing in it that a caller sent.

References: W3C Trace Context (traceparent); OpenTelemetry semantic conventions for HTTP server spans (attribute names,
span name `METHOD route`, error status for 5xx only), from memory.
"""

import json
import sys

import pytest
from fastapi import APIRouter
from fastapi.testclient import TestClient
from opentelemetry import trace
from opentelemetry.sdk.trace import ReadableSpan
from opentelemetry.sdk.trace.export import SimpleSpanProcessor
from opentelemetry.sdk.trace.export.in_memory_span_exporter import InMemorySpanExporter
from opentelemetry.trace import SpanKind, StatusCode

from service import __version__
from service.api.transport.telemetry import Tracing, provider_with
from service.app import create_app
from service.settings import BadSettings, Settings

TRACE_ID, SPAN_ID = "0af7651916cd43dd8448eb211c80319c", "b7ad6b7169203331"
router = APIRouter()


@router.get("/v1/broken/{what}")
async def broken(what: str) -> str:
    raise ValueError(f"the-secret-{what}")


class Traced:
    """The application with its spans at hand."""

    def __init__(self, *, access_log: bool = False) -> None:
        self._exporter = InMemorySpanExporter()
        app = create_app(Settings(access_log=access_log))
        app.router.routes.extend(router.routes)
        app.add_middleware(Tracing, provider=provider_with(SimpleSpanProcessor(self._exporter)))
        self.client = TestClient(app)

    def spans(self) -> tuple[ReadableSpan, ...]:
        return self._exporter.get_finished_spans()

    def span(self, method: str, path: str, headers: dict[str, str] | None = None, body: str = "") -> ReadableSpan:
        self.client.request(method, path, headers=headers, content=body)
        (only,) = self.spans()
        return only


@pytest.fixture
def traced(monkeypatch: pytest.MonkeyPatch) -> Traced:
    for name in ("OTEL_SERVICE_NAME", "OTEL_RESOURCE_ATTRIBUTES", "OTEL_TRACES_SAMPLER", "OTEL_SDK_DISABLED"):
        monkeypatch.delenv(name, raising=False)
    return Traced()


def test_a_request_is_one_span_named_by_its_route_template(traced: Traced) -> None:
    span = traced.span("GET", "/v1/tables/load-index")
    assert (span.name, span.kind) == ("GET /v1/tables/{name}", SpanKind.SERVER)


def test_a_span_holds_method_route_status_and_request_id_and_nothing_else(traced: Traced) -> None:
    span = traced.span("GET", "/v1/designations/tyre?text=hidden", {"X-Request-ID": "mine", "X-API-Key": "hidden"})
    assert dict(span.attributes or {}) == {
        "http.request.method": "GET",
        "url.scheme": "http",
        "http.route": "/v1/designations/tyre",
        "http.response.status_code": 422,
        "http.request.header.x-request-id": ("mine",),
    }


@pytest.mark.parametrize(
    ("method", "path", "body"),
    [
        ("GET", "/v1/designations/tyre?text=hidden", ""),
        ("GET", "/hidden", ""),
        ("HIDDEN", "/v1/tables/load-index", ""),
        ("POST", "/v1/fitments/check", '{"hidden": 1}'),
        ("GET", "/v1/broken/hidden", ""),
    ],
)
def test_no_span_repeats_what_a_caller_sent(traced: Traced, method: str, path: str, body: str) -> None:
    span = traced.span(method, path, {"Host": "hidden.example", "User-Agent": "hidden", "Content-Type": "hidden"}, body)
    assert "hidden" not in span.to_json().lower()


def test_a_failure_is_an_error_without_its_text(traced: Traced) -> None:
    span = traced.span("GET", "/v1/broken/x")
    assert (span.status.status_code, span.status.description, span.events) == (StatusCode.ERROR, None, ())


def test_a_refused_request_is_no_error_of_the_service(traced: Traced) -> None:
    assert traced.span("GET", "/v1/designations/tyre").status.status_code is StatusCode.UNSET


def test_a_span_is_a_child_of_the_callers(traced: Traced) -> None:
    span = traced.span("GET", "/nope", {"traceparent": f"00-{TRACE_ID}-{SPAN_ID}-01"})
    assert span.parent is not None
    assert (f"{span.context.trace_id:032x}", f"{span.parent.span_id:016x}") == (TRACE_ID, SPAN_ID)


@pytest.mark.parametrize(
    "offered", ["", "x", "00-0-0-01", f"ff-{TRACE_ID}-{SPAN_ID}-01", f"00-{'0' * 32}-{SPAN_ID}-01"]
)
def test_a_parent_that_is_none_starts_a_new_trace(traced: Traced, offered: str) -> None:
    assert traced.span("GET", "/nope", {"traceparent": offered, "tracestate": "=,=;" * 100}).parent is None


def test_the_log_names_the_trace_of_a_request_and_of_a_failure(capfdbinary: pytest.CaptureFixture[bytes]) -> None:
    traced = Traced(access_log=True)
    traced.client.get("/v1/broken/x", headers={"traceparent": f"00-{TRACE_ID}-{SPAN_ID}-01"})
    logged = [json.loads(line) for line in capfdbinary.readouterr().out.splitlines()]
    assert [(line["event"], line["trace_id"]) for line in logged] == [("failure", TRACE_ID), ("request", TRACE_ID)]


def test_the_log_names_no_trace_where_none_is_kept(
    capfdbinary: pytest.CaptureFixture[bytes], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("OTEL_SDK_DISABLED", "true")
    Traced(access_log=True).client.get("/nope")
    TestClient(create_app(Settings())).get("/nope")
    logged = [json.loads(line) for line in capfdbinary.readouterr().out.splitlines()]
    assert [(line["event"], "trace_id" in line) for line in logged] == [("request", False)] * 2


@pytest.mark.parametrize("path", ["/health/live", "/health/ready", "/metrics"])
def test_what_machines_ask_all_the_time_is_not_traced(traced: Traced, path: str) -> None:
    assert traced.client.get(path).status_code == 200
    assert traced.spans() == ()


def test_the_spans_say_which_service_and_version_they_come_from(traced: Traced) -> None:
    attributes = traced.span("GET", "/nope").resource.attributes
    assert (attributes["service.name"], attributes["service.version"]) == ("fitment-service", __version__)


def test_an_operator_may_name_the_service(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("OTEL_SERVICE_NAME", "fitment-blue")
    assert Traced().span("GET", "/nope").resource.attributes["service.name"] == "fitment-blue"


def test_without_the_setting_nothing_is_sent_whatever_the_environment_says(monkeypatch: pytest.MonkeyPatch) -> None:
    # FastAPI documents that these two make it set up providers of its own at start-up.
    monkeypatch.setenv("FASTAPI_OTEL_AUTO_CONFIGURE", "true")
    monkeypatch.setenv("OTEL_EXPORTER_OTLP_ENDPOINT", "http://127.0.0.1:9")
    before = trace.get_tracer_provider()
    with TestClient(create_app(Settings(access_log=False))) as client:
        assert client.get("/nope").status_code == 404
    assert trace.get_tracer_provider() is before


def test_without_the_extra_the_setting_is_refused_with_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, "service.api.transport.telemetry", raising=False)
    monkeypatch.setitem(sys.modules, "opentelemetry.sdk.trace", None)
    monkeypatch.setitem(sys.modules, "opentelemetry.exporter.otlp.proto.http.trace_exporter", None)
    with pytest.raises(BadSettings, match=r"pip install 'fitment-service\[telemetry\]'"):
        create_app(Settings(telemetry=True))


def test_with_the_extra_the_application_is_traced() -> None:
    app = create_app(Settings(telemetry=True))
    assert app.user_middleware[0].cls is Tracing
    app.user_middleware[0].kwargs["provider"].shutdown()
