"""The document as a newcomer reads it: from the most used route on, with examples that can be sent as they stand.

References: OpenAPI 3.1.0 (the `example` of a parameter and of a media type; paths have no order of their own, readers
show them as they come).
"""

from __future__ import annotations

import json

import pytest
from starlette.testclient import TestClient

from service.api.contract.openapi_document import document_bytes
from tests.contract.document import app, document, operations

OPERATIONS = [pytest.param(*each, id=each[2]["operationId"]) for each in operations()]


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def test_the_routes_stand_in_the_order_of_use() -> None:
    subjects = [
        path.removeprefix("/v1/").removeprefix("fitments/") for path in json.loads(document_bytes(app()))["paths"]
    ]
    named = [each.strip("/").replace(".", "/").partition("/")[0] for each in subjects]
    assert list(dict.fromkeys(named)) == [
        *("check", "compare", "search", "rims", "plan", "drawing", "report"),
        *("designations", "tables", "rule-packs", "health", "metrics"),
    ]


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_the_example_of_every_operation_can_be_sent_as_it_stands(client, path, method, operation):
    query = {}
    for parameter in operation.get("parameters", []):
        if parameter["in"] == "path":
            path = path.replace(f"{{{parameter['name']}}}", parameter["example"])
        else:
            query[parameter["name"]] = parameter["example"]
    content, headers = None, {}
    for media_type, taken in operation.get("requestBody", {}).get("content", {}).items():
        example = taken["example"]
        content = example if isinstance(example, str) else json.dumps(example)
        headers = {"Content-Type": media_type}
    answer = client.request(method.upper(), path, params=query, content=content, headers=headers)
    assert answer.status_code == 200, answer.text
    (promised,) = operation["responses"]["200"]["content"]
    assert answer.headers["content-type"].partition(";")[0] == promised


def test_the_introduction_tells_the_first_minute_and_what_a_caller_may_rely_on() -> None:
    told = document()["info"]["description"]
    for words in (
        "The first minute",
        "safe to repeat",
        "compresses nothing",
        "1999/37/EC",
        "from memory",
        "ignore what",
    ):
        assert words in told
