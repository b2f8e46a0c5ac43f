"""One file of results: which pairs it holds, how they are graded, and how it is written whole or not at all."""

from __future__ import annotations

import json
import os
from collections.abc import Iterator
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple
from uuid import uuid4

import numpy as np
import pandas as pd
import pyarrow as pa
import pyarrow.parquet as pq
from numpy.typing import NDArray

from service.assessment.batch.grading import grade_all
from service.assessment.case import Case
from service.assessment.view.wheel_facts import WheelFacts, columns, table_of_columns
from service.core.numeric import Number
from service.rules.reader import pack_named
from service.sweep.candidate_arrays import Candidates, OwnCandidates, SharedCandidates, vehicle_key
from service.sweep.catalogue_rows import candidate, records, vehicle
from service.sweep.job import Job
from service.sweep.vehicle_results import VERDICTS, Results, results

# Candidates graded in one go: enough to make calls cheap, few enough to stay in the caches of a processor.
CHUNK = 16_384
FOLDER = "pairs"
INPUTS = "accepted"
INPUT_NAMES = ("vehicles", "candidates")
COUNTS_KEY = b"verdicts"


class Part(NamedTuple):
    """One file: for each of its vehicles, a range of candidates."""

    number: int
    blocks: tuple[tuple[int, int, int], ...]
    """Vehicle, first candidate, and the one after the last."""

    @property
    def rows(self) -> int:
        """Return how many pairs it holds."""
        return sum(stop - start for _, start, stop in self.blocks)

    @property
    def name(self) -> str:
        """Return the name of its file."""
        return f"part-{self.number:05}.parquet"


class Loaded(NamedTuple):
    """A job with its inputs, ready to be graded."""

    cases: list[Case]
    vehicle_ids: list[str]
    candidate_ids: list[str]
    owners: list[str] | None
    """With pairs: the vehicle of each candidate."""
    candidates: Candidates


def keep(out: Path, name: str, frame: pd.DataFrame) -> None:
    """Put a table of rows that passed where every worker finds it; what the caller's files become does not matter."""
    folder = out / INPUTS
    folder.mkdir(exist_ok=True)
    write_whole(pa.Table.from_pandas(frame, preserve_index=False), folder / f"{name}.parquet")


@lru_cache(maxsize=1)
def load(job: Job, out: str) -> Loaded:
    """Return the inputs of a job; a worker reads them once for all of its parts."""
    known, asked = (pq.read_table(Path(out) / INPUTS / f"{name}.parquet").to_pandas() for name in INPUT_NAMES)
    pack = pack_named(job.rule_pack)
    # A case needs some candidate; the arrays do not look at it.
    some = [candidate(row) for row in records(asked.iloc[:1])]
    cases = [Case(vehicle(row), each, pack, job.season, job.date) for each in some for row in records(known)]
    return Loaded(
        cases,
        known["vehicle_id"].tolist(),
        asked["candidate_id"].tolist(),
        asked["vehicle_id"].tolist() if job.pairs else None,
        OwnCandidates(asked) if job.pairs else SharedCandidates(asked),
    )


def parts(job: Job, loaded: Loaded) -> list[Part]:
    """Return all files of a job; the same for the same inputs."""
    vehicles = len(loaded.cases)
    if not vehicles:
        return []
    if loaded.owners is not None:
        places = {name: at for at, name in enumerate(loaded.vehicle_ids)}
        owner = np.array([places[name] for name in loaded.owners])
        bounds = np.searchsorted(owner, np.arange(vehicles + 1))
        blocks = [(at, int(bounds[at]), int(bounds[at + 1])) for at in range(vehicles) if bounds[at] < bounds[at + 1]]
        return [Part(number, each) for number, each in enumerate(_packed(blocks, job.partition_rows))]
    total = len(loaded.candidate_ids)
    # Vehicles of one key follow one another, so that the tables of the candidates are made once for each key.
    order = sorted(range(vehicles), key=lambda at: vehicle_key(loaded.cases[at]))
    made: list[Part] = []
    for start in range(0, total, job.partition_rows):
        stop = min(start + job.partition_rows, total)
        blocks = [(at, start, stop) for at in order]
        made += [Part(len(made) + at, each) for at, each in enumerate(_packed(blocks, job.partition_rows))]
    return made


