"""The answer of `rims` as text: what each axle asks for, windows of offsets, the fewest rims, the combinations."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any, Final

from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.terminal.text_table import block, cell, heading, lines_of

Json = Mapping[str, Any]

_AXLES: Final = (("front", "Front axle"), ("rear", "Rear axle"))
_WINDOWS: Final = (
    ("tyre", 20),
    ("rim", 5),
    ("best ET", 7),
    ("suitable", 10),
    ("with conditions", 15),
    ("what bounds it", 43),
)
_RIMS: Final = (("rim", 18), ("serves at the front", 44), ("serves at the rear", 44))
_COMBINATIONS: Final = (("combination", 22), ("verdict", 25), ("front", 28), ("rear", 29))


def rims_lines(answer: Json) -> list[str]:
    """Return the lines of the answer of `rims`, but for what is to be known of it."""
    lines: list[str] = []
    for axle, title in _AXLES:
        rows = [row for tyre in answer["axles"][axle]["tyres"] for row in _tyre(tyre)]
        lines += [
            *heading(title),
            *block("It asks for", list(_asked(answer["needs"][axle]))),
            *lines_of(_WINDOWS, rows),
        ]
        lines.append("")
    chosen = answer["smallest_set"]
    exact = chosen["method"] == "exact"
    lines += heading("The fewest rims for all" if exact else "Few rims for all; fewer may do")
    lines += [*lines_of(_RIMS, [_rim(each) for each in chosen["rims"]] or [("none", "", "")]), ""]
    lines += block("No rim serves", [f"{each['tyre']} at the {each['axle']}" for each in chosen["unserved"]])
    return [*lines, *lines_of(_COMBINATIONS, [_combination(each) for each in answer["combinations"]]), ""]


def _asked(needs: Json) -> Iterator[str]:
    """Yield what an axle asks of tyres and rims."""
    if "load_index" in needs:
        twin = f" ({needs['load_index_twin']} as a twin)" if "load_index_twin" in needs else ""
        yield f"load index {needs['load_index']}{twin}, speed symbol {needs['speed_symbol']}, or more"
    if "winter_speed_symbol" in needs:
        yield f"winter tyres marked {needs['winter_speed_symbol']} or faster"
    for name, words in (("overall_diameter_mm", "overall diameter"), ("nominal_width_mm", "nominal width")):
        if name in needs:
            some = _span(needs[name].get("with_conditions"))
            yield f"{words} {_span(needs[name].get('suitable'))} mm, with conditions {some} mm"
    rim = needs["rim"]
    facts = [
        f"diameter {cell(rim['min_diameter_in'])} or more" if "min_diameter_in" in rim else "",
        f"bolt circle {rim['bolt_circle']}" if "bolt_circle" in rim else "",
        f"centre bore {cell(rim['centre_bore_mm'])} mm" if "centre_bore_mm" in rim else "",
        f"rated for {cell(rim['load_rating_kg'])} kg",
    ]
    yield f"rims: {', '.join(filter(None, facts))}"


def _span(span: Json | None) -> str:
    if span is None:
        return "none"
    low, high = (cell(span.get(name)) for name in ("at_least", "at_most"))
    if low and high:
        return f"{low} to {high}"
    return f"{low} or more" if low else f"up to {high}" if high else "any"


def _tyre(tyre: Json) -> Iterator[tuple[str, ...]]:
    """Yield a row for each width of rim, the tyre named on the first."""
    name = tyre["tyre"]
    if not tyre["widths"]:
        yield name, "", "", "", "", "Its rim widths are not known."
    for each in tyre["widths"]:
        best = cell(each["best"]["offset_mm"]) if "best" in each else "none"
        some = each.get("with_conditions")
        yield name, cell(each["width_in"]), best, _offsets(each.get("suitable")), _offsets(some), _bounds(each)
        name = ""


def _offsets(window: Json | None) -> str:
    if window is None:
        return "none"
    runs = [window, *window.get("further", [])]
    return "; ".join(f"{cell(run['from_mm'])} to {cell(run['to_mm'])}" for run in runs)


def _bounds(width: Json) -> str:
    """Return what ends the wider window, else why there is none, and what a check finds besides."""
    window = width.get("with_conditions")
    if window is None:
        said = [each["text"] for each in width["why_none"][:1]]
    else:
        ends = (("from_bound", "Below {}", "from_mm"), ("to_bound", "Above {}", "to_mm"))
        said = [
            f"{words.format(cell(window[end]))}: {window[name]['text']}" for name, words, end in ends if name in window
        ]
    said += [f"Besides: {each['text']}" for each in width["besides"]]
    return " ".join(f"{each}." for each in said)


def _rim(rim: Json) -> tuple[str, ...]:
    conditions = [(each["axle"], each["tyre"]) for each in rim["with_conditions"]]
    served = [
        ", ".join(
            each["tyre"] + (" (with conditions)" if (axle, each["tyre"]) in conditions else "")
            for each in rim["serves"]
            if each["axle"] == axle
        )
        for axle, _ in _AXLES
    ]
    return f"{cell(rim['width_in'])} x {cell(rim['diameter_in'])} ET{cell(rim['offset_mm'])}", *served


def _combination(each: Json) -> tuple[str, ...]:
    if "verdict" not in each:
        return each["label"], "a tyre has no rim", "", ""
    return each["label"], VERDICT_WORDS[each["verdict"]], *_wheels(each["candidate"])


def _wheels(candidate: Json) -> Sequence[str]:
    return [
        f"{candidate[axle]['tyre']['size']} on {candidate[axle]['rim']['size']}" if axle in candidate else "stays"
        for axle, _ in _AXLES
    ]
