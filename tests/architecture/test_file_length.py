"""A file holds one idea; past 300 lines it holds two."""

from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MOST_LINES = 300
FILES = sorted(
    path for room in ("service", "benchmarks", "demo_requests", "fuzz") for path in ROOT.glob(f"{room}/**/*.py")
)


@pytest.mark.parametrize("path", FILES, ids=[str(path.relative_to(ROOT)) for path in FILES])
def test_no_file_is_longer_than_300_lines(path):
    assert len(path.read_text(encoding="utf-8").splitlines()) <= MOST_LINES


@pytest.mark.parametrize(
    "folder",
    sorted({path.parent for path in FILES if path.is_relative_to(ROOT / "service")}),
    ids=lambda folder: str(folder.relative_to(ROOT)),
)
def test_every_room_says_in_one_docstring_what_it_is(folder):
    assert (folder / "__init__.py").read_text(encoding="utf-8").startswith('"""')
