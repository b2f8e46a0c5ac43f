"""The routes that answer with a drawing, a report or a page: media type, policy, and errors like those of a check."""

import base64
import hashlib
import re

import pytest
from starlette.testclient import TestClient

from service.app import create_app
from service.settings import Settings
from tests.support.cases import changed, saloon

DRAWING, REPORT = "/v1/fitments/drawing", "/v1/fitments/report"


@pytest.fixture(scope="module")
def client():
    return TestClient(create_app(Settings(access_log=False)))


@pytest.mark.parametrize("query", ["", "?view=section", "?view=patches", "?view=section&axles=rear"])
def test_a_drawing_is_svg(client, query):
    answer = client.post(DRAWING + query, json=saloon())
    assert (answer.status_code, answer.headers["content-type"]) == (200, "image/svg+xml")


def test_without_a_choice_the_section_of_both_axles_is_drawn(client):
    chosen = client.post(f"{DRAWING}?view=section&axles=both", json=saloon())
    assert client.post(DRAWING, json=saloon()).content == chosen.content


def test_a_report_is_html(client):
    answer = client.post(REPORT, json=saloon())
    assert (answer.status_code, answer.headers["content-type"]) == (200, "text/html; charset=utf-8")


@pytest.mark.parametrize("path", [DRAWING, f"{DRAWING}?view=patches", REPORT])
def test_the_policy_of_an_answer_admits_its_own_style_alone(client, path):
    answer = client.post(path, json=saloon())
    (style,) = re.findall(r"<style>(.*?)</style>", answer.text, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    directives = dict(each.strip().split(" ", 1) for each in answer.headers["content-security-policy"].split(";"))
    assert directives["style-src"] == f"'sha256-{digest}'"
    assert directives["default-src"] == "'none'"


@pytest.mark.parametrize(("name", "value"), [("view", "side"), ("axles", "third"), ("color", "red")])
def test_a_wrong_choice_is_named(client, name, value):
    answer = client.post(f"{DRAWING}?{name}={value}", json=saloon())
    assert answer.status_code == 422
    assert [each["parameter"] for each in answer.json()["errors"]] == [name]


@pytest.mark.parametrize("path", [DRAWING, REPORT])
def test_a_wrong_field_is_named_as_by_a_check(client, path):
    request = changed(saloon(), {"/candidate/rear/tyre/size": "285/3O R19"})
    faults = client.post(path, json=request).json()["errors"]
    assert faults == client.post("/v1/fitments/check", json=request).json()["errors"]


@pytest.mark.parametrize("path", [DRAWING, REPORT])
def test_the_same_question_gives_the_same_bytes(client, path):
    assert client.post(path, json=saloon()).content == client.post(path, json=saloon()).content


@pytest.mark.parametrize(
    ("path", "media_type"),
    [
        ("/", "text/html; charset=utf-8"),
        ("/page.css", "text/css; charset=utf-8"),
        ("/page.js", "text/javascript; charset=utf-8"),
        ("/page-answer.js", "text/javascript; charset=utf-8"),
        ("/page.svg", "image/svg+xml"),
    ],
)
def test_the_page_and_its_files_are_served(client, path, media_type):
    answer = client.get(path)
    assert (answer.status_code, answer.headers["content-type"]) == (200, media_type)


def test_the_page_is_open_where_keys_are_needed():
    keys = (f"somebody:{'0' * 64}",)
    client = TestClient(create_app(Settings(api_keys=keys, access_log=False)))
    assert [client.get("/").status_code, client.post(REPORT, json=saloon()).status_code] == [200, 401]
