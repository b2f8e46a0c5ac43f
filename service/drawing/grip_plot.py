"""Dry grip against wet reserve: a point with its bands for each candidate, the present tyres where the zeros cross."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import hypot
from typing import Final, NamedTuple

from service.assessment.batch.comparison_measures import dry_grip_band_percent, wet_margin_band_points
from service.core.findings import Estimate
from service.core.numeric import known
from service.core.saying import Amount, Said, say
from service.drawing.axis_scale import AxisScale
from service.drawing.canvas import Canvas, Point
from service.drawing.free_place import Box, around, free_place
from service.drawing.lettering import BOLD_WIDTH, width_of
from service.drawing.lines import CHAIN, NARROW
from service.drawing.paper import PAPER_UNIT_MM
from service.drawing.plot_sheet import INDENT_UNITS, TEXT_UNITS, Entry, Figure, PlotSheet, Plotted, banded, entry
from service.drawing.terms import PRESENT
from service.drawing.verdict_line import draw_mark
from service.locales.speech import ENGLISH, Speech

VIEW: Final = "grip"
TITLE: Final = say("Dry grip against wet reserve, as changes from the present tyres")
# Say: names the axes of a plot
GRIP_AXIS: Final = say("dry grip, change in %: more to the right")
WET_AXIS: Final = say("wet reserve, change in points: more upwards")
NOTES: Final = (
    say("Bars: the band in which the true change is expected."),
    say("Dry grip: of the axle where it changes for the worse. A proxy: compound and tread pattern decide as much."),
    say("Wet reserve: new tyres, of the rear; of the front where the rear stays as it is."),
)
# The least that an axis spans: a change that nobody feels shall not look large [%, percentage points].
LEAST_SPAN: Final = 4.0
MARK_UNITS: Final = 18.0
CAP_UNITS: Final = 5.0
TICK_UNITS: Final = 7.0
TICK_SIZE, AXIS_SIZE, LETTER_SIZE = 15.0, 15.5, 17.0
LEFT_UNITS, TOP_UNITS, SQUARE_UNITS, FOOT_UNITS = 44.0, 34.0, 350.0, 76.0
RING_UNITS: Final = 6.0
# A name that stands further away than so many times the nearest place is led to.
NEAR_SHARE: Final = 1.9


class GripPoint(NamedTuple):
    """A candidate with both of its changes, known with their bands."""

    candidate: Plotted
    grip: Estimate[float]
    wet: Estimate[float]


class _Area(NamedTuple):
    """The square of the plot: its scales across and upwards, and what of it is taken so far."""

    across: AxisScale
    up: AxisScale
    taken: list[Box]

    def at(self, grip: float, wet: float) -> Point:
        return self.across.at(grip), self.up.at(wet)

    @property
    def box(self) -> Box:
        return self.across.start, self.up.end, self.across.end, self.up.start


def draw_grip(
    candidates: Sequence[Plotted], notes: Sequence[Said] = (), speech: Speech = ENGLISH, *, styled: bool = True
) -> str:
    """Return the plot as SVG; without its style for a page that brings `paper.STYLE` itself."""
    found = [_point(each) for each in candidates]
    points = [each for each in found if known(each.grip.value) and known(each.wet.value)]
    figure = Figure(
        TOP_UNITS + SQUARE_UNITS + FOOT_UNITS,
        lambda canvas, at: _draw(canvas, at, points),
        INDENT_UNITS,
        _sample,
    )
    entries = [entry(each.candidate, *_told(each)) for each in found]
    return PlotSheet(VIEW, TITLE, entries, [*notes, *NOTES]).drawn(figure, speech, styled=styled)


def _point(candidate: Plotted) -> GripPoint:
    car = candidate.found.car
    return GripPoint(candidate, dry_grip_band_percent(car), wet_margin_band_points(car))


def _told(point: GripPoint) -> Iterator[Said]:
    if known(point.grip.value):
        yield say("Dry grip {change}.", change=banded(point.grip, "%", 1))
    else:
        yield say("No point: the change of dry grip is not known.")
    if known(point.wet.value):
        yield say("Wet reserve {change}.", change=banded(point.wet, "points", 1))
    else:
        yield say("No point: the change of wet reserve is not known.")


def _draw(canvas: Canvas, at: Point, points: Sequence[GripPoint]) -> None:
    unit, (x, y) = PAPER_UNIT_MM, at
    ends_x = x + LEFT_UNITS * unit, x + TEXT_UNITS * unit
    ends_y = y + (TOP_UNITS + SQUARE_UNITS) * unit, y + TOP_UNITS * unit
    area = _Area(
        AxisScale.made((end for each in points for end in each.grip), LEAST_SPAN, ends_x),
        AxisScale.made((end for each in points for end in each.wet), LEAST_SPAN, ends_y),
        [],
    )
    _axes(canvas, area, x)
    for each in points:
        _bars(canvas, area, each)
    # Marks over all bars and letters over all marks: none hides another's.
    half = 0.5 * MARK_UNITS * unit
    for each in points:
        px, py = area.at(each.grip.value, each.wet.value)
        letter = each.candidate.letter
        draw_mark(canvas, (px - half, py - half), MARK_UNITS * unit, each.candidate.mark, f"{VIEW}-{letter}")
        area.taken.append((px - half, py - half, px + half, py + half))
    for each in points:
        _name(canvas, area, area.at(each.grip.value, each.wet.value), each.candidate.letter, 0.5 * MARK_UNITS)
    _name(canvas, area, area.at(0.0, 0.0), canvas.speech.say(PRESENT), RING_UNITS, "soft")


def _axes(canvas: Canvas, area: _Area, left: float) -> None:
    unit, (x1, y1, x2, y2) = PAPER_UNIT_MM, area.box
    frame = ((x1, y1), (x2, y1)), ((x2, y1), (x2, y2)), ((x2, y2), (x1, y2)), ((x1, y2), (x1, y1))
    for start, end in frame:
        canvas.line(start, end, NARROW)
    for place, value in enumerate(area.across.ticks):
        at = area.across.at(value)
        canvas.line((at, y2), (at, y2 - TICK_UNITS * unit), NARROW, f"{VIEW}-across-{place}")
        words = Amount(value, "", area.across.digits, signed=True)
        canvas.text((at, y2 + (TICK_SIZE + 3.0) * unit), words, TICK_SIZE)
    for place, value in enumerate(area.up.ticks):
        at = area.up.at(value)
        canvas.line((x1, at), (x1 + TICK_UNITS * unit, at), NARROW, f"{VIEW}-up-{place}")
        words = Amount(value, "", area.up.digits, signed=True)
        canvas.text((x1 - 5.0 * unit, at + 0.35 * TICK_SIZE * unit), words, TICK_SIZE, "end")
    zero_x, zero_y = area.at(0.0, 0.0)
    for start, end in (((x1, zero_y), (x2, zero_y)), ((zero_x, y1), (zero_x, y2))):
        canvas.line(start, end, CHAIN)
        area.taken.append(around(start, end, unit))
    ring, size = RING_UNITS * unit, 2 * RING_UNITS * unit
    canvas.rectangle((zero_x, zero_y), (size, size), (ring, ring), NARROW, f"{VIEW}-present")
    area.taken.append((zero_x - ring, zero_y - ring, zero_x + ring, zero_y + ring))
    canvas.text((left, y1 - 10.0 * unit), WET_AXIS, canvas.fitted(WET_AXIS, AXIS_SIZE, TEXT_UNITS), "start")
    size = canvas.fitted(GRIP_AXIS, AXIS_SIZE, TEXT_UNITS)
    canvas.text((x2, y2 + (2 * TICK_SIZE + 12.0) * unit), GRIP_AXIS, size, "end")


def _bars(canvas: Canvas, area: _Area, point: GripPoint) -> None:
    name, cap = f"{VIEW}-{point.candidate.letter}", CAP_UNITS * PAPER_UNIT_MM
    ends_x = [area.at(end, point.wet.value) for end in (point.grip.low, point.grip.high)]
    ends_y = [area.at(point.grip.value, end) for end in (point.wet.low, point.wet.high)]
    for ends, which, across, down in ((ends_x, "grip", 0.0, cap), (ends_y, "wet", cap, 0.0)):
        start, end = ends
        canvas.line(start, end, NARROW, f"{name}-{which}")
        area.taken.append(around(start, end, 0.5 * cap))
        if start != end:
            for x, y in ends:
                canvas.line((x - across, y - down), (x + across, y + down), NARROW)


def _name(canvas: Canvas, area: _Area, point: Point, words: str, reach_units: float, style: str = "strong") -> None:
    unit = PAPER_UNIT_MM
    size = width_of(words, LETTER_SIZE, BOLD_WIDTH) * unit, 0.8 * LETTER_SIZE * unit
    x, y = free_place(point, size, (reach_units + 2.0) * unit, area.taken, area.box)
    area.taken.append((x - 0.5 * size[0], y - 0.5 * size[1], x + 0.5 * size[0], y + 0.5 * size[1]))
    _lead(canvas, point, (x, y), reach_units * unit, max(size))
    canvas.text((x, y + 0.36 * LETTER_SIZE * unit), words, LETTER_SIZE, style=style)


def _lead(canvas: Canvas, point: Point, name: Point, reach: float, size: float) -> None:
    """Draw a line from a mark to a name that stands away from it, so that none is taken for another's."""
    (x1, y1), (x2, y2) = point, name
    away = hypot(x2 - x1, y2 - y1)
    if away > NEAR_SHARE * (reach + 0.5 * size):
        across, down = (x2 - x1) / away, (y2 - y1) / away
        start, end = reach, away - 0.5 * size
        canvas.line((x1 + start * across, y1 + start * down), (x1 + end * across, y1 + end * down), NARROW)


def _sample(canvas: Canvas, at: Point, each: Entry) -> None:
    name = f"{VIEW}-{each.candidate.letter}-sample"
    draw_mark(canvas, (at[0], at[1] + 2.0 * PAPER_UNIT_MM), MARK_UNITS * PAPER_UNIT_MM, each.candidate.mark, name)
