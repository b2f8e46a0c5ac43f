"""Tables and answers as text, from answers written by hand: every line as a reader gets it."""

from __future__ import annotations

import json
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest

import service
from service.terminal.answers import shown
from service.terminal.rims_text import _bounds, _offsets, _rim, _span
from service.terminal.text_table import block, cell, heading, lines_of, wrapped

Json = dict[str, Any]
DEMO = Path(__file__).parents[3] / "demo_requests"
MINUS = "\N{MINUS SIGN}"


def finding(outcome: str, **more: object) -> Json:
    return {"outcome": outcome, "code": "a.code", "axle": "rear", "message": "Said.", "already": False, **more}


def check_of(*findings: Json, **more: object) -> Json:
    counts = {"met": 4, "not_assessed": 3}
    told = {
        "label": "",
        "verdict": "suitable",
        "summary": "All is well.",
        "actions": [],
        "axles": {"front": {}, "rear": {}},
    }
    return told | {"findings": list(findings), "finding_counts": counts} | more


def test_a_table_has_heads_rules_and_cells_two_blanks_apart():
    assert lines_of((("a", 3), ("bb", 4)), [("x", "y"), ("1", "")]) == ["a    bb", "---  ----", "x    y", "1"]


def test_a_long_cell_goes_on_below_in_its_own_column():
    assert lines_of((("a", 3), ("b", 5)), [("x", "one two"), ("one two", "y")])[2:] == [
        "x    one",
        "     two",
        "one  y",
        "two",
    ]


def test_a_table_without_rows_is_none():
    assert lines_of((("a", 3),), []) == []


def test_a_list_has_its_title_its_dashes_and_an_empty_line_behind():
    assert block("Title", ["one", "two"]) == ["Title", "- one", "- two", ""]
    assert block("Title", []) == []


def test_a_sentence_of_a_list_goes_on_two_blanks_in_and_no_line_has_more_than_110_letters():
    lines = block("Title", [("word " * 40).strip()])
    assert [line[:2] for line in lines[1:-1]] == ["- ", "  "]
    # 108 letters hold 21 words of four and the blanks between them: 104; one more would make 109.
    assert len(lines[1]) == 2 + 104
    assert block("Title", ["x" * 108])[1:] == [f"- {'x' * 108}", ""]
    assert len(block("Title", ["x" * 109])) == 4


def test_a_heading_is_underlined_in_its_length():
    assert heading("Rims") == ["Rims", "===="]


@pytest.mark.parametrize(
    ("value", "text"), [(7.5, "7.5"), (18.0, "18"), (-3, f"{MINUS}3"), (0, "0"), (None, ""), ("", ""), ("ET45", "ET45")]
)
def test_a_cell_shows_a_number_as_short_as_it_is_and_nothing_for_nothing(value, text):
    assert cell(value) == text


def test_a_designation_is_not_broken_at_its_hyphen():
    assert wrapped("aa 5.60-15", 8) == ["aa", "5.60-15"]
    assert wrapped("", 8) == [""]


@pytest.mark.parametrize(
    ("span", "text"),
    [
        (None, "none"),
        ({}, "any"),
        ({"at_least": 600, "at_most": 640}, "600 to 640"),
        ({"at_least": 600}, "600 or more"),
        ({"at_most": 640}, "up to 640"),
    ],
)
def test_a_span_is_told_by_its_ends(span, text):
    assert _span(span) == text


def test_a_window_of_offsets_is_told_with_those_further_on():
    assert _offsets(None) == "none"
    assert _offsets({"from_mm": 35, "to_mm": 45}) == "35 to 45"
    assert _offsets({"from_mm": -5, "to_mm": 5, "further": [{"from_mm": 9, "to_mm": 9}]}) == f"{MINUS}5 to 5; 9 to 9"


def test_a_window_is_bounded_below_and_above_and_by_what_is_found_besides():
    window = {"from_mm": 35, "to_mm": 45, "from_bound": {"text": "the wing"}, "to_bound": {"text": "the strut"}}
    assert _bounds({"with_conditions": window, "besides": [{"text": "the bore"}]}) == (
        "Below 35: the wing. Above 45: the strut. Besides: the bore."
    )
    assert _bounds(
        {"with_conditions": {"from_mm": 35, "to_mm": 45, "to_bound": {"text": "the strut"}}, "besides": []}
    ) == ("Above 45: the strut.")
    assert _bounds({"why_none": [{"text": "too narrow"}, {"text": "too weak"}], "besides": []}) == "too narrow."


