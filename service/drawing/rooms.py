"""The rooms to strut, wing edge and arch: dimension lines, names and values above the wheel, overlaps hatched."""

from __future__ import annotations

from typing import Final, Literal, NamedTuple

from service.core.numeric import known
from service.core.saying import Said, say
from service.drawing import outline, overlap
from service.drawing.canvas import Canvas
from service.drawing.dimension_lines import LIFT_UNITS, OVERSHOOT_UNITS, TAIL_UNITS, extension, gap_across, gap_along
from service.drawing.lettering import lengths, width_of
from service.drawing.lines import NARROW
from service.drawing.scene import AxleScene
from service.drawing.terms import ARCH, INTO_ARCH, INTO_STRUT, INTO_WING_EDGE, STRUT, WING_EDGE
from service.drawing.wheels import top_mm

NAMES_SIZE, VALUES_SIZE = 15.0, 16.0
# Above whatever is drawn: the dimension lines of the rooms at the sides, then two lines of words, then the arch's two.
LINE_UP_UNITS: Final = 14.0
STEP_UNITS: Final = 19.0
WORDS_UP_UNITS: Final = 53.0
# How much a section needs for all of them above whatever is drawn.
ABOVE_UNITS: Final = 109.0
# Words keep this distance from the line that leads up to those of the arch.
BESIDE_UNITS: Final = 8.0
# Half the length of the line that marks how far the tyre reaches in service.
EDGE_UNITS: Final = 16.0
# Where across the tyre the room to the arch is drawn, as a share of its width from the centre.
RADIAL_AT: Final = 0.08
# The same at the inner wheel of a twin, beside which there is less space inboard.
TWIN_RADIAL_AT: Final = -0.3


class Room(NamedTuple):
    """A place that the wheel may touch [mm from hub face or axis], and what is left to it; NaN where not known."""

    name: Literal["inboard", "outboard", "radial"]
    edge_mm: float
    solid_mm: float
    left_now_mm: float
    solid: Said
    room: Said
    overlap: Said

    @property
    def left_mm(self) -> float:
        """Return what the proposed wheel leaves; negative where it would be in the place."""
        return self.solid_mm - self.edge_mm

    @property
    def named(self) -> Said:
        """Return what stands above the value in the drawing."""
        return self.overlap if self.left_mm < 0.0 else self.solid

    @property
    def in_words(self) -> Said:
        """Return the same for those who do not see where it stands."""
        return self.overlap if self.left_mm < 0.0 else self.room


def rooms(scene: AxleScene) -> tuple[Room, Room, Room]:
    """Return the rooms inboard, outboard and above."""
    now, then = scene.now, scene.then
    strut, wing, arch = scene.strut_mm, scene.wing_mm, scene.arch_radius_mm
    to_strut, to_wing, to_arch = say("room to the strut"), say("room to the wing edge"), say("room to the arch")
    return (
        Room("inboard", then.inner_edge_mm, strut, strut - now.inner_edge_mm, STRUT, to_strut, INTO_STRUT),
        Room("outboard", then.outer_edge_mm, wing, wing - now.outer_edge_mm, WING_EDGE, to_wing, INTO_WING_EDGE),
        Room("radial", then.clear_radius_mm, arch, arch - now.clear_radius_mm, ARCH, to_arch, INTO_ARCH),
    )


def draw_rooms(canvas: Canvas, scene: AxleScene, sides: tuple[float, float]) -> None:
    """Draw what the wheel leaves on all sides; words stand between two sides of the drawing [mm]."""
    inboard, outboard, radial = rooms(scene)
    foot = -top_mm(scene, canvas.unit_mm) - LINE_UP_UNITS * canvas.unit_mm
    share = TWIN_RADIAL_AT if scene.then.twin else RADIAL_AT
    leader = scene.then.centre_mm + share * known_width(scene)
    for room, side in ((inboard, 1), (outboard, -1)):
        if known(room.solid_mm):
            _sideways(canvas, scene, room, side, foot)
            room_mm = (sides[1] - leader) if side > 0 else (leader - sides[0])
            _words(canvas, room, side, (leader, foot), room_mm)
    if known(radial.solid_mm):
        _upwards(canvas, scene, radial, (leader, foot - WORDS_UP_UNITS * canvas.unit_mm), sides)


