"""The sheet: scale, paper, style, title and description, and the words above and beneath a drawing.

References
----------
.. [ISO-5455] The reductions to choose from, from memory.
"""

from __future__ import annotations

import base64
import hashlib
from collections.abc import Sequence
from typing import Final, NamedTuple
from xml.etree.ElementTree import Element, SubElement, tostring

from service.drawing.canvas import Canvas, number
from service.drawing.lettering import BOLD_WIDTH, clean, wrapped
from service.drawing.lines import NARROW
from service.locales.speech import Speech

PAPER_UNIT_MM: Final = 0.2
"""A drawing unit on paper: at scale 1:5 it is a millimetre of the real thing."""
SCALES: Final = (1, 2, 5, 10, 20, 50)
"""Reductions to choose from, 1:n."""
TALLEST_PAPER_MM: Final = 168.0
# How far apart the lines of a hatching stand; closer where two things would be in one place.
HATCH_UNITS, OVERLAP_UNITS = 7.0, 4.0
MOST_LABEL: Final = 60
TITLE_UNITS, TITLE_STEP_UNITS = 18.0, 25.0
LABEL_UNITS, LABEL_STEP_UNITS = 16.0, 22.0
NOTES_UNITS, NOTES_STEP = 14.5, 1.35
"""Size of the notes, and how far apart their lines stand as a share of it."""

STYLE: Final = """
.drawing{--ink:#1b2126;--paper:#fffdf7;--soft:#4b545b;--good:#1c6638;--care:#7a4e00;--ask:#24588c;--unwise:#86297a;
--bad:#a3161f;font-variant-numeric:tabular-nums;
font-family:"Segoe UI",Roboto,Arial,"Liberation Sans","DejaVu Sans",sans-serif}
@media (prefers-color-scheme:dark){.drawing{--ink:#ece7da;--paper:#171b1e;--soft:#b9b6ac;--good:#7fd29a;
--care:#f0c067;--ask:#9cc4f0;--unwise:#eaa2de;--bad:#ff9f98}}
@media print{.drawing{--ink:#000;--paper:#fff;--soft:#222;--good:#1c6638;--care:#7a4e00;--ask:#24588c;--unwise:#86297a;
--bad:#a3161f}}
.drawing .paper{fill:var(--paper)}
.drawing .wide,.drawing .narrow,.drawing .chain,.drawing .phantom{stroke:var(--ink);fill:none}
.drawing .overlap,.drawing .overlap .narrow{stroke:var(--bad)}
.drawing .solid,.drawing .words{fill:var(--ink);stroke:none}
.drawing .words{paint-order:stroke;stroke:var(--paper);stroke-width:.28em;stroke-linejoin:round}
.drawing .soft{fill:var(--soft)}
.drawing .strong{font-weight:700}
.drawing .suitable{--tone:var(--good)}.drawing .suitable-with-conditions{--tone:var(--care)}
.drawing .undetermined{--tone:var(--ask)}.drawing .not-recommended{--tone:var(--unwise)}
.drawing .unsuitable{--tone:var(--bad)}
.drawing .mark .outline,.drawing .words.tone{fill:var(--tone)}
.drawing .mark .sign{stroke:var(--paper)}
"""


