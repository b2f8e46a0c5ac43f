"""Every fault of a request is in our own words, which can be said in another language, down to what fills them."""

import json
from typing import Literal

import orjson
import pytest
from pydantic import TypeAdapter, ValidationError

from service.api.errors.fault_words import unknown_field, unknown_parameter
from service.api.errors.problem import KINDS
from service.api.errors.request_faults import validation_faults
from service.api.inbound import translate
from service.api.inbound.candidate_lists import read_candidates, read_stock
from service.api.schemas.base import Wire, number, part, text, whole
from service.api.schemas.comparison import CompareRequest
from service.api.schemas.request import CheckRequest
from service.api.schemas.search import StockLine
from service.api.transport import json_words
from service.api.transport.strict_json import MalformedJson, parse
from service.core.errors import unknown_name
from service.core.saying import Said
from service.locales.speech import Speech
from tests.support.cases import changed, saloon
from tests.support.sayings import unsaid


class Round(Wire):
    """A part."""

    radius_mm: float = number("A radius", "mm", (1.0, 2.0), 1.5)


class Anything(Wire):
    """A model with every kind of rule that a wire field may have."""

    ratio: float = number("A ratio", "1", (0.25, 4.0), 1.5, 1.0)
    width_in: float = number("A width", "in", (3.0, 16.0), 7.5, 7.5)
    count: int = whole("A count", "1", (1, 9), 2, 2)
    least: float = part("A number with one end", 2.0, 2.0, ge=1.0)
    most: float = part("A number with the other end", 2.0, 2.0, le=3.0)
    name: str = text("A name", 5, "Larch", default="Larch")
    long_name: str = part("A name", default="Larch", min_length=2)
    day: str = text("A day", 10, "2026-11-24", "^[0-9-]+$", "2026-11-24")
    code: str = part("A code", default="a1", pattern="^[a-z][0-9]$")
    word: Literal["summer", "winter"] = part("A word", "summer", default="summer")
    only: Literal["round"] = part("A word", "round", default="round")
    flag: bool = part("A flag", example=True, default=True)
    few: list[int] = part("A list", default=[1, 2], min_length=2, max_length=3)
    some: list[int] = part("A list", default=[1], min_length=1, max_length=500)
    inner: Round = part("A part", default=None)
    odd: bytes = part("What no field of the service is", default=b"")


def said(body, model=Anything):
    with pytest.raises(ValidationError) as caught:
        TypeAdapter(model).validate_python(body)
    errors = [{**error, "loc": ("body", *error["loc"])} for error in caught.value.errors()]
    (fault, *_) = validation_faults(errors, body, model)
    return fault.detail


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ({"ratio": 5}, "A number from 0.25 to 4 is expected here; 5 came. Example: 1.5."),
        ({"ratio": 1e300}, "A number from 0.25 to 4 is expected here; 1e+300 came. Example: 1.5."),
        ({"width_in": -1.5}, "A number from 3 to 16 inches is expected here; −1.5 came. Example: 7.5."),
        ({"least": 0.5}, "A number of at least 1 is expected here; 0.5 came. Example: 2."),
        ({"most": 4.0}, "A number of at most 3 is expected here; 4 came. Example: 2."),
        ({"ratio": float("inf")}, "A finite number is expected here. Example: 1.5."),
        ({"ratio": True}, "A number is expected here; true came. Example: 1.5."),
        ({"count": 2.5}, "A whole number is expected here; 2.5 came. Example: 2."),
        ({"count": "2"}, "A whole number is expected here: write 2, without quotation marks."),
        ({"count": "two"}, "A whole number is expected here, without quotation marks and unit. Example: 2."),
        ({"name": "Larch 200"}, "A text of at most 5 characters is expected here; 9 came."),
        ({"long_name": "L"}, "A text of at least 2 characters is expected here; 1 came."),
        ({"long_name": ""}, "The text is empty; one that says something is expected here."),
        (
            {"day": "1.2.2026"},
            'The text "1.2.2026" does not have the form that is expected here, such as "2026-11-24".',
        ),
        ({"code": "1a"}, 'The text "1a" does not have the form that is expected here.'),
        ({"word": "Winter"}, 'One of "summer", "winter" is expected here; did you mean "winter"?'),
        ({"word": 3}, 'One of "summer", "winter" is expected here; 3 came.'),
        ({"only": "oval"}, '"round" is expected here; the text "oval" came.'),
        ({"flag": 1}, "true or false is expected here, without quotation marks; 1 came."),
        ({"some": [1] * 501}, "A list of at most 500 entries is expected here; 501 came."),
        ({"some": []}, "The list is empty; one entry or more is expected here."),
        ({"few": [1]}, "A list of at least 2 entries is expected here; 1 came."),
        ({"few": {}}, "A list in square brackets is expected here; an object came."),
        ({"inner": [1]}, "An object is expected here; a list came."),
        ({"inner": {}}, 'The field "radius_mm" is required. Example: 1.5.'),
        ({"odd": 1}, "This value cannot stand here (bytes_type)."),
    ],
)
def test_every_kind_of_fault_is_said_with_what_came_and_what_is_expected(body, words):
    found = said(body)
    assert found == words
    given = next(iter(body.values()))
    allowed = ["winter", '"Larch"', '"round"', '"summer", "winter"', "true", "radius_mm", "bytes_type"]
    assert unsaid(found, [*allowed, given]) == []


def test_the_numbers_that_a_field_takes_stay_in_its_unit():
    found = said({"inner": {"radius_mm": 9.0}})
    assert Speech("de", "imperial", {}).say(found) == "A number from 1 to 2 mm is expected here; 9 came. Example: 1,5."


