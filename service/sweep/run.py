"""A sweep from end to end: what is left to do is done on Dask, and what was done before is held against its notes."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from concurrent.futures.process import BrokenProcessPool
from contextlib import AbstractContextManager, nullcontext
from time import monotonic

import pyarrow as pa
from dask.base import compute
from dask.delayed import Delayed, delayed
from dask.diagnostics.progress import ProgressBar

from service.assessment.answer.verdict import VERDICTS
from service.core.version import VERSION
from service.sweep.batches import question_of
from service.sweep.fingerprint import fingerprint
from service.sweep.input_tables import read_inputs
from service.sweep.job import BadSweep, Job, Options
from service.sweep.manifest import begin, finish
from service.sweep.partition import (
    FOLDER,
    INPUT_NAMES,
    NOTES,
    Done,
    Part,
    is_whole,
    keep,
    load,
    noted,
    parts,
    work,
    write_table,
)
from service.sweep.place import Place, one_line, place_of
from service.sweep.running import only_sweep


def sweep(options: Options) -> int:
    """Grade what is asked, say how it went, and return the exit code."""
    out = place_of(options.out)
    try:
        job = _job(options)
        _check_cluster(options, job)
        _make_folders(out)
        with only_sweep(out):
            return _sweep(options, job, out)
    except (OSError, pa.ArrowException) as error:
        raise BadSweep(f"reading or writing failed: {one_line(error)}; the same command goes on from here") from None


def _make_folders(out: Place) -> None:
    try:
        for folder in (out, out / FOLDER, out / NOTES):
            folder.make_folder()
    except OSError as error:
        raise BadSweep(f"{out.path} cannot be written to: {one_line(error)}") from None


def _check_cluster(options: Options, job: Job) -> None:
    if options.scheduler is not None:
        # It takes as long to load as all the rest, and most sweeps do without.
        from service.sweep.cluster import check  # noqa: PLC0415 - see above

        check(options.scheduler, job.fingerprint)


def _sweep(options: Options, job: Job, out: Place) -> int:
    started = monotonic()
    begin(out, job, resume=options.resume)
    inputs = read_inputs(place_of(options.vehicles), place_of(options.candidates), pairs=job.pairs)
    for name, table in zip(INPUT_NAMES, (inputs.vehicles, inputs.candidates), strict=True):
        keep(out, name, table)
    write_table(inputs.rejected, out / "rejected.parquet")
    everything = parts(job, load(job, options.out))
    done = _done_before(out, everything)
    left = [part for part in everything if part.name not in done]
    print(
        f"{_counted(len(inputs.vehicles), 'vehicle')}, {_counted(len(inputs.candidates), 'candidate')}, "
        f"{_counted(len(inputs.rejected), 'fault')} in rows left out (rejected.parquet); "
        f"{_counted(len(everything), 'file')}, {len(done)} of them there from before"
    )
    read_s = monotonic() - started
    now = {each.name: each for each in _do(options, job, left)}
    files = [(done | now)[part.name] for part in everything]
    counts: dict[str, int] = {name: sum(each.verdicts[at] for each in files) for at, name in enumerate(VERDICTS)}
    finish(out, job, counts, files)
    spent = monotonic() - started
    for verdict, count in counts.items():
        print(f"{count:>14,}  {verdict}")
    graded = sum(sum(each.verdicts) for each in now.values())
    print(
        f"{sum(counts.values()):>14,}  pairs in {out.name}/{FOLDER}; {graded:,} of them now, "
        f"in {spent:.1f} s, {read_s:.1f} s of them to read the tables"
    )
    return 0


def _counted(count: int, name: str) -> str:
    return f"{count} {name}" if count == 1 else f"{count} {name}s"


def _job(options: Options) -> Job:
    question = question_of(options.rule_pack, options.season, options.date)
    sums = []
    for written in (options.vehicles, options.candidates):
        place = place_of(written)
        if not place.is_file():
            raise BadSweep(f"there is no file {written}")
        sums.append(place.sha256())
    return Job(
        vehicles_sha256=sums[0],
        candidates_sha256=sums[1],
        pairs=options.pairs,
        rule_pack=question.pack.id,
        edition=question.pack.edition,
        season=options.season,
        date=options.date,
        only=options.only,
        partition_rows=options.partition_rows,
        version=VERSION,
        fingerprint=fingerprint(),
    )


def _done_before(out: Place, everything: list[Part]) -> dict[str, Done]:
    """Return the files that are there whole; one that is not, or whose note is not, is told and made again."""
    found = {}
    for part in everything:
        note = out / NOTES / f"{part.name}.json"
        done = noted(out, part)
        if done is not None and is_whole(out, done):
            found[part.name] = done
        elif done is not None:
            print(f"{FOLDER}/{part.name} is not as it was written; it is graded again")
            note.remove()
        elif note.is_file():
            # Where there is no note the file was under way when the sweep was interrupted.
            print(f"{NOTES}/{note.name} is not as it was written; its file is graded again")
            note.remove()
    return found


def _do(options: Options, job: Job, left: list[Part]) -> Iterable[Done]:
    """Run the parts that are left where the options say."""
    if not left:
        return ()
    tasks = [delayed(work, pure=False)(job, options.out, part, dask_key_name=part.name) for part in left]
    if options.scheduler is not None:
        from service.sweep.cluster import on_cluster  # noqa: PLC0415 - as above

        return on_cluster(options.scheduler, tasks)
    return _here(options, tasks)


def _here(options: Options, tasks: list[Delayed]) -> Iterable[Done]:
    if options.threads is not None:
        where: dict[str, object] = {"scheduler": "threads", "num_workers": options.threads}
    else:
        where = {"scheduler": "processes", "num_workers": options.processes or os.cpu_count() or 1, "chunksize": 1}
    try:
        with _progress():
            found: Iterable[Done] = compute(*tasks, **where)
    except BrokenProcessPool:
        raise BadSweep("a worker died, perhaps for want of memory: fewer workers or --partition-rows may do") from None
    return found


def _progress() -> AbstractContextManager[object]:
    """Return a bar for whoever watches; a log that is kept gets none of its returns."""
    return ProgressBar(dt=0.5, out=sys.stderr) if sys.stderr.isatty() else nullcontext()
