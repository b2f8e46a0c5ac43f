"""The section through the wheels of one side, seen from the rear: present against proposed, per axle, to scale."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Final

from service.assessment.answer.assess import Assessment
from service.assessment.answer.verdict_words import VERDICT_WORDS
from service.core.saying import Said, say
from service.drawing import offset_strip, paper, section_dimensions, wheels
from service.drawing.canvas import Canvas, Point
from service.drawing.frame import Frame
from service.drawing.legend import Legend
from service.drawing.lettering import clean, fitting, width_of, wrapped
from service.drawing.rooms import draw_rooms
from service.drawing.scene import AxleChoice, AxleScene, scenes
from service.drawing.terms import AXLES, PRESENT, PROPOSED, on_axle
from service.drawing.verdict_line import STEP_UNITS, counts, draw_verdict
from service.locales.speech import ENGLISH, Speech, Units

TITLE: Final = say("Left-hand wheels, cut through the axle and seen from the rear")
VALUES: Final[Mapping[Units, Said]] = MappingProxyType(
    {
        "metric": say(
            "Values: proposed (present), in mm; a negative room is an overlap. "
            "What stays as it is hides its present outline."
        ),
        "imperial": say(
            "Values: proposed (present), in inches, the offset (ET) in mm; a negative room is an overlap. "
            "What stays as it is hides its present outline."
        ),
    }
)
INDICATIVE: Final = say(
    "Disc, rim contour and curve of the sidewalls are indicative; whatever carries a dimension is to scale. "
    "The loaded radius is an estimate. Room counts from the tyre's width in service to what was measured at the "
    "present wheel, to the arch at full bump."
)
# Space between the axles [drawing units], and for the words above each.
GAP_UNITS: Final = 16.0
HEADING_UNITS: Final = 76.0
WORDS_UNITS: Final = 15.0
# Where the designations begin beside short words for present and proposed.
COLUMN_UNITS: Final = 70.0


def draw_section(
    found: Assessment,
    axles: AxleChoice = "both",
    speech: Speech = ENGLISH,
    *,
    styled: bool = True,
    window: bool = False,
) -> str:
    """Return the section as SVG; without its style for a page that brings `paper.STYLE` itself.

    `window` puts the offsets that do beneath the wheels.
    """
    windows = offset_strip.windows_of_axles(found) if window else {}
    both = scenes(found, "both")
    drawn = [scene for scene in both if axles in ("both", scene.name)]
    # The frame suits both axles even where one is drawn, so that two drawings can stand side by side.
    frame = Frame.made(both)
    unit, panel = frame.unit, frame.panel
    width = len(drawn) * (panel + GAP_UNITS * unit) + GAP_UNITS * unit
    text_width = width - 2 * GAP_UNITS * unit
    heading = paper.Heading.made(speech.say(TITLE), found.case.candidate.label, text_width, unit)
    # In a page the verdict stands above; a drawing by itself carries it.
    top = heading.height + (STEP_UNITS * unit if styled else 0.0)
    axis = top + HEADING_UNITS * unit + frame.up
    foot = axis + frame.down + (offset_strip.TALLER_UNITS * unit if window else 0.0)
    notes = _notes(found, drawn, speech, styled=styled) + _window_notes(drawn, windows)
    legend = Legend.made(speech, text_width, unit, frame.scale)
    note_lines = sum(len(wrapped(speech.say(note), text_width, paper.NOTES_UNITS * unit)) for note in notes)
    height = foot + (26 + legend.height_units + paper.NOTES_STEP * paper.NOTES_UNITS * note_lines) * unit
    canvas = paper.new_sheet("section", (width, height), (frame.scale, unit), speech, styled=styled)
    paper.describe(canvas, TITLE, [*_told(found, drawn), *notes])
    heading.draw(canvas, GAP_UNITS * unit)
    if styled:
        draw_verdict(canvas, (GAP_UNITS * unit, heading.height), text_width, found)
    left = GAP_UNITS * unit
    for scene in drawn:
        _designations(canvas, scene, (left, top), panel)
        hub = frame.hub_place(scene)
        wheel = _panel(canvas, scene, (left + hub, axis), (-hub, panel - hub))
        offset_strip.draw_strip(wheel, scene, windows.get(scene.name))
        left += panel + GAP_UNITS * unit
    y = legend.draw(canvas, (GAP_UNITS * unit, foot + 20 * unit))
    paper.paragraph(canvas, (GAP_UNITS * unit, y + 6 * unit), notes, text_width)
    return paper.finished(canvas)


def _told(found: Assessment, drawn: Sequence[AxleScene]) -> Iterator[Said]:
    yield say("{verdict}.", verdict=VERDICT_WORDS[found.verdict])
    for scene in drawn:
        yield from section_dimensions.sentences(scene)


def _notes(found: Assessment, drawn: Sequence[AxleScene], speech: Speech, *, styled: bool) -> list[Said]:
    told = [counts(found)] if styled else []
    told += [on_axle(scene.name, note) for scene in drawn for note in scene.notes]
    return [*told, VALUES[speech.units], INDICATIVE]


def _window_notes(drawn: Sequence[AxleScene], windows: offset_strip.Windows) -> list[Said]:
    if not windows:
        return []
    told = [each for scene in drawn for each in offset_strip.strip_sentences(scene, windows[scene.name])]
    return [*told, offset_strip.MEANING]


def _designations(canvas: Canvas, scene: AxleScene, at: tuple[float, float], width: float) -> None:
    (x, y), unit, say_it = at, canvas.unit_mm, canvas.speech.say
    canvas.text((x, y + 22 * unit), AXLES[scene.name], 20, "start", "strong")
    rows: Sequence[tuple[Said, str]] = (
        (PROPOSED, f"{scene.then.tyre} · {scene.then.rim}"),
        (PRESENT, f"{scene.now.tyre} · {scene.now.rim}"),
    )
    column = max(COLUMN_UNITS, *(width_of(say_it(which), WORDS_UNITS) + 8.0 for which, _ in rows))
    for index, (which, words) in enumerate(rows):
        line_y = y + (48 + 21 * index) * unit
        designations = clean(words, 52)
        size = fitting(designations, width / unit - column, WORDS_UNITS)
        canvas.text((x, line_y), which, WORDS_UNITS, "start", "soft")
        canvas.text((x + column * unit, line_y), designations, size, "start")


def _panel(canvas: Canvas, scene: AxleScene, hub: Point, sides: tuple[float, float]) -> Canvas:
    panel = canvas.group(scene.name, hub)
    wheels.surroundings(panel, scene)
    wheels.present(panel, scene)
    wheels.hub(panel, scene, sides[1])
    wheels.proposed(panel, scene)
    section_dimensions.dimensions(panel, scene, sides)
    draw_rooms(panel, scene, sides)
    return panel
