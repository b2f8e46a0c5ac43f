"""A comparison as a plot over HTTP: its form, its limits, its refusals, its language.

References: RFC 9110 (HEAD, OPTIONS, 405 with Allow); RFC 9457 (problem+json); Content Security Policy Level 3.
"""

from __future__ import annotations

import copy
import json
from pathlib import Path
from typing import get_args
from xml.etree.ElementTree import fromstring

import pytest
from starlette.testclient import TestClient

from service.api.routers.plotted_comparison import PLOT_BODY_BYTES
from service.drawing.plots import PlotName
from tests.contract.document import app
from tests.contract.test_largest_bodies import COMPARISON, escaped

STORY = Path(__file__).parents[2] / "demo_requests" / "widths-of-a-saloon.compare.json"
PATH = "/v1/fitments/compare.svg"
PLOTS = get_args(PlotName)


@pytest.fixture(scope="module")
def client():
    return TestClient(app())


@pytest.fixture
def asked():
    return json.loads(STORY.read_text(encoding="utf-8"))


def described(answer):
    return fromstring(answer.text)[1].text


@pytest.mark.parametrize("plot", PLOTS)
def test_a_comparison_is_plotted(client, asked, plot):
    answer = client.post(PATH, params={"plot": plot}, json=asked)
    assert answer.status_code == 200
    assert answer.headers["content-type"] == "image/svg+xml"
    assert fromstring(answer.text).attrib["id"] == plot
    # Its own style and nothing else: no script, no font, no picture from anywhere.
    assert answer.headers["content-security-policy"].startswith("default-src 'none'; style-src 'sha256-")
    assert [each["label"] in described(answer) for each in asked["candidates"][:5]] == [True] * 5


def test_grip_is_what_is_plotted_where_nothing_is_said(client, asked):
    assert client.post(PATH, json=asked).text == client.post(PATH, params={"plot": "grip"}, json=asked).text


@pytest.mark.parametrize("plot", PLOTS)
def test_the_verdicts_are_those_of_compare(client, asked, plot):
    words = {"suitable": "It fits.", "suitable_with_conditions": "It fits, with conditions."}
    words["not_recommended"] = "We advise against it."
    told = described(client.post(PATH, params={"plot": plot}, json=asked))
    rows = client.post("/v1/fitments/compare", json=asked).json()["rows"]
    assert len(rows) == 5
    for row in rows:
        assert f"{'ABCDEF'[row['index']]} ({row['label']}): {words[row['verdict']]}" in told


@pytest.mark.parametrize("plot", PLOTS)
def test_a_candidate_that_cannot_be_read_is_named_in_a_note(client, asked, plot):
    refused = client.post("/v1/fitments/compare", json=asked).json()["refused"]
    told = described(client.post(PATH, params={"plot": plot}, json=asked))
    assert f"F cannot be read: {refused[0]['errors'][0]['detail']}" in told


def test_where_none_can_be_read_their_faults_are_answered(client, asked):
    answer = client.post(PATH, json=asked | {"candidates": asked["candidates"][-1:]})
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.json()["errors"][0]["pointer"].startswith("/candidates/0/")


@pytest.mark.parametrize("plot", PLOTS)
def test_verdicts_that_are_not_asked_for_are_left_out(client, asked, plot):
    told = described(client.post(PATH, params={"plot": plot}, json=asked | {"verdicts": ["suitable"]}))
    assert "A (the same sizes again): It fits." in told
    assert "(255 on all four)" not in told
    assert "Left out for their verdicts: 4." in told


@pytest.mark.parametrize("plot", PLOTS)
def test_a_plot_without_candidates_says_so(client, asked, plot):
    answer = client.post(PATH, params={"plot": plot}, json=asked | {"verdicts": ["unsuitable"]})
    assert answer.status_code == 200
    assert "Left out for their verdicts: 5." in described(answer)


def test_twelve_candidates_are_drawn(client, asked):
    told = described(client.post(PATH, json=asked | {"candidates": asked["candidates"][:3] * 4}))
    assert "L (255 on all four)" in told


@pytest.mark.parametrize("count", [13, 500])
def test_more_are_refused_with_the_number_that_is_drawn(client, asked, count):
    answer = client.post(PATH, json=asked | {"candidates": asked["candidates"][:1] * count})
    assert answer.status_code == 422
    (fault,) = answer.json()["errors"]
    assert fault["pointer"] == "/candidates"
    assert {"12", str(count)} <= set(fault["detail"].replace(".", "").replace(",", "").split())


@pytest.mark.parametrize(
    ("query", "parameter"), [({"plot": "pie"}, "plot"), ({"plots": "grip"}, "plots"), ({"plot": ["grip"] * 2}, "plot")]
)
def test_another_plot_is_refused_by_the_name_of_the_parameter(client, asked, query, parameter):
    answer = client.post(PATH, params=query, json=asked)
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"
    assert answer.json()["errors"][0]["parameter"] == parameter


def test_it_is_said_in_the_caller_s_language(client, asked):
    by_head = client.post(PATH, json=asked, headers={"Accept-Language": "nl"})
    by_body = client.post(PATH, json=asked | {"language": "nl"})
    assert by_head.text == by_body.text
    assert by_head.headers["content-language"] == "nl"
    assert "Accept-Language" in by_head.headers["vary"]
    assert "Natte reserve" in described(by_head)


@pytest.mark.parametrize("method", ["GET", "HEAD", "PUT", "DELETE"])
def test_other_methods_are_refused_as_at_the_table(client, method):
    mine, theirs = client.request(method, PATH), client.request(method, "/v1/fitments/compare.csv")
    assert mine.status_code == theirs.status_code == 405
    assert mine.headers["allow"] == theirs.headers["allow"] == "POST"


def test_options_tells_the_methods_as_at_the_table(client):
    mine, theirs = client.options(PATH), client.options("/v1/fitments/compare.csv")
    assert mine.status_code == theirs.status_code == 204
    assert mine.headers["allow"] == theirs.headers["allow"]


@pytest.mark.parametrize(("content", "kind", "status"), [("{", "application/json", 400), ("{}", "text/plain", 415)])
def test_what_cannot_be_read_is_a_problem(client, content, kind, status):
    answer = client.post(PATH, content=content, headers={"Content-Type": kind})
    assert answer.status_code == status
    assert answer.headers["content-type"] == "application/problem+json"


def test_the_largest_body_that_the_contract_admits_is_taken_and_a_larger_one_is_not(client):
    largest = copy.deepcopy(COMPARISON)
    largest["candidates"] = largest["candidates"][:12]
    body = escaped(largest).encode()
    assert len(body) < PLOT_BODY_BYTES
    head = {"Content-Type": "application/json"}
    assert client.post(PATH, content=body, headers=head).status_code == 200
    assert client.post(PATH, content=b" " * (PLOT_BODY_BYTES + 1), headers=head).status_code == 413


def test_the_same_question_gives_the_same_bytes(client, asked):
    for plot in PLOTS:
        answers = {client.post(PATH, params={"plot": plot}, json=asked).content for _ in range(3)}
        assert len(answers) == 1