def known_width(scene: AxleScene) -> float:
    """Return the width that the words are placed by."""
    return scene.then.section_width_mm if scene.then.has_tyre else scene.then.rim_width_mm


def _sideways(canvas: Canvas, scene: AxleScene, room: Room, side: int, y: float) -> None:
    """Draw the dimension of a room at a side, the edge in service that it counts from, and where they overlap."""
    wheel, name = scene.then if side > 0 else scene.then.outer, scene.name
    if not (scene.placed and wheel.has_tyre and known(room.left_mm)):
        return
    widest, half = -outline.widest_radius_mm(wheel, wheel.radius_mm), EDGE_UNITS * canvas.unit_mm
    edge, solid = side * room.edge_mm, side * room.solid_mm
    canvas.line((edge, widest - half), (edge, widest + half), NARROW, f"{name}-{room.name}-edge")
    extension(canvas, (edge, widest - half), (edge, y))
    extension(canvas, (solid, -top_mm(scene, canvas.unit_mm)), (solid, y))
    gap_across(canvas, (edge, solid), y, f"{name}-room-{room.name}")
    reach = wheel.half_inboard_mm if side > 0 else scene.then.half_outboard_mm
    if room.left_mm < 0.0:
        canvas.crossed(overlap.beyond(wheel, reach, solid, "x", side), f"{name}-overlap-{room.name}")


def _words(canvas: Canvas, room: Room, side: int, at: tuple[float, float], room_mm: float) -> None:
    """Write name and value over the ends of a dimension, as far outwards as both are long, off the arch's line."""
    unit, (leader, y) = canvas.unit_mm, at
    longest = room_mm / unit - BESIDE_UNITS
    lines: list[tuple[str, float]] = [(room.named, NAMES_SIZE)]
    if known(room.left_mm):
        lines.append((lengths(room.left_mm, room.left_now_mm, 1), VALUES_SIZE))
    takes = max(min(longest, width_of(canvas.speech.say(words), size)) for words, size in lines)
    # Where both ends of the line have room, the words begin at its inner one.
    inner = min(room.edge_mm, room.solid_mm) if known(room.left_mm) else room.solid_mm
    start = max(BESIDE_UNITS, min((inner - side * leader) / unit - TAIL_UNITS, longest + BESIDE_UNITS - takes))
    for index, (words, size) in enumerate(reversed(lines)):
        place = leader + side * start * unit, y - (OVERSHOOT_UNITS + LIFT_UNITS + STEP_UNITS * index) * unit
        canvas.text(place, words, canvas.fitted(words, size, longest), "start" if side > 0 else "end")


def _upwards(canvas: Canvas, scene: AxleScene, room: Room, at: tuple[float, float], sides: tuple[float, float]) -> None:
    """Draw the dimension of the room above, led up to its words; hatch where the tyre would be in the arch."""
    unit, wheel, (x, y) = canvas.unit_mm, scene.then, at
    words: list[tuple[str, float]] = [(room.named, NAMES_SIZE)]
    if wheel.has_tyre and known(room.left_mm):
        words.append((lengths(room.left_mm, room.left_now_mm, 1), VALUES_SIZE))
        extension(canvas, (wheel.centre_mm, -room.edge_mm), (x, -room.edge_mm))
        gap_along(canvas, x, (-room.edge_mm, -room.solid_mm), f"{scene.name}-room-radial")
        canvas.line((x, -max(room.edge_mm, room.solid_mm)), (x, y), NARROW)
        if room.left_mm < 0.0:
            for suffix, each in wheel.both:
                place = overlap.beyond(each, wheel.half_inboard_mm, -room.solid_mm, "y", -1)
                canvas.crossed(place, f"{scene.name}-overlap-radial{suffix}")
    fits = 2.0 * min(x - sides[0], sides[1] - x) / unit
    for index, (said, size) in enumerate(reversed(words)):
        at_y = y - (LIFT_UNITS + STEP_UNITS * index) * unit
        canvas.text((x, at_y), said, canvas.fitted(said, size, fits))
