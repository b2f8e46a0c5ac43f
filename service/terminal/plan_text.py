"""The answer of `plan` as text: combinations, what to expect of each, what a test may show, order, measurements."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.terminal.text_table import WIDTH, block, cell, heading, lines_of, wrapped

Json = Mapping[str, Any]

_AXLES: Final = ("front", "rear")
_COMBINATIONS: Final = (("combination", 20), ("front", 29), ("rear", 29), ("verdict", 26))
_ORIGINS: Final = {"found": "to buy", "present": "", "given": ""}
# So many combinations stand beside one another where their effects are told.
_BESIDE: Final = 3
_EFFECT: Final = 36
_BAND: Final = 22


def plan_lines(answer: Json) -> list[str]:
    """Return the lines of the answer of `plan`, but for what is to be known of it."""
    order = answer["order"]
    runs = [f"Drive: {'; '.join(order['runs'])}"] if order["runs"] else []
    shown = [each["text"] for each in answer["pairs"] if each["apart"]]
    hardly = [each["text"] for each in answer["pairs"] if not each["apart"]]
    return [
        *heading("Combinations, rims and pressures"),
        *wrapped(answer["pressure_rule_text"], WIDTH),
        "",
        *lines_of(_COMBINATIONS, list(_combinations(answer))),
        "",
        *block("Rims to buy", list(map(_rim, answer["rims_to_buy"]))),
        *heading("Expected against the present wheels"),
        *_effects(answer),
        *block("Measure first", [each["text"] for each in answer["measure_first"]]),
        *block("What a test may show", [*shown, *hardly]),
        *block("How often", [each["text"] for each in answer["repeats"]]),
        *block("In which order", [*runs, order["text"]]),
    ]


def _combinations(answer: Json) -> Iterator[tuple[str, ...]]:
    present = [_wheel(answer["reference"][axle]) for axle in _AXLES]
    yield "present wheels", *present, "reference"
    for each in answer["combinations"]:
        said: list[str] = [VERDICT_WORDS[each["verdict"]]]
        if "reason" in each:
            said.append(f": {each['reason']}")
        if "first_remedy" in each:
            said.append(f" To settle it: {each['first_remedy']}.")
        yield _name(each), *(_wheel(each[axle]) for axle in _AXLES), "".join(said)


def _name(each: Json) -> str:
    return each["label"] or each.get("id") or f"combination {each['index'] + 1}"


def _wheel(wheel: Json) -> str:
    """Return tyre, rim and pressure of an axle."""
    origin = _ORIGINS[wheel["rim_origin"]]
    rim = f"{wheel['rim']} ({origin})" if origin else wheel["rim"]
    pressure = f"; {cell(wheel['set_pressure_kpa'])} kPa" if "set_pressure_kpa" in wheel else ""
    return f"{wheel['tyre']} on {rim}{pressure}{', not by the rule' if wheel['pressure_held'] else ''}"


def _rim(rim: Json) -> str:
    return f"{rim['rim']} at the {rim['axle']}, for {', '.join(rim['serves'])}"


def _effects(answer: Json) -> list[str]:
    """Return the effects known of any combination, a line each, some combinations beside one another."""
    lines = []
    every = answer["combinations"]
    for first in range(0, len(every), _BESIDE):
        some = every[first : first + _BESIDE]
        columns = [("", _EFFECT), *((_name(each), _BAND) for each in some)]
        rows = [
            (f"{effect['text']} [{effect['unit']}]", *(_band(each["effects"].get(effect["effect"])) for each in some))
            for effect in answer["effects"]
            if any(effect["effect"] in each["effects"] for each in every)
        ]
        lines += [*_table(columns, rows), ""]
    return lines


def _table(columns: Sequence[tuple[str, int]], rows: Sequence[tuple[str, ...]]) -> list[str]:
    return lines_of(columns, rows) or ["Nothing is known of what they do."]


def _band(band: Json | None) -> str:
    if band is None:
        return "not known"
    value, low, high = (cell(band[end]) for end in ("value", "low", "high"))
    return value if low == high else f"{value} ({low} to {high})"
