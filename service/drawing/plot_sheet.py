"""The sheet of a plot of a comparison: heading, figure, and beneath it a list that names every candidate.

As narrow as a telephone, so that its words can be read there; one unit of the drawing is 0.2 mm of paper.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import pairwise
from typing import Final, NamedTuple

from service.assessment.answer.assess import Assessment
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.assessment.batch.changed_axles import change_in_words, changed_axles
from service.core.findings import Estimate
from service.core.saying import Amount, Said, say, sentences
from service.drawing import paper
from service.drawing.canvas import Canvas, Point
from service.drawing.lettering import clean, wrapped
from service.locales.speech import Speech

LETTERS: Final = "ABCDEFGHIJKL"
MOST_PLOTTED: Final = len(LETTERS)
"""More candidates than these nobody tells apart in one plot."""
WIDTH_UNITS: Final = 480.0
MARGIN_UNITS: Final = 16.0
TEXT_UNITS: Final = WIDTH_UNITS - 2 * MARGIN_UNITS
MOST_NAME: Final = 120
NAME_SIZE, TOLD_SIZE, NOTES_SIZE = 17.0, 15.5, 14.5
LEADING: Final = 1.35
LETTER_UNITS: Final = 20.0
INDENT_UNITS: Final = 28.0
ENTRY_GAP_UNITS: Final = 16.0


Scale = tuple[int, float]
"""The reduction 1:n of what is drawn, and a drawing unit in its millimetres."""
PAPER: Final[Scale] = (1, paper.PAPER_UNIT_MM)


class Plotted(NamedTuple):
    """A candidate of a comparison: its letter by its place in the request, and the whole check of it."""

    letter: str
    found: Assessment

    @property
    def name(self) -> str:
        """Return the caller's label; where there is none, what the candidate changes in words."""
        case = self.found.case
        if case.candidate.label.strip():
            return clean(case.candidate.label, paper.MOST_LABEL)
        return change_in_words(case.vehicle, case.candidate, changed_axles(case.vehicle, case.candidate))

    @property
    def mark(self) -> str:
        """Return the name of its verdict's mark."""
        return self.found.verdict.replace("_", "-")


class Entry(NamedTuple):
    """What the list says of a candidate."""

    candidate: Plotted
    told: Sequence[Said]
    """Sentences, each on a line of its own."""


Drawn = Callable[[Canvas, Point, Entry], None]


class Figure(NamedTuple):
    """What a plot draws: above the list `height` tall, as the sample of an entry, and beneath each entry."""

    height: float
    draw: Callable[[Canvas, Point], None]
    sample_width: float
    sample: Drawn
    strip_height: float = 0.0
    strip: Drawn | None = None


def entry(candidate: Plotted, *told: Said) -> Entry:
    """Return the entry of a candidate: its verdict, and what the plot shows of it."""
    return Entry(candidate, (say("{verdict}.", verdict=VERDICT_WORDS[candidate.found.verdict]), *told))


def banded(found: Estimate[float], unit: str, digits: int) -> Said:
    """Return a change with its band, signed."""
    value = Amount(found.value, unit, digits, signed=True)
    low, high = (Amount(end, unit, digits, signed=True, bare=True) for end in (found.low, found.high))
    return say("{value} ({low} to {high})", value=value, low=low, high=high)


class PlotSheet(NamedTuple):
    """A plot by its name in ids, its title, its entries in the caller's order and what is noted beneath."""

    view: str
    title: Said
    entries: Sequence[Entry]
    notes: Sequence[Said]

    def drawn(self, figure: Figure, speech: Speech, *, styled: bool, scale: Scale = PAPER) -> str:
        """Return the plot as SVG; its millimetres are those of things drawn at this scale."""
        _, unit = scale
        heading = paper.Heading.made(speech.say(self.title), "", TEXT_UNITS * unit, unit)
        lists = [_Lines.made(each, figure.sample_width, speech) for each in self.entries]
        starts = [heading.height / unit + figure.height]
        for lines in lists:
            starts.append(starts[-1] + lines.height + figure.strip_height + ENTRY_GAP_UNITS)
        note_lines = sum(len(wrapped(speech.say(note), TEXT_UNITS, NOTES_SIZE)) for note in self.notes)
        height = starts[-1] + 16.0 + LEADING * NOTES_SIZE * note_lines
        canvas = paper.new_sheet(self.view, (WIDTH_UNITS * unit, height * unit), scale, speech, styled=styled)
        paper.describe(canvas, self.title, [*map(_heard, self.entries), *self.notes])
        left = MARGIN_UNITS * unit
        heading.draw(canvas, left)
        figure.draw(canvas, (left, heading.height))
        for each, lines, (top, foot) in zip(self.entries, lists, pairwise(starts), strict=True):
            lines.draw(canvas, (left, top * unit))
            figure.sample(canvas, (left, top * unit), each)
            if figure.strip is not None:
                figure.strip(canvas, (left, (foot - figure.strip_height - ENTRY_GAP_UNITS) * unit), each)
        paper.paragraph(canvas, (left, (starts[-1] + 16.0) * unit), self.notes, TEXT_UNITS * unit, NOTES_SIZE)
        return paper.finished(canvas)


class _Lines(NamedTuple):
    """An entry of the list in lines, said to the reader; its name stands beside the sample."""

    letter: str
    name: list[str]
    told: list[str]
    sample_width: float

    @classmethod
    def made(cls, each: Entry, sample_width: float, speech: Speech) -> _Lines:
        room = TEXT_UNITS - sample_width - LETTER_UNITS
        name = wrapped(clean(speech.say(each.candidate.name), MOST_NAME), room, NAME_SIZE)
        told = [line for text in each.told for line in wrapped(speech.say(text), TEXT_UNITS - INDENT_UNITS, TOLD_SIZE)]
        return cls(each.candidate.letter, name, told, sample_width)

    @property
    def height(self) -> float:
        return LEADING * (NAME_SIZE * len(self.name) + TOLD_SIZE * len(self.told))

    def draw(self, canvas: Canvas, at: Point) -> None:
        unit, (left, y) = canvas.unit_mm, at
        x = left + self.sample_width * unit
        canvas.text((x, y + NAME_SIZE * unit), self.letter, NAME_SIZE, "start", "strong")
        for line in self.name:
            y += LEADING * NAME_SIZE * unit
            canvas.text((x + LETTER_UNITS * unit, y - 0.35 * NAME_SIZE * unit), line, NAME_SIZE, "start")
        for line in self.told:
            y += LEADING * TOLD_SIZE * unit
            canvas.text((left + INDENT_UNITS * unit, y - 0.35 * TOLD_SIZE * unit), line, TOLD_SIZE, "start", "soft")


def _heard(each: Entry) -> Said:
    """Return what is said of a candidate to those who do not see it, its name first."""
    # A letter and a sign: no catalogue has to say them otherwise.
    name = Said("{letter} ({name})", {"letter": each.candidate.letter, "name": each.candidate.name})
    return say("{place}: {sentence}", place=name, sentence=sentences(*each.told))
