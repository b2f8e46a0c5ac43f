"""Every route has a demo request: `demo_requests/<story>.<operation>.json`, or a line in `get_requests.txt`."""

import json
from pathlib import Path

import pytest
from fastapi.routing import iter_route_contexts
from starlette.routing import compile_path

from service.app import create_app
from service.settings import Settings

DEMO_REQUESTS = Path(__file__).parents[2] / "demo_requests"
BODIES = sorted(DEMO_REQUESTS.glob("*.json"))
GET_PATHS = [
    line.strip()
    for line in (DEMO_REQUESTS / "get_requests.txt").read_text(encoding="utf-8").splitlines()
    if line.strip() and not line.startswith("#")
]


def _paths(method: str) -> list[str]:
    """Return the path of each route for this method, included routers and undocumented routes too."""
    contexts = iter_route_contexts(create_app(Settings()).routes)
    return [str(context.path) for context in contexts if method in (context.methods or ())]


def _is_for(route: str, path: str) -> bool:
    pattern, _, _ = compile_path(route)
    return pattern.fullmatch(path.partition("?")[0]) is not None


def _operation(path: Path) -> str:
    return path.name.split(".")[-2]


# The page's own form comes as a form, not as JSON: tests/contract and the browser send it.
FORM = "/"


# Another form of a question or an answer (`check.ndjson`, `compare.csv`) is asked with the same requests.
@pytest.mark.parametrize("route", sorted({route.partition(".")[0] for route in _paths("POST")} - {FORM}))
def test_every_route_that_takes_a_body_has_a_demo_request(route):
    assert route.rpartition("/")[2] in {_operation(path) for path in BODIES}


@pytest.mark.parametrize("route", _paths("GET"))
def test_every_route_that_is_read_has_a_demo_request(route):
    assert any(_is_for(route, path) for path in GET_PATHS)


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_every_demo_request_is_for_a_route(path):
    assert _operation(path) in {route.rpartition("/")[2] for route in _paths("POST")}


@pytest.mark.parametrize("path", BODIES, ids=lambda path: path.name)
def test_every_demo_request_is_json(path):
    assert isinstance(json.loads(path.read_text(encoding="utf-8")), dict)


@pytest.mark.parametrize("path", GET_PATHS)
def test_every_path_to_read_is_a_route(path):
    assert any(_is_for(route, path) for route in _paths("GET"))
