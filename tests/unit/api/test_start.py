"""A service that lacks its rules does not start."""

from __future__ import annotations

import pytest

from service.app import create_app
from service.rules import reader
from service.settings import load_settings


@pytest.fixture
def broken_pack(tmp_path, monkeypatch):
    (tmp_path / "xx.toml").write_text('id = "xx"\ntitle = 3\n', encoding="utf-8")
    monkeypatch.setattr(reader, "PACKS_DIRECTORY", tmp_path)
    reader.default_packs.cache_clear()
    yield
    reader.default_packs.cache_clear()


@pytest.mark.usefixtures("broken_pack")
def test_a_broken_rule_pack_stops_the_start():
    with pytest.raises(reader.PackError, match=r"xx\.toml"):
        create_app(load_settings({}))
