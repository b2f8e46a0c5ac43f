"""A sweep that was interrupted goes on with the same inputs, and only with those."""

import json

import pytest

from tests.unit.sweep.small_catalogue import candidates, vehicles


@pytest.fixture
def done(sweep_of):
    """A finished sweep of 6 vehicles and 10 candidates in 6 files."""
    sweep = sweep_of(vehicles(6), candidates(10))
    assert sweep.run("--partition-rows", "10") == 0
    return sweep


def _files(sweep) -> dict[str, int]:
    return {path.name: path.stat().st_mtime_ns for path in (sweep.out / "pairs").iterdir()}


def _pairs(sweep) -> list[tuple[str, str]]:
    return sorted(zip(sweep.pairs()["vehicle_id"], sweep.pairs()["candidate_id"], strict=True))


def test_a_finished_sweep_has_every_pair_once(done):
    assert _pairs(done) == sorted((f"larch-{v}", f"c{c}") for v in range(6) for c in range(10))


def test_only_what_is_missing_is_done_again(done):
    before, pairs = _files(done), _pairs(done)
    for name in ("part-00001.parquet", "part-00004.parquet"):
        (done.out / "pairs" / name).unlink()
    assert done.run("--partition-rows", "10") == 0
    again = {name for name, written in _files(done).items() if written != before[name]}
    assert again == {"part-00001.parquet", "part-00004.parquet"}
    assert _pairs(done) == pairs


def test_a_draft_that_a_lost_worker_left_is_no_result_and_is_cleared_away(done):
    pairs = _pairs(done)
    part = done.out / "pairs" / "part-00002.parquet"
    part.rename(part.with_name(".part-00002.parquet.0123.tmp"))
    assert done.run("--partition-rows", "10") == 0
    assert _pairs(done) == pairs
    assert [name for name in _files(done) if name.startswith(".")] == []


def test_other_candidates_are_refused(done, capsys):
    candidates(11).to_parquet(done.candidates)
    assert done.run("--partition-rows", "10") == 2
    assert "its candidates are not the same" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("options", "reason"),
    [
        (["--partition-rows", "20"], "its partition-rows was 10 and now is 20"),
        (["--partition-rows", "10", "--rule-pack", "gb"], "its rule-pack was unece and now is gb"),
        (["--partition-rows", "10", "--season", "winter"], "its season was None and now is winter"),
    ],
)
def test_another_question_is_refused(done, capsys, options, reason):
    assert done.run(*options) == 2
    assert reason in capsys.readouterr().err


def test_without_resuming_the_earlier_results_go(done):
    assert done.run("--partition-rows", "30", "--no-resume") == 0
    assert sorted(_files(done)) == ["part-00000.parquet", "part-00001.parquet"]
    assert len(_pairs(done)) == 60


def test_results_of_unknown_origin_are_not_added_to(done, capsys):
    (done.out / "manifest.json").unlink()
    assert done.run("--partition-rows", "10") == 2
    assert "results without a manifest.json" in capsys.readouterr().err


def test_an_unreadable_manifest_is_refused(done, capsys):
    (done.out / "manifest.json").write_text("{")
    assert done.run("--partition-rows", "10") == 2
    assert "manifest.json cannot be read" in capsys.readouterr().err


def test_a_file_with_rows_missing_is_noticed(done, capsys):
    parts = done.out / "pairs"
    done.pairs().iloc[:3].to_parquet(parts / "part-00003.parquet")
    assert done.run("--partition-rows", "10") == 2
    assert "part-00003.parquet has 3 rows and not 10" in capsys.readouterr().err


def test_the_manifest_counts_the_verdicts(done):
    manifest = json.loads((done.out / "manifest.json").read_text())
    assert manifest["complete"] is True
    assert manifest["verdicts"] == {name: int((done.pairs()["verdict"] == name).sum()) for name in manifest["verdicts"]}
