"""The edges of what a sweep takes and of how it cuts its work: at each, just inside and just outside."""

from datetime import date

import numpy as np
import pyarrow as pa
import pytest

from service.sweep import batches, fingerprint, main
from service.sweep.columns import CANDIDATE_COLUMNS, VEHICLE_COLUMNS
from service.sweep.job import BadSweep, Job
from service.sweep.pair_columns import check_names, read
from service.sweep.partition import Loaded, Part, parts
from service.sweep.place import Place, one_line, place_of
from service.sweep.read_columns import is_day, quoted, text_reason
from service.sweep.wheel_arrays import distinct

COLUMNS = {each.name: each for each in (*VEHICLE_COLUMNS, *CANDIDATE_COLUMNS)}


def reasons(name, *values):
    """Return what is said of the values of one column, row by row."""
    made = pa.RecordBatch.from_arrays([pa.array(values)], names=[name])
    told = {fault.row: fault.reason for fault in read(made, [COLUMNS[name]], ()).faults}
    return [told.get(row) for row in range(len(values))]


@pytest.mark.parametrize(
    ("name", "low", "high", "step", "range_words"),
    [
        ("front_pressure_kpa", 50.0, 1000.0, 0.1, "a number from 50 to 1000 kPa"),
        ("max_speed_kmh", 10.0, 450.0, 0.1, "a number from 10 to 450 km/h"),
        ("front_max_axle_mass_kg", 50.0, 15000.0, 0.1, "a number from 50 to 15000 kg"),
        ("rear_wheels_per_side", 1.0, 2.0, 1.0, "a whole number from 1 to 2"),
    ],
)
def test_a_number_at_the_edge_of_its_range_is_taken_and_one_beyond_is_refused(name, low, high, step, range_words):
    below, at_low, at_high, above = reasons(name, low - step, low, high, high + step)
    assert (at_low, at_high) == (None, None)
    for value, said in ((low - step, below), (high + step, above)):
        assert said == f"'{value}' is not {range_words}"


def test_a_number_that_must_be_given_and_is_not_is_missing():
    assert reasons("max_speed_kmh", 200.0, None) == [None, "is missing"]
    assert reasons("wheelbase_mm", 2700.0, None) == [None, None]


def test_a_name_has_1_to_200_characters():
    assert [text_reason(COLUMNS["vehicle_id"], "x" * count) for count in (1, 200)] == ["", ""]
    assert text_reason(COLUMNS["vehicle_id"], "") == "has 0 characters; 1 to 200 are taken"
    assert text_reason(COLUMNS["vehicle_id"], "x" * 201) == "has 201 characters; 1 to 200 are taken"


def test_a_name_is_looked_at_by_its_length():
    assert reasons("vehicle_id", "x" * 200, "x" * 201) == [None, "has 201 characters; 1 to 200 are taken"]


def test_a_designation_has_100_characters_at_most():
    size = "205/55 R16 91V"
    assert text_reason(COLUMNS["front_tyre"], size.ljust(100)) == ""
    assert text_reason(COLUMNS["front_tyre"], size.ljust(101)) == "has 101 characters; 100 at most are taken"


@pytest.mark.parametrize(
    ("text", "taken"),
    [
        ("1899-12-31", False),
        ("1900-01-01", True),
        ("2099-12-31", True),
        ("2100-01-01", False),
        ("2024-02-29", True),
        ("2023-02-29", False),
        ("20240229", False),
        ("2024-2-29", False),
        ("2024-W09-4", False),
        ("", False),
    ],
)
def test_a_day_is_written_in_full_and_is_one_that_rules_speak_of(text, taken):
    assert is_day(text) is taken


def test_yes_and_no_are_truths_or_1_and_0():
    assert reasons("towing", True, False, None) == [None, None, None]
    assert reasons("towing", 1, 0, None) == [None, None, None]
    assert reasons("towing", 1, 2, -1) == [None, "'2' is neither true nor false", "'-1' is neither true nor false"]
    assert reasons("towing", "yes", "1") == ["'yes' is neither true nor false", None]


