"""The OpenAPI document: in step, valid, and every field and operation described.

References: OpenAPI 3.1.0; JSON Schema 2020-12; RFC 9457 (the media type of a problem).
"""

import pytest
from openapi_spec_validator import validate

from service.__main__ import main
from tests.contract.document import document, fields, operations, resolve, validator

OPERATIONS = [pytest.param(*each, id=f"{each[1]} {each[0]}") for each in operations()]
FIELDS = [pytest.param(member, id=name) for name, member in fields()]
NUMBERS = [pytest.param(member, id=name) for name, member in fields() if member.get("type") in ("number", "integer")]
TEXTS = [pytest.param(member, id=name) for name, member in fields() if member.get("type") == "string"]
LISTS = [pytest.param(member, id=name) for name, member in fields() if member.get("type") == "array"]
PLAIN = [pytest.param(member, id=name) for name, member in fields() if member.get("type") not in (None, "array")]
MODELS = document()["components"]["schemas"]
# What a bad head, an unknown query parameter, a failure and a stop may bring on any route.
ANYWHERE = {400, 405, 408, 422, 431, 500, 503}


def test_the_document_in_the_repository_is_in_step_with_the_routes():
    assert main(["openapi", "--check"]) == 0


def test_the_document_is_valid_openapi():
    validate(document())


@pytest.mark.parametrize("member", FIELDS)
def test_every_field_has_a_description(member):
    assert member.get("description") or resolve(member)["description"]


@pytest.mark.parametrize("member", NUMBERS)
def test_every_number_has_a_unit(member):
    assert member["x-unit"]
    assert member["x-unit"] == "1" or f"[{member['x-unit']}]" in member["description"]


@pytest.mark.parametrize("member", NUMBERS)
def test_every_number_has_a_range(member):
    assert member["minimum"] < member["maximum"]


@pytest.mark.parametrize("member", TEXTS)
def test_every_text_is_bounded(member):
    assert "enum" in member or "const" in member or member["maxLength"] > 0


@pytest.mark.parametrize("member", LISTS)
def test_every_list_is_bounded(member):
    assert member["maxItems"] > 0


@pytest.mark.parametrize("member", PLAIN)
def test_every_plain_field_has_an_example(member):
    assert member["examples"]


@pytest.mark.parametrize("member", FIELDS)
def test_every_example_of_a_field_is_valid(member):
    for example in member.get("examples", []):
        validator(member).validate(example)


@pytest.mark.parametrize("member", FIELDS)
def test_a_field_is_left_out_and_not_null(member):
    kinds = [branch.get("type") for branch in (member, *member.get("anyOf", []), *member.get("oneOf", []))]
    assert "null" not in kinds
    assert member.get("default", "") is not None


def _named_in(part):
    """Return the names of the models that a part of the document leads to."""
    found, waiting = set(), [part]
    while waiting:
        each = waiting.pop()
        if isinstance(each, dict):
            waiting.extend(each.values())
            name = str(each.get("$ref", "")).rpartition("/")[2]
            if name in MODELS and name not in found:
                found.add(name)
                waiting.append(MODELS[name])
        elif isinstance(each, list):
            waiting.extend(each)
    return found


SENT = _named_in([operation.get("requestBody", {}) for _, _, operation in operations()])
OBJECTS = [name for name, schema in MODELS.items() if schema["type"] == "object"]


@pytest.mark.parametrize("name", OBJECTS)
def test_what_is_sent_is_closed_and_what_is_answered_is_open(name):
    assert MODELS[name].get("additionalProperties", True) is (name not in SENT)


@pytest.mark.parametrize("name", [name for name in OBJECTS if name not in SENT])
def test_an_answer_has_texts_with_known_values_and_no_closed_choice(name):
    members = MODELS[name]["properties"].values()
    for member in (*members, *(each.get("items", {}) for each in members)):
        assert "enum" not in resolve(member) or (resolve(member) is not member and member_is_sent(member))


def member_is_sent(member):
    return str(member.get("$ref", "")).rpartition("/")[2] in SENT


def test_no_choice_of_words_is_without_a_name():
    members = [each for schema in MODELS.values() for each in schema.get("properties", {}).values()]
    members += [each["schema"] for _, _, operation in operations() for each in operation.get("parameters", [])]
    assert not [each for each in members if "enum" in each]


def test_no_model_of_the_document_is_a_union():
    assert not [name for name, schema in MODELS.items() if {"anyOf", "oneOf"} & set(str(schema).split("'"))]


@pytest.mark.parametrize("name", MODELS)
def test_the_names_of_models_are_short_words(name):
    assert name.isalpha()
    assert len(name) <= 20


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_operation_is_described(path, method, operation):
    assert operation["summary"]
    assert operation["description"]
    assert operation["operationId"].replace("_", "").isalpha()
    assert set(operation["tags"]) <= {tag["name"] for tag in document()["tags"]}


def test_every_operation_has_an_id_of_its_own():
    ids = [operation["operationId"] for _, _, operation in operations()]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_request_has_an_example_that_is_valid(path, method, operation):
    for parameter in operation.get("parameters", []):
        assert parameter["schema"]["examples"]
        validator(parameter["schema"]).validate(parameter["schema"]["examples"][0])
    for content in operation.get("requestBody", {}).get("content", {}).values():
        validator(content["schema"]).validate(content["example"])


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_answer_has_an_example_that_is_valid(path, method, operation):
    for status, response in operation["responses"].items():
        contents = resolve(response).get("content", {})
        assert contents or status == "304"
        for content in contents.values():
            validator(content["schema"]).validate(content["example"])


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_error_that_can_happen_anywhere_is_documented(path, method, operation):
    expected = ANYWHERE | ({401, 429} if path.startswith("/v1/") else set())
    assert {str(status) for status in expected} <= set(operation["responses"])


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_every_documented_error_is_a_problem_with_its_own_status(path, method, operation):
    for status, response in operation["responses"].items():
        if status >= "400":
            contents = resolve(response)["content"]
            assert list(contents) == ["application/problem+json"]
            assert contents["application/problem+json"]["example"]["status"] == int(status)


@pytest.mark.parametrize(("path", "method", "operation"), OPERATIONS)
def test_what_names_a_thing_may_find_none(path, method, operation):
    assert ("{" in path) <= ("404" in operation["responses"])
