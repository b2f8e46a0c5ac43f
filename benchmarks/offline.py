"""Measurements without HTTP: the work of a check, the array kernel, the sweep."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from benchmarks.catalogue import write
from benchmarks.place import ROOT, python
from benchmarks.web import Row

VEHICLES, CANDIDATES = 1000, 10_000
_SAID = re.compile(r"([\d,]+)  pairs in \S+; ([\d,]+) of them now, in ([\d.]+) s, ([\d.]+) s of them to read")


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
        seconds, grading = {}, {}
        for workers in (1, 2):
            before = os.times()
            pairs, seconds[workers], grading[workers] = _swept(place, tables, workers)
            after = os.times()
            spent = after.children_user + after.children_system - before.children_user - before.children_system
            rate = pairs / seconds[workers]
            noun = "worker" if workers == 1 else "workers"
            found = f"{seconds[workers]:.1f} s, {rate:,.0f} pairs/s; {spent:.0f} s of processor"
            yield Row(f"sweep, {pairs:,} pairs, {workers} {noun}", found, "minutes")
    whole, alone = seconds[1] / seconds[2], grading[1] / grading[2]
    yield Row("  two workers / one", f"{alone:.2f}; {whole:.2f} with the reading of the tables", "1.7")


def _swept(place: Path, tables: tuple[Path, Path], workers: int) -> tuple[int, float, float]:
    out = place / f"out-{workers}"
    command = [sys.executable, "-m", "service", "sweep", "--vehicles", str(tables[0]), "--candidates", str(tables[1])]
    run = subprocess.run(
        [*command, "--out", str(out), "--processes", str(workers)],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
        timeout=600,
    )
    said = _SAID.search(run.stdout)
    if said is None:
        raise RuntimeError(f"the sweep said nothing of use: {run.stdout[-300:]}")
    for file in (out / "pairs").iterdir():
        file.unlink()
    seconds, reading = float(said[3]), float(said[4])
    return int(said[2].replace(",", "")), seconds, seconds - reading