def test_a_word_that_is_none_is_refused_with_the_words():
    assert reasons("driven_axle", "both", "all", None) == ["'both' is none of front, rear, all", None, None]


def test_a_column_of_the_wrong_kind_is_the_fault_of_all_its_rows():
    assert reasons("max_speed_kmh", date(2024, 1, 1), None) == ["the column cannot be read as number"] * 2


def test_a_quoted_value_is_cut_after_60_characters():
    assert quoted("x" * 60) == f"'{'x' * 60}'"
    assert quoted("x" * 61) == f"'{'x' * 60}'"


def test_a_column_that_stands_twice_is_refused():
    names = [each.name for each in CANDIDATE_COLUMNS if each.required]
    check_names([*names, "x_note"], CANDIDATE_COLUMNS, "candidates")
    with pytest.raises(BadSweep, match="a column of the candidates stands twice"):
        check_names([*names, "front_tyre"], CANDIDATE_COLUMNS, "candidates")


def test_a_column_like_none_is_refused_with_the_beginning_of_own_columns():
    names = [each.name for each in CANDIDATE_COLUMNS if each.required]
    with pytest.raises(BadSweep, match="'qqq'; a column of your own begins with x_ "):
        check_names([*names, "qqq"], CANDIDATE_COLUMNS, "candidates")


@pytest.mark.parametrize(
    ("sizes", "gathered"),
    [
        ([3, 1], [4]),
        ([3, 2], [3, 2]),
        ([4], [4]),
        ([5], [4, 1]),
        ([9], [4, 4, 1]),
        ([1, 1, 1, 1, 1], [4, 1]),
        ([2, 0, 2], [4]),
        ([], []),
        ([0], []),
    ],
)
def test_rows_are_gathered_up_to_a_number_and_none_is_lost(monkeypatch, sizes, gathered):
    monkeypatch.setattr(batches, "GATHERED", 4)
    numbers = iter(range(100))
    given = [pa.RecordBatch.from_pydict({"n": [next(numbers) for _ in range(size)]}) for size in sizes]
    found = list(batches.gathered(given))
    assert [each.num_rows for each in found] == gathered
    assert [n for each in found for n in each["n"].to_pylist()] == list(range(sum(sizes)))


def test_batches_of_different_columns_are_refused():
    given = [pa.RecordBatch.from_pydict({"n": [1]}), pa.RecordBatch.from_pydict({"m": [1]})]
    with pytest.raises(BadSweep, match="the batches have not all the same columns"):
        list(batches.gathered(given))


@pytest.mark.parametrize(
    ("pairs", "rows", "ends"),
    [(10, 4, [(0, 4), (4, 8), (8, 10)]), (8, 4, [(0, 4), (4, 8)]), (3, 4, [(0, 3)]), (1, 1, [(0, 1)]), (0, 4, [])],
)
def test_the_files_hold_as_many_pairs_as_asked_and_all_of_them(pairs, rows, ends):
    job = Job(
        "",
        "",
        pairs=False,
        rule_pack="unece",
        edition="",
        season=None,
        date=None,
        only=(),
        partition_rows=rows,
        version="",
        fingerprint="",
    )
    loaded = Loaded(pa.table({}), pa.table({}), np.arange(0), pairs)
    found = parts(job, loaded)
    assert [(each.start, each.stop) for each in found] == ends
    assert [each.rows for each in found] == [stop - start for start, stop in ends]
    assert [each.name for each in found] == [f"part-0000{number}.parquet" for number in range(len(ends))]


def test_a_part_has_five_digits_in_its_name():
    assert Part(123456, 0, 1).name == "part-123456.parquet"
    assert Part(42, 0, 1).name == "part-00042.parquet"


