"""Tyres given as numbers instead of text: the same reader, the same designation, and errors that name the number."""

from __future__ import annotations

from typing import TypedDict, Unpack

from service.core.saying import Amount, say
from service.designation.composed import Part, Value, WrongNumber, differing, read_parts, require_same, stated, written
from service.designation.tyre import TyreDesignation, parse_tyre
from service.designation.tyre_size import Commercial, Construction, System
from service.designation.tyre_size_grammar import LOAD_RANGES, WIDTH_MM
from service.designation.tyre_words import LoadVersion


class TyreNumbers(TypedDict, total=False):
    """A tyre by its numbers; widths in mm or, for sizes in inches, in inches. None stands for what is not known."""

    section_width_mm: float | None
    section_width_in: float | None
    overall_diameter_in: float | None
    aspect_ratio: float | None
    rim_diameter_in: float | None
    construction: Construction | None
    system: System | None
    commercial: Commercial | None
    load_index: int | None
    load_index_twin: int | None
    speed_symbol: str | None
    load_version: LoadVersion | None
    load_range: str | None
    ply_rating: int | None


_ATTRIBUTES = {"rim_diameter_in": "rim_code"}
_EXPECTED = {
    "section_width_mm": say(
        "whole millimetres from {low} to {high}", low=Amount(WIDTH_MM[0]), high=Amount(WIDTH_MM[1])
    ),
    "rim_diameter_in": say("a rim diameter code from 8 to 30, whole or half, and not 25"),
    "speed_symbol": say("one speed symbol, such as V"),
    "load_range": say("one letter of {letters}", letters=LOAD_RANGES),
    "ply_rating": say("an even number from 2 to 24"),
    "construction": say("{words}, as the size has it", words="radial, diagonal, bias_belted"),
    "commercial": say("{words}, as the size has it", words="C, CP, LT"),
    "load_version": say("a load version that sizes of this kind have"),
    "system": say("the system that the numbers make"),
}
# A service description has both.
_SERVICE = {
    "load_index": say("a number such as {example}", example=Amount(91)),
    "speed_symbol": say("one speed symbol, such as V"),
}
_PREFIXES = {"p_metric": "P", "lt_metric": "LT", "temporary_spare": "T"}
_LETTERS = {"radial": "R", "diagonal": "D", "bias_belted": "B"}
_VERSIONS = {"extra_load": " XL", "light_load": " LL", "standard": " SL"}
_WITHOUT_VERSION = ("lt_metric", "temporary_spare", "flotation")
# What a text without a service description may be given beside it.
_ADDED = ("load_index", "load_index_twin", "speed_symbol", "ply_rating")


def tyre_from_numbers(**numbers: Unpack[TyreNumbers]) -> TyreDesignation:
    """Return the designation that these numbers make.

    Raises
    ------
    WrongNumber
        Naming the number that is missing, out of range or at odds with another.
    OutOfScope
        For sizes of motorcycles, farm and off-road machines.
    """
    asked = stated(numbers)
    designation = read_parts(_size(asked) + _behind(asked), asked, parse_tyre, _EXPECTED)
    require_same(designation, asked, _ATTRIBUTES, _EXPECTED)
    return designation


def tyre_from_both(text: str, **numbers: Unpack[TyreNumbers]) -> TyreDesignation:
    """Return the designation of a text with numbers beside it, which must agree; numbers may add a service description.

    Raises
    ------
    UnreadableDesignation
        When the text cannot be read.
    WrongNumber
        Naming the first number that the text says otherwise.
    """
    designation, asked = parse_tyre(text), stated(numbers)
    missing = {name: asked[name] for name in _ADDED if name in asked and getattr(designation, name) is None}
    if missing and designation.load_index is None:
        if designation.speed_symbol is not None:
            # The letter inside the size tells the speed, so a load index alone completes the service description.
            missing.setdefault("speed_symbol", designation.speed_symbol)
        designation = read_parts([("", text), *_behind(missing)], asked, parse_tyre, _EXPECTED)
    require_same(designation, asked, _ATTRIBUTES, {})
    return designation


