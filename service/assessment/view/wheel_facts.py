"""One wheel as a row of named numbers, and many wheels as columns under the same names.

Texts become numbers here and nowhere else: yes is 1.0, no is 0.0, not known is NaN. Everything goes by name: the order
of the fields is that of the rows of a table and means nothing else.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, fields
from operator import attrgetter
from typing import Final, Generic, TypeVar

import numpy as np

from service.core.numeric import FloatArray, Num, Num_co, Number, known, magnitude, pick

# Bolt circles are written to a tenth of a millimetre (114.3), so half of that is the same circle; bores are measured.
SAME_CIRCLE_MM, SAME_BORE_MM = 0.05, 0.1
# The last bit that adding a spacer may cost.
SAME_OFFSET_MM = 1e-9
# How the approved rim widths are known.
BY_RULE, BY_TABLE, BY_MAKER = 0.0, 1.0, 2.0
# What a tyre's markings say about winter use.
NO_MARK, MUD_AND_SNOW, ALPINE = 0.0, 1.0, 2.0


@dataclass(frozen=True)
class TyreFacts(Generic[Num_co]):
    """What the designation alone says of a tyre."""

    nominal_width_mm: Num_co
    aspect_percent: Num_co
    tyre_rim_code: Num_co
    rim_diameter_mm: Num_co
    section_height_mm: Num_co
    overall_diameter_mm: Num_co
    design_width_mm: Num_co
    design_rim_mm: Num_co
    measuring_rim_in: Num_co
    approved_min_in: Num_co
    approved_max_in: Num_co
    approval: Num_co
    reference_pressure_kpa: Num_co
    pressure_exponent: Num_co
    circumference_factor: Num_co
    radial: Num_co
    commercial: Num_co
    temporary_spare: Num_co
    winter_mark: Num_co
    run_flat: Num_co


@dataclass(frozen=True)
class ServiceFacts(Generic[Num_co]):
    """What the tyre may carry and how fast it may go: at the vehicle's top speed, and where the law reads the load."""

    load_index: Num_co
    rated_kg: Num_co
    load_factor: Num_co
    speed_capability_kmh: Num_co
    law_load_factor: Num_co
    """NaN where the law reads the load at the top speed."""
    left_to_maker: Num_co
    """1 where the vehicle is faster than a symbol in brackets: then the maker alone states load and speed."""


@dataclass(frozen=True)
class RimFacts(Generic[Num_co]):
    """What the designation and the caller say of a rim."""

    rim_width_in: Num_co
    rim_code: Num_co
    offset_mm: Num_co
    """As the wheel stands: what is marked on the rim, less the spacer."""
    hump: Num_co
    one_piece: Num_co
    bolts: Num_co
    bolt_circle_mm: Num_co
    centre_bore_mm: Num_co
    rim_rating_kg: Num_co
    rim_mass_kg: Num_co
    spacer_mm: Num_co


@dataclass(frozen=True)
class StateFacts(Generic[Num_co]):
    """What the caller says of the single tyre: its wear, its pressure, what was measured of it."""

    tread_depth_mm: Num_co
    measured_width_mm: Num_co
    measured_circumference_mm: Num_co
    tyre_mass_kg: Num_co
    pressure_kpa: Num_co


@dataclass(frozen=True)
class WheelFacts(TyreFacts[Num_co], ServiceFacts[Num_co], RimFacts[Num_co], StateFacts[Num_co]):
    """All that is said of one wheel; on the array path each field holds an array, one element for each wheel."""


Facts = TypeVar("Facts", TyreFacts, ServiceFacts, RimFacts, WheelFacts)


def same_rim(now: RimFacts[Num], then: RimFacts[Num]) -> Num:
    """Return 1 where a proposed rim is, by all that is said of both, one that the axle has now; else 0.

    Width, diameter, marked offset and pieces are equal; what only one of the two states contradicts nothing, but for
    the offset, which tells where the wheel stands.
    """
    now_marked, then_marked = now.offset_mm + now.spacer_mm, then.offset_mm + then.spacer_mm
    differs = (then.rim_width_in != now.rim_width_in) | (then.rim_code != now.rim_code)
    differs = differs | (then.one_piece != now.one_piece)
    differs = differs | (magnitude(then_marked - now_marked) > SAME_OFFSET_MM)
    differs = differs | (known(then_marked) != known(now_marked))
    differs = differs | (magnitude(then.bolt_circle_mm - now.bolt_circle_mm) > SAME_CIRCLE_MM)
    differs = differs | (magnitude(then.bolts - now.bolts) > 0.0)
    differs = differs | (magnitude(then.centre_bore_mm - now.centre_bore_mm) > SAME_BORE_MM)
    return pick(differs, 0.0, 1.0)


def names_of(group: type[Facts]) -> tuple[str, ...]:
    """Return the names of the facts of a group, in the order of the rows of a table."""
    return tuple(each.name for each in fields(group))


FACTS: Final = names_of(WheelFacts)
"""The facts of a wheel in the order of the rows of a table."""
ROW: Final = {name: place for place, name in enumerate(FACTS)}
"""The place of each fact in a table."""


def rows_of(group: type[Facts]) -> list[int]:
    """Return the places of the facts of a group in the table of wheels."""
    return [ROW[name] for name in names_of(group)]


def one_wheel(tyre: TyreFacts, service: ServiceFacts, rim: RimFacts, state: StateFacts) -> WheelFacts:
    """Return what is said of one wheel."""
    # A frozen dataclass sets its forty fields one by one, which would take longer than to find them.
    made = object.__new__(WheelFacts)
    vars(made).update(vars(tyre), **vars(service), **vars(rim), **vars(state))
    return made


def group_table(group: type[Facts], rows: Sequence[Facts]) -> FloatArray:
    """Return facts of one group as a table of shape (facts, rows)."""
    names = names_of(group)
    numbers = map(attrgetter(*names), rows)
    return np.array(list(numbers), np.float64).reshape(len(rows), len(names)).T


def table_of(wheels: Sequence[WheelFacts]) -> FloatArray:
    """Return wheels as a table of shape (facts, wheels), each fact in one piece of memory."""
    return np.ascontiguousarray(group_table(WheelFacts, wheels))


def columns(table: FloatArray) -> WheelFacts[Number]:
    """Return a table of shape (facts, wheels) as facts whose fields are its rows."""
    return WheelFacts(**dict(zip(FACTS, table, strict=True)))


def table_of_columns(facts: WheelFacts[Number]) -> FloatArray:
    """Return facts whose fields are arrays as a table of shape (facts, wheels)."""
    return np.stack([getattr(facts, name) for name in FACTS])
