"""The pure function that an engine calls: record batches in, record batches out, row by row."""

import pyarrow as pa
import pytest

from service.sweep.batches import RESULTS, grade_batches
from service.sweep.job import BadSweep
from tests.unit.sweep.small_catalogue import candidates, vehicles


def pairs(vehicle_count: int, candidate_count: int) -> pa.Table:
    """Return every candidate beside every vehicle."""
    known, asked = vehicles(vehicle_count), candidates(candidate_count)
    asked = asked.rename(columns={n: n if n == "candidate_id" else f"candidate_{n}" for n in asked.columns})
    return pa.Table.from_pandas(known.merge(asked, how="cross"), preserve_index=False)


def graded(table: pa.Table, **options: object) -> pa.Table:
    return pa.Table.from_batches(grade_batches(iter(table.to_batches()), **options), RESULTS)


def test_every_row_comes_back_once_and_in_its_order():
    asked = pairs(9, 11)
    found = graded(asked)
    assert found.schema == RESULTS
    for name in ("vehicle_id", "candidate_id"):
        assert found[name].to_pylist() == asked[name].to_pylist()


def test_how_the_rows_are_cut_into_batches_changes_nothing():
    asked = pairs(9, 11)
    whole = graded(asked)
    for size in (1, 7, 50):
        assert graded(pa.Table.from_batches(asked.to_batches(max_chunksize=size))).equals(whole)


def test_rows_in_another_order_have_the_same_results():
    asked = pairs(9, 11)
    mixed = [(at * 37) % asked.num_rows for at in range(asked.num_rows)]
    assert graded(asked.take(mixed)).equals(graded(asked).take(mixed))


def test_texts_as_dictionaries_are_the_same_texts():
    asked = pairs(5, 6)
    coded = pa.table(
        {
            name: asked[name].dictionary_encode() if asked[name].type == pa.string() else asked[name]
            for name in asked.column_names
        }
    )
    cut = pa.Table.from_batches(coded.to_batches(max_chunksize=4))
    assert graded(cut).equals(graded(asked))


def test_a_row_at_fault_has_its_reason_and_no_verdict_and_the_others_are_graded():
    frame = pairs(3, 4).to_pandas()
    frame.loc[5, "candidate_rear_rim"] = "banana"
    frame.loc[5, "front_max_axle_mass_kg"] = -1.0
    found = graded(pa.Table.from_pandas(frame, preserve_index=False)).to_pylist()
    assert found[5]["verdict"] is None
    assert "front_max_axle_mass_kg: '-1.0' is not a number from 50 to 15000 kg" in found[5]["fault"]
    assert "candidate_rear_rim: This rim designation cannot be read at position 0" in found[5]["fault"]
    assert [at for at, each in enumerate(found) if each["fault"]] == [5]
    assert all(each["verdict"] for at, each in enumerate(found) if at != 5)


def test_only_some_verdicts_are_kept_and_what_is_at_fault():
    frame = pairs(20, 10).to_pandas()
    frame.loc[0, "front_tyre"] = None
    asked = pa.Table.from_pandas(frame, preserve_index=False)
    found = graded(asked, only=("suitable", "unsuitable"))
    assert set(found["verdict"].to_pylist()) == {None, "suitable", "unsuitable"}
    whole = [each for each in graded(asked).to_pylist() if each["verdict"] in ("suitable", "unsuitable", None)]
    assert found.to_pylist() == whole


def test_nothing_in_gives_nothing_out():
    assert list(grade_batches(iter([]))) == []
    assert graded(pairs(2, 2).slice(0, 0)).num_rows == 0


@pytest.mark.parametrize(
    ("options", "reason"),
    [
        ({"rule_pack": "atlantis"}, "no rule pack of this name"),
        ({"season": "autumn"}, "the season is summer or winter"),
        ({"date": "tomorrow"}, "--date takes an ISO date"),
        ({"only": ["fine"]}, "'fine' is no verdict"),
    ],
)
def test_a_question_that_cannot_be_answered_is_refused(options, reason):
    with pytest.raises(BadSweep, match=reason):
        graded(pairs(1, 1), **options)


def test_a_misspelt_column_is_refused_with_the_right_one():
    asked = pairs(1, 1)
    names = ["candidate_front_rym" if name == "candidate_front_rim" else name for name in asked.column_names]
    with pytest.raises(BadSweep, match="did you mean candidate_front_rim"):
        graded(asked.rename_columns(names))