def style_hash() -> str:
    """Return the source expression that lets a content security policy admit the style and no other."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(STYLE.encode()).digest()).decode()}'"


def scale_for(height_mm: float) -> int:
    """Return the reduction 1:n at which a drawing of this height fits the paper."""
    return next((n for n in SCALES if height_mm / n <= TALLEST_PAPER_MM), SCALES[-1])


def unit_mm(scale: int) -> float:
    """Return how many real millimetres a drawing unit stands for at 1:n."""
    return scale * PAPER_UNIT_MM


def new_sheet(
    view: str, size_mm: tuple[float, float], scale_and_unit: tuple[int, float], speech: Speech, *, styled: bool
) -> Canvas:
    """Return the canvas of an empty sheet; size and drawing unit in real millimetres, `styled` puts the style in."""
    (width, height), (scale, unit) = size_mm, scale_and_unit
    root = Element(
        "svg",
        {
            "xmlns": "http://www.w3.org/2000/svg",
            "xml:lang": speech.language,
            "id": view,
            "class": "drawing",
            "viewBox": f"0 0 {number(width)} {number(height)}",
            "width": f"{number(width / scale)}mm",
            "height": f"{number(height / scale)}mm",
            "role": "img",
            "aria-labelledby": f"{view}-title {view}-desc",
            "font-family": "sans-serif",
        },
    )
    SubElement(root, "title", {"id": f"{view}-title"})
    SubElement(root, "desc", {"id": f"{view}-desc"})
    if styled:
        SubElement(root, "style").text = STYLE
    canvas = Canvas(root, unit, f"{view}-hatch", speech)
    _hatch(canvas)
    # Colours as attributes too, for programs that read no style sheet.
    SubElement(root, "rect", {"class": "paper", "width": "100%", "height": "100%", "fill": "#fff"})
    return canvas


def _hatch(canvas: Canvas) -> None:
    definitions = SubElement(canvas.element, "defs")
    for name, apart, turn in ((canvas.hatch, HATCH_UNITS, 45), (f"{canvas.hatch}-overlap", OVERLAP_UNITS, -45)):
        step = number(apart * canvas.unit_mm)
        attributes = {"id": name, "width": step, "height": step, "patternUnits": "userSpaceOnUse"}
        pattern = SubElement(definitions, "pattern", attributes | {"patternTransform": f"rotate({turn})"})
        group = Canvas(SubElement(pattern, "g", {"class": name.rpartition("-")[2]}), canvas.unit_mm, "", canvas.speech)
        group.line((0.0, 0.0), (0.0, apart * canvas.unit_mm), NARROW)


def describe(canvas: Canvas, title: str, sentences: Sequence[str]) -> None:
    """Write what readers hear who do not see the drawing."""
    canvas.element[0].text = canvas.speech.say(title)
    canvas.element[1].text = " ".join(map(canvas.speech.say, sentences))


class Heading(NamedTuple):
    """The words above a drawing, in lines: what it shows, as it is said to the reader, and the caller's label."""

    title: list[str]
    label: list[str]
    height: float

    @classmethod
    def made(cls, title: str, label: str, width: float, unit: float) -> Heading:
        """Return the heading for a width [mm] where a drawing unit is `unit` [mm]."""
        lines = wrapped(title, width, TITLE_UNITS * unit, BOLD_WIDTH)
        named = wrapped(clean(label, MOST_LABEL), width, LABEL_UNITS * unit)
        return cls(lines, named, (20.0 + TITLE_STEP_UNITS * len(lines) + LABEL_STEP_UNITS * len(named)) * unit)

    def draw(self, canvas: Canvas, x: float) -> None:
        """Write the lines at the top of the sheet."""
        y = 8.0 * canvas.unit_mm
        for line in self.title:
            y += TITLE_STEP_UNITS * canvas.unit_mm
            canvas.text((x, y), line, TITLE_UNITS, "start", "strong")
        for line in self.label:
            y += LABEL_STEP_UNITS * canvas.unit_mm
            canvas.text((x, y), line, LABEL_UNITS, "start")


def paragraph(
    canvas: Canvas, at: tuple[float, float], texts: Sequence[str], width: float, size: float = NOTES_UNITS
) -> float:
    """Write paragraphs into a width [mm], each on lines of its own; return where the next line would stand."""
    x, y = at
    for text in texts:
        for line in wrapped(canvas.speech.say(text), width, size * canvas.unit_mm):
            canvas.text((x, y), line, size, "start", "soft")
            y += NOTES_STEP * size * canvas.unit_mm
    return y


def finished(canvas: Canvas) -> str:
    """Return the sheet as text."""
    return tostring(canvas.element, encoding="unicode")
