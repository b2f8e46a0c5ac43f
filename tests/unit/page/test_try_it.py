"""The page begins with a demo request, knows the contract's fields, and runs under a strict policy."""

import json
import re
from pathlib import Path

import pytest

from service.api.schemas.request import CheckRequest
from service.page import try_it
from service.page.rendering import asset
from tests.unit.page.reading import Page

ROOT = Path(__file__).parents[3]
STORY = ROOT / "demo_requests" / "staggered-one-step-wider.check.json"


@pytest.fixture(scope="module")
def page():
    return Page(try_it.page())


@pytest.fixture(scope="module")
def fields(page):
    inputs = {each["name"]: each.get("value", "") for each in page.named("input") if "name" in each}
    return inputs | {each["name"]: None for each in page.named("select")}


def leaves(value, pointer=""):
    """Yield pointer and value of everything that has no parts."""
    if isinstance(value, dict):
        for name, part in value.items():
            yield from leaves(part, f"{pointer}/{name}")
    else:
        yield pointer, value


def test_it_begins_with_a_demo_request():
    assert json.loads(asset("story.json")) == json.loads(STORY.read_text(encoding="utf-8"))


def test_every_value_of_the_story_stands_in_a_field(fields):
    story = dict(leaves(json.loads(asset("story.json"))))
    shown = {pointer: str(value) for pointer, value in story.items() if fields.get(pointer, "") is not None}
    assert {pointer: fields.get(pointer) for pointer in shown} == shown


def test_every_field_is_one_that_the_contract_knows(fields):
    for pointer in fields:
        model = CheckRequest
        *path, last = pointer.split("/")[1:]
        for name in path:
            model = model.model_fields[name].annotation
        assert last in model.model_fields


def test_every_field_that_the_contract_requires_is_there(fields):
    def required(model, pointer=""):
        for name, field in model.model_fields.items():
            if field.is_required() and hasattr(field.annotation, "model_fields"):
                yield from required(field.annotation, f"{pointer}/{name}")
            elif field.is_required():
                yield f"{pointer}/{name}"

    assert set(required(CheckRequest)) <= set(fields)


def test_every_field_has_a_label_and_a_place_for_its_fault(page):
    labels = {each["for"] for each in page.named("label")}
    ids = {each.attributes["id"] for each in page.tags if "id" in each.attributes}
    for each in page.named("input") + page.named("select"):
        assert each["id"] in labels
        assert set(each["aria-describedby"].split()) <= ids


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_twin_wheels_and_the_pressure_of_a_load_index_can_be_stated(fields, axle):
    wanted = {
        f"/vehicle/{axle}/wheels_per_side",
        f"/vehicle/{axle}/fitted/tyre/reference_pressure_kpa",
        f"/candidate/{axle}/tyre/reference_pressure_kpa",
    }
    assert wanted <= set(fields)


def test_no_id_stands_twice(page):
    ids = [each.attributes["id"] for each in page.tags if "id" in each.attributes]
    assert len(ids) == len(set(ids))


def test_no_script_and_no_style_stand_in_the_page_itself(page):
    assert page.named("style") == []
    assert [each for each in page.named("script") if "src" not in each] == []
    assert not [n for each in page.tags for n in each.attributes if n == "style" or n.startswith("on")]


def test_its_policy_admits_no_inline_script_and_no_other_origin():
    directives = dict(each.strip().split(" ", 1) for each in try_it.policy().split(";"))
    assert directives["default-src"] == "'none'"
    assert directives["script-src"] == directives["connect-src"] == "'self'"
    assert "unsafe" not in try_it.policy()
    assert not re.search(r"https?:|\*", try_it.policy())


def test_every_file_that_the_page_asks_for_is_served(page):
    asked = {each["href"] for each in page.named("link")} | {each["src"] for each in page.named("script")}
    asked |= set(re.findall(r'from "\./([^"]+)"', asset("page.js")))
    assert {f"/{name}" for name in asked} == set(try_it.FILES)


def test_the_contract_is_linked(page):
    assert "docs" in {each["href"] for each in page.named("a")}
