"""A copy of the project, and processes forked into it that have loaded other people's packages and nothing of ours."""

from __future__ import annotations

import gc
import importlib
import multiprocessing
import os
import resource
import shutil
import sys
from collections.abc import Callable
from importlib.metadata import entry_points
from multiprocessing.connection import Connection
from pathlib import Path
from typing import Any, NamedTuple

import pytest
from hypothesis import HealthCheck, Phase, settings

ROOT = Path(__file__).parents[2]
COPIED = (
    "service",
    "tests",
    "benchmarks",
    "demo_requests",
    "openapi",
    "deploy",
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "SECURITY.md",
)
# What takes long to import. Ours is imported in each process anew, with whatever is broken in it.
LOADED = (
    "babel",
    "fastapi.testclient",
    "httpx",
    "jinja2",
    "jsonschema",
    "numpy",
    "opentelemetry.sdk",
    "pandas",
    "pyarrow.parquet",
    "pydantic_settings",
    "structlog",
    "uvicorn",
    "yaml",
)
# Assertions stay as written, or pytest would complain of the packages that were loaded before it could rewrite them.
OPTIONS = ("--assert=plain", "-q", "-p", "no:cacheprovider", "-p", "no:xdist", "--hypothesis-profile=mutants")
# A machine that does other work as well may be this many times slower than its processor time says.
PATIENCE = 10


class Ended(NamedTuple):
    """What a process came to: its result, or none when it took more time than it was given."""

    result: Any
    in_time: bool


def copy_into(tree: Path) -> None:
    """Copy what the tests read, dates and bytecode included, and load what they import of others."""
    for name in COPIED:
        origin = ROOT / name
        (shutil.copytree if origin.is_dir() else shutil.copy2)(origin, tree / name)
    for name in LOADED:
        importlib.import_module(name)
    for plugin in entry_points(group="pytest11"):
        plugin.load()
    # Or each process would look through all of it at its end.
    gc.freeze()
    # Finding a failure is enough here: nobody reads the smallest case.
    settings.register_profile(
        "mutants",
        deadline=None,
        derandomize=True,
        database=None,
        suppress_health_check=[HealthCheck.too_slow],
        phases=[Phase.explicit, Phase.generate],
    )


def apart(tree: Path, processor_s: float, work: Callable[[], Any]) -> Ended:
    """Return what `work` returns in a process of its own inside `tree`."""
    forking = multiprocessing.get_context("fork")
    here, there = forking.Pipe(duplex=False)
    process = forking.Process(target=_enter, args=(tree, int(processor_s) + 1, work, there))
    process.start()
    there.close()
    try:
        in_time = here.poll(PATIENCE * processor_s)
        result = here.recv() if in_time else None
    except EOFError:
        in_time, result = False, None
    finally:
        process.kill()
        process.join()
    return Ended(result, in_time)


def run_tests(plugin: object, *options: str) -> int:
    """Run pytest here, quietly, and return its exit code."""
    return int(pytest.main([*OPTIONS, *options], plugins=[plugin]))


def _enter(tree: Path, processor_s: int, work: Callable[[], Any], there: Connection) -> None:
    resource.setrlimit(resource.RLIMIT_CPU, (processor_s, processor_s))
    os.chdir(tree)
    sys.path[0] = str(tree)
    os.environ["PYTHONPATH"] = str(tree)
    silence = os.open(os.devnull, os.O_RDWR)
    for stream in (0, 1, 2):
        os.dup2(silence, stream)
    there.send(work())
    there.close()
    os._exit(0)
