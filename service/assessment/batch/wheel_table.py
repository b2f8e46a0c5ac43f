"""Sizes on rims as a table of wheels: one column for each size that a rim takes."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from service.assessment.batch.sizes import Sizes
from service.assessment.case import Rim
from service.assessment.view.facts import rim_facts
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.wheel_facts import (
    ROW,
    RimFacts,
    ServiceFacts,
    TyreFacts,
    group_table,
    names_of,
    rows_of,
)
from service.core.numeric import UNKNOWN, FloatArray

Places = NDArray[np.intp]

_TYRE_ROWS = rows_of(TyreFacts)
_SERVICE_ROWS = rows_of(ServiceFacts)
_RIM_ROWS = rows_of(RimFacts)
_TYRE_CODE = names_of(TyreFacts).index("tyre_rim_code")
_RIM_CODE = names_of(RimFacts).index("rim_code")
_TREAD = ROW["tread_depth_mm"]
PRESSURE = ROW["pressure_kpa"]
WIDTH = ROW["nominal_width_mm"]
CODE = ROW["rim_code"]
RIM_WIDTH = ROW["rim_width_in"]
COMMERCIAL = ROW["commercial"]


class Wheels(NamedTuple):
    """Wheels of one axle."""

    table: FloatArray
    """Shape (facts of `WheelFacts`, wheels)."""
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

    `services` has shape (facts of `ServiceFacts`, sizes), or one column that holds for all of them.
    """
    rim_rows = group_table(RimFacts, [rim_facts(each) for each in rims])
    rim_at, size_at = np.nonzero(rim_rows[_RIM_CODE][:, None] == sizes.facts[_TYRE_CODE][None, :])
    table = np.full((len(ROW), len(size_at)), UNKNOWN)
    table[_TYRE_ROWS] = sizes.facts[:, size_at]
    table[_SERVICE_ROWS] = services if services.shape[1] == 1 else services[:, size_at]
    table[_RIM_ROWS] = rim_rows[:, rim_at]
    table[_TREAD] = NEW_TREAD_DEPTH_MM
    return Wheels(table, size_at, rim_at)
