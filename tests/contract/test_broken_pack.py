"""A rule pack with a fault stops the start: one line with file, line, rule and reason, no trace, exit code 2."""

import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture
def stopped(tmp_path: Path) -> subprocess.CompletedProcess[str]:
    """Return how the start ended of a copy whose Dutch pack lost the unit of its first rule."""
    shutil.copytree(ROOT / "service", tmp_path / "service", ignore=shutil.ignore_patterns("__pycache__"))
    pack = tmp_path / "service" / "rules" / "packs" / "nl.toml"
    pack.write_text(pack.read_text(encoding="utf-8").replace('unit = "%"\n', "", 1), encoding="utf-8")
    command = [sys.executable, "-m", "service", "serve", "--port", "0"]
    return subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, timeout=60, check=False)


def test_a_broken_pack_stops_the_start_and_names_the_line(stopped: subprocess.CompletedProcess[str]) -> None:
    assert stopped.returncode == 2
    assert stopped.stderr.strip() == "nl.toml:34: law.track_change: unit is missing"
