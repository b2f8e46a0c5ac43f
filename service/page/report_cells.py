"""Cells of a report's tables: numbers in the reader's units, and beneath them in the other units of a workshop."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from service.assessment.checks.words import span
from service.core.findings import Estimate
from service.core.numeric import known
from service.core.saying import Amount, Said, joined, say
from service.core.units import KPA_PER_BAR, KPA_PER_PSI
from service.locales.speech import IMPERIAL, Speech

NOT_KNOWN: Final = say("not known")


class Cell(NamedTuple):
    """What a cell says, and what stands small beneath it."""

    text: str
    also: str = ""


# A question that has no such number, as a limit that nobody sets.
NOTHING: Final = Cell("\N{EN DASH}")


class Writer:
    """Writes cells in the reader's language and units."""

    def __init__(self, speech: Speech) -> None:
        self._speech = speech

    def said(self, text: str, also: str = "") -> Cell:
        """Return a cell of words."""
        return Cell(self._speech.say(text), self._speech.say(also))

    def amount(self, value: float, unit: str, digits: int = 0, unknown: Said = NOT_KNOWN) -> Cell:
        """Return a number in its unit, or in words that it is not known."""
        if not known(value):
            return self.said(unknown)
        return Cell(self._speech.say(Amount(value, unit, digits)), self._also(value, unit, digits))

    def offset(self, value_mm: float, *, signed: bool = False) -> Cell:
        """Return an offset, which is marked in mm on rims all over the world."""
        if not known(value_mm):
            return NOTHING if signed else self.said(NOT_KNOWN)
        return Cell(self._speech._replace(units="metric").say(Amount(value_mm, "mm", 1, signed=signed)))

    def change(self, value: float, unit: str, digits: int = 1) -> Cell:
        """Return a change with its sign; a dash where it is not known."""
        if not known(value):
            return NOTHING
        return self.said(Amount(value, unit, digits, signed=True))

    def estimate(self, found: Estimate[float], unit: str, digits: int = 1) -> Cell:
        """Return an estimated change over the band in which it lies."""
        if not known(found.value):
            return NOTHING
        low = Amount(found.low, unit, digits, signed=True, bare=True)
        high = Amount(found.high, unit, digits, signed=True)
        band = "" if high.startswith(f"{low} ") else say("{low} to {high}", low=low, high=high)
        return self.said(Amount(found.value, unit, digits, signed=True), band)

    def least(self, value: float, unit: str, digits: int = 0) -> Cell:
        """Return a limit from below; a dash where there is none."""
        return self.said(say("min. {least}", least=Amount(value, unit, digits))) if known(value) else NOTHING

    def either_way(self, value: float | None, unit: str, digits: int = 1) -> Cell:
        """Return a limit that holds for more and for less; a dash where there is none."""
        return NOTHING if value is None else self.said(joined(("±", Amount(abs(value), unit, digits)), " "))

    def between(self, least: float, most: float, unit: str, digits: int = 0) -> Cell:
        """Return a limit with two ends; a dash where they are not known."""
        return self.said(span(least, most, unit, digits)) if known(least + most) else NOTHING

    def _also(self, value: float, unit: str, digits: int) -> str:
        return " / ".join(map(self._speech._replace(units="metric").say, self._others(value, unit, digits)))

    def _others(self, value: float, unit: str, digits: int) -> Iterator[Amount]:
        """Yield the amount in the units of other gauges, scales and rulers than the reader's."""
        imperial = self._speech.units == "imperial"
        if imperial and unit in IMPERIAL:
            yield Amount(value, unit, digits)
        if unit == "kPa":
            yield Amount(value / KPA_PER_BAR, "bar", 2)
            if not imperial:
                yield Amount(value / KPA_PER_PSI, "psi")
