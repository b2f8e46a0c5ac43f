"""What a plan is asked: combinations of named sizes to be compared on one vehicle."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal, NamedTuple

from service.assessment.case import Rim, Tyre
from service.physics.repeats import CONFIDENCE, POWER

PressureRule = Literal["share_of_load_index", "load_over_capacity"]

MOST_COMBINATIONS = 12
NO_SCATTER: Mapping[str, float] = MappingProxyType({})


class PlannedWheel(NamedTuple):
    """A tyre and, where the caller has one in mind, its rim."""

    tyre: Tyre
    rim: Rim | None = None


class Combination(NamedTuple):
    """What one combination has on each axle; None: the axle stays as it is."""

    front: PlannedWheel | None = None
    rear: PlannedWheel | None = None
    label: str = ""
    id: str = ""


class PlanAsked(NamedTuple):
    """The combinations, and by what they are to be compared."""

    combinations: tuple[Combination, ...]
    pressure_rule: PressureRule = "share_of_load_index"
    repeatability: Mapping[str, float] = NO_SCATTER
    """Standard deviation of repeated tests of one combination, by the name of an effect; in its unit."""
    confidence: float = CONFIDENCE
    power: float = POWER
