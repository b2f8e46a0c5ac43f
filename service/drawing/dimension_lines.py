"""Dimension lines with their values: arrows between the ends where there is room, else from outside."""

from __future__ import annotations

from typing import Final

from service.drawing.canvas import ARROW_LENGTH_UNITS, Canvas
from service.drawing.lettering import width_of
from service.drawing.lines import NARROW

# Below this length [drawing units] the arrows stand outside.
ROOM_UNITS: Final = 3.0 * ARROW_LENGTH_UNITS
TAIL_UNITS: Final = 26.0
LIFT_UNITS: Final = 5.0
OVERSHOOT_UNITS: Final = 6.0
WORDS_UNITS: Final = 82.0
WORDS_SIZE: Final = 16.0
# How far words may reach beyond each end of a horizontal line: nothing else stands there.
BEYOND_UNITS: Final = 40.0


def across(
    canvas: Canvas, span: tuple[float, float], y: float, words: str, name: str, size: float = WORDS_SIZE
) -> None:
    """Draw a horizontal dimension between two abscissas, its words above the line or, where short, beside it."""
    unit = canvas.unit_mm
    left, right = min(span), max(span)
    canvas.line((span[0], y), (span[1], y), NARROW, name)
    if right - left >= ROOM_UNITS * unit:
        canvas.arrow((left, y), (-1.0, 0.0))
        canvas.arrow((right, y), (1.0, 0.0))
        size = canvas.fitted(words, size, (right - left) / unit + 2 * BEYOND_UNITS)
        canvas.text(((left + right) / 2, y - LIFT_UNITS * unit), words, size)
        return
    tail = TAIL_UNITS * unit
    canvas.line((left - tail, y), (left, y), NARROW)
    canvas.line((right, y), (right + tail, y), NARROW)
    canvas.arrow((left, y), (1.0, 0.0))
    canvas.arrow((right, y), (-1.0, 0.0))
    canvas.text((right + tail + LIFT_UNITS * unit, y + LIFT_UNITS * unit), words, size, "start")


def along(canvas: Canvas, x: float, span: tuple[float, float], words: str, name: str) -> None:
    """Draw a vertical dimension between two ordinates, its words along the line or, where short, beside it."""
    unit = canvas.unit_mm
    top, bottom = min(span), max(span)
    canvas.line((x, span[0]), (x, span[1]), NARROW, name)
    if bottom - top >= ROOM_UNITS * unit:
        canvas.arrow((x, top), (0.0, -1.0))
        canvas.arrow((x, bottom), (0.0, 1.0))
        size = canvas.fitted(words, WORDS_SIZE, (bottom - top) / unit)
        canvas.upright((x - LIFT_UNITS * unit, (top + bottom) / 2), words, size)
        return
    tail = TAIL_UNITS * unit
    canvas.line((x, top - tail), (x, top), NARROW)
    canvas.line((x, bottom), (x, bottom + tail), NARROW)
    canvas.arrow((x, top), (0.0, 1.0))
    canvas.arrow((x, bottom), (0.0, -1.0))
    canvas.text((x + LIFT_UNITS * unit, top - LIFT_UNITS * unit), words, anchor="start")


def gap_across(canvas: Canvas, ends: tuple[float, float], y: float, words: str, name: str) -> None:
    """Draw a horizontal gap from the wheel's edge to a solid, arrows from outside, its words inside the wheel."""
    unit, (edge, solid) = canvas.unit_mm, ends
    canvas.line((edge, y), (solid, y), NARROW, name)
    outward = 1.0 if edge > 0.0 else -1.0
    inner, outer = sorted((edge, solid), key=lambda x: outward * x)
    room = max(WORDS_UNITS, width_of(canvas.speech.say(words), WORDS_SIZE) + LIFT_UNITS)
    start = inner - outward * room * unit
    canvas.line((start, y), (inner, y), NARROW)
    canvas.line((outer, y), (outer + outward * TAIL_UNITS * unit, y), NARROW)
    canvas.arrow((inner, y), (outward, 0.0))
    canvas.arrow((outer, y), (-outward, 0.0))
    # One side above its line and one below: in a narrow tyre the words would meet.
    lift = -LIFT_UNITS if outward < 0.0 else LIFT_UNITS + 11.0
    canvas.text((start, y + lift * unit), words, anchor="start" if outward > 0.0 else "end")


def gap_along(canvas: Canvas, x: float, ends: tuple[float, float], words: str, name: str) -> None:
    """Draw the gap from the crown of a tyre up to the arch, arrows from outside, its words inside the tyre."""
    unit, (crown, solid) = canvas.unit_mm, ends
    canvas.line((x, crown), (x, solid), NARROW, name)
    top, bottom, tail = min(ends), max(ends), TAIL_UNITS * unit
    canvas.line((x, top - tail), (x, top), NARROW)
    canvas.line((x, bottom), (x, bottom + tail), NARROW)
    canvas.arrow((x, top), (0.0, 1.0))
    canvas.arrow((x, bottom), (0.0, -1.0))
    canvas.text((x + LIFT_UNITS * unit, bottom + tail), words, anchor="start")


def extension(canvas: Canvas, start: tuple[float, float], end: tuple[float, float]) -> None:
    """Draw the line that leads from the outline to a dimension line, and a little beyond it."""
    over = OVERSHOOT_UNITS * canvas.unit_mm
    (x1, y1), (x2, y2) = start, end
    if x1 == x2:
        y2 += over if y2 > y1 else -over
    else:
        x2 += over if x2 > x1 else -over
    canvas.line((x1, y1), (x2, y2), NARROW)
