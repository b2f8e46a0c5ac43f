"""Every sentence that a catalogue must have: calls of `say` in code and templates, texts of rule packs, units."""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po, write_po

from service.locales.speech import IMPERIAL, LANGUAGES, UNIT_CONTEXT

SERVICE = Path(__file__).parent.parent
# What stands behind numbers and is not the same in every language.
UNITS = ("in", "inch", "km/h", "points", "deg/g", *(each.unit for each in IMPERIAL.values() if each.unit != "in"))
# How the sentences of a file are found; a template that cannot be read is an error, not one without sentences.
METHODS = [("**.py", "python"), ("**.j2", "jinja2.ext:babel_extract")]
OPTIONS = {"**.j2": {"silent": "false"}}
# Keys of a rule pack whose texts are sentences for the caller.
PACK_SENTENCES = ("message", "title", "place", "notes", "not_held")


def messages() -> Catalog:
    """Return the template of all catalogues: message ids in the order of the files, with where each stands."""
    found = Catalog(project="fitment-service", charset="utf-8")
    for place, line, text, comments, _ in extract_from_dir(
        SERVICE, METHODS, OPTIONS, keywords={"say": None}, comment_tags=("Say:",)
    ):
        found.add(text, locations=[(place, line)], auto_comments=comments)
    for pack in sorted((SERVICE / "rules").rglob("*.toml")):
        for text in _sentences(tomllib.loads(pack.read_text("utf-8"))):
            found.add(text, locations=[(str(pack.relative_to(SERVICE)), 1)])
    for unit in UNITS:
        found.add(unit, context=UNIT_CONTEXT)
    return found


def update() -> None:
    """Bring every catalogue up to the sentences of the code: new ones without a translation, none that is gone."""
    wanted = messages()
    for language in LANGUAGES[1:]:
        path = Path(__file__).parent / f"{language}.po"
        held = read_po(BytesIO(path.read_bytes()), locale=language) if path.exists() else Catalog(locale=language)
        held.update(wanted, no_fuzzy_matching=True)
        held.obsolete.clear()
        with path.open("wb") as file:
            write_po(file, held, width=120, omit_header=False, sort_output=False)


def _sentences(table: object) -> Iterator[str]:
    if isinstance(table, list):
        for each in table:
            yield from _sentences(each)
    elif isinstance(table, dict):
        for key, value in table.items():
            if key in PACK_SENTENCES and isinstance(value, str):
                yield value
            elif key in PACK_SENTENCES and isinstance(value, list):
                yield from (each for each in value if isinstance(each, str))
            else:
                yield from _sentences(value)


if __name__ == "__main__":
    update()
