"""The dimensions of a section, as lines with values and as sentences for those who do not see it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from service.core.numeric import known, unknown
from service.core.saying import Said, joined, say
from service.drawing import outline, overlap
from service.drawing.canvas import Canvas
from service.drawing.dimension_lines import LIFT_UNITS, TAIL_UNITS, across, along, beneath, extension, gap_across
from service.drawing.lettering import against, labelled, length, lengths, offsets
from service.drawing.rooms import rooms
from service.drawing.scene import AxleScene
from service.drawing.terms import SECTION_WIDTH, TWIN_GAP, TWIN_OVERLAP, on_axle
from service.drawing.wheels import beside_hub
from service.physics.vertical_stiffness import LOADED_RADIUS_BAND_MM

# Say: along a dimension line, followed by numbers: from the hub's axis to the ground under load
LOADED_RADIUS: Final = say("loaded radius")
# Say: along a dimension line, followed by numbers: the width of the rim between its flanges
RIM: Final = say("rim")
WORDS_SIZE: Final = 16.0
# From the lowest point of a section to its dimensions; that of a twin's gap stands above that of the width.
WIDTH_DOWN_UNITS, TWIN_DOWN_UNITS = 34.0, 44.0
TWIN_LINES_UNITS: Final = (-3.0, 16.0)
# From the well of the smaller rim to the dimensions of width and offset within it.
RIM_DOWN_UNITS, OFFSET_UP_UNITS = 20.0, 22.0
RIM_WORDS_UNITS: Final = 22.0
# From whatever reaches furthest inboard to the dimension of the loaded radius.
LOADED_RADIUS_UNITS: Final = 50.0


def dimensions(canvas: Canvas, scene: AxleScene, sides: tuple[float, float]) -> None:
    """Draw the dimensions of the proposed wheel, those of the present one in brackets, between two sides [mm]."""
    if scene.then.has_tyre:
        _diameter(canvas, scene)
        _section_width(canvas, scene, sides)
        _loaded_radius(canvas, scene)
        _twin_gap(canvas, scene, sides[0])
    _rim(canvas, scene, sides[1])
    if scene.placed:
        _offset(canvas, scene)


def width_down_units(scene: AxleScene) -> float:
    """Return how far below the lowest point the dimension of the section width stands."""
    return WIDTH_DOWN_UNITS + (TWIN_DOWN_UNITS if scene.then.twin else 0.0)


def _diameter(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    x = -scene.reach_outboard_mm - 38 * unit
    radius, start = wheel.radius_mm, wheel.outer.centre_mm
    words = labelled("⌀", lengths(wheel.overall_diameter_mm, scene.now.overall_diameter_mm))
    extension(canvas, (start, -radius), (x, -radius))
    # The unloaded tyre would reach below the ground: the lower end stands where its circle ends.
    extension(canvas, (start, radius), (x, radius))
    along(canvas, x, (-radius, radius), words, f"{scene.name}-overall-diameter")


def _section_width(canvas: Canvas, scene: AxleScene, sides: tuple[float, float]) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    y = scene.reach_down_mm + width_down_units(scene) * unit
    widest = outline.widest_radius_mm(wheel, wheel.lowest_mm)
    ends = wheel.centre_mm - 0.5 * wheel.section_width_mm, wheel.centre_mm + 0.5 * wheel.section_width_mm
    for x in ends:
        extension(canvas, (x, widest), (x, y))
    words = labelled(SECTION_WIDTH, lengths(wheel.section_width_mm, scene.now.section_width_mm))
    across(canvas, ends, y, f"{scene.name}-section-width")
    room = 2.0 * min(wheel.centre_mm - sides[0], sides[1] - wheel.centre_mm) / unit
    beneath(canvas, (wheel.centre_mm, y), words, room)


def _twin_gap(canvas: Canvas, scene: AxleScene, left_mm: float) -> None:
    """Draw the gap between the grown tyres of a twin, or hatch where they would be in one place."""
    wheel, unit, name = scene.then, canvas.unit_mm, f"{scene.name}-twin-gap"
    if not wheel.twin or unknown(wheel.twin_gap_mm):
        return
    half = 0.5 * wheel.twin_gap_mm
    y = scene.reach_down_mm + WIDTH_DOWN_UNITS * unit
    widest = outline.widest_radius_mm(wheel, wheel.lowest_mm)
    for x in (-half, half):
        extension(canvas, (x, widest), (x, y))
    gap_across(canvas, (-half, half), y, name)
    grown = wheel.centre_mm - half
    for index, (each, side) in enumerate(((wheel, -1), (wheel.outer, 1))):
        place = overlap.beyond(each, grown, 0.0, "x", side)
        if place:
            canvas.crossed(place, f"{scene.name}-overlap-twin-{index + 1}")
    named = TWIN_OVERLAP if wheel.twin_gap_mm < 0.0 else TWIN_GAP
    x = -abs(half) - (TAIL_UNITS + LIFT_UNITS) * unit
    # Name and value in two lines: beneath the outer tyre nothing else stands.
    for index, words in enumerate((named, lengths(wheel.twin_gap_mm, scene.now.twin_gap_mm, 1))):
        size = canvas.fitted(words, WORDS_SIZE, (x - left_mm) / unit)
        canvas.text((x, y + TWIN_LINES_UNITS[index] * unit), words, size, "end")


def _loaded_radius(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    if unknown(wheel.loaded_radius_mm):
        return
    start, x = scene.reach_inboard_mm + 16 * unit, scene.reach_inboard_mm + LOADED_RADIUS_UNITS * unit
    extension(canvas, (start, 0.0), (x, 0.0))
    extension(canvas, (start, wheel.loaded_radius_mm), (x, wheel.loaded_radius_mm))
    band = {"value": length(wheel.loaded_radius_mm), "band": length(LOADED_RADIUS_BAND_MM)}
    words: str = Said("{value} ±{band}", band)
    if known(scene.now.loaded_radius_mm):
        words = against(words, length(scene.now.loaded_radius_mm))
    words = labelled(LOADED_RADIUS, words)
    along(canvas, x, (0.0, wheel.loaded_radius_mm), words, f"{scene.name}-loaded-radius")


def _rim(canvas: Canvas, scene: AxleScene, right_mm: float) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    radius = 0.5 * wheel.rim_diameter_mm
    y = -scene.lowest_rim_mm + outline.WELL_DEPTH_MM + RIM_DOWN_UNITS * unit
    ends = wheel.centre_mm - 0.5 * wheel.rim_width_mm, wheel.centre_mm + 0.5 * wheel.rim_width_mm
    for x in ends:
        extension(canvas, (x, -radius), (x, y))
    across(canvas, ends, y, f"{scene.name}-rim-width")
    # Beneath the line, inboard of the disc.
    words, x = labelled(RIM, lengths(wheel.rim_width_mm, scene.now.rim_width_mm, 1)), beside_hub(scene, unit)
    size = canvas.fitted(words, WORDS_SIZE, (right_mm - x) / unit)
    canvas.text((x, y + RIM_WORDS_UNITS * unit), words, size, "start")


def _offset(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    y = scene.lowest_rim_mm - outline.WELL_DEPTH_MM - OFFSET_UP_UNITS * unit
    extension(canvas, (0.0, scene.hub_radius_mm), (0.0, y))
    right = across(canvas, (0.0, wheel.centre_mm), y, f"{scene.name}-offset")
    words = labelled("ET", offsets(wheel.offset_mm, scene.now.offset_mm))
    x = max(right + LIFT_UNITS * unit, beside_hub(scene, unit))
    size = canvas.fitted(words, WORDS_SIZE, (scene.reach_inboard_mm - x) / unit + LOADED_RADIUS_UNITS - 24.0)
    canvas.text((x, y + LIFT_UNITS * unit), words, size, "start")


def sentences(scene: AxleScene) -> Iterator[Said]:
    """Yield what the drawing says of an axle."""
    now, then = scene.now, scene.then
    fitments = {"proposed": say("{tyre} on {rim}", tyre=then.tyre, rim=then.rim)}
    fitments["present"] = say("{tyre} on {rim}", tyre=now.tyre, rim=now.rim)
    yield on_axle(scene.name, say("proposed {proposed}, present {present}.", **fitments))
    measured = (
        (say("overall diameter"), then.overall_diameter_mm, now.overall_diameter_mm, 0),
        (SECTION_WIDTH, then.section_width_mm, now.section_width_mm, 0),
        (say("rim width"), then.rim_width_mm, now.rim_width_mm, 1),
        (say("static loaded radius"), then.loaded_radius_mm, now.loaded_radius_mm, 0),
    )
    said = [
        labelled(name, lengths(proposed, present, digits, bare=False))
        for name, proposed, present, digits in measured
        if known(proposed)
    ]
    said += [
        labelled(room.in_words, lengths(room.left_mm, room.left_now_mm, 1, bare=False))
        for room in rooms(scene)
        if known(room.left_mm)
    ]
    if known(then.twin_gap_mm):
        named = TWIN_OVERLAP if then.twin_gap_mm < 0.0 else TWIN_GAP
        said.append(labelled(named, lengths(then.twin_gap_mm, now.twin_gap_mm, 1, bare=False)))
    if known(then.offset_mm):
        said.append(labelled(say("offset (ET)"), offsets(then.offset_mm, now.offset_mm)))
    yield say("Proposed, present in brackets: {values}.", values=joined(said))
