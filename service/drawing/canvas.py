"""A canvas in real millimetres that becomes SVG; every text and attribute is escaped by the XML writer."""

from __future__ import annotations

from typing import Final, Literal
from xml.etree.ElementTree import Element, SubElement

from service.drawing.lettering import fitting
from service.drawing.lines import NARROW, LineType, stroke
from service.locales.speech import Speech

Point = tuple[float, float]
Anchor = Literal["start", "middle", "end"]

ARROW_LENGTH_UNITS: Final = 13.0
ARROW_WIDTH_UNITS: Final = 4.6


def number(value: float) -> str:
    """Return a coordinate to the micrometre."""
    shown = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown


def points(*steps: str | float) -> str:
    """Return path data: letters as they are, coordinates as numbers."""
    return " ".join(step if isinstance(step, str) else number(step) for step in steps)


class Canvas:
    """A group of the drawing, whose words are said in the reader's language and units.

    `unit_mm` is what 0.2 mm of paper stand for, `hatch` the id of the sheet's hatching.
    """

    def __init__(self, parent: Element, unit_mm: float, hatch: str, speech: Speech) -> None:
        self.element = parent
        self.speech = speech
        self.unit_mm = unit_mm
        self.hatch = hatch

    def group(self, name: str, at: Point = (0.0, 0.0)) -> Canvas:
        """Return a canvas for a named group whose origin stands at a point of this one."""
        attributes = {"id": name}
        if at != (0.0, 0.0):
            attributes["transform"] = f"translate({number(at[0])} {number(at[1])})"
        return Canvas(SubElement(self.element, "g", attributes), self.unit_mm, self.hatch, self.speech)

    def _add(self, tag: str, style: str, name: str, attributes: dict[str, str]) -> Element:
        identity = {"id": name} if name else {}
        return SubElement(self.element, tag, {**identity, "class": style, **attributes})

    def line(self, start: Point, end: Point, kind: LineType, name: str = "") -> None:
        """Draw a straight line."""
        places = dict(zip(("x1", "y1", "x2", "y2"), map(number, (*start, *end)), strict=True))
        self._add("line", kind.name, name, places | stroke(kind, self.unit_mm))

    def path(self, data: str, kind: LineType, name: str = "") -> None:
        """Draw a path."""
        self._add("path", kind.name, name, {"d": data} | stroke(kind, self.unit_mm))

    def hatched(self, data: str, name: str = "") -> None:
        """Hatch the inside of a path, by the sheet's pattern."""
        self._add("path", "hatched", name, {"d": data, "fill": f"url(#{self.hatch})", "fill-rule": "evenodd"})

    def crossed(self, data: str, name: str) -> None:
        """Hatch the inside of a path closely and the other way: where two things would be in one place."""
        attributes = {"d": data, "fill": f"url(#{self.hatch}-overlap)"} | stroke(NARROW, self.unit_mm)
        self._add("path", "overlap", name, attributes)

    def rectangle(self, centre: Point, size: Point, corner: Point, kind: LineType, name: str = "") -> None:
        """Draw a rectangle with round corners about its centre."""
        (x, y), (width, height), (rx, ry) = centre, size, corner
        places = {"x": x - width / 2, "y": y - height / 2, "width": width, "height": height, "rx": rx, "ry": ry}
        self._add("rect", kind.name, name, {key: number(v) for key, v in places.items()} | stroke(kind, self.unit_mm))

    def text(self, at: Point, words: str, size: float = 16.0, anchor: Anchor = "middle", style: str = "") -> None:
        """Write words; `size` is in drawing units."""
        attributes = {"x": number(at[0]), "y": number(at[1]), "font-size": number(size * self.unit_mm)}
        if anchor != "start":
            attributes["text-anchor"] = anchor
        self._add("text", f"words {style}".strip(), "", attributes).text = self.speech.say(words)

    def fitted(self, words: str, size: float, room: float) -> float:
        """Return the size [drawing units] in which the words, once said, fit the room [drawing units]."""
        return fitting(self.speech.say(words), room, size)

    def upright(self, at: Point, words: str, size: float = 16.0) -> None:
        """Write words that read from the right, centred on a point, as along a vertical dimension line."""
        x, y = map(number, at)
        attributes = {"font-size": number(size * self.unit_mm), "text-anchor": "middle"}
        attributes["transform"] = f"translate({x} {y}) rotate(-90)"
        self._add("text", "words", "", attributes).text = self.speech.say(words)

    def arrow(self, tip: Point, direction: Point) -> None:
        """Draw a filled arrow head that points in a direction of unit length."""
        (x, y), (dx, dy) = tip, direction
        length, half = ARROW_LENGTH_UNITS * self.unit_mm, 0.5 * ARROW_WIDTH_UNITS * self.unit_mm
        back_x, back_y = x - length * dx, y - length * dy
        data = points(
            "M", x, y, "L", back_x - half * dy, back_y + half * dx, "L", back_x + half * dy, back_y - half * dx, "Z"
        )
        self._add("path", "solid", "", {"d": data, "stroke": "none"})
