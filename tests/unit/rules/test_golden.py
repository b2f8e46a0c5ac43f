"""Each loaded pack against its stored rendering: no reference, a guard that shows a change of law in review."""

import pytest

from service.rules.reader import default_packs
from tests.unit.rules.rendering import GOLDEN, render


@pytest.mark.parametrize("name", sorted(default_packs()))
def test_the_loaded_pack_says_what_its_golden_file_says(name):
    assert render(default_packs()[name]) == (GOLDEN / f"{name}.json").read_text(encoding="utf-8")


def test_every_golden_file_has_its_pack():
    assert {path.stem for path in GOLDEN.glob("*.json")} == set(default_packs())
