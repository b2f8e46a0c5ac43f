"""On which rim would a tyre of a plan stand, where the caller names none?

This is the one place where a plan asks for a rim: the present one where the axle takes the tyre on it, else the one of
the approved widths that comes out best near the present wheel's place.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache, partial
from math import ceil, isnan
from typing import Literal, NamedTuple

import numpy as np

from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.grading import grade_all
from service.assessment.case import Axle, Case, Fitment, Rim, Tyre
from service.assessment.view.conditions import conditions_of
from service.assessment.view.facts import rim_facts, tyre_facts, wheel_facts
from service.assessment.view.wheel_facts import RimFacts, WheelFacts, columns, group_table, rows_of, table_of
from service.core.findings import ADVISORY
from service.core.numeric import Number, known_or
from service.designation.rim import parse_rim

Wheels = tuple[WheelFacts[Number], WheelFacts[Number]]
RimOrigin = Literal["given", "present", "found"]
# Rims go by halves of an inch; further offsets than these are for the question that looks for windows.
_WIDTH_STEP_IN = 0.5
_OFFSETS_TRIED_MM = sorted((*range(-6, 7), -12, -9, 9, 12), key=abs)
_WIDTHS_TRIED = 3
_USUAL_OFFSET_MM = 45.0


class PlannedRim(NamedTuple):
    """A rim, and where it comes from."""

    rim: Rim
    origin: RimOrigin


def rims_on(case: Case, axle: Axle, tyres: Sequence[Tyre]) -> list[PlannedRim]:
    """Return a rim for each tyre on an axle; one that fits where any of those tried does."""
    supposed = cache(partial(_supposed, axle))
    tried = [(at, rim) for at, tyre in enumerate(tyres) for rim in _rims_of(axle, tyre, supposed)]
    if not tried:
        return []
    graded = grade_all(case, *_wheels(case, axle, tyres, tried))
    # What the other axle or the whole vehicle says is a matter of the combination, not of this rim.
    mine: Flags = np.array([each.where == axle.name for each in graded.questions])
    worst = graded.outcomes[mine].max(axis=0)
    against = (graded.outcomes[mine] >= ADVISORY).sum(axis=0)
    best: list[PlannedRim] = []
    for at in range(len(tyres)):
        places = [place for place, (of, _) in enumerate(tried) if of == at]
        first = min(places, key=lambda place: (int(worst[place]), int(against[place]), place))
        origin: RimOrigin = "present" if tried[first][1] is axle.fitted.rim else "found"
        best.append(PlannedRim(tried[first][1], origin))
    return best


def _wheels(case: Case, axle: Axle, tyres: Sequence[Tyre], tried: Sequence[tuple[int, Rim]]) -> Wheels:
    """Return the tyres on the rims to try, stacked, and the other axle as it is beside each of them."""
    vehicle, law_speed_kmh = case.vehicle, conditions_of(case).law_speed_kmh
    top = vehicle.max_speed_kmh
    bare = [wheel_facts(Fitment(each, axle.fitted.rim), axle, top, law_speed_kmh) for each in tyres]
    mine = table_of(bare)[:, [at for at, _ in tried]]
    mine[rows_of(RimFacts)] = group_table(RimFacts, [rim_facts(rim) for _, rim in tried])
    other = vehicle.rear if axle.name == "front" else vehicle.front
    stays = table_of([wheel_facts(other.fitted, other, top, law_speed_kmh)]).repeat(len(tried), axis=1)
    both = columns(mine), columns(stays)
    return both if axle.name == "front" else both[::-1]


def _rims_of(axle: Axle, tyre: Tyre, supposed: Callable[[float, float, int], Rim]) -> list[Rim]:
    """Return the rims to try for a tyre, the likeliest first: the present one, then the measuring rim and wider."""
    facts, fitted = tyre_facts(tyre.designation), axle.fitted.rim
    low, high = facts.approved_min_in, facts.approved_max_in
    if tyre.measured is not None:
        low, high = known_or(tyre.measured.approved_min_in, low), known_or(tyre.measured.approved_max_in, high)
    if isnan(low) or isnan(high):
        return [fitted]
    first, last = ceil(low / _WIDTH_STEP_IN - 1e-9), int(high / _WIDTH_STEP_IN + 1e-9)
    middle = known_or(facts.measuring_rim_in, 0.5 * (low + high))
    widths = sorted((_WIDTH_STEP_IN * step for step in range(first, last + 1)), key=lambda each: abs(each - middle))
    widths = widths[:_WIDTHS_TRIED]
    present = fitted.designation.offset_mm
    offset = round(_USUAL_OFFSET_MM if present is None else present)
    made = [supposed(width, facts.tyre_rim_code, offset + step) for step in _OFFSETS_TRIED_MM for width in widths]
    return [fitted, *made] if facts.tyre_rim_code == fitted.designation.diameter_code or not made else made


def _supposed(axle: Axle, width_in: float, code: float, offset_mm: int) -> Rim:
    """Return a rim with the bolt circle, bore and rating that the axle asks for."""
    fitted = axle.fitted.rim
    required = float(ceil(axle.max_axle_mass_kg / axle.tyres))
    rated = required if isnan(fitted.load_rating_kg) else max(required, fitted.load_rating_kg)
    return Rim(
        parse_rim(f"{width_in:g}J x {code:g} H2 ET{offset_mm}"),
        axle.hub_bolt_circle or fitted.bolt_circle,
        known_or(axle.hub_centre_bore_mm, fitted.centre_bore_mm),
        rated,
    )
