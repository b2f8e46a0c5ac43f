"""Whether the process lives, whether it wants requests, and its numbers."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response
from prometheus_client import CONTENT_TYPE_LATEST

from service.api.errors.problem import HttpProblem, problem_responses
from service.api.schemas.liveness import Health
from service.api.transport.routes import StrictRoute
from service.core.saying import say
from service.core.version import VERSION

router = APIRouter(route_class=StrictRoute, tags=["operation"])


@router.get(
    "/health/live",
    summary="Say whether the process lives",
    operation_id="read_liveness",
    responses=problem_responses(422, 500),
)
async def live() -> Health:
    """Answer as long as the event loop turns; an orchestrator restarts a process that does not."""
    return Health(status="ok", version=VERSION)


@router.get(
    "/health/ready",
    summary="Say whether to send requests here",
    operation_id="read_readiness",
    responses=problem_responses(422, 500, 503),
)
async def ready(request: Request) -> Health:
    """Answer 503 from the moment the process is asked to stop, so that balancers turn elsewhere first."""
    if request.app.state.lifecycle.draining:
        raise HttpProblem(503, say("The service is stopping."), headers={"Retry-After": "1"})
    return Health(status="ok", version=VERSION)


@router.get(
    "/metrics",
    summary="Give the numbers of this process",
    operation_id="read_metrics",
    response_class=Response,
    responses={
        200: {"description": "Prometheus text format.", "content": {"text/plain": {"schema": {"type": "string"}}}},
        **problem_responses(404, 422, 500),
    },
)
async def metrics(request: Request) -> Response:
    """Give requests, latencies, verdicts and queue length in the text format of Prometheus."""
    if not request.app.state.settings.metrics:
        raise HttpProblem(404)
    return Response(request.app.state.metrics.exposition(), media_type=CONTENT_TYPE_LATEST)
