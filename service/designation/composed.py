"""What the structured entries share: a text composed of named parts, and which of them a refusal is about."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from service.core.errors import DomainError, UnreadableDesignation
from service.core.saying import Amount, Said, capital, say
from service.designation.refusal import OutOfScope

Designation = TypeVar("Designation")

Value = str | float | bool | None
# The name of a number and how it is written; signs between numbers have no name.
Part = tuple[str, str]

# The numbers of tyres and rims, as the subject of a sentence.
_SUBJECTS: Mapping[str, Said] = {
    "section_width_mm": say("the section width"),
    "section_width_in": say("the section width"),
    "overall_diameter_in": say("the overall diameter"),
    "aspect_ratio": say("the aspect ratio"),
    "rim_diameter_in": say("the rim diameter"),
    "construction": say("the construction"),
    "system": say("the system of the size"),
    "commercial": say("the letters of a commercial tyre"),
    "load_index": say("the load index"),
    "load_index_twin": say("the load index for twin mounting"),
    "speed_symbol": say("the speed symbol"),
    "load_version": say("the load version"),
    "load_range": say("the load range"),
    "ply_rating": say("the ply rating"),
    "width_in": say("the rim width"),
    "diameter_in": say("the rim diameter"),
    "flange": say("the flange letter"),
    "hump": say("the hump"),
    "one_piece": say("the statement on one piece or several"),
    "offset_mm": say("the offset"),
}
_MOST_DECIMALS = 6


class WrongNumber(DomainError):
    """A number of a structured designation that is missing, out of range or at odds with the text beside it."""

    code = "wrong_number"

    def __init__(self, name: str, value: Value, expected: Said) -> None:
        super().__init__(_refusal(capital(_SUBJECTS[name]), value, expected), f"/{name}")
        self.name = name
        self.expected = expected


def _refusal(number: Said, value: Value, expected: Said) -> Said:
    if value is None:
        # Say: {number} is a number of a tyre or rim with its article, "The section width", and begins the sentence.
        return say("{number} is missing: expected {expected}.", number=number, expected=expected)
    return say(
        "{number} cannot be {value}: expected {expected}.", number=number, value=_shown(value), expected=expected
    )


def _shown(value: Value) -> str:
    """Return a value as a sentence shows it; words and flags as they stand in a request, in every language."""
    if isinstance(value, bool):
        return "true" if value else "false"
    return Amount(value, "", _MOST_DECIMALS) if isinstance(value, int | float) else str(value)


def stated(numbers: Mapping[str, object]) -> dict[str, Value]:
    """Return the numbers that are there; None stands for one that is not."""
    return {
        name: value for name, value in numbers.items() if value is not None and isinstance(value, str | float | int)
    }


def read_parts(
    parts: list[Part], numbers: Mapping[str, Value], parse: Callable[[str], Designation], expected: Mapping[str, Said]
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
    designation: object, numbers: Mapping[str, Value], attributes: Mapping[str, str], expected: Mapping[str, Said]
) -> None:
    """Raise `WrongNumber` for the first number that a designation says otherwise."""
    for name in differing(designation, numbers, attributes):
        said = getattr(designation, attributes.get(name, name))
        raise WrongNumber(name, numbers[name], expected.get(name) or _as_said(said))


def _as_said(said: Value) -> Said:
    if said is None:
        return say("no value, since the other numbers or the text give none")
    return say("{value}, as the other numbers or the text say", value=_shown(said))


def written(value: Value, pattern: str = ".10g") -> str:
    """Return a number as text; a text stays as it is, for the reader to judge."""
    return format(value, pattern) if isinstance(value, int | float) and not isinstance(value, bool) else str(value)