def test_what_an_error_says_is_cut_to_one_line_of_200_characters():
    assert one_line(OSError("the disk is full.\nsecond line")) == "the disk is full"
    assert one_line(OSError("x" * 201)) == "x" * 200
    assert one_line(ValueError()) == "ValueError"


def test_a_folder_tells_the_files_in_it_in_order_and_none_where_it_is_not(tmp_path):
    (tmp_path / "folder").mkdir()
    for name in ("b", "a"):
        place_of(str(tmp_path / name)).write(b"x")
    assert place_of(str(tmp_path)).names() == ["a", "b"]
    assert place_of(str(tmp_path / "nowhere")).names() == []


def test_a_place_tells_when_it_was_written_and_what_it_holds(tmp_path):
    here = place_of(str(tmp_path)) / "a"
    assert (here.name, here.is_file(), here.written_s()) == ("a", False, None)
    here.write(b"x")
    assert here.is_file()
    assert here.written_s() == pytest.approx((tmp_path / "a").stat().st_mtime)
    assert here.read() == b"x"
    here.remove()
    here.remove()
    assert not here.is_file()
    assert place_of(str(tmp_path)).written_s() is None


@pytest.mark.parametrize(
    ("written", "asked"),
    [
        ("gs://b/a", "gs://b/a?retry_limit_seconds=30"),
        ("gs://b/a?x=1", "gs://b/a?x=1&retry_limit_seconds=30"),
        ("gs://b/a?retry_limit_seconds=5", "gs://b/a?retry_limit_seconds=5"),
        ("s3://b/a", "s3://b/a"),
    ],
)
def test_a_store_that_does_not_answer_is_waited_for_half_a_minute(monkeypatch, written, asked):
    seen: list[str] = []

    class Stores:
        @staticmethod
        def from_uri(uri: str) -> tuple[str, str]:
            seen.append(uri)
            return "files", "b/a"

    monkeypatch.setattr("service.sweep.place.pafs.FileSystem", Stores)
    assert place_of(written) == Place("files", "b/a")
    assert seen == [asked]


def test_the_extra_packages_are_asked_for_where_they_lack(monkeypatch, capsys):
    monkeypatch.setattr("service.sweep.command.find_spec", lambda name: None if name == "pyarrow" else name)
    assert main(["--vehicles", "v", "--candidates", "c", "--out", "o"]) == 2
    said = capsys.readouterr().err
    assert said == "sweep: the sweep needs packages that are not installed: pyarrow (the extra `sweep`)\n"


def test_a_folder_is_made_with_those_that_it_lies_in_and_may_be_there_already(tmp_path):
    deep = tmp_path / "one" / "two"
    for _ in range(2):
        place_of(str(deep)).make_folder()
        assert deep.is_dir()


def test_rows_are_alike_where_all_is_and_what_is_not_given_is_like_nothing_given():
    nan = float("nan")
    codes, firsts = distinct(np.array([1.0, nan, 2.0, 1.0, nan, 1.0]), np.array([5.0, 5.0, 5.0, 5.0, 5.0, nan]))
    assert (codes.tolist(), firsts.tolist()) == ([0, 1, 2, 0, 1, 3], [0, 1, 2, 5])


def test_code_tables_and_packs_decide_and_neither_words_nor_folders_do(monkeypatch, tmp_path):
    """A sweep that goes on with other sentences goes on with the same results."""

    def now():
        return fingerprint.fingerprint.__wrapped__()

    (tmp_path / "sweep.py").mkdir()
    monkeypatch.setattr(fingerprint, "__file__", str(tmp_path / "sweep.py" / "fingerprint.py"))
    before = now()
    (tmp_path / "de.po").write_text("a")
    assert now() == before
    for name in ("a.py", "b.csv", "c.toml"):
        (tmp_path / name).write_text("a")
        added = now()
        (tmp_path / name).write_text("b")
        assert len({before, added, now()}) == 3
        before = now()
