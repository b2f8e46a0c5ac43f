"""What a translator finds after the sentences of the code have changed.

Reference: GNU gettext manual, "The Format of PO Files": a header entry says in which letters the file is written.
"""

import runpy
from io import BytesIO

import pytest
from babel.messages.catalog import Catalog
from babel.messages.pofile import PoFileError, read_po, write_po

from service.locales import messages, speech


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
    written = (tmp_path / f"{language}.po").read_bytes()
    assert b'"Content-Type: text/plain; charset=utf-8\\n"' in written
    found = read_po(BytesIO(written), locale=language)
    assert [(each.id, each.string, each.fuzzy) for each in found if each.id] == [
        ("The tyre is worn.", "", False),
        ("The rim fits.", "kept", False),
    ]
    assert not found.obsolete


def test_catalogues_are_written_only_when_the_file_is_run(monkeypatch):
    written = []
    monkeypatch.setattr("babel.messages.pofile.write_po", lambda *_, **__: written.append(1))
    runpy.run_path(messages.__file__, run_name="imported")
    assert written == []


def test_a_catalogue_that_is_not_well_formed_is_an_error_and_not_a_shorter_one(tmp_path, monkeypatch):
    (tmp_path / "de.po").write_text('msgid "The rim fits."\nmsgstr "Die Felge passt."\nmsgid unquoted\n', "utf-8")
    monkeypatch.setattr(speech, "__file__", str(tmp_path / "speech.py"))
    with pytest.raises(PoFileError):
        speech.catalogue.__wrapped__("de")
