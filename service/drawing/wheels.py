"""Both wheels of an axle with hub, ground, strut, wing edge and arch, drawn about the hub face and the axis."""

from __future__ import annotations

from typing import Final

from service.core.numeric import known, known_or
from service.core.saying import say
from service.drawing import outline
from service.drawing.canvas import Canvas, points
from service.drawing.lettering import width_of
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, LineType
from service.drawing.scene import AxleScene, WheelShape

# Say: names a surface in a drawing: what the wheel is bolted against
HUB_FACE: Final = say("hub face")
# Say: names a thing in a drawing: the suspension strut beside the wheel
STRUT: Final = say("strut")
# Say: names a thing in a drawing: the outer edge of the wing (fender) above the wheel
WING_EDGE: Final = say("wing edge")
# Say: names a thing in a drawing: the wheel arch above the tyre, with the suspension fully compressed
ARCH: Final = say("arch, at full bump")
BEYOND_UNITS: Final = 16.0
NAMES_SIZE: Final = 14.0
# What a section leaves free beside whatever reaches furthest outboard, as the least.
LEFT_UNITS: Final = 72.0
# The same inboard, for the name of the strut.
RIGHT_UNITS: Final = 40.0
# Half of the arch that is drawn, as a share of the width of the tyre.
ARCH_SHARE: Final = 0.42
SOLID_UNITS: Final = 9.0
HUB_FLANGE_MM: Final = 12.0
# How far the centre line of a bolt reaches on both sides of the hub face.
BOLT_MM: Final = 28.0
# How far the lines of strut and wing edge reach, as shares of the wheel's radius: indicative, their shape is not known.
STRUT_FROM, STRUT_TO = 0.42, 1.04
WING_FROM, WING_TO = 0.62, 1.04


