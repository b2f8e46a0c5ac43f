"""Measurements without HTTP: the work of a check, the array kernel, the sweep."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from benchmarks.catalogue import write
from benchmarks.place import ROOT, python
from benchmarks.web import Row, twin_us

VEHICLES, CANDIDATES = 1000, 10_000
_SAID = re.compile(r"([\d,]+)  pairs in ")


def in_process() -> Iterator[Row]:
    """Yield the time that the work of a check takes, and the rate of the array kernel."""
    found = json.loads(python("benchmarks.in_process"))
    for name, what in (("again_us", "demo requests in turn"), ("new_us", "no axle twice")):
        work, dumps = found[name]
        yield Row(f"work of a check, {what}", f"{work:.0f} us translate, assess and render; {dumps:.0f} us to bytes")
    for size, rate in found["kernel"].items():
        yield Row(f"array kernel, {int(size):,} candidates at a time", f"{rate:,.0f} axle assessments/s", "1,000,000")


def sweep() -> Iterator[Row]:
    """Yield how fast a catalogue is swept, from start to end, by one worker and by two."""
    with tempfile.TemporaryDirectory() as folder:
        place = Path(folder)
        tables = write(place, VEHICLES, CANDIDATES)
        one, two = (_swept(place, tables, workers) for workers in (1, 2))
    for workers, swept in ((1, one), (2, two)):
        found = (
            f"{swept.seconds:.1f} s, {swept.pairs / swept.seconds:,.0f} pairs/s; {swept.processor_s:.0f} s of processor"
        )
        yield Row(f"sweep, {swept.pairs:,} pairs, {workers} worker{'s' * (workers - 1)}", found, "minutes")
    whole, running = one.seconds / two.seconds, two.files_per_second / one.files_per_second
    yield Row("  two workers / one", f"{running:.2f} once they run; {whole:.2f} with their start", "1.7")


def shapes() -> Iterator[Row]:
    """Yield what a pair costs by how many candidates each vehicle has."""
    unit = twin_us()
    for each, us in json.loads(python("benchmarks.shapes")).items():
        found = f"{us:.1f} us of processor; {us / unit:.4f} of a twin's request"
        yield Row(f"a pair, {int(each):,} candidates a vehicle", found, "0.2" if each == "1" else "0.016")


class _Swept(NamedTuple):
    pairs: int
    seconds: float
    processor_s: float
    files_per_second: float
    """Between the first file and the last, without what comes before."""


def _swept(place: Path, tables: tuple[Path, Path], workers: int) -> _Swept:
    out = place / f"out-{workers}"
    command = [sys.executable, "-m", "service", "sweep", "--vehicles", str(tables[0]), "--candidates", str(tables[1])]
    before, start = os.times(), time.monotonic()
    run = subprocess.run(
        [*command, "--out", str(out), "--processes", str(workers)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
        timeout=600,
    )
    seconds, after = time.monotonic() - start, os.times()
    said = _SAID.search(run.stdout)
    if said is None:
        raise RuntimeError(f"the sweep said nothing of use: {run.stdout[-300:]}")
    files = list((out / "pairs").iterdir())
    written = sorted(file.stat().st_mtime for file in files)
    for file in files:
        file.unlink()
    spent = after.children_user + after.children_system - before.children_user - before.children_system
    # The first file of each worker ends its start.
    rate = (len(written) - workers) / (written[-1] - written[workers - 1])
    return _Swept(int(said[1].replace(",", "")), seconds, spent, rate)
