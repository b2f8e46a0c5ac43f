"""The type of a problem leads to a page (RFC 9457, 3.1.1); OPTIONS and entity tags (RFC 9110, 9.3.7 and 13.1.2)."""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient

from service.api.errors.problem import KINDS
from tests.contract.document import app


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


@pytest.mark.parametrize("status", KINDS)
def test_the_type_of_every_problem_leads_to_a_page_that_says_what_it_means(client, status):
    page = client.get(f"/problems/{KINDS[status].name}")
    assert (page.status_code, page.headers["content-type"]) == (200, "text/html; charset=utf-8")
    assert KINDS[status].title in page.text
    assert f"problems/{KINDS[status].name}" in client.get("/problems").text


def test_the_type_that_an_error_names_can_be_followed(client):
    problem = client.get("/v1/designations/tyre?text=x").json()
    assert client.get(problem["type"]).status_code == 200
    assert client.get("/problems/unheard-of").status_code == 404


@pytest.mark.parametrize(
    ("path", "allow"),
    [
        ("/v1/fitments/check", {"OPTIONS", "POST"}),
        ("/v1/rule-packs", {"GET", "HEAD", "OPTIONS"}),
        ("/v1/tables/load-index", {"GET", "HEAD", "OPTIONS"}),
    ],
)
def test_options_tells_the_methods(client, path, allow):
    answer = client.options(path)
    assert (answer.status_code, answer.content) == (204, b"")
    assert set(answer.headers["allow"].split(", ")) == allow


def test_options_of_nothing_is_not_found(client):
    assert client.options("/v1/nothing").status_code == 404


def test_the_document_is_not_sent_again_to_who_has_it(client):
    first = client.get("/openapi.json")
    again = client.get("/openapi.json", headers={"If-None-Match": first.headers["etag"]})
    assert (first.status_code, again.status_code, again.content) == (200, 304, b"")
    assert client.get("/openapi.json", headers={"If-None-Match": '"other"'}).status_code == 200


@pytest.mark.parametrize("path", ["/docs", "/openapi.json", "/problems", "/v1/rule-packs"])
def test_head_is_get_without_a_body(client, path):
    assert client.head(path).status_code == client.get(path).status_code == 200
