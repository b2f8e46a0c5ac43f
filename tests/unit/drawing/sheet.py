"""A drawing read back as plain geometry: words, lines, arrows and outlines at their places on the sheet [mm].

Curves are cut into pieces, groups are undone, so that a test can ask what crosses what. How wide words are is reckoned
from their number of characters: 0.53 of the size each, above what a browser measures of Liberation Sans (0.48 to 0.52).
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple
from xml.etree.ElementTree import Element

SVG = "{http://www.w3.org/2000/svg}"
CHARACTER = 0.53
PIECES = 16

Point = tuple[float, float]


class Box(NamedTuple):
    """Left, top, right, bottom."""

    left: float
    top: float
    right: float
    bottom: float

    def meets(self, other: Box) -> bool:
        """Return whether two boxes have a place in common."""
        apart = self.right <= other.left or other.right <= self.left
        return not (apart or self.bottom <= other.top or other.bottom <= self.top)

    def crossed_by(self, one: Point, other: Point) -> bool:
        """Return whether a straight line passes through the box (Liang and Barsky's clipping)."""
        low, high = 0.0, 1.0
        for axis, (least, most) in enumerate(((self.left, self.right), (self.top, self.bottom))):
            start, step = one[axis], other[axis] - one[axis]
            if abs(step) < 1e-9:
                if not least < start < most:
                    return False
                continue
            first, last = sorted(((least - start) / step, (most - start) / step))
            low, high = max(low, first), min(high, last)
        return low < high


class Words(NamedTuple):
    """A text, the box it takes, its size, its class and whether it reads from the right."""

    text: str
    box: Box
    size: float
    style: str
    upright: bool


class Line(NamedTuple):
    """A line, outline or hatched place as points; its class and name."""

    points: list[Point]
    style: str
    name: str


class Sheet:
    """Everything on a sheet; `unit` is what 0.2 mm of paper stand for, told by a narrow line that is 0.25 mm wide."""

    def __init__(self, root: Element) -> None:
        self.width, self.height = map(float, root.attrib["viewBox"].split()[2:])
        self.words: list[Words] = []
        self.lines: list[Line] = []
        self.arrows: list[tuple[Point, Point]] = []
        widths = [each.attrib["stroke-width"] for each in root.iter() if each.get("class") == "narrow"]
        self.unit = float(widths[0]) / 1.25
        self._read(root, (0.0, 0.0))

    @classmethod
    def part(cls, group: Element, whole: Sheet) -> Sheet:
        """Return what stands in a group of a sheet, about the group's own origin."""
        made = cls.__new__(cls)
        made.width, made.height, made.unit = whole.width, whole.height, whole.unit
        made.words, made.lines, made.arrows = [], [], []
        made._read(group, (0.0, 0.0))
        return made

    def named(self, name: str) -> Line:
        """Return the one line of this name."""
        (found,) = (each for each in self.lines if each.name == name)
        return found

    def says(self, text: str) -> Words:
        """Return the one text that says this."""
        (found,) = (each for each in self.words if each.text == text)
        return found

    def ink(self) -> Iterator[tuple[Point, Point, Line]]:
        """Yield every straight piece of every drawn line; what is only hatched has no outline."""
        for line in self.lines:
            if line.style != "hatched":
                yield from ((one, other, line) for one, other in pairwise(line.points))

    def _read(self, parent: Element, origin: Point) -> None:
        for each in parent:
            tag = each.tag.removeprefix(SVG)
            if tag == "g" and "mark" not in each.get("class", ""):
                x, y = re.findall(r"-?[\d.]+", each.get("transform", "0 0"))[:2]
                self._read(each, (origin[0] + float(x), origin[1] + float(y)))
            elif tag == "text":
                self.words.append(_words(each, origin))
            elif tag == "line":
                x1, y1, x2, y2 = (float(each.attrib[key]) for key in ("x1", "y1", "x2", "y2"))
                self._add([(x1, y1), (x2, y2)], each, origin)
            elif tag == "path":
                self._path(each, origin)

    def _path(self, each: Element, origin: Point) -> None:
        steps = flattened(each.attrib["d"])
        if each.get("class") == "solid":
            tip, back, other = steps[:3]
            middle = 0.5 * (back[0] + other[0]), 0.5 * (back[1] + other[1])
            far = ((tip[0] - middle[0]) ** 2 + (tip[1] - middle[1]) ** 2) ** 0.5
            placed = tip[0] + origin[0], tip[1] + origin[1]
            self.arrows.append((placed, ((tip[0] - middle[0]) / far, (tip[1] - middle[1]) / far)))
        else:
            self._add(steps, each, origin)

    def _add(self, steps: list[Point], each: Element, origin: Point) -> None:
        placed = [(x + origin[0], y + origin[1]) for x, y in steps]
        self.lines.append(Line(placed, each.get("class", ""), each.get("id", "")))


def _words(each: Element, origin: Point) -> Words:
    size, text = float(each.attrib["font-size"]), each.text or ""
    style, anchor = each.get("class", ""), each.get("text-anchor", "start")
    width = CHARACTER * (1.12 if "strong" in style else 1.0) * size * len(text)
    turned = re.match(r"translate\((\S+) (\S+)\) rotate\(-90\)", each.get("transform", ""))
    x, y = (float(turned[1]), float(turned[2])) if turned else (float(each.attrib["x"]), float(each.attrib["y"]))
    x, y = x + origin[0], y + origin[1]
    if turned:
        # A vertical text begins at the bottom, and its letters stand to the left of their line.
        box = Box(x - 0.72 * size, y - 0.5 * width, x + 0.2 * size, y + 0.5 * width)
    else:
        left = {"start": x, "middle": x - 0.5 * width, "end": x - width}[anchor]
        box = Box(left, y - 0.72 * size, left + width, y + 0.2 * size)
    return Words(text, box, size, style, bool(turned))


def flattened(data: str) -> list[Point]:
    """Return points along path data of M, L, H, V, C, Q, Z; of an arc its end alone."""
    made: list[Point] = []
    for letter, rest in re.findall(r"([MLHVCQAZ])([^MLHVCQAZ]*)", data):
        values = [float(each) for each in rest.split()]
        if letter == "Z":
            made.append(made[0])
        elif letter == "H":
            made.append((values[0], made[-1][1]))
        elif letter == "V":
            made.append((made[-1][0], values[0]))
        elif letter == "A":
            made.append((values[5], values[6]))
        else:
            places = list(zip(values[0::2], values[1::2], strict=True))
            size = {"M": 1, "L": 1, "Q": 2, "C": 3}[letter]
            for first in range(0, len(places), size):
                made += _curve([*made[-1:], *places[first : first + size]]) if size > 1 else places[first : first + 1]
    return made


def _curve(controls: list[Point]) -> list[Point]:
    made = []
    for piece in range(1, PIECES + 1):
        share, left = piece / PIECES, controls
        while len(left) > 1:
            left = [((1 - share) * a + share * c, (1 - share) * b + share * d) for (a, b), (c, d) in pairwise(left)]
        made.append(left[0])
    return made
