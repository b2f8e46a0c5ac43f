"""Where a letter may stand beside its point so that it covers neither points nor bars nor other letters."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from service.drawing.canvas import Point

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""

# The diagonals first: bars run straight from the point to all four sides.
_WAYS: Final = (
    *((1.0, -1.0), (-1.0, -1.0), (1.0, 1.0), (-1.0, 1.0)),
    *((1.0, -0.4), (-1.0, -0.4), (1.0, 0.4), (-1.0, 0.4), (0.4, -1.0), (-0.4, -1.0), (0.4, 1.0), (-0.4, 1.0)),
)
_DISTANCES: Final = (1.0, 1.6, 2.4, 3.4)


def free_place(point: Point, size: Point, reach: float, taken: Sequence[Box], within: Box) -> Point:
    """Return the centre of a box of this size near a point that covers least of what is taken, the nearest of equals.

    `reach` is how far the nearest box stands from the point, edge to centre; the box stays `within` where it can.
    """
    width, height = size
    best, least = point, float("inf")
    for distance in _DISTANCES:
        for way_x, way_y in _WAYS:
            x = point[0] + way_x * (distance * reach + 0.5 * width)
            y = point[1] + way_y * (distance * reach + 0.5 * height)
            box = (x - 0.5 * width, y - 0.5 * height, x + 0.5 * width, y + 0.5 * height)
            outside = width * height - _shared(box, within)
            covered = 10.0 * outside + sum(_shared(box, each) for each in taken)
            # Nearer is better where nothing is covered; a letter far away belongs to nobody.
            cost = covered + 0.01 * width * height * distance
            if cost < least - 1e-9:
                best, least = (x, y), cost
    return best


def around(start: Point, end: Point, free: float) -> Box:
    """Return the box about a straight line along an axis, with so much free on all sides."""
    return (
        min(start[0], end[0]) - free,
        min(start[1], end[1]) - free,
        max(start[0], end[0]) + free,
        max(start[1], end[1]) + free,
    )


def _shared(one: Box, other: Box) -> float:
    width = min(one[2], other[2]) - max(one[0], other[0])
    height = min(one[3], other[3]) - max(one[1], other[1])
    return max(0.0, width) * max(0.0, height)
