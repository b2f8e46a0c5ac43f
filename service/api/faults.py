"""What pydantic and the domain find wrong, put as faults: pointer, plain words, stable code."""

from __future__ import annotations

import difflib
import types
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel

from service.core.errors import DomainError, UnreadableDesignation

# Compared with the known names only up to here: the comparison is quadratic in the length.
MAX_COMPARED = 40

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

# Where pydantic speaks of Python, or repeats a pattern that says less than the contract does.
_WORDS: Mapping[str, str] = {
    "model_type": "An object is expected here.",
    "model_attributes_type": "An object is expected here.",
    "dict_type": "An object is expected here.",
    "list_type": "An array is expected here.",
    "tuple_type": "An array is expected here.",
    "string_type": "A text is expected here.",
    "bool_type": "true or false is expected here.",
    "float_type": "A number is expected here.",
    "int_type": "A whole number is expected here.",
    "string_pattern_mismatch": "The text has characters or a form that the contract's pattern for it does not allow.",
}

Location = tuple[int | str, ...]


class Fault(NamedTuple):
    """One fault: where (RFC 6901), what in words, a stable code; for designations also the place in the text."""

    pointer: str
    detail: str
    code: str
    position: int | None = None
    expected: str | None = None


def pointer_of(parts: Sequence[int | str]) -> str:
    """Return the RFC 6901 pointer of these steps."""
    return "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in parts)


def domain_fault(error: DomainError) -> Fault:
    """Return the fault that a domain error stands for."""
    if isinstance(error, UnreadableDesignation):
        return Fault(error.pointer, error.detail, error.code, error.position, error.expected)
    return Fault(error.pointer, error.detail, error.code)


def validation_faults(errors: Sequence[Any], body: object, route: object) -> list[Fault]:
    """Return the faults behind pydantic's errors; `body` and `route` are what was read and who read it.

    Who read it may also be a model: then `body` is what it was to read.
    """
    return [_fault(error, body, route) for error in errors]


def _fault(error: Mapping[str, Any], body: object, route: object) -> Fault:
    kind: str = error["type"]
    where, *rest = error["loc"] or ("body",)
    location = _location_in(body, tuple(rest), kind) if where == "body" else (where, *rest)
    pointer = pointer_of(location)
    context: Mapping[str, Any] = error.get("ctx") or {}
    if "fault_detail" in context:
        return Fault(pointer, context["fault_detail"], kind, context.get("position"), context.get("expected"))
    code = CODES.get(kind) or ("wrong_type" if kind.endswith(("_type", "_parsing", "_from_float")) else "invalid")
    if code == "unknown_field":
        return Fault(pointer, _unknown_field(str(location[-1]), _names_beside(where, location, route)), code)
    if code == "required":
        return Fault(pointer, f'The field "{location[-1]}" is required.' if location else "A body is required.", code)
    return Fault(pointer, _WORDS.get(kind) or f"{error['msg']}.", code)


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


def _unknown_field(name: str, known: Sequence[str]) -> str:
    nearest = difflib.get_close_matches(name[:MAX_COMPARED].lower(), known, n=1, cutoff=0.6)
    shown = name if len(name) <= MAX_COMPARED else f"{name[:MAX_COMPARED]}…"
    return f'There is no field "{shown}" here' + (f'; did you mean "{nearest[0]}"?' if nearest else ".")


def _names_beside(where: str, location: Location, route: object) -> list[str]:
    """Return the names that are known at the place of an unknown one."""
    field = getattr(route, "body_field", None)
    if isinstance(route, type):
        models = list(_models_in(route))
    elif where != "body" or field is None:
        dependant = getattr(route, "dependant", None)
        return [parameter.alias for parameter in getattr(dependant, f"{where}_params", [])]
    else:
        models = list(_models_in(field.field_info.annotation))
    for part in location[:-1]:
        if isinstance(part, int):
            continue
        models = [
            inner
            for model in models
            if part in model.model_fields
            for inner in _models_in(model.model_fields[part].annotation)
        ]
    return [name for model in models for name in model.model_fields]


def _models_in(annotation: object) -> Iterator[type[BaseModel]]:
    """Yield the models that an annotation holds, through Optional, Union, Annotated, lists and tuples."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    elif get_origin(annotation) in (Union, types.UnionType, list, tuple) or hasattr(annotation, "__metadata__"):
        for argument in get_args(annotation):
            yield from _models_in(argument)
