"""A sweep from end to end: what is left to do is done on Dask, and what was done is counted from the files."""

from __future__ import annotations

import json
import os
from concurrent.futures.process import BrokenProcessPool
from pathlib import Path
from time import monotonic

import pyarrow as pa
import pyarrow.parquet as pq
from dask.base import compute
from dask.delayed import delayed
from dask.diagnostics.progress import ProgressBar

from service.assessment.answer.verdict import VERDICTS
from service.core.errors import DomainError
from service.core.version import VERSION
from service.rules.reader import pack_named
from service.sweep.input_tables import is_day, read_inputs
from service.sweep.job import BadSweep, Job, Options
from service.sweep.manifest import begin, finish, sha256
from service.sweep.partition import COUNTS_KEY, FOLDER, INPUT_NAMES, Part, keep, load, parts, work, write_whole


def sweep(options: Options) -> int:
    """Grade what is asked, say how it went, and return the exit code."""
    started = monotonic()
    job = _job(options)
    out = options.out
    begin(out, job, resume=options.resume)
    inputs = read_inputs(job.vehicles, job.candidates, pairs=job.pairs)
    for name, frame in zip(INPUT_NAMES, (inputs.vehicles, inputs.candidates), strict=True):
        keep(out, name, frame)
    write_whole(pa.Table.from_pandas(inputs.rejected, preserve_index=False), out / "rejected.parquet")
    everything = parts(job, load(job, str(out)))
    done = {path.name for path in (out / FOLDER).glob("part-*.parquet")}
    left = [part for part in everything if part.name not in done]
    print(
        f"{len(inputs.vehicles)} vehicles, {len(inputs.candidates)} candidates, "
        f"{len(inputs.rejected)} faults in rows left out (rejected.parquet); "
        f"{len(everything)} files, {len(everything) - len(left)} of them there from before"
    )
    read = monotonic() - started
    try:
        graded = _do(options, job, left)
    except OSError as error:
        raise BadSweep(f"reading or writing failed: {error}; the same command goes on from here") from None
    counts = _count(out, everything)
    finish(out, job, counts)
    spent = monotonic() - started
    for verdict, count in counts.items():
        print(f"{count:>14,}  {verdict}")
    print(
        f"{sum(counts.values()):>14,}  pairs in {out.name}/{FOLDER}; {graded:,} of them now, "
        f"in {spent:.1f} s, {read:.1f} s of them to read the tables"
    )
    return 0


def _job(options: Options) -> Job:
    try:
        pack = pack_named(options.rule_pack)
    except DomainError as error:
        raise BadSweep(error.detail) from None
    if options.date is not None and not is_day(options.date):
        raise BadSweep("--date takes an ISO date as in 2026-11-24")
    for path in (options.vehicles, options.candidates):
        if not path.is_file():
            raise BadSweep(f"there is no file {path}")
    return Job(
        vehicles=str(options.vehicles),
        candidates=str(options.candidates),
        vehicles_sha256=sha256(options.vehicles),
        candidates_sha256=sha256(options.candidates),
        pairs=options.pairs,
        rule_pack=pack.id,
        edition=pack.edition,
        season=options.season,
        date=options.date,
        partition_rows=options.partition_rows,
        version=VERSION,
    )


def _do(options: Options, job: Job, left: list[Part]) -> int:
    """Run the parts that are left where the options say, and return how many pairs they had."""
    if not left:
        return 0
    out = str(options.out)
    tasks = [delayed(work, pure=False)(job, out, part, dask_key_name=part.name) for part in left]
    if options.scheduler is not None:
        # It takes as long to load as all the rest, and most sweeps do without.
        from service.sweep.cluster import on_cluster  # noqa: PLC0415 - see above

        return sum(on_cluster(options.scheduler, tasks))
    if options.threads is not None:
        where: dict[str, object] = {"scheduler": "threads", "num_workers": options.threads}
    else:
        where = {"scheduler": "processes", "num_workers": options.processes or os.cpu_count() or 1, "chunksize": 1}
    try:
        with ProgressBar(dt=0.5):
            return sum(compute(*tasks, **where))
    except BrokenProcessPool:
        raise BadSweep("a worker died, perhaps for want of memory: fewer workers or --partition-rows may do") from None


def _count(out: Path, everything: list[Part]) -> dict[str, int]:
    """Return the number of pairs of each verdict as the files have them, each file with the rows it should have."""
    totals = [0] * len(VERDICTS)
    for part in everything:
        footer = pq.read_metadata(out / FOLDER / part.name)
        if footer.num_rows != part.rows:
            raise BadSweep(f"{part.name} has {footer.num_rows} rows and not {part.rows}; remove it and run again")
        counts = json.loads(footer.metadata[COUNTS_KEY])
        totals = [total + count for total, count in zip(totals, counts, strict=True)]
    return dict(zip(VERDICTS, totals, strict=True))
