"""Many vehicles in one request, a check a line.

References: the NDJSON specification (a JSON text a line, ended by a line feed; empty lines may be passed over), from
memory; RFC 9457 (problems); RFC 9110 (415 and Accept).
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from service.api.transport.work_pool import WorkPool
from tests.contract.document import app, validator
from tests.support.cases import Json, saloon

ROOT = Path(__file__).parents[2]
NDJSON = "application/x-ndjson"
PATHS = ["/v1/fitments/check.ndjson", "/v1/fitments/check"]
SHORT = saloon() | {"detail": "short"}


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def as_lines(*values: Json) -> bytes:
    return b"".join(json.dumps(each).encode() + b"\n" for each in values)


def answered(client: TestClient, path: str, body: bytes) -> list[Json]:
    answer = client.post(path, content=body, headers={"Content-Type": NDJSON})
    assert (answer.status_code, answer.headers["content-type"].partition(";")[0]) == (200, NDJSON)
    assert answer.text.endswith("\n")
    return [json.loads(line) for line in answer.text.splitlines()]


@pytest.mark.parametrize("path", PATHS)
def test_each_line_is_answered_as_a_check_alone_would_be(client, path):
    for line, detail in zip(answered(client, path, as_lines(SHORT, saloon())), ("short", "standard"), strict=True):
        alone = client.post("/v1/fitments/check", json=saloon() | {"detail": detail})
        assert (line["status"], line["assessment"]) == (200, alone.json())


@pytest.mark.parametrize("path", PATHS)
def test_a_line_that_cannot_be_read_is_not_the_end_of_the_others(client, path):
    lines = answered(client, path, as_lines(SHORT) + b"{\n\r\n[]\n" + as_lines(SHORT | {"vehicel": 1}, SHORT))
    assert [(each["line"], each["status"]) for each in lines] == [(1, 200), (2, 400), (4, 422), (5, 422), (6, 200)]
    for line in lines:
        if line["status"] != 200:
            validator({"$ref": "#/components/schemas/Problem"}).validate(line["problem"])
            assert line["problem"]["status"] == line["status"]
    assert lines[3]["problem"]["errors"][0]["pointer"] == "/vehicel"


@pytest.mark.parametrize("path", PATHS)
def test_what_is_wrong_with_a_line_is_placed_in_the_line_of_the_body(client, path):
    # The brace that no name follows stands in the third line.
    lines = answered(client, path, as_lines(SHORT) + b"\n{\n" + as_lines(SHORT))
    assert (lines[1]["line"], lines[1]["problem"]["status"]) == (3, 400)
    assert "(line 3, column " in lines[1]["problem"]["detail"]


def test_the_line_is_told_in_another_language_too(client):
    answer = client.post(PATHS[0], content=b"\n{", headers={"Content-Type": NDJSON, "Accept-Language": "de"})
    assert "(Zeile 2, Spalte " in json.loads(answer.text)["problem"]["detail"]


def test_a_line_may_ask_for_a_language_of_its_own(client):
    # German writes a decimal comma.
    story = json.loads((ROOT / "demo_requests" / "load-fails-at-top-speed.check.json").read_text(encoding="utf-8"))
    lines = answered(client, PATHS[0], as_lines(story, story | {"language": "de"}))
    shares = [each["assessment"]["findings"][0]["parameters"]["share"]["text"] for each in lines]
    assert shares == ["92.5 %", "92,5 %"]


def test_the_demo_lines_are_answered(client):
    body = (ROOT / "demo_requests" / "three-vehicles.check.ndjson").read_bytes()
    assert [each["status"] for each in answered(client, PATHS[0], body)] == [200, 200, 422]


def test_a_line_longer_than_a_check_may_be_is_refused_alone(client):
    lines = answered(client, PATHS[0], as_lines(SHORT | {"label": "x" * 33_000}, SHORT))
    assert [each["status"] for each in lines] == [413, 200]


def test_a_thousand_lines_are_answered_and_one_more_is_refused(client):
    most = b"{}\n" * 1000
    assert len(answered(client, PATHS[0], most)) == 1000
    answer = client.post(PATHS[0], content=most + b"{}", headers={"Content-Type": NDJSON})
    assert (answer.status_code, answer.json()["type"]) == (422, "/problems/validation")


def test_no_line_at_all_is_refused(client):
    assert client.post(PATHS[0], content=b"\n\r\n", headers={"Content-Type": NDJSON}).status_code == 400


def test_another_media_type_is_refused_and_the_right_one_named(client):
    answer = client.post(PATHS[0], json=saloon())
    assert (answer.status_code, answer.headers["accept"]) == (415, NDJSON)


def test_lines_take_their_turn_among_long_work_and_are_refused_when_it_is_full(client):
    before = client.app.state.work_pool
    client.app.state.work_pool = WorkPool(-1, 1)
    try:
        answer = client.post(PATHS[0], content=as_lines(SHORT), headers={"Content-Type": NDJSON})
    finally:
        client.app.state.work_pool = before
    assert (answer.status_code, "retry-after" in answer.headers) == (503, True)
    assert client.post("/v1/fitments/check", json=SHORT).status_code == 200
