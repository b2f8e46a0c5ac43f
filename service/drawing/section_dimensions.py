"""The dimensions of a section, as lines with values and as sentences for those who do not see it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from service.core.numeric import known, unknown
from service.core.saying import Said, joined, say
from service.drawing import outline
from service.drawing.canvas import Canvas
from service.drawing.dimension_lines import across, along, extension, gap_across, gap_along
from service.drawing.lettering import against, labelled, length, lengths, offsets
from service.drawing.lines import NARROW
from service.drawing.scene import AxleScene
from service.drawing.terms import SECTION_WIDTH, on_axle
from service.physics.vertical_stiffness import LOADED_RADIUS_BAND_MM

# Say: along a dimension line, followed by numbers: from the hub's axis to the ground under load
LOADED_RADIUS: Final = say("loaded radius")
# Say: along a dimension line, followed by numbers: the width of the rim between its flanges
RIM: Final = say("rim")
# Half the length of the line that marks how far the tyre reaches in service.
EDGE_UNITS: Final = 16.0
# Where across the tyre the room to the arch is drawn, as a share of its width from the centre.
RADIAL_AT: Final = 0.08


def dimensions(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the dimensions of the proposed wheel, those of the present one in brackets."""
    if scene.then.has_tyre:
        _diameter(canvas, scene)
        _section_width(canvas, scene)
        _loaded_radius(canvas, scene)
    _rim(canvas, scene)
    _room(canvas, scene)


def _diameter(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    x = -scene.reach_outboard_mm - 38 * unit
    radius = wheel.radius_mm
    words = labelled("⌀", lengths(wheel.overall_diameter_mm, scene.now.overall_diameter_mm))
    extension(canvas, (wheel.centre_mm, -radius), (x, -radius))
    # The unloaded tyre would reach below the ground: the lower end stands where its circle ends.
    extension(canvas, (wheel.centre_mm, radius), (x, radius))
    along(canvas, x, (-radius, radius), words, f"{scene.name}-overall-diameter")


def _section_width(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    y = max(scene.reach_down_mm, wheel.radius_mm) + 50 * unit
    widest = outline.widest_radius_mm(wheel, wheel.lowest_mm)
    ends = wheel.centre_mm - 0.5 * wheel.section_width_mm, wheel.centre_mm + 0.5 * wheel.section_width_mm
    for x in ends:
        extension(canvas, (x, widest), (x, y))
    words = labelled(SECTION_WIDTH, lengths(wheel.section_width_mm, scene.now.section_width_mm))
    across(canvas, ends, y, words, f"{scene.name}-section-width")


def _loaded_radius(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    if unknown(wheel.loaded_radius_mm):
        return
    x = scene.reach_inboard_mm + 46 * unit
    extension(canvas, (scene.reach_inboard_mm + 16 * unit, 0.0), (x, 0.0))
    extension(canvas, (scene.reach_inboard_mm + 16 * unit, wheel.loaded_radius_mm), (x, wheel.loaded_radius_mm))
    band = {"value": length(wheel.loaded_radius_mm), "band": length(LOADED_RADIUS_BAND_MM)}
    words: str = Said("{value} ±{band}", band)
    if known(scene.now.loaded_radius_mm):
        words = against(words, length(scene.now.loaded_radius_mm))
    words = labelled(LOADED_RADIUS, words)
    along(canvas, x, (0.0, wheel.loaded_radius_mm), words, f"{scene.name}-loaded-radius")


def _rim(canvas: Canvas, scene: AxleScene) -> None:
    wheel, unit = scene.then, canvas.unit_mm
    radius = 0.5 * wheel.rim_diameter_mm
    y = -radius + outline.WELL_DEPTH_MM + 40 * unit
    ends = wheel.centre_mm - 0.5 * wheel.rim_width_mm, wheel.centre_mm + 0.5 * wheel.rim_width_mm
    for x in ends:
        extension(canvas, (x, -radius), (x, y))
    words = labelled(RIM, lengths(wheel.rim_width_mm, scene.now.rim_width_mm, 1))
    across(canvas, ends, y, words, f"{scene.name}-rim-width")
    if scene.placed:
        y = radius - outline.WELL_DEPTH_MM - 34 * unit
        extension(canvas, (0.0, scene.hub_radius_mm), (0.0, y))
        words = labelled("ET", offsets(wheel.offset_mm, scene.now.offset_mm))
        across(canvas, (0.0, wheel.centre_mm), y, words, f"{scene.name}-offset")


def _room(canvas: Canvas, scene: AxleScene) -> None:
    wheel, name = scene.then, scene.name
    if not wheel.has_tyre:
        return
    y = -outline.widest_radius_mm(wheel, wheel.radius_mm)
    for side, edge, solid, which in (
        (1, wheel.inner_edge_mm, scene.strut_mm, "inboard"),
        (-1, wheel.outer_edge_mm, scene.wing_mm, "outboard"),
    ):
        if scene.placed and known(solid):
            half = EDGE_UNITS * canvas.unit_mm
            canvas.line((side * edge, y - half), (side * edge, y + half), NARROW, f"{name}-{which}-edge")
            words = lengths(solid - edge, solid - _now_edge(scene, side), 1)
            gap_across(canvas, (side * edge, side * solid), y, words, f"{name}-room-{which}")
    if known(scene.arch_radius_mm - wheel.clear_radius_mm):
        x = wheel.centre_mm + RADIAL_AT * wheel.section_width_mm
        edge = wheel.clear_radius_mm
        extension(canvas, (wheel.centre_mm, -edge), (x, -edge))
        words = lengths(scene.arch_radius_mm - edge, scene.arch_radius_mm - scene.now.clear_radius_mm, 1)
        gap_along(canvas, x, (-edge, -scene.arch_radius_mm), words, f"{name}-room-radial")


def _now_edge(scene: AxleScene, side: int) -> float:
    return scene.now.inner_edge_mm if side > 0 else scene.now.outer_edge_mm


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
        (say("room to the strut"), scene.strut_mm - then.inner_edge_mm, scene.strut_mm - now.inner_edge_mm, 1),
        (say("room to the wing edge"), scene.wing_mm - then.outer_edge_mm, scene.wing_mm - now.outer_edge_mm, 1),
        (
            say("room to the arch"),
            scene.arch_radius_mm - then.clear_radius_mm,
            scene.arch_radius_mm - now.clear_radius_mm,
            1,
        ),
    )
    said = [
        labelled(name, lengths(proposed, present, digits, bare=False))
        for name, proposed, present, digits in measured
        if known(proposed)
    ]
    if known(then.offset_mm):
        said.append(labelled(say("offset (ET)"), offsets(then.offset_mm, now.offset_mm)))
    yield say("Proposed, present in brackets: {values}.", values=joined(said))
