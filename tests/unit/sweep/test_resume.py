"""A sweep that was interrupted goes on with the same inputs, and only with those."""

import fcntl
import hashlib
import json
import os
import re
import socket
import subprocess
import sys
import time

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


def test_a_flipped_byte_is_told_and_its_file_is_made_again(done, capsys):
    pairs = _pairs(done)
    part = done.out / "pairs" / "part-00003.parquet"
    sound = part.read_bytes()
    middle = len(sound) // 2
    part.write_bytes(sound[:middle] + bytes([sound[middle] ^ 1]) + sound[middle + 1 :])
    assert done.run("--partition-rows", "10") == 0
    assert "pairs/part-00003.parquet is not as it was written" in capsys.readouterr().out
    assert (part.read_bytes(), _pairs(done)) == (sound, pairs)


@pytest.mark.parametrize(
    "changes",
    [
        {"verdicts": [1, 0, 0, 0, 9]},
        {"verdicts": ["a"] * 5},
        {"verdicts": None},
        {"rows": 11},
        {"sha256": "0" * 64},
        {"name": "part-00001.parquet"},
        {"seal": ""},
    ],
)
def test_a_changed_note_counts_nothing_and_is_told_and_its_file_is_made_again(done, capsys, changes):
    note, manifest = done.out / "notes" / "part-00003.parquet.json", done.out / "manifest.json"
    sound, counted = note.read_text(), manifest.read_text()
    note.write_text(json.dumps(json.loads(sound) | changes))
    assert done.run("--partition-rows", "10") == 0
    assert (note.read_text(), manifest.read_text()) == (sound, counted)
    assert "notes/part-00003.parquet.json is not as it was written; its file is graded again" in capsys.readouterr().out


def test_a_file_without_a_note_was_under_way_and_is_made_again_without_a_word(done, capsys):
    (done.out / "notes" / "part-00003.parquet.json").unlink()
    assert done.run("--partition-rows", "10") == 0
    assert "as it was written" not in capsys.readouterr().out


def test_the_manifest_names_every_file_with_its_checksum(done):
    named = json.loads((done.out / "manifest.json").read_text())["files"]
    found = {path.name: hashlib.sha256(path.read_bytes()).hexdigest() for path in (done.out / "pairs").iterdir()}
    assert {name: file["sha256"] for name, file in named.items()} == found


def test_results_of_other_code_are_not_added_to(done, capsys):
    manifest = done.out / "manifest.json"
    manifest.write_text(re.sub(r'"fingerprint": "[0-9a-f]{4}', '"fingerprint": "dead', manifest.read_text()))
    assert done.run("--partition-rows", "10") == 2
    assert "its code, tables and packs are not the same" in capsys.readouterr().err


@pytest.fixture
def at_work(done):
    """The same folder with a sweep that runs: the mark of a living process, beaten a moment ago."""
    mark = {"host": socket.gethostname(), "process": os.getppid(), "token": "t", "at": time.time()}
    (done.out / ".running.json").write_text(json.dumps(mark))
    return done


@pytest.mark.parametrize("options", [[], ["--no-resume"]])
def test_beside_a_running_sweep_another_is_refused_and_touches_nothing(at_work, capsys, options):
    before = _files(at_work)
    assert at_work.run("--partition-rows", "10", *options) == 2
    assert "a sweep is at work in" in capsys.readouterr().err
    assert _files(at_work) == before


@pytest.mark.parametrize("options", [[], ["--no-resume"]])
def test_of_two_that_begin_in_the_same_moment_one_is_refused(done, capsys, options):
    # The other one has the folder already and its mark is not written yet.
    before = _files(done)
    with (done.out / ".running.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        assert done.run("--partition-rows", "10", *options) == 2
    assert "a sweep is at work in" in capsys.readouterr().err
    assert _files(done) == before
    assert done.run("--partition-rows", "10", *options) == 0


@pytest.mark.parametrize(
    "mark",
    [
        *("[]", "1", "null", "{", "\x00", '{"host": "a", "process": 1, "token": "t"}'),
        '{"host": "a", "process": 1, "token": "t", "at": "now"}',
        '{"host": "a", "process": "x", "token": "t", "at": 1}',
    ],
)
def test_a_mark_that_cannot_be_read_is_one_of_a_sweep_while_it_is_new(done, capsys, mark):
    written = done.out / ".running.json"
    written.write_text(mark)
    assert done.run("--partition-rows", "10") == 2
    said = capsys.readouterr().err
    assert "cannot be read; try again in 30 s" in said
    assert said.count("\n") == 1
    os.utime(written, (time.time() - 60, time.time() - 60))
    assert done.run("--partition-rows", "10") == 0


def test_the_mark_of_a_sweep_that_was_killed_stops_nobody(done):
    ended = subprocess.Popen([sys.executable, "-c", ""])
    ended.wait()
    mark = {"host": socket.gethostname(), "process": ended.pid, "token": "t", "at": time.time()}
    (done.out / ".running.json").write_text(json.dumps(mark))
    assert done.run("--partition-rows", "10") == 0


def test_a_mark_from_elsewhere_that_fell_silent_stops_nobody(done):
    mark = {"host": "elsewhere.example", "process": 1, "token": "t", "at": time.time() - 120.0}
    (done.out / ".running.json").write_text(json.dumps(mark))
    assert done.run("--partition-rows", "10") == 0


def test_the_manifest_counts_the_verdicts(done):
    manifest = json.loads((done.out / "manifest.json").read_text())
    assert manifest["complete"] is True
    assert manifest["verdicts"] == {name: int((done.pairs()["verdict"] == name).sum()) for name in manifest["verdicts"]}
