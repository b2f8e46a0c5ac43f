"""The twin of the service: the same app, but a check is answered with one of some canned answers.

`python -m benchmarks.twin` serves it. Route class, models, middleware and serialisation are those of the service; what
lies between the validated request and the answer is missing. The answers are those to the demo requests, in turn and
in the detail that is asked for, as the endpoint itself gave them at start.
"""

from __future__ import annotations

import asyncio
import itertools
import os

from fastapi import FastAPI, Request
from fastapi.routing import APIRoute
from pydantic import TypeAdapter

from benchmarks.bodies import demo_checks
from service.api.routers.fitments import check
from service.api.schemas.request import CheckRequest
from service.api.transport.server import serve
from service.app import create_app
from service.settings import load_settings

DETAILS = ("short", "standard", "full")


def twin(app: FastAPI) -> FastAPI:
    """Return the app with its check replaced."""
    # By its function: the same path also takes many lines.
    route = next(each for each in app.router.routes if isinstance(each, APIRoute) and each.endpoint is check)
    adapter = TypeAdapter(CheckRequest)
    request = Request(
        {"type": "http", "app": app, "headers": [], "method": "POST", "path": route.path, "query_string": b""}
    )
    endpoint = route.endpoint

    def answers(detail: str) -> list[object]:
        asked = [adapter.validate_python({**body, "detail": detail}) for body in demo_checks()]
        return [asyncio.run(endpoint(each, request)) for each in asked]

    given = {detail: itertools.cycle(answers(detail)) for detail in DETAILS}

    async def canned(asked: CheckRequest, request: Request) -> object:  # noqa: ARG001 - the endpoint's own parameters
        return next(given[asked.detail])

    route.endpoint = canned
    return app


if __name__ == "__main__":
    SETTINGS = load_settings(os.environ)
    serve(twin(create_app(SETTINGS)), SETTINGS)