def present(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the present wheel as a phantom."""
    _wheel(canvas, scene.now, PHANTOM, f"{scene.name}-present")


def proposed(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the proposed wheel solid, with its centre lines."""
    wheel, unit = scene.then, canvas.unit_mm
    reach = BEYOND_UNITS * unit
    outboard, inboard = scene.reach_outboard_mm + reach, scene.reach_inboard_mm + reach
    canvas.line((-outboard, 0.0), (inboard, 0.0), CHAIN, f"{scene.name}-axis")
    top = -max(scene.now.radius_mm, wheel.radius_mm) - reach
    canvas.line((wheel.centre_mm, top), (wheel.centre_mm, wheel.lowest_mm + reach), CHAIN, f"{scene.name}-centre")
    if scene.placed:
        for side in (-1, 1):
            for face_mm in (0.0, outline.DISC_MM):
                canvas.path(outline.disc(wheel, scene.hub_radius_mm, face_mm, side), NARROW)
    _wheel(canvas, wheel, WIDE, f"{scene.name}-proposed")


def _wheel(canvas: Canvas, wheel: WheelShape, kind: LineType, name: str) -> None:
    canvas.path(outline.rim(wheel, -1), kind, f"{name}-rim")
    canvas.path(outline.rim(wheel, 1), kind)
    if wheel.has_tyre:
        grounded = known(wheel.loaded_radius_mm)
        canvas.path(outline.tyre(wheel, wheel.radius_mm, -1, flat=False), kind, f"{name}-tyre")
        canvas.path(outline.tyre(wheel, wheel.lowest_mm, 1, flat=grounded), kind, f"{name}-tyre-loaded")


def hub(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the hub's flange and its face, the origin of every place across the car."""
    if not scene.placed:
        return
    radius, unit = scene.hub_radius_mm, canvas.unit_mm
    canvas.hatched(_box(0.0, HUB_FLANGE_MM, -radius, radius))
    canvas.path(_box(0.0, HUB_FLANGE_MM, -radius, radius), NARROW)
    canvas.line((-outline.DISC_MM, -radius), (-outline.DISC_MM, radius), NARROW)
    canvas.line((0.0, -radius), (0.0, radius), WIDE, f"{scene.name}-hub-face")
    if known(scene.bolt_circle_mm):
        for side in (-0.5, 0.5):
            y = side * scene.bolt_circle_mm
            canvas.line((-BOLT_MM, y), (BOLT_MM, y), CHAIN, f"{scene.name}-bolt-{'upper' if side < 0 else 'lower'}")
    canvas.line((HUB_FLANGE_MM, 0.2 * radius), (HUB_FLANGE_MM + 14 * unit, 0.2 * radius), NARROW)
    canvas.text((HUB_FLANGE_MM + 18 * unit, 0.2 * radius + 4 * unit), HUB_FACE, NAMES_SIZE, "start")


def surroundings(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the ground, and what the wheel may touch where the room to it was given."""
    _ground(canvas, scene)
    solid, radius = SOLID_UNITS * canvas.unit_mm, max(scene.now.radius_mm, scene.then.radius_mm)
    if known(scene.strut_mm):
        x, y1, y2 = scene.strut_mm, -STRUT_TO * radius, -STRUT_FROM * radius
        canvas.hatched(_box(x, x + solid, y1, y2))
        canvas.line((x, y1), (x, y2), NARROW, f"{scene.name}-strut")
        _name_strut(canvas, scene, (x + solid, y1 - 6 * canvas.unit_mm))
    if known(scene.wing_mm):
        x, y1, y2 = -scene.wing_mm, -WING_TO * radius, -WING_FROM * radius
        canvas.hatched(_box(x - solid, x, y1, y2))
        canvas.line((x, y1), (x, y2), NARROW, f"{scene.name}-wing")
        _name_wing_edge(canvas, scene, (x - solid, y1 - 6 * canvas.unit_mm))
    if known(scene.arch_radius_mm):
        y, (x1, x2) = -scene.arch_radius_mm, _arch_ends(scene)
        canvas.hatched(_box(x1, x2, y - solid, y))
        canvas.line((x1, y), (x2, y), NARROW, f"{scene.name}-arch")
        room = (scene.then.centre_mm + scene.reach_outboard_mm) / canvas.unit_mm + LEFT_UNITS
        at = scene.then.centre_mm, _arch_name_mm(canvas, scene)
        canvas.text(at, ARCH, canvas.fitted(ARCH, NAMES_SIZE, room), "end")


def _arch_ends(scene: AxleScene) -> tuple[float, float]:
    half = ARCH_SHARE * known_or(scene.then.section_width_mm, scene.then.rim_width_mm)
    return scene.then.centre_mm - half, scene.then.centre_mm + half


def _arch_name_mm(canvas: Canvas, scene: AxleScene) -> float:
    """Return where the name of the arch stands: above those of strut and wing edge, wherever the arch is."""
    unit, radius = canvas.unit_mm, max(scene.now.radius_mm, scene.then.radius_mm)
    return min(-scene.arch_radius_mm - (SOLID_UNITS + 5.0) * unit, -STRUT_TO * radius - 23 * unit)


def _name_strut(canvas: Canvas, scene: AxleScene, at: tuple[float, float]) -> None:
    """Write the name over the strut; a long one stands beside the name of the arch, off its hatching."""
    unit, (x, y) = canvas.unit_mm, at
    width = width_of(canvas.speech.say(STRUT), NAMES_SIZE) * unit
    right = min(x + 0.5 * width, scene.reach_inboard_mm + RIGHT_UNITS * unit)
    if known(scene.arch_radius_mm) and right - width < _arch_ends(scene)[1] + 6 * unit:
        y = _arch_name_mm(canvas, scene)
    canvas.text((right, y), STRUT, NAMES_SIZE, "end")


def _name_wing_edge(canvas: Canvas, scene: AxleScene, at: tuple[float, float]) -> None:
    """Write the name over the middle of the wing edge; a long one is moved outwards, off the hatching of the arch."""
    unit, (x, y) = canvas.unit_mm, at
    right = x + 0.5 * width_of(canvas.speech.say(WING_EDGE), NAMES_SIZE) * unit
    if known(scene.arch_radius_mm):
        right = min(right, max(x + SOLID_UNITS * unit, _arch_ends(scene)[0] - 6 * unit))
    room = (right + scene.reach_outboard_mm) / unit + LEFT_UNITS
    canvas.text((right, y), WING_EDGE, canvas.fitted(WING_EDGE, NAMES_SIZE, room), "end")


def _ground(canvas: Canvas, scene: AxleScene) -> None:
    wheel, reach = scene.then, BEYOND_UNITS * canvas.unit_mm
    x1, x2 = -scene.reach_outboard_mm - reach, scene.reach_inboard_mm + reach
    if known(scene.now.loaded_radius_mm):
        y = scene.now.loaded_radius_mm
        canvas.line((x1, y), (x2, y), PHANTOM, f"{scene.name}-present-ground")
    if known(wheel.loaded_radius_mm):
        y = wheel.loaded_radius_mm
        canvas.hatched(_box(x1, x2, y, y + SOLID_UNITS * canvas.unit_mm))
        canvas.line((x1, y), (x2, y), WIDE, f"{scene.name}-proposed-ground")


def _box(x1: float, x2: float, y1: float, y2: float) -> str:
    return points("M", x1, y1, "H", x2, "V", y2, "H", x1, "Z")