def test_a_rim_serves_the_tyres_of_each_axle_some_with_conditions():
    rim = {"width_in": 8, "diameter_in": 18, "offset_mm": 45}
    rim["serves"] = [{"axle": "front", "tyre": "A"}, {"axle": "front", "tyre": "B"}, {"axle": "rear", "tyre": "A"}]
    rim["with_conditions"] = [{"axle": "rear", "tyre": "A"}, {"axle": "front", "tyre": "B"}]
    assert _rim(rim) == ("8 x 18 ET45", "A, B (with conditions)", "A (with conditions)")


def test_a_check_shows_what_is_not_settled_with_its_remedy_and_counts_the_rest():
    open_one = finding("not_assessed", decides=True, code="open.code", axle="front")
    asked = finding("not_met", remedy={"text": "take ET40"})
    printed = shown(
        "check", check_of(asked, finding("met"), open_one, finding("not_assessed", decides=False, code="silent"))
    )
    lines = printed.splitlines()
    assert lines[:3] == ["It fits", "=======", "All is well."]
    row = next(at for at, line in enumerate(lines) if "a.code" in line)
    assert lines[row].split() == [
        "Speaks",
        "against",
        "it",
        "a.code",
        "rear",
        "Said.",
        "To",
        "settle",
        "it:",
        "take",
        "ET40.",
    ]
    assert "open.code" in printed
    assert "silent" not in printed
    # Three are not assessed, and one of them decides and is shown.
    assert "Met: 4. Open, and decides nothing: 2. A point on both axles counts twice." in lines


@pytest.mark.parametrize(
    ("outcome", "title"),
    # By the design of the verdict: what holds it back, what speaks against it, what only wants attention.
    [
        ("not_met", "Speaks against it"),
        ("not_recommended", "Advised against"),
        ("not_assessed", "To be settled first"),
        ("advisory", "Needs attention"),
    ],
)
def test_each_finding_that_is_shown_begins_with_how_it_came_out(outcome, title):
    lines = shown("check", check_of(finding(outcome, decides=True))).splitlines()
    (row,) = (line for line in lines if "a.code" in line)
    assert row[:22].strip() == title


def test_a_check_names_its_label_and_what_is_already_so_today():
    printed = shown("check", check_of(finding("not_met", already=True), label="larch"))
    assert printed.startswith("larch: It fits\n==============\n")
    lines = printed.splitlines()
    row = next(at for at, line in enumerate(lines) if "a.code" in line)
    first = " ".join(line[:22].strip() for line in lines[row : row + 2]).strip()
    assert first == "Speaks against it (today already)"


def test_a_check_shows_the_figures_known_of_either_wheel_and_no_others():
    axles = {
        "front": {"present": {"tyre": "A", "spacer_mm": 0}, "proposed": {"tyre": "B", "pressure_kpa": 250}},
        "rear": {"present": {}, "proposed": {}},
    }
    lines = shown("check", check_of(axles=axles)).splitlines()
    figures = [line.split() for line in lines if line.startswith(("front:", "rear:"))]
    assert figures == [
        ["front:", "tyre", "A", "B"],
        ["front:", "spacer", "[mm]", "0"],
        ["front:", "pressure", "[kPa]", "250"],
    ]


def test_an_empty_line_stands_between_figures_and_what_is_to_be_known_and_only_one_where_there_are_none():
    axles = {"front": {"present": {"tyre": "A"}, "proposed": {"tyre": "B"}}, "rear": {}}
    with_figures = shown("check", check_of(axles=axles, notes=["one"])).splitlines()
    without = shown("check", check_of(notes=["one"])).splitlines()
    assert with_figures[-4].startswith("front: tyre")
    assert with_figures[-3:] == ["", "To know", "- one"]
    assert without[-4:] == [
        "Met: 4. Open, and decides nothing: 3. A point on both axles counts twice.",
        "",
        "To know",
        "- one",
    ]


