"""The table of all columns: its numbers are those that the service answers to each."""

import re

import pytest

from tests.browser.examples import SALOON, Reader

# Row of the table and what it shows of an axle's proposed wheel, with its unit.
WHEEL = {
    "diameter": ("overall_diameter_mm", "mm"),
    "circumference": ("rolling_circumference_mm", "mm"),
    "load": ("load_capacity_kg", "kg"),
    "pressure": ("pressure_kpa", "kPa"),
}
CHANGE = {"inner_edge": "inboard_edge_mm", "outer_edge": "outboard_edge_mm"}


@pytest.fixture(scope="module")
def reader(lasting):
    """Two columns: the example, and one with the present rear wheels."""
    made = Reader(lasting(), SALOON)
    with made.asking():
        made.page.click("#add")
    tyre, rim = "/candidate/rear/tyre/size", "/candidate/rear/rim/size"
    made.type((tyre, "255/35 R19 96Y XL"), (rim, "9J x 19 H2 ET42"), column=1)
    return made


def cell(reader, row, axle, column):
    """Return the words of a cell; a row that holds for both axles stands once."""
    both = f"[data-row={row}][data-axle='']"
    own = reader.page.locator(f"#table tr[data-row={row}][data-axle={axle}], #table tr{both}").first
    return own.locator("td").nth(column + 1).inner_text().replace("\N{MINUS SIGN}", "-")


def first_number(words):
    return float(re.search(r"[+-]?\d+(\.\d+)?", words)[0])


@pytest.mark.parametrize("column", ["A", "B"])
@pytest.mark.parametrize("axle", ["front", "rear"])
@pytest.mark.parametrize("row", sorted(WHEEL))
def test_a_number_of_a_wheel_is_the_service_s(reader, row, axle, column):
    name, unit = WHEEL[row]
    words = cell(reader, row, axle, "AB".index(column))
    assert first_number(words) == pytest.approx(reader.answer(column)["axles"][axle]["proposed"][name], abs=0.5)
    assert unit in words


@pytest.mark.parametrize("column", ["A", "B"])
@pytest.mark.parametrize("row", sorted(CHANGE))
def test_an_edge_moves_as_the_service_says(reader, row, column):
    words = cell(reader, row, "rear", "AB".index(column))
    assert first_number(words) == reader.answer(column)["axles"]["rear"]["change"][CHANGE[row]]


def test_what_the_speedometer_shows_follows_from_the_circumference(reader):
    # A wheel 1 % smaller turns 1 % more often: the needle stands at 100 divided by the ratio of the circumferences.
    ratio = reader.answer()["vehicle"]["speedometer"]["circumference_ratio"]
    assert first_number(cell(reader, "speed_shown", "front", 0)) == pytest.approx(100 / ratio, abs=0.05)


def test_each_verdict_stands_in_its_column(reader):
    assert cell(reader, "verdict", "front", 0).strip() == "It fits, with conditions"
    assert reader.answer()["verdict"] == "suitable_with_conditions"


def test_a_press_on_a_head_shows_that_column_s_answer(reader):
    reader.page.locator("#table .pick").nth(0).click()
    assert reader.page.inner_text("#summary") in reader.answer()["summary"]
    reader.page.locator("#table .pick").nth(1).click()
    assert reader.page.inner_text("#summary") in reader.answer("B")["summary"]
    assert reader.page.locator("#table .pick[aria-pressed=true]").evaluate("(each) => each === document.activeElement")


def test_the_table_speaks_the_reader_s_units(reader):
    # 1 psi is 6.894757 kPa (NIST SP 811, from memory): 250 kPa are 36.3 psi.
    with reader.asking():
        reader.page.select_option("#units", "imperial")
    words = cell(reader, "pressure", "front", 0)
    with reader.asking():
        reader.page.select_option("#units", "metric")
    assert words.splitlines()[0] == "36.3 psi"
