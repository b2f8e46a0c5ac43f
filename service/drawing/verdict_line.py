"""The verdict beneath the title of a drawing that stands by itself: its mark, its words, and the count of findings."""

from __future__ import annotations

from typing import Final
from xml.etree.ElementTree import SubElement

from service.assessment.answer.assess import Assessment
from service.assessment.answer.verdict_words import OUTCOME_WORDS, VERDICT_WORDS
from service.core.findings import MET
from service.core.saying import Amount, Said, say, sentences
from service.drawing.canvas import Canvas, Point, number
from service.drawing.lettering import BOLD_WIDTH, fitting
from service.drawing.marks import MARKS, SIDE

STEP_UNITS: Final = 34.0
MARK_UNITS: Final = 22.0
WORDS_UNITS: Final = 18.0
ALL_MET: Final = say("All met.")


def draw_verdict(canvas: Canvas, at: tuple[float, float], width: float, found: Assessment) -> None:
    """Draw the verdict on a line of a width whose upper left corner is given [mm]."""
    (x, y), unit = at, canvas.unit_mm
    name = found.verdict.replace("_", "-")
    side = MARK_UNITS * unit
    draw_mark(canvas, (x, y + 6 * unit), side, name, "verdict")
    words, left = VERDICT_WORDS[found.verdict], side + 9 * unit
    size = fitting(canvas.speech.say(words), (width - left) / unit, WORDS_UNITS, BOLD_WIDTH)
    canvas.text((x + left, y + 23 * unit), words, size, "start", f"strong tone {name}")


def draw_mark(canvas: Canvas, corner: Point, side: float, verdict: str, name: str) -> None:
    """Draw the mark of a verdict, with hyphens, in a square of this side whose upper left corner is given [mm]."""
    (x, y), mark = corner, MARKS[verdict]
    attributes = {
        "id": name,
        "class": f"mark {verdict}",
        "transform": f"translate({number(x)} {number(y)}) scale({number(side / SIDE)})",
    }
    group = SubElement(canvas.element, "g", attributes)
    SubElement(group, "path", {"class": "outline", "d": mark.outline})
    sign = {"fill": "none", "stroke": "#fff", "stroke-width": "2", "stroke-linecap": "round"}
    SubElement(group, "path", {"class": "sign", "d": mark.sign, **sign})


def counts(found: Assessment) -> Said:
    """Return how many findings came out how, those met left out: `Needs attention: 2. Open, and decides nothing: 4.`"""
    told = []
    for outcome, _, title in OUTCOME_WORDS:
        count = sum(each.outcome == outcome for each in found.findings)
        if count and outcome != MET:
            told.append(say("{heading}: {count}.", heading=title, count=Amount(count)))
    return sentences(*told) if told else ALL_MET
