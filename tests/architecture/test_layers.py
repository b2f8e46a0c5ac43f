"""Import direction, held by the contracts in pyproject.toml."""

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_rooms_import_only_to_their_right():
    command = [str(Path(sys.executable).with_name("lint-imports")), "--no-cache", "--no-logo"]
    run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert run.returncode == 0, run.stdout + run.stderr
