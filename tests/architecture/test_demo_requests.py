"""Every route has a demo request: `demo_requests/<story>.<operation>.json`, or a line in `get_requests.txt`."""

import json
from pathlib import Path

import pytest
from starlette.routing import Match, Route

from service.app import create_app
from service.settings import Settings

DEMO_REQUESTS = Path(__file__).parents[2] / "demo_requests"
BODIES = sorted(DEMO_REQUESTS.glob("*.json"))
GET_PATHS = [
    line.strip()
    for line in (DEMO_REQUESTS / "get_requests.txt").read_text(encoding="utf-8").splitlines()
    if line.strip() and not line.startswith("#")
]


def _routes(method: str) -> list[Route]:
    routes = create_app(Settings()).routes
    return [route for route in routes if isinstance(route, Route) and method in (route.methods or ())]


def _is_for(route: Route, method: str, path: str) -> bool:
    scope = {"type": "http", "method": method, "path": path.partition("?")[0], "root_path": "", "headers": []}
    return route.matches(scope)[0] is Match.FULL


def _operation(path: Path) -> str:
    return path.name.split(".")[-2]


@pytest.mark.parametrize("route", _routes("POST"), ids=lambda route: route.path)
def test_every_route_that_takes_a_body_has_a_demo_request(route):
    assert route.path.rpartition("/")[2] in {_operation(path) for path in BODIES}


@pytest.mark.parametrize("route", _routes("GET"), ids=lambda route: route.path)
def test_every_route_that_is_read_has_a_demo_request(route):
    assert any(_is_for(route, "GET", path) for path in GET_PATHS)


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_every_demo_request_is_for_a_route(path):
    assert _operation(path) in {route.path.rpartition("/")[2] for route in _routes("POST")}


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_every_demo_request_is_json(path):
    assert isinstance(json.loads(path.read_text(encoding="utf-8")), dict)


@pytest.mark.parametrize("path", GET_PATHS)
def test_every_path_to_read_is_a_route(path):
    assert any(_is_for(route, "GET", path) for route in _routes("GET"))