@pytest.mark.parametrize("words", [unknown_field, unknown_parameter])
@pytest.mark.parametrize(
    ("name", "known", "ending"),
    [("sise", ["size"], '"size"?'), ("abc", ["size"], "Known: size."), ("abc", [], "here.")],
)
def test_an_unknown_name_is_said_with_those_that_are_known(words, name, known, ending):
    found = words(name, known)
    assert found.endswith(ending)
    assert unsaid(found, {name, *known}) == []


def walk(value, pointer=""):
    """Yield the pointer of everything in a request."""
    yield pointer
    items = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, each in items:
        yield from walk(each, f"{pointer}/{key}")


@pytest.mark.parametrize("wrong", ["?", -1e12, [], {}, True, "x" * 5000], ids=str)
def test_whatever_is_wrong_in_a_request_is_said_in_our_words(wrong):
    found = 0
    for pointer in list(walk(saloon()))[1:]:
        body = changed(saloon(), {pointer: wrong})
        try:
            TypeAdapter(CheckRequest).validate_python(body)
        except ValidationError as error:
            errors = [{**each, "loc": ("body", *each["loc"])} for each in error.errors()]
            faults = validation_faults(errors, body, CheckRequest)
        else:
            continue
        found += len(faults)
        for fault in faults:
            assert isinstance(fault.detail, Said), pointer
            assert fault.expected is None or isinstance(fault.expected, Said), pointer
            assert "cannot stand here" not in fault.detail, pointer
    assert found > 30


def test_the_faults_of_a_candidate_and_of_a_line_of_stock_are_said():
    good = saloon()["candidate"]
    vehicle = translate.vehicle(CheckRequest.model_validate(saloon()).vehicle)
    bad = [{"front": 5}, changed({"candidate": good}, {"/candidate/front/tyre/size": "225/4S"})["candidate"]]
    faults = [fault for each in read_candidates([good, *bad], vehicle).refused for fault in each.faults]
    lines = [StockLine(size="225/4S R17"), StockLine(section_width_mm=225.0), StockLine(id="a")]
    faults += [each.fault for each in read_stock(lines).refused]
    assert len(faults) == 5
    for fault in faults:
        assert isinstance(fault.detail, Said)
        assert unsaid(fault.detail, {"rear"}) == []


def test_a_candidate_that_only_its_vehicle_forbids_is_refused_and_the_others_stand():
    """No spacers on twin wheels (the contract's text of the field): one fault, at its place in the request."""
    good = saloon()["candidate"]
    vehicle = translate.vehicle(
        CheckRequest.model_validate(changed(saloon(), {"/vehicle/rear/wheels_per_side": 2})).vehicle
    )
    bad = {**changed({"candidate": good}, {"/candidate/rear/spacer_mm": 10})["candidate"], "id": "B", "label": "b"}
    found = read_candidates([good, bad], vehicle)
    assert (found.indices, len(found.candidates)) == ([0], 1)
    (refused,) = found.refused
    assert (refused.place, refused.id, refused.label, refused.fault_count) == (1, "B", "b", 1)
    assert [each.pointer for each in refused.faults] == ["/candidates/1/rear/spacer_mm"]
    # A label has 80 signs at most in the contract, that of a refused one too.
    (refused,) = read_candidates([{**good, "label": "x" * 81}], vehicle).refused
    assert refused.label == "x" * 79 + "…"


def test_501_candidates_are_counted_in_our_words():
    body = {"vehicle": saloon()["vehicle"], "candidates": [{}] * 501}
    assert said(body, CompareRequest) == "A list of at most 500 entries is expected here; 501 came."


@pytest.mark.parametrize("kind", KINDS.values(), ids=lambda kind: kind.name)
def test_titles_and_advice_of_problems_are_said(kind):
    assert isinstance(kind.title, Said)
    assert isinstance(kind.detail, Said)


def test_names_of_tables_and_packs_are_said():
    for found in (unknown_name("table", ["load-index"]), unknown_name("rule pack", ["unece"])):
        assert unsaid(found, {"load-index", "unece"}) == []


MALFORMED = [
    b"",
    b" ",
    b'\xef\xbb\xbf{"a": 1}',
    b'{"a": "\xff"}',
    b"{'a': 1}",
    b'{"a" 1}',
    b'{"a": 1 "b": 2}',
    b"[1 2]",
    b'{"a": 1,}',
    b'{"a": 1',
    b'{"a": 1} x',
    b'{"a": "\x01"}',
    b'{"a": "\\x"}',
    b'{"a": "\\ud800"}',
    b'{"a": "\\udc00"}',
    b'{"a": 01}',
    b'{"a": NaN}',
    b'{"a": 1e999}',
    b'{"a": -}',
    b'{"a": +1}',
    b'{"a": 1.}',
    b'{"a": 1e}',
    b'{"a": tru}',
    b'{"a": falsy}',
    b'{"a": nul}',
    b'{"a": 57,1}',
    b'{"a": 1, "a": 2}',
    b"[" * 2000,
    b"[" * 20 + b"]" * 20,
    json.dumps(dict.fromkeys(map(str, range(65)), 1)).encode(),
]


@pytest.mark.parametrize("raw", MALFORMED, ids=lambda raw: raw[:25].decode("latin-1"))
def test_what_is_no_json_is_said_in_our_words(raw):
    with pytest.raises(MalformedJson) as caught:
        parse(raw)
    assert isinstance(caught.value.detail, Said)
    assert unsaid(caught.value.detail) == []
    assert "is not valid JSON (" not in caught.value.detail


def test_a_fault_that_the_reader_of_json_names_in_a_new_way_is_placed_all_the_same():
    found = json_words.reason(b"{?", orjson.JSONDecodeError("something new", "{?", 1))
    assert found == "The body is not valid JSON (line 1, column 2)."
    assert unsaid(found) == []
