"""Where a wheel in service would be in its strut, wing, arch or twin: the region as path data, for hatching.

The region reaches exactly from the solid to the edge that the findings on room reckon; its curve is that of the
tyre's outline, as wide and as high as it may grow in service.
"""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise
from typing import Final, Literal

from service.core.numeric import known_or
from service.drawing import outline
from service.drawing.canvas import Point, points
from service.drawing.scene import WheelShape
from service.physics.wheel_position import rim_overall_width_mm

# Pieces that a curve is cut into: finer than the width of a line.
PIECES: Final = 24
# A tyre is no wider than its rim's flanges where they differ by less than this [mm].
ALIKE_MM: Final = 1e-6


def beyond(wheel: WheelShape, half_mm: float, bound_mm: float, axis: Literal["x", "y"], side: int) -> str:
    """Return what of a wheel, `half_mm` to each side of its centre, lies beyond a bound; empty where nothing does.

    Along x the side is 1 inboard and -1 outboard; along y it is -1, above.
    """
    place = 0 if axis == "x" else 1
    polygon = _polygon(wheel, half_mm)
    if axis == "x" and rim_overall_width_mm(wheel.rim_width_mm) >= 2.0 * half_mm - ALIKE_MM:
        polygon = _flanges(wheel, half_mm)
    inside = _clipped(polygon, lambda point: side * (point[place] - bound_mm))
    if not inside:
        return ""
    steps: list[str | float] = []
    for index, (x, y) in enumerate(inside):
        steps += ["L" if index else "M", x, y]
    return points(*steps, "Z")


def _polygon(wheel: WheelShape, half_mm: float) -> list[Point]:
    """Return the upper half of the tyre in service."""
    grown = wheel._replace(section_width_mm=2.0 * half_mm)
    return _flattened(outline.tyre_steps(grown, known_or(wheel.clear_radius_mm, wheel.radius_mm), -1, flat=False))


def _flanges(wheel: WheelShape, half_mm: float) -> list[Point]:
    """Return a box about the flanges of a rim that is wider than its tyre."""
    foot = -0.5 * wheel.rim_diameter_mm
    left, right, top = wheel.centre_mm - half_mm, wheel.centre_mm + half_mm, foot - outline.FLANGE_HEIGHT_MM
    return [(left, foot), (left, top), (right, top), (right, foot)]


def _flattened(steps: outline.Steps) -> list[Point]:
    """Return points along a path of lines and curves."""
    made: list[Point] = []
    for letter, *numbers in _commands(steps):
        places = list(zip(numbers[0::2], numbers[1::2], strict=True))
        if letter in ("M", "L"):
            made += places
            continue
        size = 2 if letter == "Q" else 3
        for first in range(0, len(places), size):
            controls = [made[-1], *places[first : first + size]]
            made += [_along(controls, (piece + 1) / PIECES) for piece in range(PIECES)]
    return made


def _commands(steps: outline.Steps) -> list[tuple[str, *tuple[float, ...]]]:
    starts = [place for place, step in enumerate(steps) if isinstance(step, str)]
    return [
        (str(steps[one]), *(float(step) for step in steps[one + 1 : other]))
        for one, other in pairwise([*starts, len(steps)])
    ]


def _along(controls: list[Point], share: float) -> Point:
    """Return the point of a Bezier curve at this share, by de Casteljau's construction."""
    while len(controls) > 1:
        controls = [(x1 + share * (x2 - x1), y1 + share * (y2 - y1)) for (x1, y1), (x2, y2) in pairwise(controls)]
    return controls[0]


def _clipped(polygon: list[Point], depth: Callable[[Point], float]) -> list[Point]:
    """Return the part of a polygon where the depth is above zero: one half plane of Sutherland and Hodgman."""
    made: list[Point] = []
    for one, other in pairwise([*polygon, polygon[0]]):
        deep, next_deep = depth(one), depth(other)
        if deep > 0.0:
            made.append(one)
        if (deep > 0.0) != (next_deep > 0.0):
            share = deep / (deep - next_deep)
            made.append((one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])))
    return made
