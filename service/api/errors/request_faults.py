"""What pydantic and the domain find wrong, put as faults: pointer, plain words, stable code."""

from __future__ import annotations

import types
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from service.api.errors.fault_words import fault_words, required, unknown_field, unknown_parameter
from service.core.errors import DomainError, UnreadableDesignation
from service.core.saying import Said

CODES: Mapping[str, str] = {
    "missing": "required",
    "extra_forbidden": "unknown_field",
    "greater_than": "out_of_range",
    "greater_than_equal": "out_of_range",
    "less_than": "out_of_range",
    "less_than_equal": "out_of_range",
    "multiple_of": "out_of_range",
    "finite_number": "out_of_range",
    "string_too_short": "wrong_length",
    "string_too_long": "wrong_length",
    "too_short": "wrong_length",
    "too_long": "wrong_length",
    "string_pattern_mismatch": "wrong_format",
    "literal_error": "not_one_of",
    "enum": "not_one_of",
    "union_tag_invalid": "not_one_of",
    "union_tag_not_found": "required",
    "value_error": "inconsistent",
}

Location = tuple[int | str, ...]


class RequestFault(NamedTuple):
    """One fault: where (RFC 6901), what in words, a stable code; for designations also the place in the text."""

    pointer: str
    detail: Said
    code: str
    position: int | None = None
    expected: Said | None = None
    did_you_mean: str | None = None


def pointer_of(parts: Sequence[int | str]) -> str:
    """Return the RFC 6901 pointer of these steps."""
    return "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in parts)


def domain_fault(error: DomainError) -> RequestFault:
    """Return the fault that a domain error stands for."""
    if isinstance(error, UnreadableDesignation):
        return RequestFault(error.pointer, error.detail, error.code, error.position, error.expected, error.did_you_mean)
    return RequestFault(error.pointer, error.detail, error.code)


def validation_faults(errors: Sequence[Any], body: object, route: object) -> list[RequestFault]:
    """Return the faults behind pydantic's errors; `body` and `route` are what was read and who read it.

    Who read it may also be a model: then `body` is what it was to read.
    """
    return [_fault(error, body, route) for error in errors]


def _fault(error: Mapping[str, Any], body: object, route: object) -> RequestFault:
    kind: str = error["type"]
    where, *rest = error["loc"] or ("body",)
    location = _location_in(body, tuple(rest), kind) if where == "body" else (where, *rest)
    pointer = pointer_of(location)
    context: Mapping[str, Any] = error.get("ctx") or {}
    if "fault_detail" in context:
        if "member" in context:
            pointer = pointer_of((*location, context["member"]))
        return RequestFault(
            pointer,
            context["fault_detail"],
            kind,
            context.get("position"),
            context.get("expected"),
            context.get("did_you_mean"),
        )
    code = CODES.get(kind) or ("wrong_type" if kind.endswith(("_type", "_parsing", "_from_float")) else "invalid")
    if code == "unknown_field":
        unknown = unknown_parameter if where == "query" else unknown_field
        return RequestFault(pointer, unknown(str(location[-1]), _names_beside(where, location, route)), code)
    field = _field_at(where, location, route)
    if code == "required":
        return RequestFault(pointer, required(where, str(location[-1]) if location else "", field), code)
    return RequestFault(pointer, fault_words(kind, error.get("input"), context, field), code)


def _location_in(body: object, location: Location, kind: str) -> Location:
    """Return the steps that lead through the body; pydantic also names union members, which are no steps."""
    steps: list[int | str] = []
    current = body
    for index, part in enumerate(location):
        if (isinstance(current, dict) and part in current) or (
            isinstance(current, list) and isinstance(part, int) and part < len(current)
        ):
            current = current[part]  # type: ignore[index] # both branches above can be indexed by `part`
            steps.append(part)
        elif index == len(location) - 1 and kind == "missing":
            steps.append(part)
    return tuple(steps)


def _names_beside(where: str, location: Location, route: object) -> list[str]:
    """Return the names that are known at the place of an unknown one."""
    if where != "body":
        dependant = getattr(route, "dependant", None)
        return [parameter.alias for parameter in getattr(dependant, f"{where}_params", [])]
    return list(dict.fromkeys(name for model in _models_beside(location, route) for name in model.model_fields))


def _field_at(where: str, location: Location, route: object) -> FieldInfo | None:
    """Return the field at a place of the body, where there is one and no other that it might be."""
    if where != "body" or not location:
        return None
    fields = [
        model.model_fields[str(location[-1])]
        for model in _models_beside(location, route)
        if location[-1] in model.model_fields
    ]
    return fields[0] if len(fields) == 1 else None


def _models_beside(location: Location, route: object) -> list[type[BaseModel]]:
    """Return the models that may stand where the last step of a location leads from."""
    field = getattr(route, "body_field", None)
    models = list(_models_in(route if field is None else field.field_info.annotation))
    for part in location[:-1]:
        if isinstance(part, int):
            continue
        models = [
            inner
            for model in models
            if part in model.model_fields
            for inner in _models_in(model.model_fields[part].annotation)
        ]
    return models


def _models_in(annotation: object) -> Iterator[type[BaseModel]]:
    """Yield the models that an annotation holds, through Optional, Union, Annotated, lists and tuples."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    elif get_origin(annotation) in (Union, types.UnionType, list, tuple) or hasattr(annotation, "__metadata__"):
        for argument in get_args(annotation):
            yield from _models_in(argument)
