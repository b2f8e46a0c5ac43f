"""Sentences that can be said in another language.

A `Said` is the English sentence itself, a text like any other, and remembers its template and what fills it. The
template is the message id of the catalogues in `locales`; `locales/speech.py` says it again in the caller's language
and units. What is put into a template is a text too: an `Amount`, another `Said`, or a plain text that no language
changes (a designation, an article of a law).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Self

MINUS = "\N{MINUS SIGN}"


def number_in_words(value: float, digits: int, *, signed: bool) -> str:
    """Return the number with at most this many decimals, no idle zeros, a true minus; a plus too where `signed`."""
    text = f"{abs(value):.{digits}f}"
    if digits:
        text = text.rstrip("0").rstrip(".")
    if text == "0":
        return text
    return MINUS + text if value < 0 else f"+{text}" if signed else text


class Amount(str):
    """A number as a sentence shows it, `1.6 mm`: its value, unit and most decimals, so that it can be shown otherwise.

    `bare` leaves the unit out of the text (`8` in `8 to 9.5 in`), `signed` puts a plus before what is above zero.
    """

    __slots__ = ("bare", "digits", "signed", "unit", "value")

    value: float
    unit: str
    digits: int
    signed: bool
    bare: bool

    def __new__(
        cls, value: float, unit: str = "", digits: int = 0, *, signed: bool = False, bare: bool = False
    ) -> Self:
        """Return the amount with its English text."""
        number = number_in_words(value, digits, signed=signed)
        made = super().__new__(cls, f"{number} {unit}" if unit and not bare else number)
        made.value, made.unit, made.digits, made.signed, made.bare = value, unit, digits, signed, bare
        return made


class Said(str):
    """A sentence, or a part of one, in English; `template` is its message id, `parameters` are what fills it.

    `capital` says that it begins a sentence though its template does not.
    """

    __slots__ = ("capital", "parameters", "template")

    template: str
    parameters: Mapping[str, str]
    capital: bool

    def __new__(cls, template: str, parameters: Mapping[str, str], *, capital: bool = False) -> Self:
        """Return the sentence with its English text."""
        text = template.format_map(parameters) if parameters else template
        made = super().__new__(cls, capitalised(text) if capital else text)
        made.template, made.parameters, made.capital = template, parameters, capital
        return made


def say(template: str, /, **parameters: str) -> Said:
    """Return the sentence; the catalogues hold each template that stands in a call of this name.

    A template is a whole clause at least: word order and endings differ between languages.
    """
    return Said(template, parameters)


def capital(text: str) -> Said:
    """Return the text as the beginning of a sentence."""
    if isinstance(text, Said):
        return Said(text.template, text.parameters, capital=True)
    return Said("{text}", {"text": text}, capital=True)


def sentences(*said: str) -> Said:
    """Return the sentences behind one another; empty ones are left out."""
    return _joined([each for each in said if each], " ")


def joined(texts: Iterable[str], between: str = ", ") -> Said:
    """Return the texts with the same sign between them."""
    return _joined(list(texts), between)


def listed(texts: Sequence[str]) -> Said:
    """Return the texts as a list in words: `a, b and c`."""
    if len(texts) < 2:  # noqa: PLR2004 - two are the least that an "and" joins
        return _joined(texts, "")
    return say("{first} and {last}", first=_joined(texts[:-1], ", "), last=texts[-1])


def capitalised(text: str) -> str:
    """Return the text with its first letter as a capital."""
    return text[:1].upper() + text[1:]


def _joined(texts: Sequence[str], between: str) -> Said:
    names = [f"part{place}" for place in range(len(texts))]
    return Said(between.join(f"{{{name}}}" for name in names), dict(zip(names, texts, strict=True)))
