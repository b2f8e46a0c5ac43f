"""Reading lengths back from a drawing: whose unit is the millimetre of the real thing."""

import re
from xml.etree.ElementTree import Element

SVG = "{http://www.w3.org/2000/svg}"


def element(drawing: Element, name: str) -> Element:
    """Return the one element of this id."""
    (found,) = (each for each in drawing.iter() if each.get("id") == name)
    return found


def ends(drawing: Element, name: str) -> tuple[float, float, float, float]:
    """Return x1, y1, x2, y2 of a line."""
    line = element(drawing, name)
    assert line.tag == f"{SVG}line"
    x1, y1, x2, y2 = (float(line.attrib[key]) for key in ("x1", "y1", "x2", "y2"))
    return x1, y1, x2, y2


def length(drawing: Element, name: str) -> float:
    """Return the length of a line that runs along an axis."""
    x1, y1, x2, y2 = ends(drawing, name)
    assert x1 == x2 or y1 == y2
    return abs(x2 - x1) + abs(y2 - y1)


def box(drawing: Element, name: str) -> tuple[float, float, float, float]:
    """Return left, top, right, bottom of a path's points, ends and control points alike.

    A Bezier curve stays within its control points; where those reach no further than the ends this is its exact box.
    """
    numbers = [float(each) for each in re.findall(r"-?[0-9.]+", element(drawing, name).attrib["d"])]
    xs, ys = numbers[0::2], numbers[1::2]
    return min(xs), min(ys), max(xs), max(ys)


def words(drawing: Element) -> list[str]:
    """Return every text of the drawing."""
    return [each.text or "" for each in drawing.iter(f"{SVG}text")]
