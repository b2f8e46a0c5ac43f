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
        ("/answer.css", "text/css; charset=utf-8"),
        ("/state.js", "text/javascript; charset=utf-8"),
        ("/examples.json", "application/json"),
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


FORM = {
    "/vehicle/front/fitted/tyre/size": "205/55 R16 91V",
    "/vehicle/front/fitted/rim/size": "6.5J x 16 H2 ET50",
    "/vehicle/max_speed_kmh": "200",
    "/vehicle/front/max_axle_mass_kg": "900",
    "/vehicle/rear/max_axle_mass_kg": "900",
    "/candidate/front/tyre/size": "225/50 R16 92V",
}


def test_the_form_without_a_script_is_answered_with_the_report(client):
    answer = client.post("/?language=de", data=FORM)
    assert (answer.status_code, answer.headers["content-type"]) == (200, "text/html; charset=utf-8")
    assert answer.headers["content-language"] == "de"
    assert "225/50 R16 92V" in answer.text
    assert answer.headers["content-security-policy"].startswith("default-src 'none'; style-src 'sha256-")


def test_the_faults_of_a_form_are_listed_in_words(client):
    answer = client.post(
        "/", data={**FORM, "/candidate/front/tyre/size": "225/5O R16", "/vehicle/max_speed_kmh": "fast"}
    )
    assert (answer.status_code, answer.headers["content-type"]) == (422, "text/html; charset=utf-8")
    assert "<b>Front axle, candidate: Tyre:</b>" in answer.text
    assert "<b>Top speed:</b>" in answer.text
    assert "script-src 'self'" in answer.headers["content-security-policy"]


@pytest.mark.parametrize(
    ("content", "media_type", "status"),
    [
        ("a=b", "text/plain", 415),
        ("{}", "application/json", 415),
        ("a=" + "b" * 40_000, "application/x-www-form-urlencoded", 413),
        ("&".join(f"a{each}=b" for each in range(400)), "application/x-www-form-urlencoded", 400),
        ("a=%FF", "application/x-www-form-urlencoded", 400),
        ("a=é", "application/x-www-form-urlencoded", 400),
        ("colour=red", "application/x-www-form-urlencoded", 422),
        ("", "application/x-www-form-urlencoded", 422),
        ("/vehicle/front=x&/vehicle/front/max_axle_mass_kg=1", "application/x-www-form-urlencoded", 422),
    ],
)
def test_a_form_that_cannot_be_read_is_refused(client, content, media_type, status):
    answer = client.post("/", content=content.encode(), headers={"Content-Type": media_type})
    assert answer.status_code == status


def test_the_form_asks_for_a_key_where_a_check_does():
    keys = (f"somebody:{'0' * 64}",)
    client = TestClient(create_app(Settings(api_keys=keys, access_log=False)))
    assert client.post("/", data=FORM).status_code == 401


@pytest.mark.parametrize(
    ("query", "header", "language"), [("?language=fr", "de", "fr"), ("", "de", "de"), ("", "", "en")]
)
def test_the_page_comes_in_the_language_of_the_link_or_of_the_browser(client, query, header, language):
    answer = client.get(f"/{query}", headers={"Accept-Language": header})
    assert f'<html lang="{language}">' in answer.text
    assert answer.headers["content-language"] == language
    assert "Accept-Language" in answer.headers["vary"]


def test_a_language_that_is_not_spoken_is_refused(client):
    assert client.get("/?language=xx").status_code == 422
