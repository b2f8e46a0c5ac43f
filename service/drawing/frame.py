"""How large a section is drawn and how much space it takes: the same for both axles, so that two sheets compare."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, NamedTuple

from service.drawing import paper
from service.drawing.rooms import ABOVE_UNITS
from service.drawing.scene import AxleScene
from service.drawing.section_dimensions import width_down_units
from service.drawing.wheels import top_mm

# Space beside a wheel for the dimensions at its sides [drawing units].
OUTBOARD_UNITS: Final = 62.0
INBOARD_UNITS: Final = 74.0
NARROWEST_UNITS: Final = 400.0
# One axle takes no more than this, so that its words can be read where its sheet is shown 340 pixels wide.
WIDEST_UNITS: Final = 420.0
# Beneath the dimension of the section width.
BELOW_UNITS: Final = 26.0


class Frame(NamedTuple):
    """The reduction 1:`scale` and the drawing unit; how wide, how high and how low each axle's section reaches [mm]."""

    scale: int
    unit: float
    panel: float
    up: float
    down: float

    @classmethod
    def made(cls, both: Sequence[AxleScene]) -> Frame:
        """Return the frame that suits both axles."""
        down = max(scene.reach_down_mm for scene in both)
        across = max(scene.reach_outboard_mm + scene.reach_inboard_mm for scene in both)
        scale = paper.scale_for(max(scene.reach_up_mm for scene in both) + down)
        beside = OUTBOARD_UNITS + INBOARD_UNITS
        unit = max(paper.unit_mm(scale), across / (WIDEST_UNITS - beside))
        up = max(top_mm(scene, unit) for scene in both) + ABOVE_UNITS * unit
        below = BELOW_UNITS + max(width_down_units(scene) for scene in both)
        return cls(scale, unit, max(across + beside * unit, NARROWEST_UNITS * unit), up, down + below * unit)

    def hub_place(self, scene: AxleScene) -> float:
        """Return where the hub face stands in a panel, so that wheel and dimensions stand in its middle."""
        needed = scene.reach_outboard_mm + scene.reach_inboard_mm + (OUTBOARD_UNITS + INBOARD_UNITS) * self.unit
        return 0.5 * (self.panel - needed) + OUTBOARD_UNITS * self.unit + scene.reach_outboard_mm
