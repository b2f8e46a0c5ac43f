"""Refusals in our own words: days that the calendar does not have, a slash too many at the end of a path."""

import pytest
from starlette.testclient import TestClient

from service.app import create_app
from service.settings import Settings
from tests.support.cases import changed, saloon


@pytest.fixture(scope="module")
def client():
    return TestClient(create_app(Settings(access_log=False)), follow_redirects=False)


@pytest.mark.parametrize("pointer", ["/date", "/vehicle/built"])
@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("2026-02-30", 'There is no day "2026-02-30": that month has 28 days.'),
        ("24.11.2026", '"24.11.2026" is not a date; a day such as "2026-11-24" is expected.'),
    ],
)
def test_a_day_that_is_none_is_refused_at_its_field(client, pointer, text, words):
    answer = client.post("/v1/fitments/check", json=changed(saloon(), {pointer: text}))
    assert answer.status_code == 422
    assert answer.json()["errors"] == [{"pointer": pointer, "detail": words, "code": "wrong_format"}]


@pytest.mark.parametrize("pointer", ["/date", "/vehicle/built"])
def test_a_leap_day_is_taken(client, pointer):
    request = changed(saloon(), {pointer: "2024-02-29"})
    assert client.post("/v1/fitments/check", json=request).status_code == 200


@pytest.mark.parametrize("path", ["/v1/fitments/check", "/v1/tables/load-index", "/v1/rule-packs/nl", "/docs"])
@pytest.mark.parametrize("slashes", ["/", "//"])
def test_a_slash_too_many_is_told(client, path, slashes):
    answer = client.get(path + slashes)
    assert (answer.status_code, answer.headers["content-type"]) == (404, "application/problem+json")
    assert f"ask for {path}, without the slash at the end." in answer.json()["detail"]
    # And all that is said of any path that is not there.
    assert client.get("/nothing").json()["detail"] in answer.json()["detail"]


@pytest.mark.parametrize("path", ["/v1/fitment/", "/nothing/", "/nothing", "/v1/"])
def test_a_path_that_leads_nowhere_is_given_no_such_hint(client, path):
    answer = client.get(path)
    assert answer.status_code == 404
    assert "slash" not in answer.json()["detail"]
