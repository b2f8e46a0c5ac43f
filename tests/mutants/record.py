"""Which test reaches which line, and what it costs: each test file is run once, whole, in a process of its own."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from coverage import Coverage

from tests.mutants.apart import apart, run_tests

# More than any test file takes.
FILE_S = 1200.0
# Events of the interpreter that say that a test hands its work to another process, whose lines nobody sees.
_HANDED_ON = ("subprocess.Popen", "os.fork", "os.posix_spawn")


class Test(NamedTuple):
    """A test that passes as long as nothing is broken."""

    __test__ = False
    name: str
    file: str
    cost_s: float


class Record(NamedTuple):
    """The tests of a room; for each file the tests and test files (while they are imported) that reach its lines.

    A file that is not Python has one line, 0: it is reached by who reads it.
    """

    tests: tuple[Test, ...]
    reached: dict[str, dict[int, set[str]]]
    # Tests that start a process: they may reach anything.
    anywhere: set[str]


def processor_s() -> float:
    """Return the processor time of this process and of those that it started and waited for."""
    return sum(os.times()[:4])


def record(tree: Path, files: list[Path]) -> Record:
    """Return what the test files reach in the unbroken tree."""
    made = Record((), {}, set())
    for each in (_of_file(tree, str(file.relative_to(tree))) for file in files):
        made = Record(made.tests + each.tests, made.reached, made.anywhere | each.anywhere)
        for path, lines in each.reached.items():
            for line, by in lines.items():
                made.reached.setdefault(path, {}).setdefault(line, set()).update(by)
    return made


@cache
def _of_file(tree: Path, name: str) -> Record:
    """Run a test file, once though several rooms ask for it; tests that fail with nothing broken are left out."""
    ended = apart(tree, FILE_S, lambda: _seen_in(name))
    found, failing = ended.result or (Record((), {}, set()), [name])
    for each in failing:
        print(f"? left out, as it fails with nothing broken: {each}", flush=True)
    return found


def _seen_in(name: str) -> tuple[Record, list[str]]:
    seen = _Seen(name)
    seen.coverage.start()
    code = run_tests(seen, name)
    seen.coverage.stop()
    failing = seen.failing or ([name] if code not in (0, 5) else [])
    tests = tuple(test for test in seen.tests if test.name not in failing)
    return Record(tests, seen.reached(), seen.anywhere), failing


class _Seen:
    """The plugin that writes down what happens during a test."""

    def __init__(self, name: str) -> None:
        self.file = self.now = name
        self.tests: list[Test] = []
        self.failing: list[str] = []
        self.anywhere: set[str] = set()
        self._read: dict[str, dict[int, set[str]]] = {}
        # The tracer in C is the one that knows contexts on every Python.
        self.coverage = Coverage(data_file=None, config_file=False, include=[f"{Path.cwd()}/service/*"])
        self.coverage.set_option("run:core", "ctrace")
        sys.addaudithook(self._heard)

    def _heard(self, event: str, arguments: tuple[Any, ...]) -> None:
        if event in _HANDED_ON:
            self.anywhere.add(self.now)
        elif event == "open" and f"{Path.cwd()}/service/" in str(arguments[0]):
            path = str(Path(str(arguments[0])).relative_to(Path.cwd()))
            self._read.setdefault(path, {}).setdefault(0, set()).add(self.now)

    @pytest.hookimpl(wrapper=True)
    def pytest_runtest_protocol(self, item: pytest.Item) -> Iterator[None]:
        self.now = item.nodeid
        self.coverage.switch_context(item.nodeid)
        began = processor_s()
        outcome = yield
        self.tests.append(Test(item.nodeid, self.file, processor_s() - began))
        return outcome

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        if report.failed:
            self.failing.append(report.nodeid)

    def reached(self) -> dict[str, dict[int, set[str]]]:
        """Return who reached which line of which file."""
        data = self.coverage.get_data()
        reached = self._read
        for path in data.measured_files():
            by_line = {line: {by or self.file for by in names} for line, names in data.contexts_by_lineno(path).items()}
            reached[str(Path(path).relative_to(Path.cwd()))] = by_line
        return reached
