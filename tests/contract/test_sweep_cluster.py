"""A sweep on a Dask cluster on this machine, of which one worker is killed half-way: nothing lost, nothing twice."""

import os
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pandas as pd
import pytest

from tests.unit.sweep.small_catalogue import candidates, vehicles

ROOT = Path(__file__).parents[2]
VEHICLES = 120
CANDIDATES = 50
PARTS = 120
# How many files are there when the worker is killed: enough for both to have written some.
FILES_BEFORE = 20
# Far above what it takes; a cluster that hangs must not hang the tests.
PATIENCE_S = 50.0


class Cluster:
    """A scheduler and its workers, each a process of its own, their words in files."""

    def __init__(self, place: Path) -> None:
        self._place = place
        self._running: list[subprocess.Popen[bytes]] = []
        self.deadline = time.monotonic() + PATIENCE_S

    def start(self, name: str, *arguments: str, package: Path | None = ROOT) -> subprocess.Popen[bytes]:
        """Start a process that finds the package in this folder; None: nowhere."""
        paths = {} if package is None else {"PYTHONPATH": str(package)}
        with (self._place / f"{name}.log").open("wb") as log:
            process = subprocess.Popen(
                [sys.executable, "-m", *arguments],
                cwd=self._place if package is None else package,
                stdout=log,
                stderr=subprocess.STDOUT,
                env={**_environment(), **paths, "OMP_NUM_THREADS": "1"},
            )
        self._running.append(process)
        return process

    def words(self, name: str) -> str:
        return (self._place / f"{name}.log").read_text(errors="replace")

    def until(self, holds, what: str) -> None:
        """Look again and again, and no longer than the patience of the whole test."""
        while not holds():
            assert time.monotonic() < self.deadline, f"waited in vain: {what}"
            with suppress(subprocess.TimeoutExpired):
                self._running[0].wait(0.02)

    def stop(self) -> None:
        for process in reversed(self._running):
            if process.poll() is None:
                process.kill()
            process.wait(10)


@contextmanager
def _cluster(place: Path) -> Iterator[Cluster]:
    cluster = Cluster(place)
    try:
        yield cluster
    finally:
        cluster.stop()


def _environment() -> dict[str, str]:
    return {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}


def _with_scheduler(cluster: Cluster, package: Path | None = ROOT) -> str:
    command = ("distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", "0", "--no-dashboard")
    cluster.start("scheduler", *command, package=package)
    address = re.compile(r"Scheduler at:\s+(tcp://127\.0\.0\.1:\d+)")
    cluster.until(lambda: address.search(cluster.words("scheduler")), "the scheduler's address")
    found = address.search(cluster.words("scheduler"))
    assert found is not None
    return found.group(1)


def _worker(cluster: Cluster, name: str, address: str, package: Path | None = ROOT) -> subprocess.Popen[bytes]:
    # Without a nanny, which would start a new worker for the one that is killed.
    options = ("--nthreads", "1", "--no-nanny", "--no-dashboard", "--name", name, "--host", "127.0.0.1")
    return cluster.start(name, "distributed.cli.dask_worker", address, *options, package=package)


def _parts(out: Path) -> int:
    return len(list((out / "pairs").glob("part-*.parquet"))) if out.exists() else 0


