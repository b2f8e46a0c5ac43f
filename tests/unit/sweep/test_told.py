"""What a sweep tells of its work: how many rows, files and pairs, now and before, and the same in its manifest."""

import json
import re
import sys

from service.sweep.manifest import _said
from service.sweep.run import _counted
from tests.unit.sweep.small_catalogue import candidates, vehicles


def lines(capsys):
    # A carriage return stays in its line: a log that is no terminal must have none.
    return capsys.readouterr().out.split("\n")[:-1]


def last_of(printed):
    found = re.fullmatch(r" +([\d,]+)  pairs in out/pairs; ([\d,]+) of them now, in [\d.]+ s, [\d.]+ s of .*", printed)
    return found and found.groups()


def test_rows_files_and_pairs_are_counted_now_and_again(sweep_of, capsys):
    # 3 vehicles of which one cannot be read, 5 candidates: 2 x 5 pairs in files of 4, 4 and 2.
    known = vehicles(3)
    known.loc[1, "category"] = "M9"
    sweep = sweep_of(known, candidates(5))
    assert sweep.run("--partition-rows", "4") == 0
    told = lines(capsys)
    head = "2 vehicles, 5 candidates, 1 fault in rows left out (rejected.parquet); 3 files, "
    assert head + "0 of them there from before" in told
    assert last_of(told[-1]) == ("10", "10")
    counts = dict(re.fullmatch(r" *([\d,]+)  (\w+)", line).groups()[::-1] for line in told[-6:-1])
    assert sum(map(int, counts.values())) == 10
    manifest = json.loads((sweep.out / "manifest.json").read_text())
    assert manifest["complete"] is True
    assert {name: str(count) for name, count in manifest["verdicts"].items()} == counts
    assert [file["rows"] for file in manifest["files"].values()] == [4, 4, 2]

    (sweep.out / "pairs" / "part-00002.parquet").unlink()
    assert sweep.run("--partition-rows", "4") == 0
    told = lines(capsys)
    assert head + "2 of them there from before" in told
    assert last_of(told[-1]) == ("10", "2")
    assert not any("\r" in line for line in told)
    # Nothing half-written stays, and the mark of the sweep is gone.
    assert [path.name for path in sweep.out.iterdir() if path.name.startswith(".")] == [".running.lock"]


def test_what_a_job_was_asked_is_told_as_it_was_written():
    assert _said(("suitable", "unsuitable")) == "suitable,unsuitable"
    assert _said(None) == "None"
    assert _said(250_000) == "250000"


def test_whoever_watches_sees_a_bar_and_the_output_holds_none(sweep_of, capsys, monkeypatch):
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True)
    assert sweep_of(vehicles(1), candidates(1)).run() == 0
    told = capsys.readouterr()
    assert ("\r[" in told.err, "\r" in told.out) == (True, False)


def test_one_is_one_and_none_are_several():
    assert [_counted(count, "fault") for count in (0, 1, 2)] == ["0 faults", "1 fault", "2 faults"]
