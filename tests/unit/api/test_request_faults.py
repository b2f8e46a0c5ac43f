"""Faults: pointers (RFC 6901), stable codes, nearest names, designations."""

from typing import Literal

import pytest
from fastapi import APIRouter
from pydantic import BaseModel, TypeAdapter, ValidationError, field_validator

from service.api.errors.request_faults import RequestFault, domain_fault, pointer_of, validation_faults
from service.api.schemas.base import Wire, as_fault, number, part, text
from service.api.transport.routes import StrictRoute
from service.core.errors import DomainError, UnknownName, UnreadableDesignation


class Tyre(Wire):
    size: str = text("The size", 40, "215/45 R18")

    @field_validator("size")
    @classmethod
    def _readable(cls, size: str) -> str:
        if "?" in size:
            raise as_fault(UnreadableDesignation("tyre", size.index("?"), "a digit")) from None
        return size


class Round(Wire):
    shape: Literal["round"] = part("Shape", "round")
    radius_mm: float = number("Radius", "mm", (1.0, 2.0), 1.5)


class Plate(Round):
    shape: Literal["round"] = part("Shape", "round", default="round")
    radius_mm: float = number("Radius", "mm", (1.0, 2.0), 1.5, 1.5)
    built: str = text("A day", 10, "2026-11-24", "^[0-9]{4}-[0-9]{2}-[0-9]{2}$", "")
    name: str = text("A name", 40, "one", default="")


class Square(Wire):
    shape: Literal["square"] = part("Shape", "square")
    side_mm: float = number("Side", "mm", (1.0, 2.0), 1.5)


class Body(Wire):
    front: Tyre = part("Front")
    rear: Tyre | None = part("Rear", default=None)
    plates: list[Round | Square] = part("Plates", default=[])


router = APIRouter(route_class=StrictRoute)


@router.post("/")
async def endpoint(body: Body) -> Body:
    return body


def faults(body: object, model: type[BaseModel] = Body) -> list[RequestFault]:
    with pytest.raises(ValidationError) as caught:
        TypeAdapter(model).validate_python(body)
    errors = [{**error, "loc": ("body", *error["loc"])} for error in caught.value.errors()]
    return validation_faults(errors, body, router.routes[0] if model is Body else model)


@pytest.mark.parametrize(
    ("steps", "pointer"),
    # RFC 6901, section 5.
    [((), ""), (("foo", 0), "/foo/0"), (("",), "/"), (("a/b",), "/a~1b"), (("m~n",), "/m~0n")],
)
def test_pointers_are_those_of_the_standard(steps: tuple[int | str, ...], pointer: str) -> None:
    assert pointer_of(steps) == pointer


def test_an_unreadable_designation_keeps_its_place_and_what_was_expected() -> None:
    assert faults({"front": {"size": "21?/45"}}) == [
        RequestFault(
            "/front/size",
            "This tyre designation cannot be read at position 2: expected a digit.",
            "unreadable_designation",
            2,
            "a digit",
        )
    ]


def test_the_nearest_name_is_found_through_an_optional_part() -> None:
    assert 'did you mean "size"?' in faults({"front": {"size": "1"}, "rear": {"size": "1", "sise": 1}})[0].detail


def test_the_known_names_are_listed_where_none_is_near() -> None:
    assert faults({"front": {"size": "1", "zzzz": 1}})[0].detail == 'There is no field "zzzz" here. Known: size.'


def test_the_pointer_of_a_fault_in_a_choice_names_only_steps_of_the_body() -> None:
    found = faults({"front": {"size": "1"}, "plates": [{"shape": "round", "radius_mm": 9.0}]})
    assert "/plates/0/radius_mm" in [fault.pointer for fault in found]
    assert all(fault.pointer.startswith("/plates/0") for fault in found)
    assert not any("Round" in fault.pointer or "Square" in fault.pointer for fault in found)


def test_something_else_than_an_object_is_pointed_at_as_a_whole() -> None:
    assert faults([1]) == [RequestFault("", "An object is expected here; a list came.", "wrong_type")]


