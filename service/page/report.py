"""The printable report: question, verdict, drawings, findings with their sources, actions, cautions."""

from __future__ import annotations

from functools import cache
from typing import Final

from markupsafe import Markup

from service.assessment.answer.action import Action
from service.assessment.answer.assess import Assessment
from service.assessment.answer.trade_offs import trade_offs_text
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.assessment.checks.balance import balance
from service.core.saying import capitalised, say
from service.core.version import VERSION
from service.drawing import paper
from service.drawing.lettering import clean
from service.drawing.marks import MARKS
from service.drawing.patches import draw_patches
from service.drawing.section import draw_section
from service.locales.speech import ENGLISH, Language, Say, Speech, speech
from service.page.rendering import asset, environment, source_of
from service.page.report_question import question, wheels
from service.page.report_rows import groups
from service.page.report_sources import STATUS_KEY, documents

MOST_LABEL: Final = 80
KIND: Final = say("Fitment report")
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
    case, said = found.case, speech.say
    told, numbers = documents(found.findings)
    return (
        environment()
        .get_template("report.html.j2")
        .render(
            said=said,
            say=lambda template, **parameters: said(say(template, **parameters)),
            language=speech.language,
            style=Markup(style(speech.language)),  # noqa: S704 - the project's own files, nothing from a caller
            section=Markup(draw_section(found, speech=speech, styled=False)),  # noqa: S704 - the XML writer has escaped every text in it
            patches=Markup(draw_patches(found, speech=speech, styled=False)),  # noqa: S704 - the same
            kind=KIND,
            label=clean(case.candidate.label, MOST_LABEL),
            verdict=found.verdict.replace("_", "-"),
            verdict_words=VERDICT_WORDS[found.verdict],
            summary=_without_words(said(found.summary), said(VERDICT_WORDS[found.verdict])),
            question=question(found),
            wheels=list(wheels(found)),
            trade_offs=trade_offs_text(found.trade_offs),
            balance=balance(found.car).text,
            groups=list(groups(found.findings, numbers, said)),
            documents=told,
            status_key=STATUS_KEY,
            actions=[(each.text, _weight(each)) for each in found.actions],
            marks=MARKS,
            assumptions=found.assumptions,
            cautions=tuple(found.cautions.values()),
            version=VERSION,
            pack=case.pack,
        )
    )


def _weight(action: Action) -> str:
    """Return how a line of the job card is set: danger, a pressure, or nothing special."""
    if action.code in ("do_not_fit", "would_not_fit", "settle_first"):
        return "danger"
    return "pressure" if action.code.startswith("set_pressure") else ""


def _without_words(summary: str, words: str) -> str:
    """Return the summary without the verdict, which the heading has said already; both as the reader sees them."""
    return capitalised(summary.removeprefix(words).lstrip(":. "))
