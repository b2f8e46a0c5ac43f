"""The candidates as arrays of facts, as each vehicle sees them.

What a tyre may carry depends on the vehicle's top speed and its wheels per side, so a candidate's row of facts is not
the same for all vehicles. All else is, and is computed once; the columns that differ are computed once for each
distinct service description and each distinct set of speeds and wheels.
"""

from __future__ import annotations

from collections.abc import Hashable
from threading import Lock
from typing import NamedTuple, Protocol

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from service.assessment.case import Axle, Case, Fitment
from service.assessment.view.conditions import conditions_of
from service.assessment.view.facts import wheel_facts
from service.assessment.view.views import candidate_facts
from service.assessment.view.wheel_facts import ServiceFacts, WheelFacts, columns, rows_of, table_of
from service.core.numeric import FloatArray, Number
from service.designation.tyre import TyreDesignation
from service.sweep.catalogue_rows import candidate, records

# The facts that depend on the vehicle, by place in the row; a test compares whole rows over many vehicles.
BY_VEHICLE = rows_of(ServiceFacts)

Wheels = tuple[WheelFacts[Number], WheelFacts[Number]]


class Candidates(Protocol):
    """Candidates that can be had as arrays."""

    def facts(self, case: Case, start: int, stop: int) -> Wheels:
        """Return the facts of front and rear wheels of some candidates on the vehicle of a case."""


def vehicle_key(case: Case) -> tuple[float, float, int, int]:
    """Return what the facts of a candidate depend on; vehicles of one key should follow one another."""
    vehicle = case.vehicle
    return (
        vehicle.max_speed_kmh,
        conditions_of(case).law_speed_kmh,
        vehicle.front.wheels_per_side,
        vehicle.rear.wheels_per_side,
    )


class OwnCandidates:
    """Candidates of one vehicle each: nothing is computed twice, so nothing is kept."""

    def __init__(self, frame: pd.DataFrame) -> None:
        self._frame = frame

    def facts(self, case: Case, start: int, stop: int) -> Wheels:
        """Return the facts of front and rear wheels of some candidates on the vehicle of a case."""
        pairs = [candidate_facts(case, candidate(row)) for row in records(self._frame.iloc[start:stop])]
        return columns(table_of([front for front, _ in pairs])), columns(table_of([rear for _, rear in pairs]))


class SharedCandidates:
    """Candidates for every vehicle: the tables of the present slice and the present key are kept."""

    def __init__(self, frame: pd.DataFrame) -> None:
        self._frame = frame
        self._slice: tuple[tuple[int, int], _Slice] | None = None
        self._tables: tuple[Hashable, Wheels] | None = None
        self._lock = Lock()

    def facts(self, case: Case, start: int, stop: int) -> Wheels:
        """Return the facts of front and rear wheels of some candidates on the vehicle of a case."""
        key = (start, stop, vehicle_key(case))
        # With several threads one makes the tables and the others wait for them.
        with self._lock:
            if self._slice is None or self._slice[0] != (start, stop):
                self._slice = (start, stop), _Slice(self._frame.iloc[start:stop], case)
            if self._tables is None or self._tables[0] != key:
                self._tables = key, self._slice[1].on(case)
            return self._tables[1]


class _AxleTable(NamedTuple):
    base: FloatArray
    """Shape (fields, candidates), for some vehicle."""
    kind: NDArray[np.intp]
    """Which of the distinct service descriptions each candidate has."""
    samples: list[Fitment]
    """One wheel for each distinct service description."""


class _Slice:
    """Some candidates with what does not depend on the vehicle."""

    def __init__(self, frame: pd.DataFrame, some_case: Case) -> None:
        candidates = [candidate(row) for row in records(frame)]
        facts = [candidate_facts(some_case, each) for each in candidates]
        self._front = _axle_table([front for front, _ in facts], [each.front for each in candidates])
        self._rear = _axle_table([rear for _, rear in facts], [each.rear for each in candidates])

    def on(self, case: Case) -> Wheels:
        """Return the facts of all of them on the vehicle of a case."""
        vehicle = case.vehicle
        return _on_axle(case, vehicle.front, self._front), _on_axle(case, vehicle.rear, self._rear)


def _on_axle(case: Case, axle: Axle, table: _AxleTable) -> WheelFacts[Number]:
    top, law = case.vehicle.max_speed_kmh, conditions_of(case).law_speed_kmh
    samples = table_of([wheel_facts(sample, axle, top, law) for sample in table.samples])
    full = table.base.copy()
    full[BY_VEHICLE] = samples[BY_VEHICLE][:, table.kind]
    return columns(full)


def _axle_table(facts: list[WheelFacts], wheels: list[Fitment]) -> _AxleTable:
    kinds: dict[Hashable, int] = {}
    samples: list[Fitment] = []
    kind = np.empty(len(wheels), np.intp)
    for at, wheel in enumerate(wheels):
        number = kinds.setdefault(_service_kind(wheel.tyre.designation), len(kinds))
        if number == len(samples):
            samples.append(wheel)
        kind[at] = number
    return _AxleTable(table_of(facts), kind, samples)


def _service_kind(designation: TyreDesignation) -> Hashable:
    """Return all that the load and speed of a tyre depend on, besides the vehicle."""
    return (
        designation.load_index,
        designation.load_index_twin,
        designation.speed_symbol,
        designation.commercial,
        designation.z_rated,
        designation.bracketed,
        designation.additional,
    )