def _packed(blocks: list[tuple[int, int, int]], rows: int) -> Iterator[tuple[tuple[int, int, int], ...]]:
    """Return blocks together as long as they have no more rows than a file should."""
    held: list[tuple[int, int, int]] = []
    size = 0
    for block in blocks:
        length = block[2] - block[1]
        if held and size + length > rows:
            yield tuple(held)
            held, size = [], 0
        held.append(block)
        size += length
    if held:
        yield tuple(held)


def work(job: Job, out: str, part: Part) -> int:
    """Grade one part and write its file; return its number of pairs."""
    target = Path(out) / FOLDER / part.name
    # Another worker may have done it before it was lost.
    if not target.exists():
        write_whole(_table(load(job, out), part), target)
    return part.rows


def write_whole(table: pa.Table, target: Path) -> None:
    """Write a table so that its file is either complete or not there; readers of the folder skip dotted names."""
    draft = target.with_name(f".{target.name}.{uuid4().hex}.tmp")
    with draft.open("wb") as file:
        pq.write_table(table, file, compression="zstd", compression_level=1)
        file.flush()
        os.fsync(file.fileno())
    draft.replace(target)


def _table(loaded: Loaded, part: Part) -> pa.Table:
    found: list[Results] = []
    vehicles: list[NDArray[np.int32]] = []
    candidates: list[NDArray[np.int32]] = []
    for at, start, stop in part.blocks:
        case = loaded.cases[at]
        front, rear = loaded.candidates.facts(case, start, stop)
        found += [results(grade_all(case, *each)) for each in _chunks(front, rear)]
        vehicles.append(np.full(stop - start, at, np.int32))
        candidates.append(np.arange(start, stop, dtype=np.int32))
    verdicts = np.concatenate([each.verdicts for each in found])
    made: dict[str, pa.Array] = {
        "vehicle_id": _names(np.concatenate(vehicles), loaded.vehicle_ids),
        "candidate_id": _names(np.concatenate(candidates), loaded.candidate_ids),
        "verdict": pa.DictionaryArray.from_arrays(pa.array(verdicts), list(VERDICTS)),
        "worst_codes": _reasons(found),
    }
    for name in found[0].numbers:
        joined = np.concatenate([each.numbers[name] for each in found])
        made[name] = pa.array(joined, from_pandas=True)
    counts = np.bincount(verdicts, minlength=len(VERDICTS)).tolist()
    return pa.table(made).replace_schema_metadata({COUNTS_KEY: json.dumps(counts)})


def _chunks(
    front: WheelFacts[Number], rear: WheelFacts[Number]
) -> Iterator[tuple[WheelFacts[Number], WheelFacts[Number]]]:
    """Return the candidates in chunks."""
    size = np.size(front.rim_code)
    if size <= CHUNK:
        yield front, rear
        return
    whole = table_of_columns(front), table_of_columns(rear)
    for begin in range(0, size, CHUNK):
        one, other = (columns(each[:, begin : begin + CHUNK]) for each in whole)
        yield one, other


def _names(places: NDArray[np.int32], names: list[str]) -> pa.Array:
    """Return names as a column that holds each once."""
    numbers, used = pd.factorize(places)
    found = pa.array([names[at] for at in used], pa.string())
    return pa.DictionaryArray.from_arrays(pa.array(numbers.astype(np.int32)), found)


def _reasons(found: list[Results]) -> pa.Array:
    texts: dict[str, int] = {}
    places = []
    for each in found:
        here = np.array([texts.setdefault(text, len(texts)) for text in each.texts], np.int32)
        places.append(here[each.reasons])
    return pa.DictionaryArray.from_arrays(pa.array(np.concatenate(places)), list(texts))
