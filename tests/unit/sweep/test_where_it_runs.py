"""What the command line says reaches the work: how many processes or threads, and every other option."""

from concurrent.futures.process import BrokenProcessPool
from pathlib import Path

import pytest

from service.sweep import main, run
from service.sweep.job import BadSweep, Options

FILES = ["--vehicles", "v.parquet", "--candidates", "c.parquet", "--out", "there"]
ALL = ("suitable", "suitable_with_conditions", "undetermined", "not_recommended", "unsuitable")
# As the README and `--help` have it.
BY_DEFAULT = Options(
    *(str(Path(name).resolve()) for name in ("v.parquet", "c.parquet", "there")),
    pairs=False,
    rule_pack="unece",
    season=None,
    date=None,
    only=ALL,
    partition_rows=250_000,
    resume=True,
    processes=None,
    threads=None,
    scheduler=None,
)


def options(**changes: object) -> Options:
    return BY_DEFAULT._replace(**changes)


@pytest.mark.parametrize(
    ("asked", "cores", "where"),
    [
        ({"processes": 1}, 8, {"scheduler": "processes", "num_workers": 1, "chunksize": 1}),
        ({"processes": 3}, 8, {"scheduler": "processes", "num_workers": 3, "chunksize": 1}),
        ({"threads": 1}, 8, {"scheduler": "threads", "num_workers": 1}),
        ({"threads": 2}, 8, {"scheduler": "threads", "num_workers": 2}),
        # One per core where nothing is said; one where nobody knows the cores.
        ({}, 5, {"scheduler": "processes", "num_workers": 5, "chunksize": 1}),
        ({}, None, {"scheduler": "processes", "num_workers": 1, "chunksize": 1}),
    ],
)
def test_as_many_are_at_work_as_was_asked(monkeypatch, asked, cores, where):
    seen: list[tuple[tuple[object, ...], dict[str, object]]] = []
    monkeypatch.setattr(run.os, "cpu_count", lambda: cores)
    monkeypatch.setattr(run, "compute", lambda *tasks, **given: seen.append((tasks, given)) or tasks)
    assert run._here(options(**asked), ["one", "other"]) == ("one", "other")
    assert seen == [(("one", "other"), where)]


def test_a_worker_that_died_is_told_with_what_may_help(monkeypatch):
    def died(*_tasks: object, **_where: object) -> None:
        raise BrokenProcessPool

    monkeypatch.setattr(run, "compute", died)
    with pytest.raises(BadSweep, match="fewer workers or --partition-rows may do"):
        run._here(options(processes=2), [])


@pytest.mark.parametrize(
    ("written", "asked"),
    [
        ([], {}),
        (["--pairs"], {"pairs": True}),
        (["--rule-pack", "nl"], {"rule_pack": "nl"}),
        (["--season", "winter"], {"season": "winter"}),
        (["--date", "2026-11-24"], {"date": "2026-11-24"}),
        # In the order of the verdicts, however they were written: two such sweeps are one job.
        (["--only", "unsuitable,suitable"], {"only": ("suitable", "unsuitable")}),
        (["--partition-rows", "1"], {"partition_rows": 1}),
        (["--no-resume"], {"resume": False}),
        (["--processes", "1"], {"processes": 1}),
        (["--processes", "7"], {"processes": 7}),
        (["--threads", "1"], {"threads": 1}),
        (["--scheduler", "tcp://there.example:8786"], {"scheduler": "tcp://there.example:8786"}),
    ],
)
def test_an_option_reaches_the_work_as_it_was_written(monkeypatch, written, asked):
    seen: list[Options] = []
    monkeypatch.setattr(run, "sweep", lambda given: seen.append(given) or 0)
    assert main([*FILES, *written]) == 0
    assert seen == [options(**asked)]


def test_a_place_that_is_a_uri_stays_as_it_was_written(monkeypatch):
    seen: list[Options] = []
    monkeypatch.setattr(run, "sweep", lambda given: seen.append(given) or 0)
    assert main(["--vehicles", "s3://a/v.parquet", "--candidates", "gs://a/c.parquet", "--out", "s3://a/out"]) == 0
    assert seen == [options(vehicles="s3://a/v.parquet", candidates="gs://a/c.parquet", out="s3://a/out")]


def test_an_interrupted_sweep_says_how_it_goes_on(monkeypatch, capsys):
    def interrupted(_given: Options) -> int:
        raise KeyboardInterrupt

    monkeypatch.setattr(run, "sweep", interrupted)
    assert main(FILES) == 130
    assert capsys.readouterr().err == "\ninterrupted; the same command goes on from here\n"


@pytest.mark.parametrize("text", ["0", "-1", "1.5", ""])
@pytest.mark.parametrize("option", ["--processes", "--threads", "--partition-rows"])
def test_a_number_that_is_none_is_refused_by_its_option(capsys, option, text):
    with pytest.raises(SystemExit) as ended:
        main([*FILES, f"{option}={text}"])
    assert ended.value.code == 2
    assert f"argument {option}: invalid positive whole number value" in capsys.readouterr().err
