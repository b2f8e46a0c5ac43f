"""Sizes on rims as a table of wheels: one column for each size that a rim takes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.batch.sizes import Sizes
from service.assessment.case import Rim
from service.assessment.view.facts import RimFacts, TyreFacts, WheelFacts, rim_facts
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.load_at_speed import ServiceFacts
from service.core.numeric import UNKNOWN, FloatArray

Places = NDArray[np.intp]

_ROW = {name: place for place, name in enumerate(WheelFacts._fields)}
_TYRE_ROWS = [_ROW[name] for name in TyreFacts._fields]
_SERVICE_ROWS = [_ROW[name] for name in (*ServiceFacts._fields, "law_load_factor")]
_RIM_ROWS = [_ROW[name] for name in RimFacts._fields]
_TYRE_CODE = TyreFacts._fields.index("tyre_rim_code")
_RIM_CODE = RimFacts._fields.index("rim_code")
_TREAD = _ROW["tread_depth_mm"]
PRESSURE = _ROW["pressure_kpa"]
WIDTH = _ROW["nominal_width_mm"]
CODE = _ROW["rim_code"]


class Wheels(NamedTuple):
    """Wheels of one axle."""

    table: FloatArray
    """Shape (fields of `WheelFacts`, wheels)."""
    size_at: Places
    """For each wheel the place of its size."""
    rim_at: Places
    """For each wheel the place of its rim."""

    @property
    def size(self) -> int:
        """Return how many wheels there are."""
        return len(self.size_at)

    def at(self, places: Places | slice) -> Wheels:
        """Return the wheels at these places."""
        return Wheels(self.table[:, places], self.size_at[places], self.rim_at[places])


def wheels_of(sizes: Sizes, services: FloatArray, rims: Sequence[Rim]) -> Wheels:
    """Return each size on each rim of its diameter code, the tyres new.

    `services` has shape (fields of `ServiceFacts` and one, sizes), or one column that holds for all of them.
    """
    rim_rows = np.array([rim_facts(each) for each in rims], np.float64).T
    rim_at, size_at = np.nonzero(rim_rows[_RIM_CODE][:, None] == sizes.facts[_TYRE_CODE][None, :])
    table = np.full((len(_ROW), len(size_at)), UNKNOWN)
    table[_TYRE_ROWS] = sizes.facts[:, size_at]
    table[_SERVICE_ROWS] = services if services.shape[1] == 1 else services[:, size_at]
    table[_RIM_ROWS] = rim_rows[:, rim_at]
    table[_TREAD] = NEW_TREAD_DEPTH_MM
    return Wheels(table, size_at, rim_at)
