"""Each loaded pack against its stored rendering: no reference, a guard that shows a change of law in review."""

import pytest

from service.rules.reader import default_packs
from tests.unit.rules.rendering import GOLDEN, render

RENDER_ANEW = "run `python -m tests.unit.rules.rendering` and look at the difference before committing it"


@pytest.mark.parametrize("name", sorted(default_packs()))
def test_the_loaded_pack_says_what_its_golden_file_says(name):
    golden = GOLDEN / f"{name}.json"
    stored = golden.read_text(encoding="utf-8") if golden.exists() else ""
    assert render(default_packs()[name]) == stored, RENDER_ANEW


def test_every_golden_file_has_its_pack():
    assert {path.stem for path in GOLDEN.glob("*.json")} - set(default_packs()) == set(), "remove what has no pack"