def tyre_disagreements(designation: TyreDesignation, **numbers: Unpack[TyreNumbers]) -> tuple[str, ...]:
    """Return the names of the numbers that the designation says otherwise or does not say; empty where both agree."""
    return differing(designation, stated(numbers), _ATTRIBUTES)


def tyre_agrees(designation: TyreDesignation, **numbers: Unpack[TyreNumbers]) -> bool:
    """Return whether the designation says every one of these numbers."""
    return not tyre_disagreements(designation, **numbers)


def _size(asked: dict[str, Value]) -> list[Part]:
    if asked.get("rim_diameter_in") is None:
        raise WrongNumber("rim_diameter_in", None, say("a diameter code, such as {example}", example=Amount(16)))
    code = ("rim_diameter_in", written(asked["rim_diameter_in"]))
    letter = ("construction", f" {_LETTERS.get(str(asked.get('construction', 'radial')), '?')}")
    suffix = ("commercial", str(asked.get("commercial", "")))
    if "overall_diameter_in" in asked:
        width = ("section_width_in", written(asked.get("section_width_in"), ".2f"))
        return [("overall_diameter_in", written(asked["overall_diameter_in"])), ("", "x"), width, letter, code, suffix]
    if "section_width_in" in asked:
        return [("section_width_in", _inches(asked)), letter, code, suffix]
    return [*_metric_width(asked), letter, code, ("", "") if _prefix(asked) == "LT" else suffix]


def _inches(asked: dict[str, Value]) -> str:
    """Return a width in inches as it is printed: whole on truck rims, with two decimals on all others."""
    width, code = asked["section_width_in"], asked["rim_diameter_in"]
    on_truck_rim = isinstance(code, float) and code % 1.0 != 0.0
    return written(width) if on_truck_rim else written(width, ".2f")


def _metric_width(asked: dict[str, Value]) -> list[Part]:
    if "section_width_mm" not in asked:
        raise WrongNumber("section_width_mm", None, say("millimetres, such as {example}", example=Amount(205)))
    parts = [("system", _prefix(asked)), ("section_width_mm", written(asked["section_width_mm"]))]
    if "aspect_ratio" not in asked and _prefix(asked):
        expected = say("a number such as {example}, as every size of this kind has one", example=Amount(65))
        raise WrongNumber("aspect_ratio", None, expected)
    if "aspect_ratio" in asked:
        parts += [("", "/"), ("aspect_ratio", written(asked["aspect_ratio"]))]
    return parts


def _prefix(asked: dict[str, Value]) -> str:
    if asked.get("load_version") == "high_load":
        return "HL"
    if asked.get("commercial") == "LT":
        return "LT"
    return _PREFIXES.get(str(asked.get("system", "")), "")


def _behind(asked: dict[str, Value]) -> list[Part]:
    """Return service description, load range, load version and ply rating."""
    parts: list[Part] = []
    if "load_index" in asked or "speed_symbol" in asked:
        for name, expected in _SERVICE.items():
            if name not in asked:
                raise WrongNumber(name, None, expected)
        parts += [("", " "), ("load_index", written(asked["load_index"]))]
        if "load_index_twin" in asked:
            parts += [("", "/"), ("load_index_twin", written(asked["load_index_twin"]))]
        parts.append(("speed_symbol", written(asked["speed_symbol"])))
    if "load_range" in asked:
        parts.append(("load_range", f" LR {asked['load_range']}"))
    version = str(asked.get("load_version", ""))
    if version != "standard" or not _has_no_version(asked):
        parts.append(("load_version", _VERSIONS.get(version, "")))
    if "ply_rating" in asked:
        parts.append(("ply_rating", f" {written(asked['ply_rating'])}PR"))
    return parts


def _has_no_version(asked: dict[str, Value]) -> bool:
    return asked.get("system") in _WITHOUT_VERSION or asked.get("commercial") == "LT" or "overall_diameter_in" in asked
