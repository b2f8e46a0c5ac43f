"""One file of results: which pairs it holds, how they are graded, and how it is written whole or not at all."""

from __future__ import annotations

import hashlib
import io
import json
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc
import pyarrow.parquet as pq

from service.assessment.answer.verdict import VERDICTS
from service.sweep.batches import GATHERED, grade_batches, kept, question_of
from service.sweep.columns import CANDIDATE_COLUMNS, VEHICLE_COLUMNS
from service.sweep.fingerprint import fingerprint
from service.sweep.job import BadSweep, Job
from service.sweep.pair_columns import CANDIDATE_PREFIX, read
from service.sweep.place import Place, place_of
from service.sweep.read_columns import Places
from service.sweep.vehicle_arrays import alike_rows

FOLDER = "pairs"
NOTES = "notes"
INPUTS = "accepted"
INPUT_NAMES = ("vehicles", "candidates")


class Part(NamedTuple):
    """One file: a range of the pairs, in the order in which they are graded."""

    number: int
    start: int
    stop: int

    @property
    def rows(self) -> int:
        """Return how many pairs it holds."""
        return self.stop - self.start

    @property
    def name(self) -> str:
        """Return the name of its file."""
        return f"part-{self.number:05}.parquet"


class Done(NamedTuple):
    """A file that was written: its pairs by verdict, its rows, and the hash of its bytes."""

    name: str
    verdicts: tuple[int, ...]
    rows: int
    sha256: str


class Loaded(NamedTuple):
    """The inputs of a job: texts as dictionaries, so that a row is a few small numbers."""

    vehicles: pa.Table
    candidates: pa.Table
    order: Places
    """The vehicles, those alike beside one another; with pairs the vehicle of each candidate."""
    pairs: int


def keep(out: Place, name: str, table: pa.Table) -> None:
    """Put a table of rows that passed where every worker finds it; what the caller's files become does not matter."""
    (out / INPUTS).make_folder()
    write_table(table, out / INPUTS / f"{name}.parquet")


def write_table(table: pa.Table, target: Place) -> bytes:
    """Write a table so that its file is either complete or not there, and return its bytes."""
    written = io.BytesIO()
    pq.write_table(table, written, compression="zstd", compression_level=1)
    content = written.getvalue()
    target.write(content)
    return content


@lru_cache(maxsize=1)
def load(job: Job, out: str) -> Loaded:
    """Return the inputs of a job; a worker reads them once for all of its parts."""
    folder = place_of(out) / INPUTS
    vehicles, candidates = (_table(folder / f"{name}.parquet") for name in INPUT_NAMES)
    if job.pairs:
        places = {name: at for at, name in enumerate(vehicles["vehicle_id"].to_pylist())}
        owners = np.array([places[name] for name in candidates["vehicle_id"].to_pylist()], np.int64)
        return Loaded(vehicles, candidates.drop_columns(["vehicle_id"]), owners, len(owners))
    batches = vehicles.to_batches()
    alike = alike_rows(read(batches[0], VEHICLE_COLUMNS, ()), question_of(job.rule_pack).pack) if batches else []
    order = np.concatenate([np.empty(0, np.int64), *alike]).astype(np.int64)
    return Loaded(vehicles, candidates, order, len(order) * candidates.num_rows)


def _table(place: Place) -> pa.Table:
    table = pq.read_table(place.path, filesystem=place.files).combine_chunks()
    known = {column.name for column in (*VEHICLE_COLUMNS, *CANDIDATE_COLUMNS)}
    texts = [
        (name, column.dictionary_encode().combine_chunks())
        for name, column in zip(table.column_names, table.columns, strict=True)
        if name in known and pa.types.is_large_string(column.type) | pa.types.is_string(column.type)
    ]
    for name, column in texts:
        table = table.set_column(table.column_names.index(name), name, column)
    return table


def parts(job: Job, loaded: Loaded) -> list[Part]:
    """Return all files of a job; the same for the same inputs."""
    starts = range(0, loaded.pairs, job.partition_rows)
    return [Part(number, start, min(start + job.partition_rows, loaded.pairs)) for number, start in enumerate(starts)]


def pairs_of(loaded: Loaded, start: int, stop: int, *, own: bool) -> Iterator[pa.RecordBatch]:
    """Yield pairs beside each other, as `grade_batches` takes them."""
    for begin in range(start, stop, GATHERED):
        places = np.arange(begin, min(begin + GATHERED, stop))
        at_vehicle, at_candidate = places, places
        if not own:
            at_vehicle, at_candidate = np.divmod(places, loaded.candidates.num_rows)
        one = loaded.vehicles.take(pa.array(loaded.order[at_vehicle]))
        other = loaded.candidates.take(pa.array(at_candidate))
        names = [
            name if name.startswith(CANDIDATE_PREFIX) else f"{CANDIDATE_PREFIX}{name}" for name in other.column_names
        ]
        columns = [each.combine_chunks() for each in (*one.columns, *other.columns)]
        yield pa.RecordBatch.from_arrays(columns, names=[*one.column_names, *names])


def work(job: Job, out: str, part: Part) -> Done:
    """Grade one part, write its file and a note of it; return the note."""
    if job.fingerprint != fingerprint():
        raise BadSweep("a worker has other code, tables or packs than this sweep: give all the same package")
    done = noted(place_of(out), part)
    # Another worker may have done it before it was lost.
    return _graded(job, out, part) if done is None else done


def _graded(job: Job, written: str, part: Part) -> Done:
    out, loaded = place_of(written), load(job, written)
    batches = pairs_of(loaded, part.start, part.stop, own=job.pairs)
    found = grade_batches(batches, rule_pack=job.rule_pack, season=job.season, date=job.date)
    counts = np.zeros(len(VERDICTS), np.int64)
    wanted = []
    for batch in found:
        verdicts = batch.column("verdict")
        counts += [pc.sum(pc.equal(verdicts, name)).as_py() or 0 for name in VERDICTS]
        wanted.append(kept(batch, job.only).drop_columns(["fault"]))
    table = pa.Table.from_batches(wanted)
    content = write_table(table, out / FOLDER / part.name)
    done = Done(part.name, tuple(counts.tolist()), table.num_rows, hashlib.sha256(content).hexdigest())
    (out / NOTES / f"{part.name}.json").write(json.dumps({**done._asdict(), "seal": _seal(done)}).encode())
    return done


def _seal(done: Done) -> str:
    """Return the hash of a note, so that a changed count is found as a changed file is."""
    return hashlib.sha256(json.dumps(done._asdict()).encode()).hexdigest()


def noted(out: Place, part: Part) -> Done | None:
    """Return what was noted of a part when it was written; None where it is to be done, or the note was changed."""
    try:
        known = json.loads((out / NOTES / f"{part.name}.json").read())
        done = Done(known["name"], tuple(known["verdicts"]), known["rows"], known["sha256"])
        return done if done.name == part.name and known["seal"] == _seal(done) else None
    except (OSError, ValueError, KeyError, TypeError):
        return None


def is_whole(out: Place, done: Done) -> bool:
    """Return whether the file that a note speaks of is there, byte by byte."""
    place = out / FOLDER / done.name
    return place.is_file() and place.sha256() == done.sha256
