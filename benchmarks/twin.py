"""The twin of the service: the same app, but a check is answered with one of some canned answers.

`python -m benchmarks.twin` serves it. Route class, models, middleware and serialisation are those of the service; what
lies between the validated request and the answer is missing. The answers are those to the demo requests, in turn, as
the endpoint itself gave them at start.
"""

from __future__ import annotations

import asyncio
import itertools
import os

from fastapi import FastAPI, Request
from fastapi.routing import APIRoute
from pydantic import TypeAdapter

from benchmarks.bodies import demo_checks
from service.api.schemas.request import CheckRequest
from service.api.transport.server import serve
from service.app import create_app
from service.settings import load_settings

ROUTE = "/v1/fitments/check"


def twin(app: FastAPI) -> FastAPI:
    """Return the app with its check replaced."""
    route = next(each for each in app.router.routes if isinstance(each, APIRoute) and each.path == ROUTE)
    adapter = TypeAdapter(CheckRequest)
    request = Request({"type": "http", "app": app, "headers": [], "method": "POST", "path": ROUTE, "query_string": b""})
    endpoint = route.endpoint
    answers = [asyncio.run(endpoint(adapter.validate_python(body), request)) for body in demo_checks()]
    next_answer = itertools.cycle(answers).__next__

    async def canned(asked: CheckRequest, request: Request) -> object:  # noqa: ARG001 - the endpoint's own parameters
        return next_answer()

    route.endpoint = canned
    return app


if __name__ == "__main__":
    SETTINGS = load_settings(os.environ)
    serve(twin(create_app(SETTINGS)), SETTINGS)