@pytest.mark.parametrize(
    ("plate", "said"),
    [
        ({"radius_mm": 9.0}, "A number from 1 to 2 mm is expected here; 9 came. Example: 1.5."),
        ({"radius_mm": "1.5"}, "A number is expected here: write 1.5, without quotation marks."),
        ({"radius_mm": "-1,50"}, "A number is expected here: write -1.50, without quotation marks."),
        ({"radius_mm": "1.5 mm"}, "A number is expected here, without quotation marks and unit. Example: 1.5."),
        (
            {"radius_mm": None},
            "A number is expected here; null came. Example: 1.5. Leave out what is not known; null is no value.",
        ),
        ({"shape": "oval", "radius_mm": 1.5}, '"round" is expected here; the text "oval" came.'),
        (
            {"built": "1.2.2026"},
            'The text "1.2.2026" does not have the form that is expected here, such as "2026-11-24".',
        ),
        ({"name": "a\nb"}, "The text has a control character or another one that cannot be printed."),
        ({"name": 5}, 'A text in quotation marks is expected here; 5 came. Example: "one".'),
    ],
)
def test_what_would_be_right_is_said(plate: dict[str, object], said: str) -> None:
    assert [fault.detail for fault in faults(plate, Plate)] == [said]


def test_a_domain_error_keeps_pointer_and_code() -> None:
    assert domain_fault(DomainError("no", "/a")) == RequestFault("/a", "no", "invalid")


def test_an_unknown_name_lists_the_known_ones() -> None:
    assert domain_fault(UnknownName("table", ("a", "b"))).detail == "There is no table of this name. Known: a, b."


@pytest.mark.parametrize(
    ("body", "pointers"),
    [
        ({"front": {}}, ["/front/size"]),
        ({}, ["/front"]),
        ({"front": {"size": "1"}, "rear": {}}, ["/rear/size"]),
        ({"front": {"size": "1"}, "plates": [{"shape": "round", "radius_mm": 1.5}, {"shape": "round"}]}, None),
    ],
)
def test_what_is_missing_is_pointed_at_where_it_ought_to_be(body, pointers) -> None:
    found = [fault for fault in faults(body) if fault.code == "required"]
    if pointers is None:
        assert "/plates/1/radius_mm" in [fault.pointer for fault in found]
    else:
        assert [fault.pointer for fault in found] == pointers
    assert all(f'"{fault.pointer.rsplit("/", 1)[1]}"' in fault.detail for fault in found)


def test_a_body_that_is_missing_has_no_name() -> None:
    (fault,) = validation_faults([{"type": "missing", "loc": ("body",), "input": None}], None, router.routes[0])
    assert fault == RequestFault("", "A body is required.", "required")


def test_a_parameter_of_the_query_is_named_as_one() -> None:
    (fault,) = validation_faults([{"type": "missing", "loc": ("query", "axles")}], None, router.routes[0])
    assert fault == RequestFault("/query/axles", 'The query parameter "axles" is required.', "required")
    (fault,) = validation_faults([{"type": "extra_forbidden", "loc": ("query", "axle")}], None, router.routes[0])
    assert fault == RequestFault("/query/axle", 'There is no query parameter "axle" here.', "unknown_field")


@pytest.mark.parametrize(
    ("kind", "ends", "said"),
    [
        ("less_than_equal", {"le": 3}, "A number of at most 3 is expected here; 9 came."),
        ("greater_than_equal", {"ge": 30}, "A number of at least 30 is expected here; 9 came."),
    ],
)
def test_the_end_that_was_passed_is_said_where_no_field_tells_the_whole_range(kind, ends, said) -> None:
    error = {"type": kind, "loc": ("query", "limit"), "input": 9, "ctx": {**ends, "other": 1}}
    (fault,) = validation_faults([error], None, router.routes[0])
    assert (fault.pointer, fault.detail) == ("/query/limit", said)