def test_what_is_to_be_known_comes_last():
    told = {"assumptions": ["one"], "notes": ["two"], "cautions": ["three"], "actions": [{"text": "go"}]}
    printed = shown("check", check_of(**told))
    assert printed.endswith("To know\n- one\n- two\n- three")
    assert "What to do\n- go\n" in printed


def test_rows_show_rank_change_verdict_pressures_and_what_stands_against_them():
    rows = [
        {"rank": 1, "change": "wider", "verdict": "suitable", "set_pressure_kpa": {"front": 230, "rear": 250}},
        {"rank": 2, "change": "lower", "verdict": "unsuitable", "set_pressure_kpa": {"rear": 240}, "reason": "It rubs."}
        | {"first_remedy": "ET40"},
    ]
    refused = [
        {"label": "slip", "errors": [{"detail": "no size"}, {"detail": "no rim"}]},
        {"pointer": "/stock/1/size", "detail": "no size"},
    ]
    lines = shown("compare", {"rows": rows, "refused": refused}).splitlines()
    assert " ".join(lines[2].split()) == "1 wider It fits 230 / 250"
    assert " ".join(lines[3].split()) == "2 lower Do not fit - / 240 It rubs. To settle it: ET40."
    assert " ".join(lines[4].split()) == "slip not read no size"
    assert lines[6:] == ["Not read", "- /stock/1/size: no size"]


def ruled(lines: list[str]) -> list[list[int]]:
    """Return the widths of the columns of each table, by the rules beneath their heads."""
    return [list(map(len, line.split("  "))) for line in lines if set(line) == {"-", " "}]


def test_the_columns_of_a_table_are_as_wide_as_laid_out_and_fit_a_terminal_of_120():
    compared = shown("compare", {"rows": []}).splitlines()
    axles = {"front": {"present": {"tyre": "A"}, "proposed": {"tyre": "B"}}, "rear": {}}
    checked = shown("check", check_of(finding("not_met"), axles=axles)).splitlines()
    assert ruled(compared) == [[3, 36, 25, 9, 37]]
    assert ruled(checked) == [[22, 26, 8, 50], [30, 34, 34]]
    assert max(map(len, compared + checked)) <= 120


def test_the_columns_of_rims_are_as_wide_as_laid_out_and_fit_a_terminal_of_120():
    axle = {"tyres": [{"tyre": "A", "widths": []}]}
    needs = {"rim": {"load_rating_kg": 480}}
    answer = {"axles": {"front": axle, "rear": axle}, "needs": {"front": needs, "rear": needs}}
    answer["smallest_set"] = {"method": "exact", "rims": [], "unserved": []}
    answer["combinations"] = [{"label": "c"}]
    lines = shown("rims", answer).splitlines()
    assert ruled(lines) == [[20, 5, 7, 10, 15, 43]] * 2 + [[18, 44, 44], [22, 25, 28, 29]]
    assert max(map(len, lines)) <= 120
    heads = [line.split() for line, under in pairwise(lines) if set(under) == {"-", " "}]
    windows = ["tyre", "rim", "best", "ET", "suitable", "with", "conditions", "what", "bounds", "it"]
    assert heads[:2] == [windows] * 2
    assert heads[2] == ["rim", "serves", "at", "the", "front", "serves", "at", "the", "rear"]
    assert heads[3] == ["combination", "verdict", "front", "rear"]
    assert "- rims: rated for 480 kg" in lines
    assert "The fewest rims for all" in lines


def test_no_rows_say_why():
    printed = shown("search", {"rows": [], "why_none": "Nothing carries it."})
    assert " ".join(printed.splitlines()[2].split()) == "none Nothing carries it."


def test_one_point_that_is_open_on_both_axles_is_told_as_one_and_as_two():
    # The question is whether both wheels of an axle are alike: the same one, asked of each of two axles.
    question = json.loads((DEMO / "tandem-caravan.check.json").read_text(encoding="utf-8"))
    answer = service.assess(question)
    assert answer["finding_counts"]["not_assessed"] == 2
    printed = " ".join(shown("check", answer).split())
    assert "One point stays open; it does not change the answer." in printed
    assert "Open, and decides nothing: 2. A point on both axles counts twice." in printed
