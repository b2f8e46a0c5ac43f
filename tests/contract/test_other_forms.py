"""Tables and the page to print at addresses of their own, the same as `Accept` asks for at the address of the answer.

References: RFC 9110, 12.5.1 (Accept); OpenAPI 3.1.0 (one media type an answer leaves a generated client one type).
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from tests.contract.document import app, operations

STORIES = Path(__file__).parents[2] / "demo_requests"
COMPARE = STORIES / "widths-of-a-saloon.compare.json"
PLAN = STORIES / "five-combinations.plan.json"


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


@pytest.mark.parametrize(
    ("path", "form", "media_type", "story"),
    [
        ("/v1/fitments/compare", "csv", "text/csv", COMPARE),
        ("/v1/fitments/plan", "csv", "text/csv", PLAN),
        ("/v1/fitments/plan", "html", "text/html", PLAN),
    ],
)
def test_a_form_has_an_address_of_its_own(client, path, form, media_type, story):
    asked = json.loads(story.read_text(encoding="utf-8"))
    mine = client.post(f"{path}.{form}", json=asked)
    theirs = client.post(path, json=asked, headers={"Accept": media_type})
    assert mine.status_code == theirs.status_code == 200
    assert mine.headers["content-type"] == theirs.headers["content-type"] == f"{media_type}; charset=utf-8"
    assert mine.text == theirs.text


def test_a_plan_is_said_in_the_language_that_its_head_names(client):
    # German writes a decimal comma; the story has effects with decimals.
    asked = json.loads(PLAN.read_text(encoding="utf-8"))
    answer = client.post("/v1/fitments/plan", json=asked | {"language": "de"})
    assert answer.headers["content-language"] == "de"
    assert answer.headers["vary"] == "Accept, Accept-Language"
    assert answer.json() != client.post("/v1/fitments/plan", json=asked).json()


def test_every_answer_has_one_media_type():
    for _, _, operation in operations():
        assert len(operation["responses"]["200"]["content"]) == 1
        assert len(operation.get("requestBody", {"content": [1]})["content"]) == 1
