"""Outlines of tyre and rim as path data, about the wheel's axis.

Widths, diameters and radii are the assessment's; the curve of the sidewall and the contour of the rim between them
are indicative. Each outline reaches exactly as far as those lengths say, so that it can be measured.
"""

from __future__ import annotations

from typing import Final

from service.drawing.canvas import points
from service.drawing.scene import WheelShape
from service.physics.wheel_position import FLANGE_MM

# Where the section is widest, and how the sidewall curves, as shares of the section height: indicative.
WIDEST_AT: Final = 0.52
SHOULDER_DROP: Final = 0.07
# Height of a J flange above the nominal diameter: DIN 7817 and ISO 4000-2, from memory; indicative here.
FLANGE_HEIGHT_MM: Final = 17.3
WELL_DEPTH_MM: Final = 20.0
DISC_MM: Final = 11.0


def widest_radius_mm(wheel: WheelShape, outer_mm: float) -> float:
    """Return at which distance from the axis a tyre that reaches to `outer_mm` is widest."""
    bead = 0.5 * wheel.bead_diameter_mm
    return bead + WIDEST_AT * (outer_mm - bead)


Steps = tuple[str | float, ...]


def tyre(wheel: WheelShape, outer_mm: float, side: int, *, flat: bool) -> str:
    """Return the tyre's outline above (side -1) or below (side 1) the axis; `flat` where it stands on the ground."""
    return points(*tyre_steps(wheel, outer_mm, side, flat=flat))


def tyre_steps(wheel: WheelShape, outer_mm: float, side: int, *, flat: bool) -> Steps:
    """Return the same as letters and coordinates."""
    centre, bead = wheel.centre_mm, 0.5 * wheel.bead_diameter_mm
    height = outer_mm - bead
    seat, section = 0.5 * min(wheel.rim_width_mm, wheel.section_width_mm), 0.5 * wheel.section_width_mm
    tread = 0.5 * wheel.tread_width_mm
    widest = widest_radius_mm(wheel, outer_mm)
    shoulder = outer_mm if flat else outer_mm - SHOULDER_DROP * height
    turn = section - 0.45 * (section - tread)
    crown: Steps = ("L",) if flat else ("Q", centre, side * outer_mm)
    crown_end: Steps = (centre + 0.9 * tread, side * shoulder)
    if not flat:
        # Two halves, so that the crown itself is a point of the outline.
        rise = side * outer_mm
        crown = ("Q", centre - 0.45 * tread, rise, centre, rise, "Q", centre + 0.45 * tread, rise)
    return (
        *("M", centre - seat, side * bead),
        *("C", centre - seat, side * (bead + 0.2 * height)),
        *(centre - section, side * (widest - 0.28 * height), centre - section, side * widest),
        *("C", centre - section, side * (widest + 0.26 * height)),
        *(centre - turn, side * shoulder, centre - 0.9 * tread, side * shoulder),
        *crown,
        *crown_end,
        *("C", centre + turn, side * shoulder),
        *(centre + section, side * (widest + 0.26 * height), centre + section, side * widest),
        *("C", centre + section, side * (widest - 0.28 * height)),
        *(centre + seat, side * (bead + 0.2 * height), centre + seat, side * bead),
    )


def rim(wheel: WheelShape, side: int) -> str:
    """Return the rim's contour above (side -1) or below (side 1) the axis, from one flange to the other."""
    centre, radius, half = wheel.centre_mm, 0.5 * wheel.rim_diameter_mm, 0.5 * wheel.rim_width_mm
    flange, lip = radius + FLANGE_HEIGHT_MM, radius + 0.55 * FLANGE_HEIGHT_MM
    outer, inner = _well(wheel)
    depth = radius - WELL_DEPTH_MM

    def at(x: float, r: float) -> tuple[float, float]:
        return centre + wheel.facing * x, side * r

    return points(
        *("M", *at(-half - FLANGE_MM, lip)),
        *("C", *at(-half - FLANGE_MM, flange), *at(-half, flange), *at(-half, radius + 4.0)),
        *("L", *at(-half, radius), "L", *at(outer - 0.08 * half, radius - 2.0)),
        *("L", *at(outer, depth), "L", *at(inner, depth)),
        *("L", *at(inner + 0.08 * half, radius - 2.0), "L", *at(half, radius)),
        *("L", *at(half, radius + 4.0), "C", *at(half, flange), *at(half + FLANGE_MM, flange)),
        *at(half + FLANGE_MM, lip),
    )


def disc(wheel: WheelShape, hub_radius_mm: float, face_mm: float, side: int) -> str:
    """Return one face of the web from hub to rim, `face_mm` outboard: indicative, its real shape is not known."""
    outer, _ = _well(wheel)
    # A twin's outer wheel is turned round, and its disc lies against the inner one's.
    turn, start = wheel.facing, -face_mm if wheel.facing > 0 else face_mm - 2.0 * DISC_MM
    x, r = outer, 0.5 * wheel.rim_diameter_mm - WELL_DEPTH_MM
    if face_mm:
        # The outer face meets the rim higher, where the well rises to the bead seat.
        x, r = x - 0.06 * 0.5 * wheel.rim_width_mm, r + 0.7 * WELL_DEPTH_MM
    x, middle = wheel.centre_mm + turn * x, 0.5 * (hub_radius_mm + r)
    return points(
        *("M", start, side * hub_radius_mm, "C", start - turn * 4.0, side * middle),
        *(x - turn * face_mm * 0.4, side * middle, x, side * r),
    )


def _well(wheel: WheelShape) -> tuple[float, float]:
    half = 0.5 * wheel.rim_width_mm
    return -0.55 * half, 0.1 * half
