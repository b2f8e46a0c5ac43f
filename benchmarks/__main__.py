"""`python -m benchmarks [--only NAME ...]`: measure, and write the table to the terminal.

Ratios are taken side by side in one run, since a machine is never twice the same; the other numbers are this
machine's, at the load shown.
"""

from __future__ import annotations

import argparse
import shutil
import sys
import time
from collections.abc import Callable, Iterator

from benchmarks import offline, web
from benchmarks.place import LOAD_CORE, described
from benchmarks.web import Row

MEASUREMENTS: dict[str, Callable[[], Iterator[Row]]] = {
    "check": web.check,
    "compare": web.compare,
    "search": web.search,
    "probe": web.probe,
    "work": offline.in_process,
    "sweep": offline.sweep,
    "shapes": offline.shapes,
    "memory": web.memory,
}
WIDTH = 46


def main() -> int:
    """Measure what is asked for and return the exit code."""
    parser = argparse.ArgumentParser(prog="python -m benchmarks", description=__doc__)
    parser.add_argument("--only", nargs="+", choices=MEASUREMENTS, default=list(MEASUREMENTS), metavar="NAME")
    asked = parser.parse_args()
    lacking = [tool for tool in ("wrk", "taskset") if shutil.which(tool) is None]
    if lacking:
        print(f"needed and not installed: {', '.join(lacking)}", file=sys.stderr)
        return 2
    started = time.monotonic()
    print(f"{described()}\nserver pinned to one core, load to core {LOAD_CORE}\n")
    print(f"{'measured':{WIDTH}}{'found (goal)'}")
    for name in asked.only:
        for row in MEASUREMENTS[name]():
            goal = f"  (goal {row.goal})" if row.goal else ""
            print(f"{row.what:{WIDTH}}{row.found}{goal}", flush=True)
    print(f"\n{described()}\nmeasured in {time.monotonic() - started:.0f} s")
    return 0


if __name__ == "__main__":
    sys.exit(main())
