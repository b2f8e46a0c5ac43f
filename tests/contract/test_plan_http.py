"""The plan over the wire: an object, a table, a page to print, and what is refused."""

import csv
import io
import json
import re

import pytest
from starlette.testclient import TestClient

from tests.contract.document import answer_schema, app, validator
from tests.support.cases import changed
from tests.support.plans import F255, F285, STORY, request

URL = "/v1/fitments/plan"


@pytest.fixture(scope="module")
def client():
    return TestClient(app())


def posted(client, body, accept="application/json"):
    return client.post(URL, json=body, headers={"Accept": accept})


def story():
    return json.loads(STORY.read_text(encoding="utf-8"))


def test_twelve_combinations_are_answered_as_the_document_says(client):
    body = story()
    body["combinations"] = (body["combinations"] * 3)[:12]
    answer = posted(client, body)
    assert answer.status_code == 200
    validator(answer_schema(URL, "post", 200, "application/json")).validate(answer.json())
    assert len(answer.json()["combinations"]) == 12
    assert len(answer.json()["pairs"]) == 12 + 12 * 11 // 2


@pytest.mark.parametrize(("combinations", "pointer"), [(0, "/combinations"), (13, "/combinations")])
def test_none_and_thirteen_are_refused(client, combinations, pointer):
    answer = posted(client, request(*[(F255, F285)] * combinations))
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == pointer


def test_a_misspelt_size_is_refused_where_it_stands(client):
    answer = posted(client, request((F255, F285), ("2O5/55 R16", None)))
    assert answer.status_code == 422
    assert answer.json()["errors"][0]["pointer"] == "/combinations/1/front/tyre/size"


def test_one_rim_for_each_axle_is_the_fewest_for_certain(client):
    found = posted(client, request((F255, F285))).json()
    assert [each["axle"] for each in found["rims_to_buy"]] == ["front", "rear"]
    assert found["rims_method"] == "exact"


def test_how_many_tests_it_takes_is_told_where_it_is_stated_how_far_tests_scatter(client):
    found = posted(client, request((F255, F285), repeatability={"braking_distance_percent": 0.8})).json()
    told = [each for pair in found["pairs"] for each in pair["apart"]]
    assert len({each["effect"] for each in told}) > 1
    assert {each["effect"] for each in told if "repeats" in each} == {"braking_distance_percent"}
    (repeats,) = found["repeats"]
    assert (repeats["effect"], repeats["standard_deviation"]) == ("braking_distance_percent", 0.8)
    assert 0 < repeats["for_greatest"] <= repeats["for_all"]


def test_an_unknown_effect_has_no_repeatability(client):
    answer = posted(client, request((F255, F285), repeatability={"lap_time_s": 0.3}))
    assert answer.json()["errors"][0]["pointer"] == "/repeatability/lap_time_s"


def test_the_table_has_a_row_for_each_combination(client):
    answer = posted(client, story(), "text/csv")
    assert answer.headers["content-type"].startswith("text/csv")
    rows = list(csv.DictReader(io.StringIO(answer.text)))
    assert [row["id"] for row in rows] == [each["id"] for each in story()["combinations"]]
    object_ = posted(client, story()).json()["combinations"]
    told = [float(row["effects.braking_distance_percent.value"]) for row in rows]
    assert told == [each["effects"]["braking_distance_percent"]["value"] for each in object_]


def test_the_table_guards_against_formulas(client):
    answer = posted(
        client, changed(story(), {"/combinations": [{"label": "=1+1", "front": {"tyre": {"size": F255}}}]}), "text/csv"
    )
    assert "'=1+1" in answer.text


def test_the_page_to_print_stands_alone_and_escapes_what_is_named(client):
    body = changed(story(), {"/combinations": [{"label": "<b>wide</b>", "front": {"tyre": {"size": F255}}}]})
    answer = posted(client, body, "text/html")
    assert answer.headers["content-type"].startswith("text/html")
    assert "default-src 'none'" in answer.headers["content-security-policy"]
    assert "&lt;b&gt;wide&lt;/b&gt;" in answer.text
    assert "<b>wide</b>" not in answer.text
    assert "<script" not in answer.text


@pytest.mark.parametrize("accept", ["application/json", "text/csv", "text/html"])
def test_the_plan_is_told_in_the_callers_language(client, accept):
    answer = client.post(URL, json=story(), headers={"Accept": accept, "Accept-Language": "de"})
    assert answer.headers["content-language"] == "de"
    assert "Accept-Language" in answer.headers["vary"]
    # A number within a sentence has a decimal comma there.
    assert re.search(r"\d,\d %", answer.text)
    assert not re.search(r"\d,\d %", posted(client, story(), accept).text)


def test_a_tyre_of_which_little_is_known_ends_nothing(client):
    answer = posted(client, request(("31x10.50 R15LT", "155 R13"), ("225/70 R15C 112/110R", None)))
    assert answer.status_code == 200
    validator(answer_schema(URL, "post", 200, "application/json")).validate(answer.json())
