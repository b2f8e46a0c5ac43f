"""Languages that nobody speaks, made from every sentence of the house: one in brackets, one that is longer.

What stands outside the brackets was never said; what does not fit when it is longer will not fit in German or French.
"""

import re
from dataclasses import replace
from functools import cache

from service.assessment.answer.assess import Assessment
from service.core.saying import Said
from service.locales.speech import UNIT_CONTEXT, Language, Speech, Units
from tests.support.sentences import sentences

OPENED, CLOSED = "⟦", "⟧"
# Translations of short labels are longer than their English by this much and more: common practice, no source.
LONGER = 1.4
_FILLING = "äßelungenschaft"


@cache
def bracketed(units: Units = "metric") -> Speech:
    """Return how to speak with each sentence and each unit in brackets."""
    found = [each for each in sentences() if each.id]
    names = [f"{UNIT_CONTEXT}|{each.id}" if each.context == UNIT_CONTEXT else each.id for each in found]
    said = [f"{OPENED}{each.id}{CLOSED}" for each in found]
    return Speech("de", units, dict(zip(names, said, strict=True)))


@cache
def lengthened(units: Units = "metric", language: Language = "de") -> Speech:
    """Return how to speak with each word of each sentence longer; German numbers are in it."""
    return Speech(language, units, {each.id: longer(each.id) for each in sentences() if each.id and not each.context})


def longer(text: str) -> str:
    """Return the text with each word longer: nothing can be broken where English could not be."""
    return re.sub(r"\{\w+\}|[A-Za-z]+", _longer_word, text)


def longer_answer(found: Assessment) -> Assessment:
    """Return the assessment with what is no saying yet made longer all the same."""
    made = replace(
        found,
        findings=[
            each._replace(
                message=_longer_unsaid(each.message),
                remedy=each.remedy and each.remedy._replace(text=_longer_unsaid(each.remedy.text)),
            )
            for each in found.findings
        ],
    )
    # What is made when asked for is put where it would be kept.
    vars(made).update(
        summary=_longer_unsaid(found.summary),
        actions=[each._replace(text=_longer_unsaid(each.text)) for each in found.actions],
        trade_offs=tuple(each._replace(text=_longer_unsaid(each.text)) for each in found.trade_offs),
        assumptions=[_longer_unsaid(each) for each in found.assumptions],
    )
    return made


def outside(text: str) -> str:
    """Return what stands outside all brackets."""
    depth, left = 0, []
    for letter in text:
        depth += (letter == OPENED) - (letter == CLOSED)
        if not depth and letter != CLOSED:
            left.append(letter)
    return "".join(left)


def _longer_unsaid(text: str) -> str:
    return text if isinstance(text, Said) else longer(text)


def _longer_word(found: re.Match[str]) -> str:
    word = found[0]
    if word.startswith("{"):
        return word
    more = -int(-len(word) * (LONGER - 1.0) // 1)
    return word + (_FILLING * (more // len(_FILLING) + 1))[:more]
