"""The page knows the contract's fields, speaks every language, and runs under a strict policy."""

import json
import re
from pathlib import Path
from typing import Literal, get_args, get_origin

import pytest

from service.api.schemas.request import CheckRequest
from service.locales.speech import LANGUAGES, catalogue
from service.page import fields as form_fields
from service.page import try_it
from service.page.rendering import asset
from tests.unit.page.reading import Page

ROOT = Path(__file__).parents[3]
EXAMPLES = ("staggered-one-step-wider", "twin-wheel-van-stronger", "plus-one-inch")
MOST_BYTES = 200_000
WORDS = re.compile(r'"(?:question|answer)\.\w+": "([^"]+)"')


@pytest.fixture(scope="module")
def page():
    return Page(try_it.page())


@pytest.fixture(scope="module")
def fields(page):
    return {each["name"] for each in page.named("input") + page.named("select") if "name" in each} - {"units"}


def leaves(value, pointer=""):
    """Yield the pointer of everything that has no parts."""
    if isinstance(value, dict):
        for name, part in value.items():
            yield from leaves(part, f"{pointer}/{name}")
    else:
        yield pointer


def test_it_starts_empty(page):
    assert not [each for each in page.named("input") if each.get("value")]
    assert not [each for each in page.named("option") if "selected" in each]


def test_its_examples_are_demo_requests():
    demos = [json.loads((ROOT / "demo_requests" / f"{name}.check.json").read_text("utf-8")) for name in EXAMPLES]
    assert json.loads(asset("examples.json")) == demos


def test_every_value_of_an_example_has_a_field(fields):
    for example in json.loads(asset("examples.json")):
        assert set(leaves(example)) - {"/candidate/label"} <= fields


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

    assert set(required(CheckRequest)) <= fields


def test_every_field_has_a_name_and_its_hint(page):
    labels = {each["for"] for each in page.named("label")}
    ids = {each.attributes["id"] for each in page.tags if "id" in each.attributes}
    for each in page.named("input") + page.named("select"):
        if "name" not in each or each["name"] == "units":
            continue
        assert each["id"] in labels or set(each["aria-labelledby"].split()) <= ids
        assert set(each.get("aria-describedby", "").split()) <= ids


def test_a_field_is_never_without_its_words():
    assert {each.pointer for each in form_fields.every_field() if not each.label.strip()} == set()


def test_no_id_stands_twice(page):
    ids = [each.attributes["id"] for each in page.tags if "id" in each.attributes]
    assert sorted(ids) == sorted(set(ids))


def test_no_script_and_no_style_stand_in_the_page_itself(page):
    assert page.named("style") == []
    inline = [each for each in page.named("script") if "src" not in each]
    # What a browser does not run: data for the scripts.
    assert {each["type"] for each in inline} == {"application/json"}
    assert not [n for each in page.tags for n in each.attributes if n == "style" or n.startswith("on")]


def test_its_policy_admits_no_inline_script_and_no_other_origin():
    directives = dict(each.strip().split(" ", 1) for each in try_it.policy().split(";"))
    assert directives["default-src"] == directives["frame-ancestors"] == directives["base-uri"] == "'none'"
    assert directives["script-src"] == directives["connect-src"] == directives["form-action"] == "'self'"
    assert "unsafe" not in try_it.policy()
    assert not re.search(r"https?:|\*", try_it.policy())


def test_every_file_that_the_page_asks_for_is_served(page):
    asked = {each["href"] for each in page.named("link")} | {
        each["src"] for each in page.named("script") if "src" in each
    }
    for name in try_it.SCRIPTS:
        asked |= set(re.findall(r'from "\./([^"]+)"', asset(name)))
    assert {f"/{name}" for name in asked} <= set(try_it.FILES)
    assert {f"/{name}" for name in asked} >= set(try_it.FILES) - {"/examples.json"}


@pytest.mark.parametrize("name", [*try_it.SCRIPTS, *try_it.STYLES])
def test_a_file_holds_one_idea(name):
    assert len(asset(name).splitlines()) <= 300


@pytest.mark.parametrize("language", LANGUAGES)
def test_page_and_files_weigh_less_than_200_kb(language):
    files = sum(len(asset(name).encode()) for _, name in try_it.FILES.values())
    assert files + len(try_it.page(language).encode()) < MOST_BYTES


@pytest.mark.parametrize("language", LANGUAGES[1:])
def test_the_page_speaks_its_language(language):
    page = Page(try_it.page(language))
    assert page.named("html")[0]["lang"] == language
    assert catalogue(language)["Do these wheels fit this car?"] in page.words
    english, spoken = (set(WORDS.findall(try_it.page(each))) for each in ("en", language))
    assert len(english & spoken) < len(english) / 8


def test_the_contract_is_linked(page):
    assert "docs" in {each["href"] for each in page.named("a")}


def field_of(pointer):
    """Return the contract's field at a pointer of the form."""
    model = CheckRequest
    *path, last = pointer.split("/")[1:]
    for name in path:
        model = model.model_fields[name].annotation
    return model.model_fields[last]


def choices_of(annotation):
    """Return the words that an annotation admits, through what it is wrapped in."""
    if get_origin(annotation) is Literal:
        return get_args(annotation)
    return [word for each in get_args(annotation) for word in choices_of(each)]


def test_a_field_is_labelled_with_the_unit_in_which_the_contract_takes_it():
    for each in form_fields.every_field():
        extra = field_of(each.pointer).json_schema_extra
        unit = extra.get("x-unit", "1") if isinstance(extra, dict) else "1"
        assert each.unit == ("" if unit == "1" else unit), each.pointer


def test_a_menu_offers_what_the_contract_takes_in_its_own_words():
    menus = {each.pointer: each.choices for each in form_fields.every_field() if each.choices}
    assert [str(words) for value, words in menus["/vehicle/driven_axle"] if value] == ["front", "rear", "all"]
    for pointer in ("/vehicle/driven_axle", "/season", "/vehicle/category"):
        values = [value for value, _ in menus[pointer]]
        assert values[0] == ""
        assert set(values[1:]) == set(choices_of(field_of(pointer).annotation))
        assert all(str(words) == value for value, words in menus[pointer] if value)
    twin = dict(menus["/vehicle/front/wheels_per_side"])
    assert "twin" in twin["2"]
    assert "one" in twin[""]
