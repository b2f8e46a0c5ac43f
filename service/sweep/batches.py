"""Pairs of vehicle and candidate graded as record batches come and go: a plain function for any engine.

It reads nothing and writes nothing, so Spark's `mapInArrow`, Ray, DuckDB, Polars and Dask can all call it.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

import numpy as np
import pyarrow as pa
import pyarrow.compute as pc

from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.grading import grade_pairs
from service.assessment.case import Case, Season
from service.assessment.view.axle_view import Fitted
from service.assessment.view.wheel_facts import columns
from service.core.errors import DomainError
from service.core.numeric import FloatArray, Number
from service.rules.reader import pack_named
from service.sweep.job import BadSweep
from service.sweep.pair_columns import CANDIDATE_PREFIX, PAIR_COLUMNS, PAIR_TOGETHER, ReadTable, check_names, read
from service.sweep.read_columns import Fault, Places, is_day
from service.sweep.vehicle_arrays import Question, groups, hub, law_speeds_kmh, wheels_per_side, with_numbers
from service.sweep.vehicle_results import NUMBERS, results
from service.sweep.wheel_arrays import wheels

# Rows graded together: the more, the more vehicles are alike; each takes some 2 KB while it is graded.
GATHERED = 65_536
# Of them in one go: enough to make calls cheap, few enough to stay in the caches of a processor.
CHUNK = 16_384
AXLES = ("front", "rear")

RESULTS = pa.schema(
    [
        ("vehicle_id", pa.string()),
        ("candidate_id", pa.string()),
        ("verdict", pa.string()),
        ("worst_codes", pa.string()),
        *((name, pa.float32()) for name in NUMBERS),
        ("fault", pa.string()),
    ]
)
"""What `grade_batches` yields; `fault` says why a row has no verdict."""


def question_of(rule_pack: str = "unece", season: Season | None = None, date: str | None = None) -> Question:
    """Return the question that the names of a rule pack and a season and an ISO day make.

    Raises
    ------
    BadSweep
        With the name that is wrong.
    """
    try:
        pack = pack_named(rule_pack)
    except DomainError as error:
        raise BadSweep(error.detail) from None
    if season not in (None, "summer", "winter"):
        raise BadSweep(f"the season is summer or winter and not {season!r}")
    if date is not None and not is_day(date):
        raise BadSweep("--date takes an ISO date as in 2026-11-24")
    return Question(pack, season, date)


def grade_batches(
    batches: Iterable[pa.RecordBatch],
    *,
    rule_pack: str = "unece",
    season: Season | None = None,
    date: str | None = None,
    only: Collection[str] = VERDICTS,
) -> Iterator[pa.RecordBatch]:
    """Yield verdict, reasons and key numbers of every pair, in the order in which they came.

    Parameters
    ----------
    batches : iterable of RecordBatch
        One pair a row: the columns of a vehicle, and those of a candidate with `candidate_` before their names
        (`pair_columns.PAIR_COLUMNS`); `python -m service sweep --columns` tells what they mean.
    rule_pack, season, date : str
        As in a single check.
    only : collection of str
        The verdicts to keep; a row at fault is always kept, its verdict empty and its `fault` told.

    Yields
    ------
    RecordBatch
        Of the schema `RESULTS`.

    Raises
    ------
    BadSweep
        When the columns are not those, or a name is none.
    """
    question = question_of(rule_pack, season, date)
    unknown = [each for each in only if each not in VERDICTS]
    if unknown:
        raise BadSweep(f"{unknown[0]!r} is no verdict; there are {', '.join(VERDICTS)}")
    for batch in gathered(batches):
        check_names(batch.schema.names, PAIR_COLUMNS, "pairs")
        yield kept(graded(batch, question), only)


def gathered(batches: Iterable[pa.RecordBatch]) -> Iterator[pa.RecordBatch]:
    """Yield the same rows in batches of `GATHERED` rows, the last one shorter; small vehicles' batches cost most."""
    held: list[pa.RecordBatch] = []
    rows = 0
    for batch in batches:
        for start in range(0, batch.num_rows, GATHERED):
            piece = batch.slice(start, GATHERED)
            if rows + piece.num_rows > GATHERED:
                yield _joined(held)
                held, rows = [], 0
            held.append(piece)
            rows += piece.num_rows
    if held:
        yield _joined(held)


