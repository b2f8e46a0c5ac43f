"""Rims given as numbers instead of text: the same reader, the same designation, and errors that name the number."""

from __future__ import annotations

from dataclasses import replace
from typing import TypedDict, Unpack

from service.core.saying import Amount, say
from service.designation.composed import Part, Value, WrongNumber, differing, read_parts, require_same, stated, written
from service.designation.rim import Flange, Hump, RimDesignation, parse_rim, smaller_is_width
from service.designation.rim_grammar import DIAMETER_CODE, FLANGES, NARROWEST_IN, WIDEST_IN


class RimNumbers(TypedDict, total=False):
    """A rim by its numbers: width and diameter code in inches, offset in mm. None stands for what is not known."""

    width_in: float | None
    diameter_in: float | None
    flange: Flange | None
    hump: Hump | None
    one_piece: bool | None
    offset_mm: float | None


# What a text may be given beside it.
_ADDED = ("hump", "offset_mm")
_ATTRIBUTES = {"diameter_in": "diameter_code"}
_EXPECTED = {
    "width_in": say(
        "whole, half or quarter inches from {narrowest} to {widest}, below the diameter",
        narrowest=Amount(NARROWEST_IN),
        widest=Amount(WIDEST_IN),
    ),
    "diameter_in": say(
        "a diameter code from {low} to {high}, whole or half",
        low=Amount(DIAMETER_CODE[0]),
        high=Amount(DIAMETER_CODE[1]),
    ),
    "flange": say("one of {letters}", letters=", ".join(FLANGES)),
    "hump": say("one of {letters}", letters="H, H2, FH, FH2, CH, EH, EH2, EH2+"),
}
_NEEDED = {
    "width_in": say("inches between the flanges, such as {example}", example=Amount(7.5, "", 1)),
    "diameter_in": say("a diameter code, such as {example}", example=Amount(17)),
}


def rim_from_numbers(**numbers: Unpack[RimNumbers]) -> RimDesignation:
    """Return the designation that these numbers make.

    Raises
    ------
    WrongNumber
        Naming the number that is missing, out of range or at odds with another.
    """
    asked = stated(numbers)
    for name, expected in _NEEDED.items():
        if name not in asked:
            raise WrongNumber(name, None, expected)
    pieces = " - " if asked.get("one_piece") is False else " x "
    parts: list[Part] = [
        ("width_in", written(asked["width_in"])),
        ("flange", str(asked.get("flange", ""))),
        ("", pieces),
        ("diameter_in", written(asked["diameter_in"])),
    ]
    designation = read_parts(parts + _behind(asked), asked, parse_rim, _EXPECTED)
    require_same(designation, asked, _ATTRIBUTES, _EXPECTED)
    return _with_its_width_named(designation)


def rim_from_both(text: str, **numbers: Unpack[RimNumbers]) -> RimDesignation:
    """Return the designation of a text with numbers beside it, which must agree; numbers may add offset and hump.

    Raises
    ------
    UnreadableDesignation
        When the text cannot be read.
    WrongNumber
        Naming the first number that the text says otherwise.
    """
    designation, asked = parse_rim(text), stated(numbers)
    added = [name for name in asked if name in _ADDED and getattr(designation, name) is None]
    missing = {name: asked[name] for name in added}
    if missing:
        designation = read_parts([("", text), *_behind(missing)], asked, parse_rim, _EXPECTED)
    require_same(designation, asked, _ATTRIBUTES, {})
    return _with_its_width_named(designation) if "width_in" in asked else designation


def rim_disagreements(designation: RimDesignation, **numbers: Unpack[RimNumbers]) -> tuple[str, ...]:
    """Return the names of the numbers that the designation says otherwise or does not say; empty where both agree."""
    return differing(designation, stated(numbers), _ATTRIBUTES)


def rim_agrees(designation: RimDesignation, **numbers: Unpack[RimNumbers]) -> bool:
    """Return whether the designation says every one of these numbers."""
    return not rim_disagreements(designation, **numbers)


def _with_its_width_named(designation: RimDesignation) -> RimDesignation:
    """Return the designation without the assumption on which number the width is: the caller named it."""
    taken = smaller_is_width(designation.width_in)
    if taken not in designation.assumed:
        return designation
    return replace(designation, assumed=tuple(each for each in designation.assumed if each != taken))


def _behind(asked: dict[str, Value]) -> list[Part]:
    parts: list[Part] = []
    if "hump" in asked:
        parts.append(("hump", f" {asked['hump']}"))
    if "offset_mm" in asked:
        parts.append(("offset_mm", f" ET{written(asked['offset_mm'])}"))
    return parts
