"""Builds the application; nothing runs and nothing exists before `create_app` is called."""

from __future__ import annotations

from typing import Any, Final

from fastapi import FastAPI
from fastapi.telemetry import TelemetryConfig
from limits.errors import ConfigurationError
from structlog.typing import FilteringBoundLogger

from service.api.contract import docs_page
from service.api.contract.openapi_document import document
from service.api.errors import problem
from service.api.routers import ROUTERS
from service.api.transport.api_keys import ApiKeys
from service.api.transport.envelope import Envelope, Services
from service.api.transport.log_lines import STDOUT, LogLines
from service.api.transport.observability import Metrics, make_logger
from service.api.transport.request_body import BodySpace
from service.api.transport.security import ALLOWED_HEADERS, Cors, TrustedHosts
from service.api.transport.work_pool import ShortWork, WorkPool
from service.assessment.batch.sizes import GRID_MARKINGS, grid
from service.core.version import VERSION
from service.rules.reader import default_packs
from service.settings import BadSettings, Settings
from service.standards.catalogue import TABLE_NAMES, table

# The framework's own: it sends queries, the input of refused requests and the texts of errors, by whatever stands in
# the environment. `telemetry.py` sends none of them.
_NO_TELEMETRY: Final[TelemetryConfig] = {"tracing": False, "metrics": False, "logs": False, "auto_configure": False}


def create_app(settings: Settings) -> FastAPI:
    """Return a new application with these settings; two of them share nothing but what cannot change.

    Raises
    ------
    PackError
        When a rule pack has a fault: a service without its rules must not start.
    """
    _make_ready()
    app = FastAPI(version=VERSION, openapi_url=None, redirect_slashes=False, telemetry=_NO_TELEMETRY)
    pool = WorkPool(settings.queue_length, settings.retry_after_s)
    lines = LogLines(STDOUT)
    metrics = Metrics(lambda: pool.pending, lambda: lines.dropped)
    log = make_logger(settings.log_level, lines)
    services = Services(
        metrics,
        TrustedHosts(settings.trusted_hosts),
        _keys(settings, metrics, log),
        log,
        settings,
    )
    app.state.settings = settings
    app.state.metrics = metrics
    app.state.work_pool = pool
    app.state.short_work = ShortWork(settings.check_queue_length, settings.retry_after_s)
    app.state.body_space = BodySpace(settings.body_space_mib * 1024 * 1024, settings.retry_after_s)
    app.state.lifecycle = services.lifecycle
    app.state.services = services
    app.state.log_lines = lines
    problem.install(app)
    app.add_middleware(Envelope, services=services)
    if settings.cors_origins:
        app.add_middleware(
            Cors,
            allow_origins=settings.cors_origins,
            allow_methods=("GET", "POST"),
            allow_headers=ALLOWED_HEADERS,
            expose_headers=("ETag", "RateLimit", "RateLimit-Policy", "Retry-After", "X-Request-ID"),
            max_age=settings.cors_max_age_s,
        )
    if settings.telemetry:
        _trace(app)
    # Appended and not included: an included router is matched twice and cannot be seen by `allowed_methods`.
    for router in ROUTERS:
        app.router.routes.extend(router.routes)
    if settings.docs:
        app.router.routes.extend(docs_page.routes())
    _remember_document(app)
    return app


def _make_ready() -> None:
    """Read and make what requests need, so that none has to wait for it."""
    default_packs()
    for name in TABLE_NAMES:
        table(name)
    for marking in GRID_MARKINGS:
        grid(marking)


def _keys(settings: Settings, metrics: Metrics, log: FilteringBoundLogger) -> ApiKeys | None:
    entries = [entry.get_secret_value() for entry in settings.api_keys]

    def note_failure() -> None:
        metrics.observe_store_failure()
        log.warning("rate storage failed", meanwhile="rates are counted by this process alone")

    storage = settings.rate_storage.get_secret_value()
    # The faults below do not repeat the address: it may hold a password.
    try:
        # Made without keys too: an address that is none must not wait for the first key to be told.
        keys = ApiKeys(entries, settings.api_key_rate, storage, note_failure)
    except ConfigurationError:
        if storage.startswith("redis"):
            raise BadSettings(
                "FITMENT_RATE_STORAGE: redis needs the extra `redis`, which is not installed: "
                "pip install 'fitment-service[redis]'"
            ) from None
        raise BadSettings("FITMENT_RATE_STORAGE: memory:// or an address redis://... is expected") from None
    except ValueError:
        raise BadSettings(
            "FITMENT_RATE_STORAGE: the address cannot be read; one such as redis://redis.example:6379/0 is expected"
        ) from None
    return keys if entries else None


def _trace(app: FastAPI) -> None:
    try:
        from service.api.transport.telemetry import Tracing, exporting_provider  # noqa: PLC0415 - an extra, mostly not installed
    except ModuleNotFoundError as error:
        if not (error.name or "").startswith("opentelemetry"):
            raise
        raise BadSettings(
            "FITMENT_TELEMETRY is on, but the extra `telemetry` is not installed: "
            "pip install 'fitment-service[telemetry]'"
        ) from None
    app.add_middleware(Tracing, provider=exporting_provider())


def _remember_document(app: FastAPI) -> None:
    """Make `app.openapi()` return our document, built on first use."""
    made: dict[str, Any] = {}

    def openapi() -> dict[str, Any]:
        if not made:
            made.update(document(app))
        return made

    app.openapi = openapi  # type: ignore[method-assign] # FastAPI documents this way of replacing it
