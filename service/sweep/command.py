"""The options of `fitment-service sweep`; what does the work is loaded only when there is work."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path

from service.assessment.answer.verdict import VERDICTS
from service.sweep.columns import described
from service.sweep.job import BadSweep, Options

# What only the sweep needs, and so what the image of the service does without.
_NEEDED = ("dask", "distributed", "pandas", "pyarrow")
DEFAULT_PARTITION_ROWS = 250_000


def main(arguments: Sequence[str]) -> int:
    """Return the exit code: 0 done, 2 wrongly asked or not to be done, 130 interrupted (run it again to go on)."""
    asked = _parser().parse_args(arguments)
    if asked.columns:
        print(described())
        return 0
    lacking = [name for name in ("vehicles", "candidates", "out") if getattr(asked, name) is None]
    if lacking:
        return _fail(f"missing: {', '.join(f'--{name}' for name in lacking)}; see --help")
    missing = [name for name in _NEEDED if find_spec(name) is None]
    if missing:
        return _fail(f"the sweep needs packages that are not installed: {', '.join(missing)} (the extra `sweep`)")
    # The libraries behind it take a second to load and are not in the image of the service.
    from service.sweep.run import sweep  # noqa: PLC0415 - see above

    try:
        return sweep(_options(asked))
    except BadSweep as error:
        return _fail(str(error))
    except KeyboardInterrupt:
        print("\ninterrupted; the same command goes on from here", file=sys.stderr)
        return 130


def _fail(reason: str) -> int:
    print(f"sweep: {reason}", file=sys.stderr)
    return 2


def _positive(text: str) -> int:
    number = int(text)
    if number < 1:
        raise ValueError
    return number


_positive.__name__ = "positive whole number"


def _verdicts(text: str) -> tuple[str, ...]:
    found = text.split(",")
    if not set(found) <= set(VERDICTS):
        raise ValueError
    return tuple(each for each in VERDICTS if each in found)


_verdicts.__name__ = "list of verdicts"


def _whole(written: str) -> str:
    """Return a path that holds in other folders too; a URI is one as it stands."""
    return written if "://" in written else str(Path(written).resolve())


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="fitment-service sweep",
        description="Grade every candidate on every vehicle. Reads two Parquet tables, writes "
        "DIR/pairs/part-*.parquet, DIR/rejected.parquet and DIR/manifest.json. "
        "Run again after an interruption, it goes on where it stopped.",
    )
    parser.add_argument("--columns", action="store_true", help="show the columns of all tables and stop")
    parser.add_argument(
        "--vehicles", metavar="V.parquet", help="the vehicles as they are; a path, s3://... or gs://..."
    )
    parser.add_argument("--candidates", metavar="C.parquet", help="what might be fitted")
    parser.add_argument("--out", metavar="DIR", help="where the results go; all workers must see it")
    parser.add_argument("--pairs", action="store_true", help="each candidate has its one vehicle, in vehicle_id")
    parser.add_argument("--rule-pack", default="unece", help="the rules to hold them against (default: unece)")
    parser.add_argument("--season", choices=("summer", "winter"), help="for which season the tyres are meant")
    parser.add_argument("--date", help="the day of use as an ISO date (default: that of the rule pack's edition)")
    parser.add_argument(
        "--only",
        type=_verdicts,
        default=VERDICTS,
        metavar="VERDICT,...",
        help=f"write the pairs of these verdicts alone, all are counted ({', '.join(VERDICTS)})",
    )
    parser.add_argument(
        "--partition-rows",
        type=_positive,
        default=DEFAULT_PARTITION_ROWS,
        metavar="N",
        help=f"pairs in one file of the results (default: {DEFAULT_PARTITION_ROWS})",
    )
    parser.add_argument(
        "--resume",
        action=argparse.BooleanOptionalAction,
        default=True,
        help="go on with what an earlier run left in DIR (default); --no-resume throws that away",
    )
    where = parser.add_mutually_exclusive_group()
    where.add_argument("--processes", type=_positive, metavar="N", help="run in N processes (default: one per core)")
    where.add_argument("--threads", type=_positive, metavar="N", help="run in N threads of this process")
    where.add_argument("--scheduler", metavar="tcp://HOST:PORT", help="run on a Dask cluster")
    return parser


def _options(asked: argparse.Namespace) -> Options:
    return Options(
        vehicles=_whole(asked.vehicles),
        candidates=_whole(asked.candidates),
        out=_whole(asked.out),
        pairs=asked.pairs,
        rule_pack=asked.rule_pack,
        season=asked.season,
        date=asked.date,
        only=asked.only,
        partition_rows=asked.partition_rows,
        resume=asked.resume,
        processes=asked.processes,
        threads=asked.threads,
        scheduler=asked.scheduler,
    )
