"""What the lines of a drawing mean, and a scale bar: side by side where there is room, else beneath one another."""

from __future__ import annotations

from typing import Final, NamedTuple

from service.core.saying import Amount
from service.core.units import MM_PER_INCH
from service.drawing.canvas import Canvas
from service.drawing.lettering import width_of
from service.drawing.lines import NARROW, PHANTOM, WIDE, LineType
from service.drawing.terms import PRESENT, PROPOSED
from service.locales.speech import Speech

WORDS_SIZE: Final = 15.0
SAMPLE_UNITS: Final = 56.0
WORDS_UNITS: Final = 7.0
BETWEEN_UNITS: Final = 24.0
# Two entries stand this far apart where their words are short, so that sheets of one language look alike.
STEP_UNITS: Final = 144.0
LINE_UNITS: Final = 26.0
ENTRIES: Final[tuple[tuple[LineType, str], ...]] = ((WIDE, PROPOSED), (PHANTOM, PRESENT))


class Legend(NamedTuple):
    """Where both entries and the scale bar stand, from the upper left corner [mm]; how long the bar is [mm]."""

    places: list[tuple[float, float]]
    bar_mm: float
    lines: int

    @classmethod
    def made(cls, speech: Speech, width_mm: float, unit_mm: float, scale: int) -> Legend:
        """Return the legend for a width where a drawing unit is `unit_mm`, at a scale of 1:`scale`."""
        bar_mm = _bar_mm(speech, scale)
        takes = [
            max(STEP_UNITS, SAMPLE_UNITS + WORDS_UNITS + width_of(speech.say(words), WORDS_SIZE) + BETWEEN_UNITS)
            for _, words in ENTRIES
        ]
        takes.append(bar_mm / unit_mm + WORDS_UNITS + width_of(speech.say(_length(bar_mm)), WORDS_SIZE))
        places, x, line = [], 0.0, 0
        for take in takes:
            if x and x + take > width_mm / unit_mm:
                x, line = 0.0, line + 1
            places.append((x * unit_mm, line * LINE_UNITS * unit_mm))
            x += take
        return cls(places, bar_mm, line + 1)

    @property
    def height_units(self) -> float:
        """Return how far below its first line the next text may begin."""
        return LINE_UNITS * self.lines - 2.0

    def draw(self, canvas: Canvas, at: tuple[float, float]) -> float:
        """Draw it from a point on its first line [mm]; return where the next line would stand."""
        unit = canvas.unit_mm
        for (kind, words), (across, down) in zip(ENTRIES, self.places, strict=False):
            x, y = at[0] + across, at[1] + down
            canvas.line((x, y), (x + SAMPLE_UNITS * unit, y), kind)
            _words(canvas, (x + SAMPLE_UNITS * unit, y), words)
        x, y = at[0] + self.places[-1][0], at[1] + self.places[-1][1]
        canvas.line((x, y), (x + self.bar_mm, y), NARROW, f"{canvas.element.get('id')}-scale-bar")
        for tick in (0.0, 0.5, 1.0):
            canvas.line((x + tick * self.bar_mm, y - 4 * unit), (x + tick * self.bar_mm, y + 4 * unit), NARROW)
        _words(canvas, (x + self.bar_mm, y), _length(self.bar_mm))
        return at[1] + self.height_units * unit


def _words(canvas: Canvas, at: tuple[float, float], words: str) -> None:
    x, y = at
    canvas.text((x + WORDS_UNITS * canvas.unit_mm, y + 4.5 * canvas.unit_mm), words, WORDS_SIZE, "start")


def _bar_mm(speech: Speech, scale: int) -> float:
    """Return a round length in the reader's unit; at full size a long one would fill the sheet."""
    long = scale >= 2  # noqa: PLR2004 - anything smaller than life
    if speech.units == "imperial":
        return (4.0 if long else 1.0) * MM_PER_INCH
    return 100.0 if long else 20.0


def _length(bar_mm: float) -> Amount:
    return Amount(bar_mm, "mm")