@pytest.fixture(scope="module")
def swept(tmp_path_factory) -> Path:
    """The output of a sweep on two workers, of which one was killed after a part of the files was there."""
    place = tmp_path_factory.mktemp("cluster")
    vehicles(VEHICLES).to_parquet(place / "v.parquet")
    candidates(CANDIDATES).to_parquet(place / "c.parquet")
    out = place / "out"
    with _cluster(place) as cluster:
        address = _with_scheduler(cluster)
        doomed = _worker(cluster, "doomed", address)
        _worker(cluster, "other", address)
        for name in ("doomed", "other"):
            cluster.until(lambda name=name: "Registered to" in cluster.words(name), f"{name} registered")
        tables = ("--vehicles", str(place / "v.parquet"), "--candidates", str(place / "c.parquet"))
        rows = str(VEHICLES * CANDIDATES // PARTS)
        sweep = cluster.start(
            "sweep", "service", "sweep", *tables, "--out", str(out), "--partition-rows", rows, "--scheduler", address
        )
        cluster.until(lambda: _parts(out) >= FILES_BEFORE or sweep.poll() is not None, "the first files")
        (place / "parts_when_killed").write_text(str(_parts(out)))
        doomed.send_signal(signal.SIGKILL)
        cluster.until(lambda: sweep.poll() is not None, "the end of the sweep")
        assert sweep.returncode == 0, cluster.words("sweep")
    return out


def test_the_worker_was_killed_half_way(swept):
    assert FILES_BEFORE <= int((swept.parent / "parts_when_killed").read_text()) < PARTS


def test_the_killed_worker_had_done_a_part_of_it(swept):
    # What the scheduler says of a worker that is gone with the answers it had given.
    said = (swept.parent / "scheduler.log").read_text(errors="replace")
    assert re.search(r"Remove worker .*name: doomed.*\n.*lose already computed task", said)


def test_every_pair_is_there_and_none_twice(swept):
    found = pd.read_parquet(swept / "pairs", columns=["vehicle_id", "candidate_id"])
    pairs = sorted(zip(found["vehicle_id"], found["candidate_id"], strict=True))
    assert pairs == sorted((f"larch-{v}", f"c{c}") for v in range(VEHICLES) for c in range(CANDIDATES))


def test_nothing_half_written_is_left(swept):
    assert sorted(path.name for path in (swept / "pairs").iterdir()) == [f"part-{n:05}.parquet" for n in range(PARTS)]


def test_the_results_are_those_of_a_sweep_in_one_process(swept, tmp_path):
    command = [sys.executable, "-m", "service", "sweep", "--threads", "1", "--out", str(tmp_path / "out")]
    tables = ["--vehicles", str(swept.parent / "v.parquet"), "--candidates", str(swept.parent / "c.parquet")]
    rows = ["--partition-rows", str(VEHICLES * CANDIDATES // PARTS)]
    subprocess.run([*command, *tables, *rows], cwd=ROOT, check=True, capture_output=True, timeout=PATIENCE_S)
    alone = pd.read_parquet(tmp_path / "out" / "pairs")
    assert pd.read_parquet(swept / "pairs").equals(alone)


@pytest.fixture(scope="module")
def other_package(tmp_path_factory) -> Path:
    """The package with one number of one pack changed, its version the same."""
    place = tmp_path_factory.mktemp("other")
    shutil.copytree(ROOT / "service", place / "service", ignore=shutil.ignore_patterns("__pycache__"))
    pack = place / "service" / "rules" / "packs" / "de.toml"
    pack.write_text(f"{pack.read_text(encoding='utf-8')}# Another edition.\n", encoding="utf-8")
    return place


def _refused(place: Path, scheduler_has: Path | None, *workers_have: Path | None) -> tuple[int, str, float, bool]:
    """Return exit code, words, seconds and whether anything was written, by a cluster with these packages."""
    vehicles(4).to_parquet(place / "v.parquet")
    candidates(3).to_parquet(place / "c.parquet")
    with _cluster(place) as cluster:
        address = _with_scheduler(cluster, scheduler_has)
        for number, package in enumerate(workers_have):
            name = f"worker {number}"
            _worker(cluster, name, address, package)
            cluster.until(lambda name=name: "Registered to" in cluster.words(name), f"{name} registered")
        tables = ("--vehicles", str(place / "v.parquet"), "--candidates", str(place / "c.parquet"))
        begun = time.monotonic()
        sweep = cluster.start("sweep", "service", "sweep", *tables, "--out", str(place / "out"), "--scheduler", address)
        cluster.until(lambda: sweep.poll() is not None, "the refusal")
        return sweep.returncode, cluster.words("sweep"), time.monotonic() - begun, (place / "out").exists()


@pytest.mark.parametrize(
    ("scheduler", "workers", "reason"),
    [
        ("same", ("same", "other"), r"sweep: the worker at tcp://127.0.0.1:\d+ has other code, tables or packs"),
        ("none", ("same",), r"sweep: the scheduler at tcp://127.0.0.1:\d+ lacks this package or its extra `sweep`"),
    ],
)
def test_a_cluster_that_is_not_of_one_package_is_refused_in_one_sentence(
    tmp_path, other_package, scheduler, workers, reason
):
    packages = {"same": ROOT, "other": other_package, "none": None}
    code, words, seconds, wrote = _refused(tmp_path, *(packages[each] for each in (scheduler, *workers)))
    said = [line for line in words.splitlines() if line.startswith("sweep: ")]
    assert (code, len(said), wrote) == (2, 1, False)
    assert re.match(reason, said[0])
    # With the start of Python on a busy machine; the question itself waits 10 s at most.
    assert seconds < 25.0


def test_without_a_scheduler_the_reason_is_said(tmp_path):
    vehicles(1).to_parquet(tmp_path / "v.parquet")
    candidates(1).to_parquet(tmp_path / "c.parquet")
    command = [sys.executable, "-m", "service", "sweep", "--out", str(tmp_path / "out")]
    tables = ["--vehicles", str(tmp_path / "v.parquet"), "--candidates", str(tmp_path / "c.parquet")]
    # Port 9 is that of the discard service, which nobody runs any more.
    run = subprocess.run(
        [*command, *tables, "--scheduler", "tcp://127.0.0.1:9"],
        cwd=ROOT,
        check=False,
        capture_output=True,
        text=True,
        timeout=PATIENCE_S,
    )
    assert (run.returncode, "there is no Dask scheduler at tcp://127.0.0.1:9" in run.stderr) == (2, True)
