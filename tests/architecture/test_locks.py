"""The lock files: same versions for running and developing, a hash for every pin, no address of any machine."""

import re
import tomllib
from pathlib import Path

import pytest

import service

ROOT = Path(__file__).parents[2]
PIN = re.compile(r"^([a-z0-9-]+)==(\S+)(?: ; [^\\]+)? \\$")
LOCKS = ("requirements.lock", "requirements-dev.lock", "requirements-fuzz.lock")


def _lines(name: str) -> list[str]:
    lines = (ROOT / name).read_text(encoding="utf-8").splitlines()
    return [line for line in lines if not line.lstrip().startswith("#")]


def _pins(name: str) -> set[tuple[str, ...]]:
    return {found.groups() for line in _lines(name) if (found := PIN.match(line))}


@pytest.mark.parametrize("name", LOCKS)
def test_a_lock_holds_pins_and_hashes_and_nothing_else(name):
    hashed = re.compile(r"^    --hash=sha256:[0-9a-f]{64}( \\)?$")
    assert [line for line in _lines(name) if not PIN.match(line) and not hashed.match(line)] == []


def test_what_runs_is_what_is_developed_with():
    assert _pins("requirements.lock") - _pins("requirements-dev.lock") == set()


def test_the_package_and_the_project_have_one_version():
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    assert project["version"] == service.__version__
