"""A broken place is tried by the tests that reach it, the cheapest first."""

from __future__ import annotations

import ast
import os
import sys
from itertools import accumulate, takewhile
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.mutants.apart import ROOT, apart, run_tests
from tests.mutants.python_lines import Site
from tests.mutants.record import Record, Test

# Processor time for the tests of one place.
PLACE_S = 60.0
# Most places are noticed by one of the first few: the files of the others need not even be read.
FIRST = 10


class Tried(NamedTuple):
    """The test that noticed, if any, and whether all that reach the place were run."""

    noticed_by: str
    complete: bool


def tried(site: Site, seen: Record, tree: Path) -> Tried:
    """Break the place in the tree, run its tests and put the file back as it was."""
    asked = tests_for(site, seen)
    spent = accumulate(test.cost_s for test in asked)
    afforded = [test for test, _ in takewhile(lambda pair: pair[1] < PLACE_S, zip(asked, spent, strict=True))]
    target = tree / site.path.relative_to(ROOT)
    whole, dates = target.read_bytes(), target.stat()
    target.write_bytes(whole[: site.start] + site.after.encode() + whole[site.end :])
    # Bytecode is taken for current by the second and the size of its source.
    os.utime(target, (dates.st_atime, dates.st_mtime + 7))
    known = frozenset(test.name for test in seen.tests)
    try:
        for batch in (afforded[:FIRST], afforded[FIRST:]):
            if not batch:
                continue
            ended = apart(tree, 2 * PLACE_S, lambda batch=batch: _first_failing(batch, known))
            if ended.result or not ended.in_time:
                return Tried(ended.result or "", ended.in_time)
    finally:
        target.write_bytes(whole)
        os.utime(target, ns=(dates.st_atime_ns, dates.st_mtime_ns))
    return Tried("", len(afforded) == len(asked))


def tests_for(site: Site, seen: Record) -> list[Test]:
    """Return the tests that reach the place, then those that may: what is cached or imported is reached but once."""
    lines = seen.reached.get(str(site.path.relative_to(ROOT)), {})
    places = range(*_statement(site)) if site.path.suffix == ".py" else (0,)
    reaching = {name for line in places for name in lines.get(line, ())}
    near = {name for names in lines.values() for name in names}
    files = {name.partition("::")[0] for name in reaching | seen.anywhere}

    def order(test: Test) -> tuple[int, float]:
        return (0 if test.name in reaching else 1 if test.name in near | seen.anywhere else 2, test.cost_s)

    return sorted((test for test in seen.tests if test.file in files), key=order)


def _statement(site: Site) -> tuple[int, int]:
    """Return the first line of the statement around a place, if not a decorator's, and the line after its last."""
    inside = [
        node.lineno
        for node in ast.walk(ast.parse(site.path.read_bytes()))
        if isinstance(node, ast.stmt) and node.lineno <= site.line <= (node.end_lineno or 0)
    ]
    return max(inside, default=site.line), site.line + site.before.count("\n") + 1


def _first_failing(batch: list[Test], known: frozenset[str]) -> str:
    sys.dont_write_bytecode = True
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    chosen = _Chosen(batch, known)
    code = run_tests(chosen, "-x", *dict.fromkeys(test.file for test in batch))
    return chosen.failed or ("the start" if code not in (0, 5) else "")


class _Chosen:
    """The plugin that leaves the chosen tests, in their order, and those that only the broken place makes."""

    def __init__(self, batch: list[Test], known: frozenset[str]) -> None:
        self.order = {test.name: place for place, test in enumerate(batch)}
        self.known = known
        self.failed = ""

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items[:] = [item for item in items if item.nodeid in self.order or item.nodeid not in self.known]
        items.sort(key=lambda item: self.order.get(item.nodeid, len(self.order)))

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed and not self.failed:
            self.failed = report.nodeid

    def pytest_collectreport(self, report: pytest.CollectReport) -> None:
        if report.failed and not self.failed:
            self.failed = f"{report.nodeid} while it was collected"
