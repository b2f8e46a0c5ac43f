"""The change of balance on one axis from oversteer to understeer: a row with its band for each candidate."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Final

from service.assessment.checks.balance import balance
from service.core.numeric import known
from service.core.saying import Amount, Said, say
from service.drawing.axis_scale import AxisScale
from service.drawing.canvas import Anchor, Canvas, Point, points
from service.drawing.lines import CHAIN, NARROW, WIDE
from service.drawing.paper import PAPER_UNIT_MM
from service.drawing.plot_sheet import (
    INDENT_UNITS,
    MARGIN_UNITS,
    TEXT_UNITS,
    Entry,
    Figure,
    PlotSheet,
    Plotted,
    banded,
    entry,
)
from service.drawing.verdict_line import draw_mark
from service.locales.speech import ENGLISH, Speech

VIEW: Final = "balance"
TITLE: Final = say("Balance in the dry, as a change from the present tyres")
# Say: at the left end of an axis
OVERSTEER: Final = say("← towards oversteer")
# Say: at the right end of an axis
UNDERSTEER: Final = say("towards understeer →")
AXIS: Final = say("change of the understeer gradient, deg/g")
NOTES: Final = (
    say("Bars: the band in which the true change is expected."),
    say("0 is the car as it is now."),
    say("Hatched: too little to notice. Upright lines: a strong change begins there."),
)
# The least that the axis spans [deg/g].
LEAST_SPAN: Final = 0.4
HEIGHT_UNITS: Final = 92.0
STRIP_UNITS: Final = 34.0
ZONE_UNITS: Final = 22.0
CAP_UNITS: Final = 6.0
TICK_UNITS: Final = 7.0
MARK_UNITS: Final = 18.0
WORDS_SIZE, TICK_SIZE = 15.5, 15.0


def draw_balance(
    candidates: Sequence[Plotted], notes: Sequence[Said] = (), speech: Speech = ENGLISH, *, styled: bool = True
) -> str:
    """Return the plot as SVG; without its style for a page that brings `paper.STYLE` itself."""
    scale = _scale(candidates)
    figure = Figure(
        HEIGHT_UNITS,
        partial(_axis, scale=scale),
        INDENT_UNITS,
        _sample,
        STRIP_UNITS,
        partial(_strip, scale=scale),
    )
    entries = [entry(each, *_told(each)) for each in candidates]
    return PlotSheet(VIEW, TITLE, entries, [*notes, *NOTES]).drawn(figure, speech, styled=styled)


def _scale(candidates: Sequence[Plotted]) -> AxisScale:
    held: list[float] = []
    for each in candidates:
        strong = each.found.car.limits.balance_strong_deg_per_g.value
        held += [-strong, strong, *filter(known, each.found.car.change.gradient_deg_per_g)]
    left = MARGIN_UNITS * PAPER_UNIT_MM
    return AxisScale.made(held, LEAST_SPAN, (left, left + TEXT_UNITS * PAPER_UNIT_MM))


def _told(candidate: Plotted) -> Iterator[Said]:
    car = candidate.found.car
    yield balance(car).text
    if _is_drawn(candidate):
        yield say("Understeer gradient {change}.", change=banded(car.change.gradient_deg_per_g, "deg/g", 2))


def _is_drawn(candidate: Plotted) -> bool:
    car = candidate.found.car
    return not car.vehicle.is_trailer and known(car.change.gradient_deg_per_g.value)


def _axis(canvas: Canvas, at: Point, scale: AxisScale) -> None:
    unit, y = PAPER_UNIT_MM, at[1]
    canvas.text((scale.start, y + 18 * unit), AXIS, canvas.fitted(AXIS, WORDS_SIZE, TEXT_UNITS), "start", "soft")
    half = 0.5 * TEXT_UNITS - 4.0
    ends: tuple[tuple[float, Said, Anchor], ...] = (
        (scale.start, OVERSTEER, "start"),
        (scale.end, UNDERSTEER, "end"),
    )
    for x, words, anchor in ends:
        canvas.text((x, y + 42 * unit), words, canvas.fitted(words, WORDS_SIZE, half), anchor, "strong")
    foot = y + 74 * unit
    canvas.line((scale.start, foot), (scale.end, foot), NARROW)
    for place, value in enumerate(scale.ticks):
        x = scale.at(value)
        canvas.line((x, foot), (x, foot + TICK_UNITS * unit), NARROW, f"{VIEW}-across-{place}")
        canvas.text((x, foot - 6 * unit), Amount(value, "", scale.digits, signed=True), TICK_SIZE)


def _strip(canvas: Canvas, at: Point, each: Entry, scale: AxisScale) -> None:
    if not _is_drawn(each.candidate):
        return
    unit, car, name = PAPER_UNIT_MM, each.candidate.found.car, f"{VIEW}-{each.candidate.letter}"
    middle, half = at[1] + 0.5 * STRIP_UNITS * unit, 0.5 * ZONE_UNITS * unit
    small, strong = car.limits.balance_negligible_deg_per_g.value, car.limits.balance_strong_deg_per_g.value
    left, right, top, foot = scale.at(-small), scale.at(small), middle - half, middle + half
    zone = points("M", left, top, "H", right, "V", foot, "H", left, "Z")
    canvas.hatched(zone, f"{name}-negligible")
    for limit in (-strong, strong):
        canvas.line((scale.at(limit), top), (scale.at(limit), foot), NARROW)
    canvas.line((scale.at(0.0), top), (scale.at(0.0), foot), CHAIN, f"{name}-present")
    value, low, high = car.change.gradient_deg_per_g
    canvas.line((scale.at(low), middle), (scale.at(high), middle), WIDE, f"{name}-band")
    if low != high:
        for end in (low, high):
            x, cap = scale.at(end), CAP_UNITS * unit
            canvas.line((x, middle - cap), (x, middle + cap), WIDE)
    side = MARK_UNITS * unit
    draw_mark(canvas, (scale.at(value) - 0.5 * side, middle - 0.5 * side), side, each.candidate.mark, name)


def _sample(canvas: Canvas, at: Point, each: Entry) -> None:
    side = MARK_UNITS * canvas.unit_mm
    name = f"{VIEW}-{each.candidate.letter}-sample"
    draw_mark(canvas, (at[0], at[1] + 2.0 * canvas.unit_mm), side, each.candidate.mark, name)
