"""The language and the units of an answer: the body's, else the header's, else English.

References: RFC 9110 sections 8.5 (Content-Language), 12.5.4 (Accept-Language) and 12.5.5 (Vary).
"""

from __future__ import annotations

import base64
import hashlib
import re

import pytest
from starlette.testclient import TestClient

from service.api.transport.language import preferred_language
from service.assessment.checks.pressure import in_words
from service.locales.speech import LANGUAGES, Speech
from tests.contract.document import app
from tests.support import plans
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


def test_a_plan_and_its_pressures_are_said_too(client):
    """By CLDR a German number has a comma; 250 kPa are 36.3 psi (1 lbf/in2 = 6.894757 kPa, NIST SP 811)."""
    asked = plans.request((plans.F225, plans.F255), (plans.F255, plans.F285), language="de", units="imperial")
    answer = client.post("/v1/fitments/plan", json=asked)
    assert answer.headers["content-language"] == "de"
    assert "Accept-Language" in answer.headers["vary"]
    assert any(re.search(r"[+−]\d+,\d %", each["text"]) for each in answer.json()["pairs"])
    assert Speech("en", "imperial", {}).say(in_words(250.0)) == "36.3 psi (2.5 bar)"


# Members that hold sentences.
TEXTS = {"text", "message", "summary", "warning", "assumptions", "cautions", "trade_offs_text", "not_held", "reference"}


@pytest.mark.parametrize(("page", "told"), [("drawing", 'xml:lang="fr"'), ("report", '<html lang="fr">')])
def test_drawing_and_report_name_their_language_and_heed_the_units(client, page, told):
    body = saloon() | {"language": "fr", "units": "imperial"}
    answer = client.post(f"/v1/fitments/{page}", json=body, headers={"Accept-Language": "de"})
    assert (answer.status_code, answer.headers["content-language"]) == (200, "fr")
    assert told in answer.text
    # The scale bar of the section: 4 in.
    assert re.search(r">4 (in|po|pouces?)</text>", answer.text)


def test_the_report_s_style_is_admitted_in_every_language(client):
    for language in LANGUAGES:
        answer = client.post("/v1/fitments/report", json=saloon() | {"language": language})
        (style,) = re.findall(r"<style>(.*?)</style>", answer.text, re.DOTALL)
        digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
        assert f"style-src 'sha256-{digest}';" in answer.headers["content-security-policy"]
