"""The printable report: what must be done, why, before and after in numbers, drawings, sources, cautions."""

from __future__ import annotations

from functools import cache
from typing import Any, Final

from markupsafe import Markup

from service.assessment.answer.action import Action
from service.assessment.answer.assess import Assessment
from service.assessment.answer.trade_offs import trade_offs_text
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.assessment.checks.balance import balance
from service.core.findings import MET, OPEN
from service.core.saying import capitalised, say
from service.core.version import VERSION
from service.drawing import paper
from service.drawing.lettering import clean
from service.drawing.marks import MARKS
from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from service.drawing.terms import AXLES
from service.locales.speech import ENGLISH, Language, Say, Speech, speech
from service.page.rendering import asset, environment, source_of
from service.page.report_cells import Writer
from service.page.report_question import question
from service.page.report_rows import groups
from service.page.report_sources import STATUS_KEY, documents
from service.page.report_table import axle_lines
from service.page.report_vehicle import vehicle_lines

MOST_LABEL: Final = 80
KIND: Final = say("Fitment report")
WHOLE: Final = say("Whole vehicle")
# The groups of findings that nobody must act on.
QUIET: Final = ("met", "open")
# More reasons than that are not read at a glance.
FEW_REASONS: Final = 2
# Reasons of which the drawing shows why: where the wheel stands and what it may touch.
IN_THE_DRAWING: Final = ("clearance.", "rim.brake_clearance", "track.")
MARGIN_FONT: Final = 'font:7pt "Segoe UI",Roboto,Arial,"Liberation Sans","DejaVu Sans",sans-serif'


@cache
def style(language: Language = "en") -> str:
    """Return the style of the report and of the drawings in it; the margins of a printed page speak the language."""
    return asset("report.css") + margins(speech(language).say) + paper.STYLE


@cache
def policy(language: Language = "en") -> str:
    """Return the content security policy of the report: its own style and nothing else."""
    return f"default-src 'none'; style-src {source_of(style(language))}; frame-ancestors 'none'; base-uri 'none'"


def margins(said: Say) -> str:
    """Return the rules for the margins of a printed page: what it is, and its number of how many."""
    # A style sheet knows the numbers only while it prints: they stand between the pieces of the sentence.
    numbered = said(say("{page} of {pages}", page="\n1", pages="\n2"))
    content = _css(numbered).replace("\n1", '" counter(page) "').replace("\n2", '" counter(pages) "')
    return (
        f"@page{{@bottom-left{{content:{_css(said(KIND))};{MARGIN_FONT}}}"
        f"@bottom-right{{content:{content};{MARGIN_FONT}}}}}\n"
    )


def _css(text: str) -> str:
    """Return a text as a style sheet writes it; a translator's `</style>` would end the sheet."""
    escaped = text.replace("\\", "\\\\").replace('"', '\\"').replace("<", "\\3c ")
    return f'"{escaped}"'


def render_report(found: Assessment, speech: Speech = ENGLISH) -> str:
    """Return the report as a page that needs no other file, in the reader's language and units."""
    said = speech.say
    told, numbers = documents(found.findings)
    answered = list(groups(found.findings, numbers, said))
    return (
        environment()
        .get_template("report.html.j2")
        .render(
            said=said,
            say=lambda template, **parameters: said(say(template, **parameters)),
            language=speech.language,
            style=Markup(style(speech.language)),  # noqa: S704 - the project's own files, nothing from a caller
            kind=KIND,
            label=clean(found.case.candidate.label, MOST_LABEL),
            is_short=is_short(found),
            marks=MARKS,
            reasons=[each for each in answered if each.style not in QUIET],
            quiet=[each for each in answered if each.style in QUIET],
            documents=told,
            status_key=STATUS_KEY,
            **_answer(found, said),
            **_shown(found, speech),
        )
    )


def is_short(found: Assessment) -> bool:
    """Return whether the answer is said in a few lines, so that one page of paper is enough for what counts."""
    reasons = [each for each in found.findings if each.outcome not in (MET, OPEN)]
    return len(reasons) <= FEW_REASONS and not any(each.code.startswith(IN_THE_DRAWING) for each in reasons)


def _answer(found: Assessment, said: Say) -> dict[str, Any]:
    """Return the words of the answer for the template."""
    words = VERDICT_WORDS[found.verdict]
    return {
        "verdict": found.verdict.replace("_", "-"),
        "verdict_words": words,
        "summary": _without_words(said(found.summary), said(words)),
        "question": question(found),
        "trade_offs": trade_offs_text(found.trade_offs),
        "balance": balance(found.car).text,
        "actions": [(each.text, _weight(each)) for each in found.actions],
        "assumptions": found.assumptions,
        "cautions": tuple(found.cautions.values()),
        "version": VERSION,
        "pack": found.case.pack,
    }


def _shown(found: Assessment, speech: Speech) -> dict[str, Any]:
    """Return the tables and the drawings for the template."""
    write = Writer(speech)
    tables = (
        (AXLES["front"], list(axle_lines(found, found.car.front, write))),
        (AXLES["rear"], list(axle_lines(found, found.car.rear, write))),
        (WHOLE, list(vehicle_lines(found, write))),
    )
    return {
        "tables": [(title, lines) for title, lines in tables if lines],
        "section": Markup(draw_section(found, speech=speech, styled=False)),  # noqa: S704 - the XML writer has escaped every text in it
        "patches": Markup(draw_patches(found, speech=speech, styled=False)),  # noqa: S704 - the same
    }


def _weight(action: Action) -> str:
    """Return how a line of the job card is set: danger, a pressure, or nothing special."""
    if action.code in ("do_not_fit", "would_not_fit", "settle_first"):
        return "danger"
    return "pressure" if action.code.startswith("set_pressure") else ""


def _without_words(summary: str, words: str) -> str:
    """Return the summary without the verdict, which the heading has said already; both as the reader sees them."""
    return capitalised(summary.removeprefix(words).lstrip(":. "))
