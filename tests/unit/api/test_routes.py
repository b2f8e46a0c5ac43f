"""The route class inside an application: which way requests go, and that the contract shows the bounds."""

from collections.abc import Callable
from typing import Annotated

import pytest
from fastapi import APIRouter, Depends
from starlette.testclient import TestClient

from service.api.contract.openapi_document import document
from service.api.errors.problem import HttpProblem, problem_responses
from service.api.schemas.base import Wire, number, text, whole
from service.api.transport.routes import DEFAULT_MAX_BODY_BYTES, StrictRoute, body_limit
from service.app import create_app
from service.core.errors import DomainError, UnknownName, UnreadableDesignation
from service.settings import Settings


class Body(Wire):
    speed_kmh: float = number("A speed", "km/h", (1.0, 400.0), 120.0)
    count: int | None = whole("A count", "1", (1, 9), 4, default=None)
    label: str = text("A label", 20, "one", default="")


def visitor() -> str:
    return "somebody"


router = APIRouter(route_class=StrictRoute)


@router.post("/plain")
@body_limit(100)
async def plain(body: Body) -> Body:
    return body


@router.post("/with-dependency")
async def with_dependency(body: Body, who: Annotated[str, Depends(visitor)]) -> dict[str, str]:
    return {who: body.label}


@router.get("/things/{name}", responses=problem_responses(404, 422))
async def thing(name: str) -> str:
    if name == "twice":
        raise DomainError("Two fields contradict each other.", "/a")
    if name == "unreadable":
        raise UnreadableDesignation("rim", 3, "a width").at("/rim")
    if name == "pointed":
        raise UnknownName("rule pack", ("unece",), "/rule_pack")
    raise UnknownName("table", ("one",))


@router.get("/gone")
async def gone() -> str:
    raise HttpProblem(410)


def client() -> TestClient:
    app = create_app(Settings(access_log=False))
    app.router.routes.extend(router.routes)
    return TestClient(app)


def test_an_endpoint_with_a_body_alone_is_answered_by_the_route_itself() -> None:
    assert {route.app.__name__ for route in router.routes if route.path == "/plain"} == {"_answer"}


def test_an_endpoint_with_dependencies_is_left_to_the_framework() -> None:
    assert client().post("/with-dependency", json={"speed_kmh": 1, "label": "x"}).json() == {"somebody": "x"}


def long_work_with_a_query_parameter(body: Body, times: int = 1) -> Body:
    return body if times else Body(speed_kmh=1.0)


def long_work_without_a_body(times: int = 1) -> int:
    return times


def long_work_with_a_dependency(body: Body, who: Annotated[str, Depends(visitor)]) -> str:
    return who + body.label


@pytest.mark.parametrize(
    "endpoint", [long_work_with_a_query_parameter, long_work_without_a_body, long_work_with_a_dependency]
)
def test_long_work_that_could_not_be_bounded_gets_no_route(endpoint: Callable[..., object]) -> None:
    with pytest.raises(TypeError, match="bounded"):
        APIRouter(route_class=StrictRoute).post("/long")(endpoint)


def test_long_work_on_a_body_alone_runs_in_the_bounded_pool() -> None:
    app = create_app(Settings(access_log=False))
    waiting: list[int] = []

    def toil(body: Body) -> Body:
        waiting.append(app.state.work_pool.pending)
        return body

    app.router.routes.append(StrictRoute("/toil", toil, methods=["POST"]))
    assert TestClient(app).post("/toil", json={"speed_kmh": 1}).status_code == 200
    assert waiting == [1]


def test_the_limit_of_a_body_is_that_of_its_route() -> None:
    limits = {route.path: route.max_body_bytes for route in router.routes}
    assert (limits["/plain"], limits["/with-dependency"]) == (100, DEFAULT_MAX_BODY_BYTES)


@pytest.mark.parametrize(
    ("name", "status", "pointers"),
    [("other", 404, [""]), ("pointed", 422, ["/rule_pack"]), ("twice", 422, ["/a"]), ("unreadable", 422, ["/rim"])],
)
def test_a_domain_error_becomes_a_problem(name: str, status: int, pointers: list[str]) -> None:
    answer = client().get(f"/things/{name}")
    assert answer.status_code == status
    assert [fault["pointer"] for fault in answer.json()["errors"]] == pointers


def test_a_status_without_words_of_its_own_still_is_a_problem() -> None:
    answer = client().get("/gone")
    assert (answer.status_code, answer.json()["status"]) == (410, 410)


def test_two_applications_share_no_numbers() -> None:
    first, second = create_app(Settings()), create_app(Settings())
    first.state.metrics.observe_verdict("suitable")
    assert b'fitment_verdicts_total{verdict="suitable"} 1.0' not in second.state.metrics.exposition()


@pytest.fixture(scope="module")
def schema() -> dict[str, dict[str, object]]:
    app = create_app(Settings())
    app.router.routes.extend(router.routes)
    made: dict[str, dict[str, object]] = document(app)["components"]["schemas"]["Body"]["properties"]
    return made


def test_bounds_unit_and_example_reach_the_contract(schema: dict[str, dict[str, object]]) -> None:
    assert schema["speed_kmh"] == {
        "type": "number",
        "minimum": 1.0,
        "maximum": 400.0,
        "description": "A speed [km/h].",
        "examples": [120.0],
        "x-unit": "km/h",
    }


def test_the_bounds_of_an_optional_whole_number_reach_the_contract(schema: dict[str, dict[str, object]]) -> None:
    assert schema["count"]["anyOf"] == [{"type": "integer", "minimum": 1, "maximum": 9}, {"type": "null"}]


def test_a_text_says_its_length_and_pattern_in_the_contract(schema: dict[str, dict[str, object]]) -> None:
    assert (schema["label"]["maxLength"], "pattern" in schema["label"]) == (20, True)
