"""What a translator finds after the sentences of the code have changed."""

from io import BytesIO

import pytest
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from service.locales import messages


@pytest.mark.parametrize("language", ["de", "fr", "es", "nl"])
def test_a_new_sentence_has_no_translation_and_one_that_is_gone_leaves(tmp_path, monkeypatch, language):
    held = Catalog(locale=language)
    held.add("The rim fits.", "kept")
    held.add("The tyre is torn.", "a guess for its neighbour")
    file = BytesIO()
    write_po(file, held)
    (tmp_path / f"{language}.po").write_bytes(file.getvalue())
    wanted = Catalog()
    for text in ("The tyre is worn.", "The rim fits."):
        wanted.add(text)
    monkeypatch.setattr(messages, "messages", lambda: wanted)
    monkeypatch.setattr(messages, "__file__", str(tmp_path / "messages.py"))
    messages.update()
    found = read_po(BytesIO((tmp_path / f"{language}.po").read_bytes()), locale=language)
    assert [(each.id, each.string, each.fuzzy) for each in found if each.id] == [
        ("The tyre is worn.", "", False),
        ("The rim fits.", "kept", False),
    ]
    assert not found.obsolete
