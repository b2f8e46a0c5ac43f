"""The application with a few routes more, which do nothing but what a test of the plumbing needs.

Run as `python -m tests.contract.http_app`, with the same settings as the service.
"""

import os
import time
from typing import Literal

from fastapi import APIRouter, Request

from service.api.errors.problem import BODY_PROBLEMS, problem_responses
from service.api.schemas.base import Wire, number, part, text, whole
from service.api.transport.observability import observe_verdict
from service.api.transport.routes import StrictRoute, body_limit
from service.api.transport.server import serve
from service.api.transport.work_pool import run_bounded
from service.app import create_app
from service.settings import load_settings

MAX_BODY_BYTES = 16 * 1024

router = APIRouter(route_class=StrictRoute)


class Inner(Wire):
    """A part of the body."""

    speed_kmh: float = number("A speed", "km/h", (1.0, 400.0), 120.0)
    wheel_count: int = whole("How many", "1", (1, 9), 4)
    choice: Literal["M1", "N1"] = part("A choice", "M1", default="M1")
    label: str = text("A text", 40, "one", default="")


class Body(Wire):
    """A body."""

    inner: Inner = part("The part")
    several: list[Inner] = part("More parts", default=[], max_length=200)


@router.post("/v1/echo", responses=problem_responses(*BODY_PROBLEMS))
@body_limit(MAX_BODY_BYTES)
async def echo(body: Body) -> Body:
    """Give back what was read."""
    return body


@router.post("/v1/echo-with-query", responses=problem_responses(*BODY_PROBLEMS))
@body_limit(MAX_BODY_BYTES)
async def echo_with_query(body: Body, times: int = 1) -> Body:
    """Give back what was read; the query parameter sends it through the framework's own handler."""
    return body if times else Body(inner=body.inner)


@router.get("/v1/echo", responses=problem_responses(422, 500))
async def look(text: str = "", limit: int = 1) -> str:
    """Give back the query parameter."""
    return text * limit


@router.get("/v1/verdict")
async def verdict(request: Request) -> str:
    """Count a verdict."""
    observe_verdict(request, "suitable")
    return "suitable"


@router.get("/v1/broken")
async def broken() -> str:
    """Fail with a text that no answer and no log may repeat."""
    raise ValueError("the-secret-of-the-caller")


@router.post("/v1/toil", responses=problem_responses(*BODY_PROBLEMS))
async def work(request: Request, body: Body) -> str:
    """Keep the worker busy for as many hundredths of a second as `speed_kmh` says."""
    return await run_bounded(request, burn, body.inner.speed_kmh / 100.0)


def burn(seconds: float) -> str:
    """Use the processor that long."""
    end = time.thread_time() + seconds
    while time.thread_time() < end:
        pass
    return "done"


if __name__ == "__main__":
    chosen = load_settings(os.environ)
    app = create_app(chosen)
    app.router.routes.extend(router.routes)
    serve(app, chosen)
