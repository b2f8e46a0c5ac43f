"""The printed plan says what was found of the same question, each in its place."""

from __future__ import annotations

import re

import pytest

from service.assessment.batch.plan import Plan
from service.page.plan_report import render_plan
from tests.support.plans import F225, F255, F285, asked, planned, request
from tests.unit.page.reading import Page

SCATTER = {"braking_distance_percent": 1.0, "rear_wet_reserve_points": 1.0}
BOTH, REAR = (F255, F285), (F225, F285)
WHEELS = {
    F225: "225/40 R19 93Y XL on 8J x 19 H2 ET45; 250 kPa",
    F255: "255/35 R19 96Y XL on 8.5J x 19 H2 ET44; 250 kPa",
    F285: "285/30 R19 98Y XL on 9.5J x 19 H2 ET42; 270 kPa",
}


def printed(*combinations, **more) -> str:
    return render_plan(*asked(request(*combinations, **more)))


def words(page: str) -> str:
    return Page(re.sub(r"</(td|th|li|h2|p)>", r" </\1>", page)).words


def rows(page: str) -> list[list[str]]:
    """Return the cells of every row of every table."""
    found = re.findall(r"<tr>(.*?)</tr>", page, re.DOTALL)
    return [[Page(each).words for each in re.findall(r"<t[dh][^>]*>(.*?)</t[dh]>", row, re.DOTALL)] for row in found]


def test_each_combination_has_its_wheels_front_before_rear_and_its_verdict():
    told = {row[0]: row for row in rows(printed(BOTH, REAR, repeatability=SCATTER)) if len(row) == 4}
    assert told["combination 1"][1:3] == [WHEELS[F255], WHEELS[F285]]
    assert told["combination 2"][1:3] == [WHEELS[F225], WHEELS[F285]]
    assert told["present wheels"][3] == "reference"
    found = planned(BOTH, REAR, repeatability=SCATTER)
    for row, each in zip(("combination 1", "combination 2"), found.combinations, strict=True):
        assert each.words.reason in told[row][3]
        assert f"To settle it: {each.words.remedy}." in told[row][3]


def test_what_is_expected_stands_in_the_column_of_its_effect():
    table = [row for row in rows(printed(BOTH, REAR, repeatability=SCATTER)) if len(row) > 8]
    head, one, two = table
    assert len(head) == len(one) == len(two)
    assert (one[0], two[0]) == ("combination 1", "combination 2")
    units = {"[%]": "%", "[points]": "points", "[deg/g]": "deg/g"}
    for name, *cells in zip(head[1:], one[1:], two[1:], strict=True):
        unit = units[name.rsplit(" ", 1)[1]]
        assert all(cell == "as now" or f" {unit} (between" in cell for cell in cells), name
    column = next(place for place, name in enumerate(head) if name.startswith("Peak grip of the front"))
    # The front of the second combination stays as it is.
    assert two[column] == "as now"
    assert one[column] != "as now"


def test_an_effect_that_nothing_is_known_of_has_no_column_and_what_is_not_known_of_one_says_so():
    bare = rows(printed(("155 R13", None)))
    assert not any("Braking distance" in cell for row in bare for cell in row)
    both = next(row for row in rows(printed(("155 R13", None), REAR)) if row[0] == "combination 1" and len(row) > 5)
    assert both[1] == "not known"


def test_pairs_that_a_test_may_tell_apart_are_told_and_those_that_it_will_hardly():
    telling = words(printed(BOTH, REAR, repeatability=SCATTER))
    assert telling.count("what a test may show:") == 3
    assert "combination 2 against combination 1, what a test may show: braking distance in the dry" in telling
    assert "A test will hardly tell apart" not in telling
    alike = words(printed(BOTH, BOTH, pressure_rule="load_over_capacity"))
    pairs = "present wheels and combination 1; present wheels and combination 2; combination 1 and combination 2."
    assert f"A test will hardly tell apart: {pairs}" in alike
    assert "what a test may show:" not in alike


@pytest.mark.parametrize(
    ("more", "told"),
    # 95 per cent both sides and 80 per cent power are usual in trials (common practice, no source).
    [({}, "95 % confidence, both sides, and 80 % chance"), ({"confidence": 0.9, "power": 0.875}, None)],
)
def test_the_confidence_and_the_power_of_the_numbers_of_tests_are_told(more, told):
    page = words(printed(BOTH, REAR, repeatability=SCATTER, **more))
    assert (told or "90 % confidence, both sides, and 87.5 % chance") in page


def test_runs_are_numbered_in_their_order_with_a_column_for_each_of_six_blocks_at_most():
    order = ["present wheels", "combination 1", "present wheels", "combination 2", "present wheels"]
    for scatter, blocks in ((SCATTER, 6), ({"braking_distance_percent": 0.4}, None), (None, 1)):
        more = {} if scatter is None else {"repeatability": scatter}
        page, found = printed(BOTH, REAR, **more), planned(BOTH, REAR, **more)
        table = rows(page)
        (head,) = (row for row in table if row[:2] == ["Run", "Wheels"])
        columns = blocks if blocks is not None else _shown(found)
        assert head[2:] == [f"Block {number}" for number in range(1, columns + 1)]
        runs = table[table.index(head) + 1 :]
        assert [row[:2] for row in runs] == [[str(place), name] for place, name in enumerate(order, 1)]
        assert {len(row) for row in runs} == {columns + 2}


def _shown(found: Plan) -> int:
    assert 1 < found.blocks < 6
    return int(found.blocks)


def test_a_name_is_printed_whole():
    made = request(BOTH, REAR)
    # As long as a caller may write it.
    made["combinations"][0]["label"] = "a" * 80
    assert "a" * 80 in words(render_plan(*asked(made)))


def test_what_is_to_be_measured_first_has_a_box_to_tick():
    page = printed(BOTH, REAR)
    boxes = [each for each in Page(page).named("input") if each["type"] == "checkbox"]
    found = planned(BOTH, REAR)
    assert len(boxes) == len(found.measure_first) > 0
    assert all(str(each.text) in words(page) for each in found.measure_first)
