"""What pydantic and the domain find wrong, put as faults: pointer, plain words, stable code."""

from __future__ import annotations

import difflib
import re
import types
from collections.abc import Iterator, Mapping, Sequence
from typing import Any, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from service.api.schemas.base import PRINTABLE
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

# Where pydantic speaks of Python.
_WORDS: Mapping[str, str] = {
    "model_type": "An object is expected here.",
    "model_attributes_type": "An object is expected here.",
    "dict_type": "An object is expected here.",
    "list_type": "An array is expected here.",
    "tuple_type": "An array is expected here.",
    "string_type": "A text in quotation marks is expected here.",
    "bool_type": "true or false is expected here, without quotation marks.",
    "float_type": "A number is expected here.",
    "int_type": "A whole number is expected here.",
}
_NUMBERS = frozenset(("float_type", "int_type"))
_ENDS: Mapping[str, str] = {"ge": "at least", "le": "at most"}
_BOUNDS = frozenset(("greater_than_equal", "less_than_equal"))
# What JSON takes for a number, but for the quotation marks around it and perhaps the comma in it.
_QUOTED_NUMBER = re.compile(r"-?(?:0|[1-9][0-9]{0,8})(?:[.,][0-9]{1,9})?", re.ASCII)

Location = tuple[int | str, ...]


class RequestFault(NamedTuple):
    """One fault: where (RFC 6901), what in words, a stable code; for designations also the place in the text."""

    pointer: str
    detail: str
    code: str
    position: int | None = None
    expected: str | None = None


def pointer_of(parts: Sequence[int | str]) -> str:
    """Return the RFC 6901 pointer of these steps."""
    return "".join("/" + str(part).replace("~", "~0").replace("/", "~1") for part in parts)


def domain_fault(error: DomainError) -> RequestFault:
    """Return the fault that a domain error stands for."""
    if isinstance(error, UnreadableDesignation):
        return RequestFault(error.pointer, error.detail, error.code, error.position, error.expected)
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
        return RequestFault(pointer, context["fault_detail"], kind, context.get("position"), context.get("expected"))
    code = CODES.get(kind) or ("wrong_type" if kind.endswith(("_type", "_parsing", "_from_float")) else "invalid")
    if code == "unknown_field":
        return RequestFault(pointer, unknown_field(str(location[-1]), _names_beside(where, location, route)), code)
    if code == "required":
        return RequestFault(
            pointer, f'The field "{location[-1]}" is required.' if location else "A body is required.", code
        )
    return RequestFault(pointer, _words(error, _field_at(where, location, route)), code)


def _words(error: Mapping[str, Any], field: FieldInfo | None) -> str:
    """Return what is expected in the place of a value that does not do."""
    kind: str = error["type"]
    given, context = error.get("input", ""), error.get("ctx") or {}
    plain = _WORDS.get(kind) or f"{error['msg']}."
    if given is None:
        return f"{plain} What is not known is left out; null is no value."
    if kind in _NUMBERS and isinstance(given, str):
        return _unquoted(given, plain)
    if kind in _BOUNDS:
        return _range(context, field)
    if kind == "literal_error":
        return f"{context['expected']} is expected here."
    return _form(context["pattern"], field) if kind == "string_pattern_mismatch" else plain


def _unquoted(given: str, plain: str) -> str:
    """Return how to write a number that came as a text."""
    if _QUOTED_NUMBER.fullmatch(given):
        return f"{plain[:-1]}: write {given.replace(',', '.')}, without quotation marks."
    return f"{plain[:-1]}, without quotation marks and unit."


def _form(pattern: str, field: FieldInfo | None) -> str:
    """Return what is wrong with a text that has not the form of its field; the pattern itself would say less."""
    if pattern == PRINTABLE:
        return "The text has a control character or another one that cannot be printed."
    example = f', such as "{field.examples[0]}"' if field is not None and field.examples else ""
    return f"The text does not have the form that is expected here{example}."


def _range(context: Mapping[str, Any], field: FieldInfo | None) -> str:
    """Return the whole range of a number with its unit, or the end that was passed where the field is not known."""
    rules, extra = ([], None) if field is None else (field.metadata, field.json_schema_extra)
    ends = {name: getattr(rule, name) for rule in rules for name in _ENDS if hasattr(rule, name)} | dict(context)
    unit = extra.get("x-unit", "1") if isinstance(extra, dict) else "1"
    if len(ends) == len(_ENDS):
        words = f"from {ends['ge']:.15g} to {ends['le']:.15g}"
    else:
        words = " ".join(f"of {_ENDS[name]} {end:.15g}" for name, end in ends.items())
    return f"A number {words}{'' if unit == '1' else f' {unit}'} is expected here."


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


def unknown_field(name: str, known: Sequence[str], kind: str = "field") -> str:
    """Return that there is no such name, and the nearest one or all that are known."""
    nearest = difflib.get_close_matches(name[:MAX_COMPARED].lower(), known, n=1, cutoff=0.6)
    shown = name if len(name) <= MAX_COMPARED else f"{name[:MAX_COMPARED]}…"
    if nearest:
        return f'There is no {kind} "{shown}" here; did you mean "{nearest[0]}"?'
    return f'There is no {kind} "{shown}" here.' + (f" Known: {', '.join(known)}." if known else "")


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
