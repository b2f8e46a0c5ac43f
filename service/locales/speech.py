"""Says a sentence in the caller's language and units.

The English text of a `Said` is its message id. A plain text is said as it stands.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import Literal, NamedTuple, get_args

from babel.messages.pofile import read_po
from babel.numbers import get_decimal_symbol

from service.core.saying import Amount, Said, capitalised, number_in_words
from service.core.units import CM2_PER_SQUARE_INCH, KG_PER_POUND, KMH_PER_MPH, KPA_PER_PSI, MM_PER_INCH

Language = Literal["en", "de", "fr", "es", "nl"]
Units = Literal["metric", "imperial"]
LANGUAGES: tuple[Language, ...] = get_args(Language)

# Beside a unit in a catalogue: where it stands, so that a translator knows what "in" is.
UNIT_CONTEXT = "unit"


class Conversion(NamedTuple):
    """The unit that people with imperial gauges read: how many of ours one of it is, decimals more than ours."""

    unit: str
    ours: float
    more_digits: int


# A pressure in bar stands in brackets behind the same one in kPa, for gauges of either kind: it stays.
IMPERIAL: Mapping[str, Conversion] = {
    "mm": Conversion("in", MM_PER_INCH, 2),
    "kPa": Conversion("psi", KPA_PER_PSI, 1),
    "kg": Conversion("lb", KG_PER_POUND, 0),
    "km/h": Conversion("mph", KMH_PER_MPH, 0),
    "cm²": Conversion("sq in", CM2_PER_SQUARE_INCH, 1),
}


class Speech(NamedTuple):
    """A language, units, and the catalogue; `English` itself needs none."""

    language: Language
    units: Units
    catalogue: Mapping[str, str]

    @property
    def is_plain(self) -> bool:
        """Return whether every sentence is said as it stands in the code."""
        return self.language == "en" and self.units == "metric"

    def say(self, text: str) -> str:
        """Return the text in this language and these units; English in metric units is the text itself."""
        if self.is_plain:
            return str(text)
        if isinstance(text, Amount):
            return self._amount(text)
        if not isinstance(text, Said):
            return text
        template = self.catalogue.get(text.template, text.template)
        spoken = {name: self.say(each) for name, each in text.parameters.items()}
        # As in `Said`: a text without parameters may hold braces of its own.
        said = template.format_map(spoken) if spoken else template
        return capitalised(said) if text.capital else said

    def _amount(self, amount: Amount) -> str:
        value, unit, digits = amount.value, amount.unit, amount.digits
        if self.units == "imperial" and unit in IMPERIAL:
            unit, ours, more = IMPERIAL[unit]
            value, digits = value / ours, digits + more
        number = number_in_words(value, digits, signed=amount.signed).replace(".", decimal_sign(self.language))
        return f"{number} {self.catalogue.get(f'{UNIT_CONTEXT}|{unit}', unit)}" if unit and not amount.bare else number


@cache
def decimal_sign(language: Language) -> str:
    """Return what tells the numbers of a language apart, which are never grouped.

    By the Unicode CLDR: its data of a language take a megabyte and are read when somebody first speaks it.
    """
    sign: str = get_decimal_symbol(language)
    return sign


ENGLISH = Speech("en", "metric", {})


@cache
def catalogue(language: Language) -> Mapping[str, str]:
    """Return the sentences of a language by message id; units stand under their context, `unit|in`."""
    if language == "en":
        return {}
    with (Path(__file__).parent / f"{language}.po").open("rb") as file:
        entries = read_po(file, locale=language, abort_invalid=True)
    said: dict[str, str] = {}
    for each in entries:
        if isinstance(each.id, str) and isinstance(each.string, str) and each.id and each.string:
            said[f"{each.context}|{each.id}" if each.context else each.id] = each.string
    return said


def speech(language: Language = "en", units: Units = "metric") -> Speech:
    """Return how to speak to this caller."""
    return Speech(language, units, catalogue(language))


Say = Callable[[str], str]
"""What turns a text of the house into the caller's words."""
