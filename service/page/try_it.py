"""The page: a question of tyres and rims and its answer, with the scripts, styles and examples that it asks for."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache
from typing import Any, Final

from service.core.saying import say
from service.core.version import VERSION
from service.drawing import paper
from service.drawing.marks import MARKS
from service.locales.speech import ENGLISH, LANGUAGES, Language, Speech, speech
from service.page import fields, report
from service.page.rendering import environment, source_of

SCRIPTS: Final = (
    "page.js",
    "state.js",
    "requests.js",
    "question.js",
    "dress.js",
    "grid.js",
    "faults.js",
    "examples.js",
    "reach.js",
    "sizes.js",
    "units.js",
    "words.js",
    "ask.js",
    "keep.js",
    "answer.js",
    "dom.js",
    "kept.js",
    "findings.js",
    "remedies.js",
    "unanswered.js",
    "columns.js",
    "figures.js",
    "drawn.js",
    "wheels.js",
    "search.js",
    "as_column.js",
)
STYLES: Final = ("page.css", "answer.css")
FILES: Final = {
    **{f"/{name}": ("text/javascript", name) for name in SCRIPTS},
    **{f"/{name}": ("text/css", name) for name in STYLES},
    "/page.svg": ("image/svg+xml", "page.svg"),
    "/examples.json": ("application/json", "examples.json"),
}
# Each language in its own words, which no other language changes.
LANGUAGE_NAMES: Final = {"en": "English", "de": "Deutsch", "fr": "Français", "es": "Español", "nl": "Nederlands"}


@cache
def page(language: Language = "en") -> str:
    """Return the page in a language."""
    spoken = speech(language) if language != "en" else ENGLISH
    said = spoken.say
    return (
        environment()
        .get_template("index.html.j2")
        .render(
            said=said,
            say=lambda template, **parameters: said(say(template, **parameters)),
            language=language,
            languages=[(each, LANGUAGE_NAMES[each]) for each in LANGUAGES],
            fields=fields,
            labels=_labels(spoken),
            scripts=SCRIPTS,
            styles=STYLES,
            marks=MARKS,
            version=VERSION,
        )
    )


def faults(told: Iterable[tuple[str, str]], spoken: Speech) -> str:
    """Return the page that says what a form without its script has to correct: labels and what is wrong."""
    said = spoken.say
    return (
        environment()
        .get_template("faults.html.j2")
        .render(
            said=said,
            say=lambda template, **parameters: said(say(template, **parameters)),
            language=spoken.language,
            faults=list(told),
        )
    )


def _labels(spoken: Speech) -> dict[str, str]:
    """Return the labels of the fields by pointer, for the scripts."""
    return {each.pointer: spoken.say(each.label) for each in fields.every_field()}


@cache
def policy() -> str:
    """Return the content security policy of the page.

    The style of a report and that of a drawing are admitted because what a page opens from memory inherits its policy.
    """
    reports: list[Any] = sorted({source_of(report.style(each)) for each in LANGUAGES})
    styles = " ".join(["'self'", *reports, paper.style_hash()])
    return (
        f"default-src 'none'; script-src 'self'; style-src {styles}; img-src 'self' blob:; connect-src 'self'; "
        "frame-ancestors 'none'; base-uri 'none'; form-action 'self'"
    )
