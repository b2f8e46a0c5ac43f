"""The outlines of all candidates over one another at one scale, cut through the axle, an axle a panel."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Final, NamedTuple

from service.core.numeric import UNKNOWN, known, known_or, unknown
from service.core.saying import Amount, Said, say, sentences
from service.drawing import outline, paper, wheels
from service.drawing.candidate_lines import CANDIDATE_LINES
from service.drawing.canvas import Canvas, Point
from service.drawing.lettering import length, width_of
from service.drawing.lines import CHAIN, PHANTOM, LineType
from service.drawing.plot_sheet import LETTERS, TEXT_UNITS, Entry, Figure, PlotSheet, Plotted, Scale, entry
from service.drawing.scene import PRESENT_NOTES, PROPOSED_NOTES, TWIN_NOTE, AxleScene, WheelShape, scenes
from service.drawing.terms import ARCH, AXLES, HUB_FACE, PRESENT, STRUT, WING_EDGE, on_axle
from service.locales.speech import ENGLISH, Speech

VIEW: Final = "outlines"
TITLE: Final = say("Left-hand wheels over one another, cut through the axle and seen from the rear")
NOTES: Final = (
    say("What is drawn once stands for all whose outline is the same. Disc, rim contour and sidewalls are indicative."),
)
SAMPLE_UNITS: Final = 124.0
SAMPLE_LINE_UNITS: Final = 110.0
TITLE_UNITS, ABOVE_UNITS, BELOW_UNITS = 30.0, 52.0, 22.0
KEY_UNITS: Final = 34.0
WORDS_SIZE, NAMES_SIZE = 15.5, 15.0
LIFT_UNITS, NAME_STEP_UNITS = 6.0, 19.0
SIDE_UNITS: Final = 30.0
HUB_LINE_MM: Final = 60.0


class Outline(NamedTuple):
    """The outline of a candidate's wheel on an axle; `like` is whose is drawn for it, empty for the present one's."""

    letter: str
    shape: WheelShape
    like: str | None


class Panel(NamedTuple):
    """One axle with the outlines of all candidates in their order."""

    scene: AxleScene
    outlines: Sequence[Outline]

    @property
    def hull(self) -> AxleScene:
        """Return the scene with one wheel in the place of all, as wide, as high and as far out as any of them."""
        shapes = [self.scene.now, *(each.shape for each in self.outlines)]
        widest = max(shapes, key=lambda each: known_or(each.section_width_mm, each.rim_width_mm))
        outboard, inboard = (
            max(ends) for ends in zip(*(end for each in shapes for end in each.reaches()), strict=True)
        )
        largest = max(shapes, key=lambda each: each.radius_mm)
        hull = widest._replace(
            overall_diameter_mm=2.0 * largest.radius_mm,
            bead_diameter_mm=0.0,
            loaded_radius_mm=UNKNOWN,
            outer_edge_mm=outboard,
            inner_edge_mm=inboard,
            offset_mm=next((each.offset_mm for each in shapes if known(each.offset_mm)), UNKNOWN),
        )
        return self.scene._replace(now=hull, then=hull)

    @property
    def width_mm(self) -> float:
        """Return how wide all of it is."""
        return self.hull.reach_outboard_mm + self.hull.reach_inboard_mm

    @property
    def foot_mm(self) -> float:
        """Return how far above the axis the panel ends: where the lines of the strut do, beneath every rim."""
        lowest = min(each.rim_diameter_mm for each in (self.scene.now, *(each.shape for each in self.outlines)))
        return min(wheels.STRUT_FROM * self.hull.then.radius_mm, 0.5 * lowest - outline.WELL_DEPTH_MM - HUB_LINE_MM)

    @property
    def height_mm(self) -> float:
        """Return how high all of it is."""
        return self.hull.reach_up_mm - self.foot_mm


def draw_outlines(
    candidates: Sequence[Plotted], notes: Sequence[Said] = (), speech: Speech = ENGLISH, *, styled: bool = True
) -> str:
    """Return the outlines as SVG; without their style for a page that brings `paper.STYLE` itself."""
    both = [(each.letter, scenes(each.found, "both")) for each in candidates]
    panels = [_panel([(letter, found[place]) for letter, found in both]) for place in range(2)] if both else []
    scale, unit = _scale(panels)
    height = max((panel.height_mm for panel in panels), default=0.0) / unit
    step = TITLE_UNITS + ABOVE_UNITS + height + BELOW_UNITS
    figure = Figure(
        len(panels) * step + KEY_UNITS, partial(_draw, panels=panels, height=height, step=step), SAMPLE_UNITS, _sample
    )
    entries = [entry(each, *_told(each.letter, panels)) for each in candidates]
    said = [*notes, *_notes(panels), say("Both axles at a scale of 1:{scale}.", scale=Amount(scale)), *NOTES]
    return PlotSheet(VIEW, TITLE, entries, said).drawn(figure, speech, styled=styled, scale=(scale, unit))


def _panel(found: Sequence[tuple[str, AxleScene]]) -> Panel:
    scene = found[0][1]
    seen = {tuple(_paths(scene.now).values()): ""}
    outlines = []
    for letter, each in found:
        first = seen.setdefault(tuple(_paths(each.then).values()), letter)
        outlines.append(Outline(letter, each.then, None if first == letter else first))
    return Panel(scene, outlines)


def _paths(wheel: WheelShape) -> dict[str, str]:
    """Return the lines of a wheel, or of both of a twin, above the axis by what is added to its name."""
    made = {}
    for suffix, each in wheel.both:
        made[f"rim{suffix}"] = outline.rim(each, -1)
        if each.has_tyre:
            made[f"tyre{suffix}"] = outline.tyre(each, each.radius_mm, -1, flat=False)
    return made


def _scale(panels: Sequence[Panel]) -> Scale:
    """Return the reduction at which the tallest fits, with a unit so large that the widest fits the sheet."""
    scale = paper.scale_for(2.0 * max((panel.hull.reach_up_mm for panel in panels), default=0.0))
    widest = max((panel.width_mm for panel in panels), default=0.0)
    return scale, max(paper.unit_mm(scale), widest / (TEXT_UNITS - 2 * SIDE_UNITS))


def _draw(canvas: Canvas, at: Point, panels: Sequence[Panel], height: float, step: float) -> None:
    unit, (x, y) = canvas.unit_mm, at
    for panel in panels:
        hull = panel.hull
        canvas.text((x, y + 20 * unit), AXLES[panel.scene.name], 20, "start", "strong")
        hub_x = x + 0.5 * (TEXT_UNITS * unit - panel.width_mm) + hull.reach_outboard_mm
        group = canvas.group(
            f"{VIEW}-{hull.name}", (hub_x, y + (TITLE_UNITS + ABOVE_UNITS + height) * unit + panel.foot_mm)
        )
        _wheels(group, panel)
        _names(group, hull, (x - hub_x, x + TEXT_UNITS * unit - hub_x))
        y += step * unit
    if panels:
        canvas.line((x, y + 4 * unit), (x + SAMPLE_LINE_UNITS * unit, y + 4 * unit), PHANTOM)
        canvas.text((x + SAMPLE_UNITS * unit, y + 9 * unit), PRESENT, WORDS_SIZE, "start")


def _wheels(canvas: Canvas, panel: Panel) -> None:
    hull, unit = panel.hull, canvas.unit_mm
    wheels.surroundings(canvas, hull)
    if hull.placed:
        top = -panel.foot_mm - HUB_LINE_MM
        canvas.line((0.0, -panel.foot_mm), (0.0, top), CHAIN, f"{VIEW}-{hull.name}-hub-face")
        canvas.text((6 * unit, -panel.foot_mm - 2 * unit), HUB_FACE, NAMES_SIZE, "start")
    _outline(canvas, panel.scene.now, PHANTOM, f"{VIEW}-{hull.name}-present")
    for each in panel.outlines:
        if each.like is None:
            _outline(canvas, each.shape, _line(each.letter), f"{VIEW}-{hull.name}-{each.letter}")


def _names(canvas: Canvas, hull: AxleScene, sides: tuple[float, float]) -> None:
    """Name what the wheels may touch in two lines above it: the arch, and beneath it what stands on either side."""
    unit, middle = canvas.unit_mm, 0.5 * (hull.then.centre_mm + hull.then.outer.centre_mm)
    y = -wheels.top_mm(hull, unit) - LIFT_UNITS * unit
    if known(hull.wing_mm):
        right = min(middle - LIFT_UNITS * unit, 0.5 * _wide(canvas, WING_EDGE) - hull.wing_mm)
        canvas.text((right, y), WING_EDGE, canvas.fitted(WING_EDGE, NAMES_SIZE, (right - sides[0]) / unit), "end")
    if known(hull.strut_mm):
        left = max(middle + LIFT_UNITS * unit, hull.strut_mm - 0.5 * _wide(canvas, STRUT))
        # A long one is moved inwards as far as it takes to stay on the sheet.
        left = max(middle + LIFT_UNITS * unit, min(left, sides[1] - _wide(canvas, STRUT)))
        canvas.text((left, y), STRUT, canvas.fitted(STRUT, NAMES_SIZE, (sides[1] - left) / unit), "start")
    if known(hull.arch_radius_mm):
        canvas.text((middle, y - NAME_STEP_UNITS * unit), ARCH, canvas.fitted(ARCH, NAMES_SIZE, TEXT_UNITS))


def _wide(canvas: Canvas, words: Said) -> float:
    return width_of(canvas.speech.say(words), NAMES_SIZE) * canvas.unit_mm


def _outline(canvas: Canvas, wheel: WheelShape, kind: LineType, name: str) -> None:
    for suffix, path in _paths(wheel).items():
        canvas.path(path, kind, f"{name}-{suffix}")


def _line(letter: str) -> LineType:
    return CANDIDATE_LINES[LETTERS.index(letter)]


def _sample(canvas: Canvas, at: Point, each: Entry) -> None:
    unit, letter = canvas.unit_mm, each.candidate.letter
    y = at[1] + 11.0 * unit
    canvas.line((at[0], y), (at[0] + SAMPLE_LINE_UNITS * unit, y), _line(letter), f"{VIEW}-{letter}-sample")


def _told(letter: str, panels: Sequence[Panel]) -> Iterator[Said]:
    """Yield what is said of a candidate's wheels, an axle a sentence."""
    for panel in panels:
        (mine,) = (each for each in panel.outlines if each.letter == letter)
        yield on_axle(panel.scene.name, sentences(*_wheel_told(mine)))


def _wheel_told(mine: Outline) -> Iterator[Said]:
    wheel = mine.shape
    if wheel.has_tyre:
        lengths = {"diameter": length(wheel.overall_diameter_mm, bare=False)}
        lengths["width"] = length(wheel.section_width_mm, bare=False)
        yield say(
            "{tyre} on {rim}, overall diameter {diameter}, section width {width}.",
            tyre=wheel.tyre,
            rim=wheel.rim,
            **lengths,
        )
    else:
        yield PROPOSED_NOTES.no_size
    if unknown(wheel.offset_mm):
        yield PROPOSED_NOTES.no_offset
    if mine.like is not None:
        # Say: of a wheel whose outline hides behind another candidate's, or behind the present one
        yield say("Same outline as {other}.", other=mine.like) if mine.like else say("Same outline as at present.")


def _notes(panels: Sequence[Panel]) -> Iterator[Said]:
    """Yield what there is to say of the wheels on the car now."""
    of_now = (PRESENT_NOTES.no_size, PRESENT_NOTES.no_offset, TWIN_NOTE)
    for panel in panels:
        yield from (on_axle(panel.scene.name, note) for note in panel.scene.notes if note in of_now)