def _joined(batches: list[pa.RecordBatch]) -> pa.RecordBatch:
    if len(batches) == 1:
        return batches[0]
    try:
        table = pa.Table.from_batches(batches).unify_dictionaries().combine_chunks()
    except pa.ArrowException:
        raise BadSweep("the batches have not all the same columns") from None
    return table.to_batches()[0]


def kept(found: pa.RecordBatch, only: Collection[str]) -> pa.RecordBatch:
    """Return the rows of some verdicts, and all that are at fault."""
    if set(only) == set(VERDICTS):
        return found
    verdicts = found.column("verdict")
    wanted = pc.or_(pc.is_in(verdicts, pa.array(list(only))), pc.is_null(verdicts))
    return found.filter(wanted)


def graded(batch: pa.RecordBatch, question: Question) -> pa.RecordBatch:
    """Return the results of a batch of pairs, one row for each."""
    whole = read(batch, PAIR_COLUMNS, PAIR_TOGETHER)
    sound = np.ones(whole.rows, np.bool_)
    sound[[fault.row for fault in whole.faults]] = False
    rows = np.flatnonzero(sound)
    found = _Found(whole.rows)
    # Read again, a batch has no text left that cannot be read.
    clean = whole if len(rows) == whole.rows else read(batch.take(pa.array(rows)), PAIR_COLUMNS, ())
    _grade(clean, rows, question, found)
    return found.batch(whole)


class _Found:
    """The results of a batch as they come in, group by group."""

    def __init__(self, rows: int) -> None:
        self.verdicts = np.full(rows, -1, np.int8)
        self.reasons = np.full(rows, -1, np.int32)
        self.numbers = {name: np.full(rows, np.nan, np.float32) for name in NUMBERS}
        self.texts: dict[str, int] = {}

    def put(self, rows: Places, case: Case[Number], present: list[Fitted[Number]], proposed: list[FloatArray]) -> None:
        """Grade some rows and put down what comes out."""
        front, rear = (columns(each) for each in proposed)
        found = results(grade_pairs(case, (present[0], present[1]), front, rear))
        self.verdicts[rows] = found.verdicts
        here = np.array([self.texts.setdefault(each, len(self.texts)) for each in found.texts], np.int32)
        self.reasons[rows] = here[found.reasons]
        for name, values in found.numbers.items():
            self.numbers[name][rows] = values

    def batch(self, whole: ReadTable) -> pa.RecordBatch:
        """Return the results as a batch."""
        made = [
            *(_words(whole.text(name).places, whole.text(name).distinct) for name in ("vehicle_id", "candidate_id")),
            _words(self.verdicts, VERDICTS),
            _words(self.reasons, list(self.texts)),
            *(pa.array(values, from_pandas=True) for values in self.numbers.values()),
            _faults(whole),
        ]
        return pa.RecordBatch.from_arrays(made, schema=RESULTS)


def _words(places: np.ndarray, words: Collection[str]) -> pa.Array:
    return pa.array(list(words), pa.string()).take(pa.array(places, mask=places < 0))


def _faults(whole: ReadTable) -> pa.Array:
    told: dict[int, list[Fault]] = {}
    for fault in whole.faults:
        told.setdefault(fault.row, []).append(fault)
    texts: list[str | None] = [None] * whole.rows
    for row, faults in told.items():
        texts[row] = "; ".join(f"{each.column}: {each.reason}" for each in faults)
    return pa.array(texts, pa.string())


def _grade(sound: ReadTable, places: Places, question: Question, found: _Found) -> None:
    """Grade the rows of a table without faults; `places` says where they stand in the batch."""
    kinds = groups(sound, question)
    top, none = sound.number("max_speed_kmh"), np.full(sound.rows, np.nan)
    law = law_speeds_kmh(sound, kinds)
    twins = {axle: wheels_per_side(sound, axle) for axle in AXLES}
    now = [wheels(sound, f"{axle}_", twins[axle], (top, none)) for axle in AXLES]
    then = [wheels(sound, f"{CANDIDATE_PREFIX}{axle}_", twins[axle], (top, law)) for axle in AXLES]
    for kind in kinds:
        for start in range(0, len(kind.rows), CHUNK):
            rows = kind.rows[start : start + CHUNK]
            some = sound.take(rows)
            present = [Fitted(columns(each[:, rows]), hub(some, axle)) for axle, each in zip(AXLES, now, strict=True)]
            found.put(places[rows], with_numbers(kind.case, some), present, [each[:, rows] for each in then])
