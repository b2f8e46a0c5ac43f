"""Dimension lines with their values: arrows between the ends where there is room, else from outside."""

from __future__ import annotations

from typing import Final

from service.drawing.canvas import ARROW_LENGTH_UNITS, Canvas
from service.drawing.lines import NARROW

# Below this length [drawing units] the arrows stand outside.
ROOM_UNITS: Final = 3.0 * ARROW_LENGTH_UNITS
TAIL_UNITS: Final = 26.0
LIFT_UNITS: Final = 5.0
OVERSHOOT_UNITS: Final = 6.0
WORDS_SIZE: Final = 16.0


def across(canvas: Canvas, span: tuple[float, float], y: float, name: str) -> float:
    """Draw a horizontal dimension between two abscissas without words; return where it ends on the right."""
    unit = canvas.unit_mm
    left, right = min(span), max(span)
    if right - left < ROOM_UNITS * unit:
        gap_across(canvas, span, y, name)
        return right + TAIL_UNITS * unit
    canvas.line((span[0], y), (span[1], y), NARROW, name)
    canvas.arrow((left, y), (-1.0, 0.0))
    canvas.arrow((right, y), (1.0, 0.0))
    return right


def beneath(canvas: Canvas, at: tuple[float, float], words: str, room: float, size: float = WORDS_SIZE) -> None:
    """Write words beneath a horizontal dimension, about an abscissa: no extension line leads on below it."""
    size = canvas.fitted(words, size, room)
    canvas.text((at[0], at[1] + (OVERSHOOT_UNITS + LIFT_UNITS + 0.7 * size) * canvas.unit_mm), words, size)


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


def gap_across(canvas: Canvas, ends: tuple[float, float], y: float, name: str) -> None:
    """Draw a horizontal gap from a wheel's edge to a solid, arrows from outside; its words stand elsewhere."""
    (inner, outer), tail = (min(ends), max(ends)), TAIL_UNITS * canvas.unit_mm
    canvas.line((ends[0], y), (ends[1], y), NARROW, name)
    canvas.line((inner - tail, y), (inner, y), NARROW)
    canvas.line((outer, y), (outer + tail, y), NARROW)
    canvas.arrow((inner, y), (1.0, 0.0))
    canvas.arrow((outer, y), (-1.0, 0.0))


def gap_along(canvas: Canvas, x: float, ends: tuple[float, float], name: str) -> None:
    """Draw a vertical gap from the crown of a tyre to the arch, arrows from outside; its words stand elsewhere."""
    (top, bottom), tail = (min(ends), max(ends)), TAIL_UNITS * canvas.unit_mm
    canvas.line((x, ends[0]), (x, ends[1]), NARROW, name)
    canvas.line((x, top - tail), (x, top), NARROW)
    canvas.line((x, bottom), (x, bottom + tail), NARROW)
    canvas.arrow((x, top), (0.0, 1.0))
    canvas.arrow((x, bottom), (0.0, -1.0))


def extension(canvas: Canvas, start: tuple[float, float], end: tuple[float, float]) -> None:
    """Draw the line that leads from the outline to a dimension line, and a little beyond it."""
    over = OVERSHOOT_UNITS * canvas.unit_mm
    (x1, y1), (x2, y2) = start, end
    if x1 == x2:
        y2 += over if y2 > y1 else -over
    else:
        x2 += over if x2 > x1 else -over
    canvas.line((x1, y1), (x2, y2), NARROW)
