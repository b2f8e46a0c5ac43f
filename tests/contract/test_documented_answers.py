"""What the document says of keys, rates, links and bodies, and that a word has one name: beside the file that is kept.

References: OpenAPI 3.1.0 (link and response objects, `security`), RFC 9110 section 15.5.2 and RFC 6585 section 4 (401
and 429), the design of the contract (keys open /v1); that a rate is told with what it bounds is the project's choice.
"""

from __future__ import annotations

import json
from xml.etree.ElementTree import fromstring

import pytest
from starlette.testclient import TestClient

from service.api.contract.openness import name_words, open_answers
from tests.contract.document import app, document, operations, resolve
from tests.support.cases import Json, saloon

OPERATIONS = [pytest.param(*each, id=f"{each[1]} {each[0]}") for each in operations()]
RATES = {"RateLimit", "RateLimit-Policy"}
KIND = {"Content-Type": "application/json"}
ASKED = ("", "?window=false", "?window=true")


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_where_a_key_may_be_asked_for_its_lack_and_its_rate_are_documented(path, method, operation):
    assert method in ("get", "post")
    answers = operation["responses"]
    with_key = path.startswith("/v1/")
    assert ({"401", "429"} <= answers.keys()) == with_key
    assert ("401" in answers) == ("429" in answers) == with_key
    assert operation.get("security", "that of all") == ("that of all" if with_key else [])
    telling = {status for status, answer in answers.items() if resolve(answer).get("headers", {}).keys() >= RATES}
    assert telling == ({"200", "429"} if with_key else set())


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_a_body_that_is_read_is_required(path, method, operation):
    assert operation.get("requestBody", {}).get("required", False) == (method == "post")


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_answer_names_its_request_and_every_problem_is_one(path, method, operation):
    for status, answer in operation["responses"].items():
        told = resolve(answer)
        assert "X-Request-ID" in told["headers"], status
        if status >= "400":
            assert list(told["content"]) == ["application/problem+json"]
            assert told["content"]["application/problem+json"]["example"]["status"] == int(status)


def test_the_list_of_packs_alone_leads_on_and_to_an_operation_that_there_is():
    links = {operation["operationId"]: operation["responses"]["200"].get("links") for _, _, operation in operations()}
    assert {name for name, told in links.items() if told} == {"list_rule_packs"}
    (link,) = links["list_rule_packs"].values()
    (followed,) = (each for _, _, each in operations() if each["operationId"] == link["operationId"])
    assert {each["name"] for each in followed["parameters"]} >= set(link["parameters"])


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_what_a_cache_may_ask_again_for_may_be_unchanged(path, method, operation):
    """304 answers a conditional GET (RFC 9110, section 15.4.5), which needs the tag that it had (section 8.8.3)."""
    answers = operation["responses"]
    fine = {status for status in answers if status < "400"}
    has_tag = "ETag" in answers["200"]["headers"]
    assert fine == ({"200", "304"} if has_tag else {"200"})
    assert has_tag == path.startswith(("/v1/tables", "/v1/rule-packs"))
    assert method == "get" or not has_tag


def test_a_line_by_example_has_the_status_of_a_check():
    shown = document()["paths"]["/v1/fitments/check.ndjson"]["post"]["responses"]["200"]["content"]
    lines = [json.loads(line) for line in shown["application/x-ndjson"]["example"].splitlines()]
    assert [(each["line"], each["status"], "assessment" in each) for each in lines] == [(1, 200, True)]


def test_the_document_describes_the_service_and_not_itself():
    assert [path for path in document()["paths"] if path.startswith(("/docs", "/openapi"))] == []


def test_a_combination_by_example_changes_the_axle_that_its_label_names():
    asked = document()["paths"]["/v1/fitments/plan"]["post"]["requestBody"]["content"]["application/json"]["example"]
    named = [each for each in asked["combinations"] if "at the rear" in each["label"]]
    assert [set(each) & {"front", "rear"} for each in named] == [{"rear"}]


def words(**colours: list[str]) -> Json:
    """Return a document in which each of these models has a member of one name with its own choice of words."""
    members = {name: {"properties": {"colour": {"enum": list(each)}}} for name, each in colours.items()}
    return {"components": {"schemas": members}, "paths": {}}


def test_a_choice_of_words_has_one_name_and_a_name_one_choice():
    made = words(One=["red"], Other=["red"])
    name_words(made)
    schemas = made["components"]["schemas"]
    assert schemas["Colour"]["enum"] == ["red"]
    assert [schemas[name]["properties"]["colour"] for name in ("One", "Other")] == [
        {"$ref": "#/components/schemas/Colour"}
    ] * 2
    with pytest.raises(ValueError, match="Colour would name two choices"):
        name_words(words(One=["red"], Other=["blue"]))


def test_a_word_of_an_answer_says_what_it_is_once_and_which_values_are_known():
    told = {"description": "A colour.", "type": "string", "enum": ["red", "blue"]}
    named = {"description": "The paint.", "$ref": "#/components/schemas/Colour"}
    answer = {"$ref": "#/components/schemas/Car"}
    made: Json = {
        "components": {"schemas": {"Car": {"properties": {"paint": named, "seats": dict(told)}}, "Colour": told}},
        "paths": {"/": {"get": {"responses": {"200": {"content": {"application/json": {"schema": answer}}}}}}},
    }
    open_answers(made)
    members = made["components"]["schemas"]["Car"]["properties"]
    known = "Known values: red, blue; more may come."
    assert members["paint"]["description"] == f"The paint. A colour. {known}"
    assert members["seats"]["description"] == f"A colour. {known}"
    assert {each["type"] for each in members.values()} == {"string"}
    # Nothing names the choice any more.
    assert "Colour" not in made["components"]["schemas"]


def test_a_section_shows_the_window_of_offsets_only_where_it_is_asked_for():
    client = TestClient(app())
    drawn = {
        each: client.post(f"/v1/fitments/drawing{each}", content=json.dumps(saloon()), headers=KIND).text
        for each in ASKED
    }
    assert drawn[""] == drawn["?window=false"]
    assert len(list(fromstring(drawn["?window=true"]).iter())) > len(list(fromstring(drawn[""]).iter()))
