"""Which way each question goes: long work to the pool, checks in turns on the loop, by caller."""

from pathlib import Path

import pytest
from fastapi import FastAPI, Request
from pydantic import SecretStr
from starlette.testclient import TestClient

from service.api.schemas.base import Wire, number
from service.api.transport.callers import caller_of
from service.api.transport.routes import StrictRoute
from service.api.transport.work_pool import ShortWork, WorkPool
from service.app import create_app
from service.settings import Settings
from tests.unit.api.test_guards import ENTRY

DEMO = Path(__file__).parents[3] / "demo_requests"
JSON = {"Content-Type": "application/json"}
CHECK = (DEMO / "square-all-round.check.json").read_bytes()
COMPARISON = (DEMO / "widths-of-a-saloon.compare.json").read_bytes()


@pytest.fixture(scope="module")
def app() -> FastAPI:
    return create_app(Settings(access_log=False))


@pytest.mark.parametrize(
    ("path", "body"),
    [
        ("report", CHECK),
        ("drawing?view=section", CHECK),
        ("drawing?view=patches", CHECK),
        ("compare", COMPARISON),
        ("compare.csv", COMPARISON),
        ("search", (DEMO / "sizes-for-a-compact-car.search.json").read_bytes()),
        ("rims", (DEMO / "five-combinations.rims.json").read_bytes()),
        ("plan", (DEMO / "five-combinations.plan.json").read_bytes()),
    ],
)
def test_long_work_is_refused_where_the_pool_is_full_and_checks_are_not(app: FastAPI, path: str, body: bytes) -> None:
    # No place at all, so that whatever asks for one is refused.
    app.state.work_pool = WorkPool(-1, 7)
    client = TestClient(app)
    refused = client.post(f"/v1/fitments/{path}", content=body, headers=JSON)
    assert (refused.status_code, refused.headers["retry-after"]) == (503, "7")
    assert client.post("/v1/fitments/check", content=CHECK, headers=JSON).status_code == 200


def test_a_check_beyond_those_that_may_wait_is_refused_and_probes_are_not() -> None:
    app = create_app(Settings(access_log=False))
    app.state.short_work = ShortWork(-4, 7)
    client = TestClient(app)
    refused = client.post("/v1/fitments/check", content=CHECK, headers=JSON)
    assert (refused.status_code, refused.headers["retry-after"]) == (503, "7")
    assert client.get("/health/ready").status_code == 200


class Body(Wire):
    speed_kmh: float = number("A speed", "km/h", (1.0, 400.0), 120.0)


def who(body: Body, request: Request) -> str:
    return caller_of(request.scope) if body.speed_kmh else ""


@pytest.mark.parametrize(
    ("settings", "headers", "caller"),
    [
        ({}, {"X-Forwarded-For": "203.0.113.7"}, "192.0.2.1"),
        ({"proxy_count": 1}, {"X-Forwarded-For": "203.0.113.7"}, "203.0.113.7"),
        ({"api_keys": (SecretStr(ENTRY),)}, {"X-API-Key": "one"}, "one"),
    ],
)
def test_the_caller_is_the_key_else_the_address(
    settings: dict[str, object], headers: dict[str, str], caller: str
) -> None:
    app = create_app(Settings.model_validate({"access_log": False, **settings}))
    app.router.routes.append(StrictRoute("/v1/who", who, methods=["POST"]))
    # Addresses for documentation: RFC 5737.
    answer = TestClient(app, client=("192.0.2.1", 50_000)).post("/v1/who", json={"speed_kmh": 1}, headers=headers)
    assert answer.json() == caller
