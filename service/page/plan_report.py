"""The printable plan: combinations, rims, pressures, effects, what a test may show, and the order of the runs."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite
from typing import Any

from markupsafe import Markup

from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.assessment.batch.plan import Plan
from service.assessment.batch.plan_effects import EFFECT_NAMES, EFFECTS, EffectName
from service.assessment.batch.plan_pairs import Pair
from service.assessment.batch.plan_words import (
    PRESENT,
    RULES,
    axle_text,
    blocks_text,
    effect_words,
    in_band,
    name_of,
    pair_text,
    repeats_text,
    rims_text,
)
from service.assessment.case import Case
from service.assessment.checks.words import plain
from service.core.numeric import known
from service.core.saying import Said, joined, listed, say
from service.core.version import VERSION
from service.drawing.lettering import clean
from service.drawing.marks import MARKS
from service.locales.speech import ENGLISH, Speech
from service.page.rendering import environment
from service.page.report import MOST_LABEL, style
from service.page.report_cells import NOT_KNOWN


def render_plan(case: Case, found: Plan, speech: Speech = ENGLISH) -> str:
    """Return the plan as a page that needs no other file, in the reader's language and units."""
    said = speech.say
    return (
        environment()
        .get_template("plan.html.j2")
        .render(
            said=said,
            say=lambda template, **parameters: said(say(template, **parameters)),
            language=speech.language,
            style=Markup(style(speech.language)),  # noqa: S704 - the project's own files, nothing from a caller
            marks=MARKS,
            rule=RULES[found.asked.pressure_rule],
            rims=rims_text(found),
            present_wheels=PRESENT,
            present=[axle_text(each) for each in found.present],
            combinations=list(_combinations(found)),
            effects=[effect_words(name) for name in _shown(found)],
            expected=list(_expected(found)),
            telling=[pair_text(found, each) for each in found.pairs if each.apart],
            alike=joined([_both(found, each) for each in found.pairs if not each.apart], "; "),
            repeats=[repeats_text(each) for each in found.repeats],
            runs=[_name(found, place) for place in found.order],
            blocks=int(found.blocks) if isfinite(found.blocks) else 1,
            order=blocks_text(found),
            measure_first=[each.text for each in found.measure_first],
            cautions=tuple(CAUTIONS.values()),
            version=VERSION,
            pack=case.pack,
            confidence=plain(100.0 * found.asked.confidence, 1, "%"),
            power=plain(100.0 * found.asked.power, 1, "%"),
        )
    )


def _name(found: Plan, place: int) -> str:
    """Return what a combination is called; what the caller calls it is cut."""
    name = name_of(found, place)
    return name if isinstance(name, Said) else clean(name, MOST_LABEL)


def _both(found: Plan, pair: Pair) -> Said:
    return listed([_name(found, pair.first), _name(found, pair.second)])


def _combinations(found: Plan) -> Iterator[dict[str, Any]]:
    for at, each in enumerate(found.combinations):
        yield {
            "name": _name(found, at),
            "verdict": each.verdict.replace("_", "-"),
            "verdict_words": VERDICT_WORDS[each.verdict],
            "reason": each.words.reason,
            "remedy": each.words.remedy,
            "wheels": (axle_text(each.front), axle_text(each.rear)),
        }


def _shown(found: Plan) -> list[EffectName]:
    """Return the effects that are known of any combination."""
    return [name for name in EFFECT_NAMES if any(known(each.value) for each in found.bands[name])]


def _expected(found: Plan) -> Iterator[tuple[str, list[str]]]:
    """Yield each combination with what is expected of it."""
    for at in range(len(found.combinations)):
        bands = {name: found.bands[name][at] for name in _shown(found)}
        yield (
            _name(found, at),
            [in_band(each, EFFECTS[name].unit) if known(each.value) else NOT_KNOWN for name, each in bands.items()],
        )
