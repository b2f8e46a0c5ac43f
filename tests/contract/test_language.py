"""The language and the units of an answer: the body's, else the header's, else English.

References: RFC 9110 sections 8.5 (Content-Language), 12.5.4 (Accept-Language) and 12.5.5 (Vary).
"""

from __future__ import annotations

import pytest
from starlette.testclient import TestClient

from service.api.transport.language import preferred_language
from tests.contract.document import app
from tests.support.cases import saloon

CHECK = "/v1/fitments/check"


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


@pytest.mark.parametrize(
    ("header", "language"),
    [
        ("", "en"),
        ("de", "de"),
        ("de-AT", "de"),
        ("FR", "fr"),
        ("da, en-gb;q=0.8, nl;q=0.9", "nl"),
        ("pt-BR, ja", "en"),
        ("es;q=0", "en"),
        ("es;q=no, de;q=0.1", "de"),
        ("*", "en"),
        ("nl;q=0.5, fr;q=0.5", "nl"),
    ],
)
def test_the_header_s_best_language_of_ours(header, language):
    assert preferred_language(header) == language


@pytest.mark.parametrize(("header", "member", "language"), [("de", None, "de"), ("de", "fr", "fr"), ("", None, "en")])
def test_the_answer_says_its_language_and_that_it_depends_on_it(client, header, member, language):
    body = saloon() if member is None else saloon() | {"language": member}
    answer = client.post(CHECK, json=body, headers={"Accept-Language": header})
    assert (answer.status_code, answer.headers["content-language"]) == (200, language)
    assert "Accept-Language" in answer.headers["vary"]


@pytest.mark.parametrize("path", ["/v1/nothing", "/v1/designations/tyre?text=x"])
def test_a_problem_says_its_language_too(client, path):
    assert client.get(path, headers={"Accept-Language": "es"}).headers["content-language"] == "es"


def test_a_body_with_faults_is_refused_in_the_language_it_asks_for(client):
    answer = client.post(CHECK, json={"language": "nl"})
    assert (answer.status_code, answer.headers["content-language"]) == (422, "nl")


@pytest.mark.parametrize("member", [{"language": "xx"}, {"units": "furlongs"}])
def test_a_language_or_unit_that_is_none_of_ours_is_refused_in_the_body(client, member):
    answer = client.post(CHECK, json=saloon() | member)
    assert [each["code"] for each in answer.json()["errors"]] == ["not_one_of"]


def test_numbers_and_codes_are_the_same_in_every_language(client):
    def data(part):
        if isinstance(part, dict):
            kept = {name: data(each) for name, each in part.items()}
            return {name: each for name, each in kept.items() if name not in TEXTS}
        return [data(each) for each in part] if isinstance(part, list) else part

    full = saloon() | {"detail": "full"}
    english = data(client.post(CHECK, json=full).json())
    for language in ("de", "fr", "es", "nl"):
        assert data(client.post(CHECK, json=full | {"language": language, "units": "imperial"}).json()) == english


# Members that hold sentences.
TEXTS = {"text", "message", "summary", "warning", "assumptions", "cautions", "trade_offs_text", "not_held", "reference"}
