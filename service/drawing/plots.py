"""The plots of a comparison by their names."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Final, Literal, Protocol

from service.core.saying import Said
from service.drawing.balance_plot import draw_balance
from service.drawing.grip_plot import draw_grip
from service.drawing.outlines_plot import draw_outlines
from service.drawing.plot_sheet import Plotted
from service.locales.speech import Speech

PlotName = Literal["grip", "balance", "outlines"]


class Plot(Protocol):
    """What draws candidates, in the caller's order, with notes beneath."""

    def __call__(
        self, candidates: Sequence[Plotted], notes: Sequence[Said] = (), speech: Speech = ..., *, styled: bool = True
    ) -> str:
        """Return the plot as SVG."""


PLOTS: Final[Mapping[PlotName, Plot]] = MappingProxyType(
    {"grip": draw_grip, "balance": draw_balance, "outlines": draw_outlines}
)
