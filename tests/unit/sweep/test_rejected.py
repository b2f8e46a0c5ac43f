"""A row at fault is set aside with its reason and does not stop the others."""

import math

import pandas as pd
import pytest

from tests.unit.sweep.small_catalogue import candidates, vehicles


def _spoilt(frame: pd.DataFrame, row: int, column: str, value: object) -> pd.DataFrame:
    kept = frame.astype(object)
    kept.loc[row, column] = value
    return kept.infer_objects()


def _faults(sweep) -> list[tuple[str, int, str]]:
    return [(row.table, row.row, row.column) for row in sweep.rejected().itertuples()]


@pytest.mark.parametrize(
    ("column", "value", "reason"),
    [
        ("front_tyre", "banana", "cannot be read at position"),
        ("front_tyre", "", "cannot be read at position"),
        ("front_tyre", "2" * 101, "100 at most are taken"),
        ("rear_rim", "8Q x 18", "cannot be read at position"),
        ("front_bolt_circle", "5 of 112", "cannot be read at position"),
        ("rear_pressure_kpa", 2.5, "'2.5' is not a number from 50 to 1000 kPa"),
        ("rear_pressure_kpa", math.inf, "'inf' is not a number from 50 to 1000 kPa"),
        ("front_tyre", None, "is missing"),
        ("candidate_id", None, "is missing"),
        ("candidate_id", "c1", "for the second time"),
        ("candidate_id", "", "has 0 characters; 1 to 200 are taken"),
    ],
)
def test_a_candidate_at_fault_is_set_aside_with_its_reason(sweep_of, column, value, reason):
    sweep = sweep_of(vehicles(2), _spoilt(candidates(8), 3, column, value))
    assert sweep.run() == 0
    assert _faults(sweep) == [("candidates", 3, column)]
    assert reason in sweep.rejected()["reason"][0]


@pytest.mark.parametrize(
    ("column", "value", "reason"),
    [
        ("max_speed_kmh", None, "is missing"),
        ("max_speed_kmh", 500.0, "is not a number from 10 to 450 km/h"),
        ("category", "M9", "is none of M1"),
        ("driven_axle", "both", "is none of front, rear, all"),
        ("built", "2021-02-30", "is not a day"),
        ("front_wheels_per_side", 3.0, "is not a whole number from 1 to 2"),
        ("front_wheels_per_side", 1.5, "is not a whole number from 1 to 2"),
        ("front_hub_bolt_circle", "112", "cannot be read at position"),
    ],
)
def test_a_vehicle_at_fault_is_set_aside_with_its_reason(sweep_of, column, value, reason):
    sweep = sweep_of(_spoilt(vehicles(8), 5, column, value), candidates(2))
    assert sweep.run() == 0
    assert _faults(sweep) == [("vehicles", 5, column)]
    assert reason in sweep.rejected()["reason"][0]


def test_the_other_rows_are_graded(sweep_of):
    sweep = sweep_of(vehicles(3), _spoilt(candidates(8), 3, "front_tyre", "banana"))
    assert sweep.run() == 0
    found = sweep.pairs()
    assert sorted(set(found["candidate_id"])) == ["c0", "c1", "c2", "c4", "c5", "c6", "c7"]
    assert len(found) == 3 * 7


def test_a_row_with_two_faults_has_both_named(sweep_of):
    spoilt = _spoilt(_spoilt(candidates(8), 3, "front_tyre", "banana"), 3, "rear_rim", "banana")
    sweep = sweep_of(vehicles(2), spoilt)
    assert sweep.run() == 0
    assert _faults(sweep) == [("candidates", 3, "front_tyre"), ("candidates", 3, "rear_rim")]


def test_half_of_a_pair_of_columns_is_a_fault(sweep_of):
    known = vehicles(4).assign(displayed_kmh=[100.0, None, 100.0, None], true_kmh=[96.0, None, None, 96.0])
    sweep = sweep_of(known, candidates(2))
    assert sweep.run() == 0
    assert _faults(sweep) == [("vehicles", 2, "true_kmh"), ("vehicles", 3, "displayed_kmh")]


def test_text_in_a_column_of_numbers_is_the_fault_of_its_rows_alone(sweep_of):
    weights = ["960", "heavy", "960", "960"]
    sweep = sweep_of(vehicles(4).assign(front_max_axle_mass_kg=weights), candidates(2))
    assert sweep.run() == 0
    assert _faults(sweep) == [("vehicles", 1, "front_max_axle_mass_kg")]
    assert sweep.rejected()["reason"][0] == "'heavy' is not a number from 50 to 15000 kg"


def test_whole_numbers_serve_as_names(sweep_of):
    sweep = sweep_of(vehicles(2).assign(vehicle_id=[7, 8]), candidates(2))
    assert sweep.run() == 0
    assert sorted(set(sweep.pairs()["vehicle_id"])) == ["7", "8"]


def test_a_candidate_for_an_unknown_vehicle_is_set_aside(sweep_of):
    sweep = sweep_of(vehicles(2), candidates(3).assign(vehicle_id=["larch-0", "larch-9", "larch-1"]))
    assert sweep.run("--pairs") == 0
    assert _faults(sweep) == [("candidates", 1, "vehicle_id")]


def test_nothing_left_to_grade_is_no_crash(sweep_of):
    sweep = sweep_of(vehicles(2).assign(category="M9"), candidates(2))
    assert sweep.run() == 0
    assert _faults(sweep) == [("vehicles", 0, "category"), ("vehicles", 1, "category")]


def test_an_empty_table_is_no_crash(sweep_of):
    sweep = sweep_of(vehicles(2), candidates(2).iloc[:0])
    assert sweep.run() == 0
    assert _faults(sweep) == []
