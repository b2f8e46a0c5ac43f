"""The columns of a sweep take what the web interface takes."""

from collections.abc import Mapping

import annotated_types
import pytest
from pydantic import BaseModel

from service.api.schemas import request as wire
from service.sweep import catalogue_rows, main
from service.sweep.columns import CANDIDATE_COLUMNS, VEHICLE_COLUMNS, Column
from tests.unit.sweep.small_catalogue import candidates, vehicles

# Where a column of an axle stands on the wire, when its name does not say it.
ON_THE_WIRE: dict[str, tuple[type[BaseModel], str]] = {
    "tyre_mass_kg": (wire.Tyre, "mass_kg"),
    "rim_mass_kg": (wire.Rim, "mass_kg"),
    "approved_min_in": (wire.RimWidths, "min"),
    "approved_max_in": (wire.RimWidths, "max"),
    "hub_centre_bore_mm": (wire.Hub, "centre_bore_mm"),
    "clearance_inboard_mm": (wire.Clearance, "inboard_mm"),
    "clearance_outboard_mm": (wire.Clearance, "outboard_mm"),
    "clearance_radial_mm": (wire.Clearance, "radial_mm"),
    "clearance_tolerance_mm": (wire.Clearance, "tolerance_mm"),
    "speedometer_tolerance_percent": (wire.Speedometer, "tolerance_percent"),
}
MODELS = (wire.Vehicle, wire.Axle, wire.Fitment, wire.Tyre, wire.Rim, wire.Speedometer)
NUMBERS = [each for each in dict.fromkeys((*VEHICLE_COLUMNS, *CANDIDATE_COLUMNS)) if each.kind in ("number", "whole")]


def _wire_range(column: Column) -> tuple[float, float]:
    name = column.name.removeprefix("front_").removeprefix("rear_")
    model, field = ON_THE_WIRE.get(name) or next((each, name) for each in MODELS if name in each.model_fields)
    metadata = model.model_fields[field].metadata
    low = next(each.ge for each in metadata if isinstance(each, annotated_types.Ge))
    high = next(each.le for each in metadata if isinstance(each, annotated_types.Le))
    return low, high


@pytest.mark.parametrize("column", NUMBERS, ids=lambda column: column.name)
def test_a_number_has_the_range_that_it_has_on_the_wire(column):
    assert (column.low, column.high) == _wire_range(column)


class _Read(dict[str, object]):
    """A row that notes which of its columns are read."""

    def __init__(self, row: Mapping[str, object]) -> None:
        super().__init__(row)
        self.names: set[str] = set()

    def __getitem__(self, name: str) -> object:
        self.names.add(name)
        return super().__getitem__(name)

    def get(self, name: str, default: object = None) -> object:
        self.names.add(name)
        return super().get(name, default)


@pytest.mark.parametrize(
    ("read", "frame", "columns"),
    [
        (catalogue_rows.vehicle, vehicles(1), VEHICLE_COLUMNS),
        (catalogue_rows.candidate, candidates(1), CANDIDATE_COLUMNS),
    ],
    ids=["vehicle", "candidate"],
)
def test_every_column_that_is_taken_is_read(read, frame, columns):
    row = _Read(catalogue_rows.records(frame)[0])
    read(row)
    ignored = {column.name for column in columns if column.kind != "text"} - row.names
    assert ignored == set(), "read them in `sweep/catalogue_rows.py`, else what a caller states is lost without a word"


def test_the_small_catalogue_knows_only_documented_vehicle_columns():
    assert set(vehicles(30).columns) <= {column.name for column in VEHICLE_COLUMNS}


def test_the_columns_are_shown_on_demand(capsys):
    assert main(["--columns"]) == 0
    shown = capsys.readouterr().out
    assert [column.name for column in VEHICLE_COLUMNS if column.name not in shown] == []


def test_the_results_have_the_columns_that_are_documented(sweep_of, capsys):
    sweep = sweep_of(vehicles(2), candidates(2))
    assert sweep.run() == 0
    capsys.readouterr()
    main(["--columns"])
    shown = capsys.readouterr().out
    names = {name.replace("front_", "{axle}_").replace("rear_", "{axle}_") for name in sweep.pairs().columns}
    assert {name for name in names if f"  {name} " not in shown} == set()


def test_a_misspelt_column_is_refused_with_the_right_one(sweep_of, capsys):
    sweep = sweep_of(vehicles(2), candidates(2).rename(columns={"front_pressure_kpa": "front_presure_kpa"}))
    assert sweep.run() == 2
    assert "did you mean front_pressure_kpa?" in capsys.readouterr().err


def test_a_column_of_the_callers_own_is_let_be(sweep_of):
    sweep = sweep_of(vehicles(2).assign(x_shelf=["a", "b"]), candidates(2))
    assert sweep.run() == 0


def test_a_missing_required_column_is_named(sweep_of, capsys):
    sweep = sweep_of(vehicles(2).drop(columns=["rear_rim"]), candidates(2))
    assert sweep.run() == 2
    assert "lack the column 'rear_rim'" in capsys.readouterr().err


def test_a_file_that_is_no_table_is_refused(sweep_of, capsys):
    sweep = sweep_of(vehicles(2), candidates(2))
    sweep.candidates.write_text("candidate_id,front_tyre\n")
    assert sweep.run() == 2
    assert "candidates.parquet cannot be read as a Parquet table" in capsys.readouterr().err
