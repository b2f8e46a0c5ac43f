"""Every table is what `tables.toml` says of it."""

import csv
import tomllib
from importlib.resources import files
from typing import get_args

import pytest

from service.core.errors import UnknownName
from service.core.findings import BasisStatus
from service.core.sources import SOURCES
from service.standards import catalogue

DATA = files("service.standards") / "data"
DECLARED = tomllib.loads((DATA / "tables.toml").read_text(encoding="utf-8"))
every_table = pytest.mark.parametrize("name", catalogue.TABLE_NAMES)


def printed(name):
    text = (DATA / DECLARED[name]["file"]).read_text(encoding="utf-8")
    return list(csv.reader(text.splitlines()))


def test_every_promised_table_is_there():
    promised = {"load-index", "speed-symbol", "rim-diameter", "rim-width", "commercial-speed-load", "pressure-load"}
    assert promised <= set(catalogue.TABLE_NAMES)


def test_every_data_file_is_declared_by_exactly_one_table():
    present = sorted(each.name for each in DATA.iterdir() if each.name.endswith(".csv"))
    assert sorted(table["file"] for table in DECLARED.values()) == present


@every_table
def test_the_heading_of_the_file_is_the_declared_one(name):
    assert printed(name)[0] == [column.name for column in catalogue.table(name).columns]


@every_table
def test_every_row_has_a_cell_for_every_column(name):
    assert {len(row) for row in printed(name)} == {len(DECLARED[name]["columns"])}


@every_table
def test_no_printed_row_is_lost(name):
    assert len(catalogue.table(name).rows) == len(printed(name)) - 1


@every_table
def test_only_columns_that_allow_it_have_blank_cells(name):
    required = [at for at, (_, _, kind, _) in enumerate(DECLARED[name]["columns"]) if not kind.endswith("?")]
    assert all(row[at] not in (None, "") for row in catalogue.table(name).rows for at in required)


@every_table
def test_every_column_has_a_known_type(name):
    kinds = {kind.removesuffix("?") for _, _, kind, _ in DECLARED[name]["columns"]}
    assert kinds <= {"integer", "number", "text"}


@every_table
def test_every_quantity_names_its_unit_in_the_column(name):
    for column in catalogue.table(name).columns:
        # `load_at_250_kpa` is a load; the pressure is its heading.
        quantity = "load_kg" if column.name.startswith("load_at_") else column.name
        for ending, unit in (("_mm", "mm"), ("_kg", "kg"), ("_kmh", "km/h"), ("_in", "in"), ("_kpa", "kPa")):
            if quantity.endswith(ending):
                assert column.unit == unit, f"{column.name}: say {unit!r} in `columns` of tables.toml"


@every_table
def test_every_table_cites_a_known_source(name):
    assert catalogue.table(name).source in SOURCES


@every_table
def test_every_status_in_a_row_is_a_word_of_the_vocabulary(name):
    table = catalogue.table(name)
    at = [position for position, column in enumerate(table.columns) if column.name.endswith("status")]
    assert {row[position] for row in table.rows for position in at} <= set(get_args(BasisStatus))


@every_table
def test_every_table_says_in_a_note_what_it_rests_on(name):
    assert len(catalogue.table(name).note.split()) >= 10


def test_only_the_table_whose_source_interpolates_allows_it():
    allowed = [name for name in catalogue.TABLE_NAMES if catalogue.table(name).interpolate]
    assert allowed == ["passenger-speed-load"], "name here a table whose source allows values between rows"


def test_an_unknown_table_is_refused_with_the_names_that_exist():
    with pytest.raises(UnknownName, match="load-index") as refused:
        catalogue.table("tyre-prices")
    assert refused.value.known == catalogue.TABLE_NAMES


def test_a_column_is_read_from_top_to_bottom():
    assert catalogue.column("speed-symbol", "symbol")[:3] == ("A1", "A2", "A3")
