"""What the structured entries share: a text composed of named parts, and which of them a refusal is about."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from service.core.errors import DomainError, UnreadableDesignation
from service.designation.refusal import OutOfScope

Designation = TypeVar("Designation")

Value = str | float | bool | None
# The name of a number and how it is written; signs between numbers have no name.
Part = tuple[str, str]


class WrongNumber(DomainError):
    """A number of a structured designation that is missing, out of range or at odds with the text beside it."""

    code = "wrong_number"

    def __init__(self, name: str, value: Value, expected: str) -> None:
        words = name.removesuffix("_mm").removesuffix("_in").replace("_", " ")
        came = "is missing" if value is None else f"cannot be {value}"
        super().__init__(f"The {words} {came}: expected {expected}.", f"/{name}")
        self.name = name
        self.expected = expected


def stated(numbers: Mapping[str, object]) -> dict[str, Value]:
    """Return the numbers that are there; None stands for one that is not."""
    return {
        name: value for name, value in numbers.items() if value is not None and isinstance(value, str | float | int)
    }


def read_parts(
    parts: list[Part], numbers: Mapping[str, Value], parse: Callable[[str], Designation], expected: Mapping[str, str]
) -> Designation:
    """Return what the composed text says; `expected` says of a number what the reader can only say of a text.

    Raises
    ------
    WrongNumber
        For the number in which the reader stopped.
    OutOfScope
        For the size of another vehicle's tyre.
    """
    try:
        return parse("".join(text for _, text in parts))
    except OutOfScope as error:
        raise error.at(f"/{next(name for name, text in parts if name and text)}") from None
    except UnreadableDesignation as error:
        name = _name_at(parts, error.position)
        raise WrongNumber(name, numbers.get(name), expected.get(name, error.expected)) from None


def _name_at(parts: list[Part], position: int) -> str:
    """Return the name of the part at a position, or of the last one before it."""
    found, begins = "", 0
    for name, text in parts:
        if begins > position and found:
            break
        found = name or found
        begins += len(text)
    return found


def differing(designation: object, numbers: Mapping[str, Value], attributes: Mapping[str, str]) -> tuple[str, ...]:
    """Return the names of the numbers that a designation says otherwise or does not say."""
    return tuple(name for name, value in numbers.items() if getattr(designation, attributes.get(name, name)) != value)


def require_same(
    designation: object, numbers: Mapping[str, Value], attributes: Mapping[str, str], expected: Mapping[str, str]
) -> None:
    """Raise `WrongNumber` for the first number that a designation says otherwise."""
    for name in differing(designation, numbers, attributes):
        said = getattr(designation, attributes.get(name, name))
        raise WrongNumber(name, numbers[name], expected.get(name, f"{said}, as the other numbers or the text say"))


def written(value: Value, pattern: str = ".10g") -> str:
    """Return a number as text; a text stays as it is, for the reader to judge."""
    return format(value, pattern) if isinstance(value, int | float) and not isinstance(value, bool) else str(value)
