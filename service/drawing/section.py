"""The section through the wheels of one side, seen from the rear: present against proposed, per axle, to scale."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from service.assessment.answer.assess import Assessment
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.drawing import paper, section_dimensions, wheels
from service.drawing.canvas import Canvas
from service.drawing.lettering import clean, wrapped
from service.drawing.scene import AxleChoice, AxleScene, scenes
from service.drawing.verdict_line import STEP_UNITS, counts, draw_verdict

TITLE: Final = "Left-hand wheels, cut through the axle and seen from the rear"
NOTES: Final = (
    "Values: proposed (present), in mm; a negative room is an overlap. What stays as it is hides its present outline.",
    (
        "Disc, rim contour and curve of the sidewalls are indicative; whatever carries a dimension is to scale. The "
        "loaded radius is an estimate. Room counts from the tyre's width in service to what was measured at the "
        "present wheel, to the arch at full bump."
    ),
)
# Space round the wheel [drawing units]: for the dimensions at its sides, and for the words above.
OUTBOARD_UNITS: Final = 62.0
INBOARD_UNITS: Final = 74.0
GAP_UNITS: Final = 16.0
HEADING_UNITS: Final = 92.0
ABOVE_UNITS: Final = 46.0
BELOW_UNITS: Final = 78.0
NARROWEST_UNITS: Final = 400.0


def draw_section(found: Assessment, axles: AxleChoice = "both", *, styled: bool = True) -> str:
    """Return the section as SVG; without its style for a page that brings `paper.STYLE` itself."""
    both = scenes(found, "both")
    drawn = [scene for scene in both if axles in ("both", scene.name)]
    # Scale and panel suit both axles even where one is drawn, so that two drawings can stand side by side.
    up, down = max(s.reach_up_mm for s in both), max(s.reach_down_mm for s in both)
    scale = paper.scale_for(up + down)
    unit = paper.unit_mm(scale)
    panel = max(_panel_width(scene, unit) for scene in both)
    width = len(drawn) * (panel + GAP_UNITS * unit) + GAP_UNITS * unit
    text_width = width - 2 * GAP_UNITS * unit
    heading = paper.Heading.made(TITLE, found.case.candidate.label, text_width, unit)
    # In a page the verdict stands above; a drawing by itself carries it.
    top = heading.height + (STEP_UNITS * unit if styled else 0.0)
    axis = top + (HEADING_UNITS + ABOVE_UNITS) * unit + up
    foot = axis + down + BELOW_UNITS * unit
    notes = [counts(found)] if styled else []
    notes += [f"{scene.name.capitalize()} axle: {note}" for scene in drawn for note in scene.notes] + list(NOTES)
    note_lines = sum(len(wrapped(note, text_width, 13 * unit)) for note in notes)
    height = foot + (30 + 26 + 26 + 17.6 * note_lines) * unit
    canvas = paper.new_sheet("section", (width, height), scale, styled=styled)
    told = [sentence for scene in drawn for sentence in section_dimensions.sentences(scene)]
    paper.describe(canvas, TITLE, [f"{VERDICT_WORDS[found.verdict]}.", *told, *notes])
    heading.draw(canvas, GAP_UNITS * unit)
    if styled:
        draw_verdict(canvas, (GAP_UNITS * unit, heading.height), found)
    left = GAP_UNITS * unit
    for scene in drawn:
        _designations(canvas, scene, (left, top))
        _panel(canvas, scene, left + _hub_place(scene, panel, unit), axis)
        left += panel + GAP_UNITS * unit
    y = paper.legend(canvas, (GAP_UNITS * unit, foot + 24 * unit), text_width, scale)
    paper.paragraph(canvas, (GAP_UNITS * unit, y + 6 * unit), notes, text_width)
    return paper.finished(canvas)


def _panel_width(scene: AxleScene, unit: float) -> float:
    needed = scene.reach_outboard_mm + scene.reach_inboard_mm + (OUTBOARD_UNITS + INBOARD_UNITS) * unit
    return max(needed, NARROWEST_UNITS * unit)


def _hub_place(scene: AxleScene, width: float, unit: float) -> float:
    """Return where the hub face stands in a panel, so that wheel and dimensions stand in its middle."""
    needed = scene.reach_outboard_mm + scene.reach_inboard_mm + (OUTBOARD_UNITS + INBOARD_UNITS) * unit
    return 0.5 * (width - needed) + OUTBOARD_UNITS * unit + scene.reach_outboard_mm


def _designations(canvas: Canvas, scene: AxleScene, at: tuple[float, float]) -> None:
    (x, y), unit = at, canvas.unit_mm
    canvas.text((x, y + 22 * unit), f"{scene.name.capitalize()} axle", 20, "start", "strong")
    rows: Sequence[tuple[str, str]] = (
        ("proposed", f"{scene.then.tyre} · {scene.then.rim}"),
        ("present", f"{scene.now.tyre} · {scene.now.rim}"),
    )
    for index, (which, words) in enumerate(rows):
        line_y = y + (48 + 21 * index) * unit
        canvas.text((x, line_y), which, 14, "start", "soft")
        canvas.text((x + 70 * unit, line_y), clean(words, 52), 14, "start")


def _panel(canvas: Canvas, scene: AxleScene, hub_x: float, axis_y: float) -> None:
    panel = canvas.group(scene.name, (hub_x, axis_y))
    wheels.surroundings(panel, scene)
    wheels.present(panel, scene)
    wheels.hub(panel, scene)
    wheels.proposed(panel, scene)
    section_dimensions.dimensions(panel, scene)
