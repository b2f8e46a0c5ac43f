"""Answers as text for a terminal: what counts first, then what to do, the numbers, and what to know."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, Final

from service.assessment.answer.verdict_words import OUTCOME_WORDS, TODAY, VERDICT_WORDS
from service.core.findings import OUTCOME_NAMES
from service.terminal.plan_text import plan_lines
from service.terminal.rims_text import rims_lines
from service.terminal.text_table import WIDTH, block, cell, heading, lines_of, wrapped

Json = Mapping[str, Any]

_TITLES: Final[Mapping[str, str]] = {
    OUTCOME_NAMES[words.outcome]: words.title for words in OUTCOME_WORDS if words.name not in ("open", "met")
}
_SETTLED: Final = ("met", "open")
_FINDINGS: Final = (("", 22), ("question", 26), ("axle", 8), ("what was found", 50))
_FIGURES: Final = (
    ("tyre", "tyre"),
    ("rim", "rim"),
    ("spacer [mm]", "spacer_mm"),
    ("overall diameter [mm]", "overall_diameter_mm"),
    ("section width [mm]", "section_width_mm"),
    ("a tyre carries [kg]", "load_capacity_kg"),
    ("a tyre must carry [kg]", "load_required_kg"),
    ("good for [km/h]", "speed_capability_kmh"),
    ("pressure [kPa]", "pressure_kpa"),
)
_AXLES: Final = ("front", "rear")


def shown(operation: str, answer: Json) -> str:
    """Return the answer to a question as text."""
    told = [each for name in ("assumptions", "notes", "cautions") for each in answer.get(name, [])]
    return "\n".join([*_ANSWERS[operation](answer), *block("To know", told)]).rstrip()


def _assessment(answer: Json) -> list[str]:
    findings = [each for each in answer["findings"] if _kind(each) not in _SETTLED]
    # From the counts, since a short answer leaves these findings out.
    counts = answer["finding_counts"]
    open_ones = counts["not_assessed"] - sum(each["outcome"] == "not_assessed" for each in findings)
    verdict = VERDICT_WORDS[answer["verdict"]]
    figures = lines_of((("", 30), ("now", 34), ("proposed", 34)), _figures(answer["axles"]))
    return [
        *heading(f"{answer['label']}: {verdict}" if answer["label"] else verdict),
        *wrapped(answer["summary"], WIDTH),
        "",
        *lines_of(_FINDINGS, [_finding(each) for each in findings]),
        # Unlike the summary, which counts questions.
        f"Met: {counts['met']}. Open, and decides nothing: {open_ones}. A point on both axles counts twice.",
        "",
        *block("What to do", [each["text"] for each in answer["actions"]]),
        *figures,
        *([""] if figures else []),
    ]


def _figures(axles: Json) -> list[tuple[str, ...]]:
    """Return what is fitted and its figures; nothing where the question wants a short answer.

    What is known of neither wheel is left out.
    """
    return [
        (f"{axle}: {words}", *(cell(axles[axle][when].get(name)) for when in ("present", "proposed")))
        for axle in _AXLES
        if "present" in axles[axle]
        for words, name in _FIGURES
        if any(name in axles[axle][when] for when in ("present", "proposed"))
    ]


def _finding(each: Json) -> tuple[str, ...]:
    said = [each["message"]]
    if "remedy" in each and "text" in each["remedy"]:
        said.append(f"To settle it: {each['remedy']['text']}.")
    outcome = _TITLES[each["outcome"]] + (f" ({TODAY})" if each["already"] else "")
    return outcome, each["code"], each["axle"], " ".join(said)


def _kind(each: Json) -> str:
    if each["outcome"] == "not_assessed" and not each["decides"]:
        return "open"
    return str(each["outcome"])


def _rows(answer: Json) -> list[str]:
    heads = (("", 3), ("change", 36), ("verdict", 25), ("set [kPa]", 9), ("what stands against it", 37))
    # Of a comparison what was refused is a candidate, of a search a line of the stock.
    refused = answer.get("refused", [])
    rows = [_row(each) for each in (*answer["rows"], *refused) if "pointer" not in each]
    unread = [f"{each['pointer']}: {each['detail']}" for each in refused if "pointer" in each]
    return [
        *lines_of(heads, rows or [("", "none", "", "", answer.get("why_none", ""))]),
        "",
        *block("Not read", unread),
    ]


def _row(row: Json) -> tuple[str, ...]:
    if "errors" in row:
        return "", str(row.get("label", "")), "not read", "", str(row["errors"][0]["detail"])
    pressures = row.get("set_pressure_kpa", {})
    to_set = " / ".join(cell(pressures.get(axle)) or "-" for axle in _AXLES)
    against = row.get("reason", "")
    if "first_remedy" in row:
        against = f"{against} To settle it: {row['first_remedy']}."
    return f"{row['rank']}", row["change"], VERDICT_WORDS[row["verdict"]], to_set, against


_ANSWERS: Final[Mapping[str, Callable[[Json], list[str]]]] = {
    "check": _assessment,
    "compare": _rows,
    "search": _rows,
    "rims": rims_lines,
    "plan": plan_lines,
}
