"""Both wheels of an axle with hub, ground, strut, wing edge and arch, drawn about the hub face and the axis."""

from __future__ import annotations

from typing import Final

from service.core.numeric import known, known_or
from service.drawing import outline
from service.drawing.canvas import Canvas, points
from service.drawing.lines import CHAIN, NARROW, PHANTOM, WIDE, LineType
from service.drawing.scene import AxleScene, WheelShape
from service.drawing.terms import HUB_FACE

BEYOND_UNITS: Final = 16.0
# How far a wheel's centre line reaches from the well towards the axis: to the dimension of the offset.
CENTRE_UNITS: Final = 28.0
NAMES_SIZE: Final = 15.0
# From the axis up to the name of the hub face, and from whatever stands left of it.
HUB_WORDS_UNITS: Final = 14.0
BESIDE_UNITS: Final = 10.0
# Half of the arch that is drawn, as a share of the width of the tyre.
ARCH_SHARE: Final = 0.42
SOLID_UNITS: Final = 9.0
HUB_FLANGE_MM: Final = 12.0
# How far the centre line of a bolt reaches on both sides of the hub face.
BOLT_MM: Final = 28.0
# How far the lines of strut and wing edge reach, as shares of the wheel's radius: indicative, their shape is not known.
STRUT_FROM, STRUT_TO = 0.66, 1.04
WING_FROM, WING_TO = 0.66, 1.04


def present(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the present wheel, or both of a twin, as a phantom."""
    _wheels(canvas, scene.now, PHANTOM, f"{scene.name}-present")


def proposed(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the proposed wheel, or both of a twin, solid, with the centre lines."""
    wheel, unit = scene.then, canvas.unit_mm
    reach = BEYOND_UNITS * unit
    outboard, inboard = scene.reach_outboard_mm + reach, scene.reach_inboard_mm + reach
    canvas.line((-outboard, 0.0), (inboard, 0.0), CHAIN, f"{scene.name}-axis")
    # In two pieces: nothing is measured from it between them, and words stand there.
    within = scene.lowest_rim_mm - outline.WELL_DEPTH_MM - CENTRE_UNITS * unit
    top, bottom = -max(scene.now.radius_mm, wheel.radius_mm) - reach, wheel.lowest_mm + reach
    for suffix, each in wheel.both:
        canvas.line((each.centre_mm, top), (each.centre_mm, -within), CHAIN, f"{scene.name}-centre{suffix}")
        canvas.line((each.centre_mm, within), (each.centre_mm, bottom), CHAIN)
    if scene.placed:
        for _, each in wheel.both:
            for side in (-1, 1):
                for face_mm in (0.0, outline.DISC_MM):
                    canvas.path(outline.disc(each, scene.hub_radius_mm, face_mm, side), NARROW)
    _wheels(canvas, wheel, WIDE, f"{scene.name}-proposed")


def _wheels(canvas: Canvas, wheel: WheelShape, kind: LineType, name: str) -> None:
    for suffix, each in wheel.both:
        _wheel(canvas, each, kind, f"{name}{suffix}")


def _wheel(canvas: Canvas, wheel: WheelShape, kind: LineType, name: str) -> None:
    canvas.path(outline.rim(wheel, -1), kind, f"{name}-rim")
    canvas.path(outline.rim(wheel, 1), kind)
    if wheel.has_tyre:
        grounded = known(wheel.loaded_radius_mm)
        canvas.path(outline.tyre(wheel, wheel.radius_mm, -1, flat=False), kind, f"{name}-tyre")
        canvas.path(outline.tyre(wheel, wheel.lowest_mm, 1, flat=grounded), kind, f"{name}-tyre-loaded")


def hub(canvas: Canvas, scene: AxleScene, right_mm: float) -> None:
    """Draw the hub's face, the origin of every place across the car, and its flange where its bolts are stated."""
    if not scene.placed:
        return
    radius, unit = scene.hub_radius_mm, canvas.unit_mm
    for disc in range(len(scene.then.both)):
        x = -outline.DISC_MM * (disc + 1)
        canvas.line((x, -radius), (x, radius), NARROW)
    canvas.line((0.0, -radius), (0.0, radius), WIDE, f"{scene.name}-hub-face")
    edge = 0.0
    if known(scene.bolt_circle_mm):
        edge = HUB_FLANGE_MM
        canvas.hatched(_box(0.0, edge, -radius, radius), f"{scene.name}-hub-flange")
        canvas.path(_box(0.0, edge, -radius, radius), NARROW)
        for side in (-0.5, 0.5):
            y = side * scene.bolt_circle_mm
            canvas.line((-BOLT_MM, y), (BOLT_MM, y), CHAIN, f"{scene.name}-bolt-{'upper' if side < 0 else 'lower'}")
    # Above the axis: below it the loaded radius is measured.
    x, y = beside_hub(scene, unit), -HUB_WORDS_UNITS * unit
    canvas.line((edge, y - 5 * unit), (x - 3 * unit, y - 5 * unit), NARROW, f"{scene.name}-hub-leader")
    canvas.text((x, y), HUB_FACE, canvas.fitted(HUB_FACE, NAMES_SIZE, (right_mm - x) / unit), "start")


def beside_hub(scene: AxleScene, unit: float) -> float:
    """Return from where on words may stand inboard of hub, bolts and the wheel's centre, within the rim."""
    return max(scene.then.centre_mm, BOLT_MM) + BESIDE_UNITS * unit


def surroundings(canvas: Canvas, scene: AxleScene) -> None:
    """Draw the ground, and what the wheel may touch where the room to it was given."""
    _ground(canvas, scene)
    solid, radius = SOLID_UNITS * canvas.unit_mm, max(scene.now.radius_mm, scene.then.radius_mm)
    if known(scene.strut_mm):
        x, y1, y2 = scene.strut_mm, -STRUT_TO * radius, -STRUT_FROM * radius
        canvas.hatched(_box(x, x + solid, y1, y2))
        canvas.line((x, y1), (x, y2), NARROW, f"{scene.name}-strut")
    if known(scene.wing_mm):
        x, y1, y2 = -scene.wing_mm, -WING_TO * radius, -WING_FROM * radius
        canvas.hatched(_box(x - solid, x, y1, y2))
        canvas.line((x, y1), (x, y2), NARROW, f"{scene.name}-wing")
    if known(scene.arch_radius_mm):
        y = -scene.arch_radius_mm
        for suffix, wheel in scene.then.both:
            half = ARCH_SHARE * known_or(wheel.section_width_mm, wheel.rim_width_mm)
            x1, x2 = wheel.centre_mm - half, wheel.centre_mm + half
            canvas.hatched(_box(x1, x2, y - solid, y))
            canvas.line((x1, y), (x2, y), NARROW, f"{scene.name}-arch{suffix}")


def top_mm(scene: AxleScene, unit: float) -> float:
    """Return how high above the axis anything is drawn but the names of what the wheel may touch."""
    radius = max(scene.now.radius_mm, scene.then.radius_mm)
    tops = [radius + BEYOND_UNITS * unit]
    if known(scene.arch_radius_mm):
        tops.append(scene.arch_radius_mm + SOLID_UNITS * unit)
    if known(known_or(scene.strut_mm, scene.wing_mm)):
        tops.append(STRUT_TO * radius)
    return max(tops)


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
