"""`python -m tests.mutants`: break a seeded sample of lines and values, room by room, and list what no test noticed."""

from __future__ import annotations

import argparse
import random
import tempfile
from pathlib import Path
from typing import NamedTuple

from tests.mutants.apart import ROOT, copy_into
from tests.mutants.data_values import data_sites
from tests.mutants.python_lines import Site, python_sites
from tests.mutants.record import Record, processor_s, record
from tests.mutants.rooms import BLIND, ROOMS, Room
from tests.mutants.trial import tried

_HEADINGS = ("room", "places", "tried", "noticed", "slipped", "cut", "share", "minutes")


class Count(NamedTuple):
    """What became of a room's sample; `cut` are places whose tests take longer than a place is given.

    The minutes are of the processor: what else the machine does lengthens the wait, not them.
    """

    places: int
    tried: int
    noticed: int
    slipped: int
    cut: int
    minutes: float


def main() -> None:
    """Break a sample of each room and print what was noticed."""
    asked = argparse.ArgumentParser(prog="python -m tests.mutants", description=__doc__)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--sample", type=int, default=20, help="how many places of each room")
    asked.add_argument("--room", action="append", choices=ROOMS, help="only these rooms")
    options = asked.parse_args()
    counts = {}
    with tempfile.TemporaryDirectory() as made:
        tree = Path(made).resolve()
        copy_into(tree)
        for name in options.room or ROOMS:
            print(name, flush=True)
            counts[name] = _room(ROOMS[name], tree, options.sample, f"{options.seed} {name}")
    _print_table(counts)


def _room(room: Room, tree: Path, size: int, seed: str) -> Count:
    began = processor_s()
    sites = sites_of(room)
    chosen = sorted(random.Random(seed).sample(sites, min(size, len(sites))))
    files = sorted({file for pattern in room.tests for file in (tree / "tests").glob(pattern)})
    names = [file for file in files if file.match("test_*.py") and str(file.relative_to(tree)) not in BLIND]
    seen = record(tree, names)
    marks = [_try_and_tell(site, seen, tree) for site in chosen]
    noticed, slipped, cut = (marks.count(mark) for mark in ("noticed", "SLIPPED", "CUT"))
    return Count(len(sites), len(chosen), noticed, slipped, cut, (processor_s() - began) / 60)


def sites_of(room: Room) -> list[Site]:
    """Return every place of a room that can be broken."""
    paths = sorted(path for pattern in room.broken for path in ROOT.glob(pattern))
    return [site for path in paths for site in (python_sites(path) if path.suffix == ".py" else data_sites(path))]


def _try_and_tell(site: Site, seen: Record, tree: Path) -> str:
    by, complete = tried(site, seen, tree)
    mark = "noticed" if by else "SLIPPED" if complete else "CUT"
    change = f"{site.before[:60]!r} -> {site.after[:60]!r}"
    print(f"{mark:>9}  {site.path.relative_to(ROOT)}:{site.line}  {change}  {by}", flush=True)
    return mark


def _print_table(counts: dict[str, Count]) -> None:
    print(("\n{:12}" + "{:>9}" * 7).format(*_HEADINGS))
    for name, count in counts.items():
        share = f"{count.noticed / count.tried:.0%}" if count.tried else "-"
        print(f"{name:12}" + "".join(f"{each:>9}" for each in (*count[:-1], share, f"{count.minutes:.1f}")))


if __name__ == "__main__":
    main()
