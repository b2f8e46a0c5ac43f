"""What every wire model and wire field has in common: closed, strict, frozen, finite, described."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar, cast

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, ValidationInfo
from pydantic_core import PydanticCustomError, PydanticUndefined

from service.core.errors import DomainError, UnreadableDesignation

# Printable text of any language: no controls, no line or paragraph separators, nothing that turns the text round it.
PRINTABLE = r"^[^\x00-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069]*$"
# The code of a finding, of a rule or of a reason.
CODE = r"^[a-z0-9_]+(\.[a-z0-9_]+)+$"
ANY = (-1.0e9, 1.0e9)
"""The range of a number that the service itself gives."""
MAX_ID = 100
REQUIRED = PydanticUndefined

Extra = dict[str, Any]
What = TypeVar("What")


class Wire(BaseModel):
    """A closed, frozen model that takes nothing for anything else and knows no NaN."""

    model_config = ConfigDict(strict=True, extra="forbid", frozen=True, allow_inf_nan=False)


def _hide_absent(schema: dict[str, Any]) -> None:
    """Drop the defaults that only stand for "not there"; a member may be left out, `null` is no way to do so."""
    for field in schema.get("properties", {}).values():
        if field.get("default", "") is None:
            field.pop("default")


class AnswerPart(Wire):
    """A part of an answer."""

    model_config = ConfigDict(json_schema_extra=_hide_absent, defer_build=True)


def number(
    description: str,
    unit: str,
    bounds: tuple[float, float],
    example: float,
    default: Any = REQUIRED,  # noqa: ANN401 - a FieldInfo stands for a value of any type, as pydantic's own Field does
) -> Any:  # noqa: ANN401 - the same
    """Return a field for a quantity: description, unit, lowest and highest value, example."""
    lowest, highest = bounds
    return Field(
        default=default,
        description=_with_unit(description, unit),
        ge=lowest,
        le=highest,
        examples=[example],
        json_schema_extra={"x-unit": unit},
    )


def maybe(description: str, unit: str, example: float) -> Any:  # noqa: ANN401 - see `number`
    """Return a field for a number of an answer that is absent when it is not known."""
    return number(f"{description}; absent when not known", unit, ANY, example, None)


def whole(
    description: str,
    unit: str,
    bounds: tuple[int, int],
    example: int,
    default: Any = REQUIRED,  # noqa: ANN401 - see `number`
) -> Any:  # noqa: ANN401 - see `number`
    """Return a field for a whole number; `transport/routes.py` sees to it that `200.0` is one too."""
    return number(description, unit, bounds, example, default)


def text(
    description: str,
    max_length: int,
    example: str,
    pattern: str = PRINTABLE,
    default: Any = REQUIRED,  # noqa: ANN401 - see `number`
) -> Any:  # noqa: ANN401 - see `number`
    """Return a field for a text of bounded length without control characters."""
    return Field(default=default, description=description, max_length=max_length, pattern=pattern, examples=[example])


def part(description: str, example: object = None, default: Any = REQUIRED, **rules: Any) -> Any:  # noqa: ANN401 - see `number`
    """Return a field for a choice of words, a nested model, a flag or a list; `rules` go to pydantic as they are."""
    if example is not None:
        rules["examples"] = [example]
    return Field(default=default, description=description, **rules)


def identity(description: str) -> Any:  # noqa: ANN401 - see `number`
    """Return a field for the caller's own name of an entry, which comes back with what is said of it."""
    return part(description, "A-1042", default="", min_length=1, max_length=MAX_ID, pattern=PRINTABLE)


def as_fault(error: DomainError, *, member: bool = False) -> PydanticCustomError:
    """Return what a validator inside a wire model raises for a domain error, so that the answer keeps code and place.

    `raise as_fault(error) from None` inside a field validator: the pointer then is that of the field. Inside a model's
    validator `member` says that the error's own pointer leads on from the model to one of its members.
    """
    context: Extra = {"fault_detail": error.detail}
    if member:
        context["member"] = error.pointer.removeprefix("/") or "size"
    if isinstance(error, UnreadableDesignation):
        context |= {"position": error.position, "expected": error.expected, "did_you_mean": error.did_you_mean}
    return PydanticCustomError(error.code, "{fault_detail}", context)


class ReadText(str):
    """A text as it was sent that remembers what it says, so that nobody reads it twice."""

    __slots__ = ("says",)

    says: object


def readable(read: Callable[[str], object]) -> AfterValidator:
    """Return a validator for a text that this reader of the domain takes, and is kept as it was sent.

    The context of a validation, if it has one, is a dict that remembers the texts of this one request.
    """

    def check(value: str, info: ValidationInfo) -> str:
        seen: dict[object, ReadText] = {} if info.context is None else info.context
        made = seen.get((read, value))
        if made is None:
            made = ReadText(value)
            try:
                made.says = read(value)
            except DomainError as error:
                raise as_fault(error) from None
            seen[read, value] = made
        return made

    return AfterValidator(check)


def read_as(text: str, read: Callable[[str], What]) -> What:
    """Return what this reader makes of a text, without reading one again that a validator has read."""
    return cast("What", text.says) if isinstance(text, ReadText) else read(text)


def _with_unit(description: str, unit: str) -> str:
    """Return the description with its unit in brackets; a bare number (unit `1`) has none to name."""
    sentence = description.rstrip(".")
    return f"{sentence}." if unit == "1" else f"{sentence} [{unit}]."
