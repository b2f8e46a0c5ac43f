"""What is wrongly asked is refused with its reason and code 2."""

import re

import pandas as pd
import pytest

from service.sweep import main
from tests.unit.sweep.small_catalogue import candidates, vehicles


@pytest.mark.parametrize(
    ("options", "reason"),
    [
        (["--rule-pack", "atlantis"], "no rule pack of this name"),
        (["--date", "tomorrow"], "--date takes an ISO date"),
        (["--pairs"], "lack the column 'vehicle_id'"),
    ],
)
def test_a_question_that_cannot_be_answered_is_refused(sweep_of, capsys, options, reason):
    sweep = sweep_of(vehicles(1), candidates(1))
    assert sweep.run(*options) == 2
    assert reason in capsys.readouterr().err


@pytest.mark.parametrize(
    "options", [["--threads", "0"], ["--threads", "two"], ["--season", "autumn"], ["--threads=1", "--processes=1"]]
)
def test_an_option_that_makes_no_sense_ends_the_command(options):
    with pytest.raises(SystemExit) as ended:
        main(options)
    assert ended.value.code == 2


def test_missing_files_are_asked_for(capsys):
    assert main(["--vehicles", "v.parquet"]) == 2
    assert "missing: --candidates, --out" in capsys.readouterr().err


def test_a_file_that_is_not_there_is_named(sweep_of, capsys):
    sweep = sweep_of(vehicles(1), candidates(1))
    sweep.vehicles.unlink()
    assert sweep.run() == 2
    assert "there is no file" in capsys.readouterr().err


def test_an_output_place_that_is_a_file_is_refused(sweep_of, capsys):
    sweep = sweep_of(vehicles(1), candidates(1))
    sweep.out.write_text("")
    assert sweep.run() == 2
    assert "cannot be written to" in capsys.readouterr().err


def test_threads_and_processes_come_to_the_same(sweep_of):
    sweep = sweep_of(vehicles(4), candidates(6))
    assert sweep.run("--partition-rows", "6") == 0
    threads = sweep.pairs()
    files = ["--vehicles", str(sweep.vehicles), "--candidates", str(sweep.candidates), "--out", str(sweep.out)]
    assert main([*files, "--no-resume", "--partition-rows", "6", "--processes", "2"]) == 0
    assert sweep.pairs().equals(threads)


def test_only_some_verdicts_are_written_and_all_are_counted(sweep_of, capsys):
    sweep = sweep_of(vehicles(20), candidates(10))
    assert sweep.run() == 0
    whole = sweep.pairs()
    wanted = whole[whole["verdict"].isin(["suitable", "not_recommended"])]
    counts = re.findall(r"[\d,]+  [a-z_]+$", capsys.readouterr().out, re.MULTILINE)
    assert sweep.run("--no-resume", "--only", "not_recommended,suitable") == 0
    assert sweep.pairs().equals(wanted.reset_index(drop=True))
    assert re.findall(r"[\d,]+  [a-z_]+$", capsys.readouterr().out, re.MULTILINE) == counts
    assert len(counts) == 5


def test_a_verdict_that_is_none_ends_the_command():
    with pytest.raises(SystemExit) as ended:
        main(["--only", "suitable,fine"])
    assert ended.value.code == 2


def test_places_may_be_uris(sweep_of):
    sweep = sweep_of(vehicles(4), candidates(6))
    assert sweep.run() == 0
    whole = sweep.pairs()
    files = ["--vehicles", sweep.vehicles.as_uri(), "--candidates", sweep.candidates.as_uri()]
    assert main([*files, "--out", f"{sweep.out.as_uri()}-again", "--threads", "1"]) == 0
    assert pd.read_parquet(f"{sweep.out}-again/pairs").equals(whole)


def test_a_place_that_no_file_system_knows_is_refused_in_one_sentence(sweep_of, capsys):
    sweep = sweep_of(vehicles(1), candidates(1))
    files = ["--vehicles", "ftp://example.org/v.parquet", "--candidates", str(sweep.candidates)]
    assert main([*files, "--out", str(sweep.out)]) == 2
    said = capsys.readouterr().err
    assert said.startswith("sweep: ftp://example.org/v.parquet cannot be reached: ")
    assert said.count("\n") == 1
