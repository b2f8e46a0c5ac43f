"""What each axle asks of a tyre and of a rim, found by asking the checks themselves: as `rims` and `search` tell it.

Besides the service description these are windows. One size of the present tyre is varied while the rest of the car
stays as it is, and the questions that mind this size say from where to where it does.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.batch.comparison_measures import Flags
from service.assessment.batch.grading import Graded, Question, grade_all
from service.assessment.batch.needs import UNKNOWN_NEEDS, Needs, best_of, trials
from service.assessment.batch.rim_grid import wanted_rim
from service.assessment.batch.rim_windows import run_around
from service.assessment.batch.sizes import GRID_WIDTHS_MM, of_widths
from service.assessment.batch.wheel_table import Places
from service.assessment.case import Axle, Candidate, Case, Rim
from service.assessment.law.speedometer_rule import CODE as LAW_SPEEDOMETER
from service.assessment.view.conditions import Conditions, conditions_of
from service.assessment.view.views import candidate_facts
from service.assessment.view.wheel_facts import ROW, TyreFacts, WheelFacts, columns, rows_of, table_of
from service.core.findings import ADVISORY, OPEN, AxleName, Outcomes
from service.core.numeric import UNKNOWN, FloatArray, known, unknown
from service.rules.pack import RulePack
from service.standards.speed_symbol import least_symbol_for_kmh

# How far the diameter is varied, by whole millimetres: no place and no arch allows as much.
DIAMETER_REACH_MM = 100
ASPECT_STEP_PERCENT = 5.0
OF_THE_DIAMETER = (
    "diameter.deviation",
    "diameter.speedometer",
    "diameter.axle_ratio",
    "clearance.radial",
    LAW_SPEEDOMETER,
)
OF_THE_WIDTH = ("rim.width", "clearance.inboard", "clearance.outboard", "clearance.twin")
MINDS_DIAMETER, MINDS_WIDTH = ("overall_diameter", "rolling_circumference"), ("section_width",)
# Further than any size of a tyre is from another.
FAR_MM = 10_000.0

_TYRE_ROWS = rows_of(TyreFacts)


class Span(NamedTuple):
    """From where to where a size does; NaN where nothing bounds that end."""

    at_least: float
    at_most: float


class SizeWindow(NamedTuple):
    """The sizes that are suitable, and those that are so or with conditions; None where none is."""

    suitable: Span | None
    with_conditions: Span | None


class SizeNeed(NamedTuple):
    """A size that an axle asks for: by all questions together, and by each that bounds it."""

    window: SizeWindow
    by: tuple[tuple[Question, SizeWindow], ...]


class AxleNeeds(NamedTuple):
    """What an axle asks of a tyre and of a rim."""

    service: Needs
    winter_floor_kmh: float
    """The slowest that a winter tyre may be marked for here; NaN where the place has no such floor."""
    winter_symbol: str | None
    overall_diameter: SizeNeed | None
    """None where the present one is not known."""
    nominal_width: SizeNeed | None
    """Of tyres of the present aspect ratio on the present rim."""
    rim: Rim
    min_rim_diameter_in: float


class _Strip(NamedTuple):
    """Wheels that differ in one size, with the other axle's present wheel beside each."""

    axle: AxleName
    sizes: FloatArray
    now: float
    table: FloatArray
    minds: Callable[[Question], bool]


def axle_needs(case: Case, least_margin_percent: float) -> tuple[AxleNeeds, AxleNeeds]:
    """Return what the front and the rear axle ask for, in one pass through the checks."""
    vehicle, conditions = case.vehicle, conditions_of(case)
    present = candidate_facts(case, Candidate(vehicle.front.fitted, vehicle.rear.fitted))
    tried = trials(case)
    strips = [
        strip
        for axle, facts in zip((vehicle.front, vehicle.rear), present, strict=True)
        for strip in (_diameters(axle, facts, case.pack), _widths(axle, facts, case.pack))
    ]
    graded = _graded(case, present, tried and (tried[0].table, tried[1].table), [each for each in strips if each])
    services = UNKNOWN_NEEDS, UNKNOWN_NEEDS
    start = 0
    if tried is not None:
        front, rear = (
            best_of(trial, graded, view, least_margin_percent)
            for trial, view in zip(tried, (graded.car.front, graded.car.rear), strict=True)
        )
        services, start = (front, rear), len(tried[0].descriptions)
    found: list[SizeNeed | None] = []
    for strip in strips:
        stop = start + (0 if strip is None else len(strip.sizes))
        found.append(None if strip is None else _need(strip, graded, slice(start, stop)))
        start = stop
    return (
        _needs(vehicle.front, services[0], conditions, (found[0], found[1])),
        _needs(vehicle.rear, services[1], conditions, (found[2], found[3])),
    )


def _needs(
    axle: Axle, service: Needs, conditions: Conditions, sizes: tuple[SizeNeed | None, SizeNeed | None]
) -> AxleNeeds:
    # Where the place asks a winter tyre for no label, its floor is naught.
    floor = conditions.winter_floor_kmh or UNKNOWN
    symbol = least_symbol_for_kmh(floor) if known(floor) else None
    rim = wanted_rim(axle, axle.fitted.rim.designation)
    return AxleNeeds(service, floor, symbol, *sizes, rim, axle.min_rim_diameter_in)


def _diameters(axle: Axle, now: WheelFacts, pack: RulePack) -> _Strip | None:
    """Return the present wheel with other overall diameters, None where its own is not known."""
    outer = now.overall_diameter_mm
    if unknown(outer) or unknown(now.section_height_mm):
        return None
    least = max(-DIAMETER_REACH_MM, -int(now.section_height_mm))
    sizes = np.floor(outer) + np.arange(least, DIAMETER_REACH_MM + 1.0)
    # A tyre is higher than its rim, be it by little.
    sizes = sizes[sizes > now.rim_diameter_mm]
    table = np.repeat(table_of([now]), len(sizes), axis=1)
    table[ROW["overall_diameter_mm"]] = sizes
    table[ROW["section_height_mm"]] = 0.5 * (sizes - now.rim_diameter_mm)
    # What was measured of the present tyre is larger in the same proportion.
    table[ROW["measured_circumference_mm"]] *= sizes / outer
    return _Strip(axle.name, sizes, outer, table, _asker(pack, axle.name, OF_THE_DIAMETER, MINDS_DIAMETER))


def _widths(axle: Axle, now: WheelFacts, pack: RulePack) -> _Strip | None:
    """Return the present wheel with tyres of other nominal widths, None where its aspect ratio is not known."""
    if unknown(now.aspect_percent) or unknown(now.nominal_width_mm):
        return None
    aspect = ASPECT_STEP_PERCENT * round(now.aspect_percent / ASPECT_STEP_PERCENT)
    sizes = np.array(GRID_WIDTHS_MM, np.float64)
    table = np.repeat(table_of([now]), len(sizes), axis=1)
    table[_TYRE_ROWS] = of_widths(aspect, now.tyre_rim_code)
    table[ROW["measured_width_mm"]] = np.nan
    table[ROW["winter_mark"]] = now.winter_mark
    return _Strip(axle.name, sizes, now.nominal_width_mm, table, _asker(pack, axle.name, OF_THE_WIDTH, MINDS_WIDTH))


def _asker(pack: RulePack, axle: AxleName, codes: Sequence[str], minds: tuple[str, ...]) -> Callable[[Question], bool]:
    """Return which questions mind a size: those of these codes, and the rules of the place that limit it."""
    rules = {rule.code for rule in pack.rules if any(bound.quantity.startswith(minds) for bound in rule.bounds)}
    asking = {*codes, *rules}
    return lambda question: question.code in asking and question.where in (axle, "vehicle")


def _graded(
    case: Case,
    present: tuple[WheelFacts, WheelFacts],
    tried: tuple[FloatArray, FloatArray] | None,
    strips: Sequence[_Strip],
) -> Graded:
    """Return the grades of all that is tried, side by side: an axle that is not varied keeps its present wheel."""
    now = table_of([present[0]]), table_of([present[1]])
    # Without anything to try, the present wheels stand for it: a grade needs a column.
    front, rear = ([tried[at]] if tried else [] for at in (0, 1))
    for strip in strips:
        size = len(strip.sizes)
        front.append(strip.table if strip.axle == "front" else np.repeat(now[0], size, axis=1))
        rear.append(strip.table if strip.axle == "rear" else np.repeat(now[1], size, axis=1))
    return grade_all(
        case, columns(np.concatenate(front or [now[0]], axis=1)), columns(np.concatenate(rear or [now[1]], axis=1))
    )


def _need(strip: _Strip, graded: Graded, here: slice) -> SizeNeed:
    asked = [place for place, each in enumerate(graded.questions) if strip.minds(each)]
    outcomes = graded.outcomes[asked][:, here]
    # All questions together first, then each that bounds an end by itself.
    bounding = np.flatnonzero((outcomes > OPEN).any(axis=1)).tolist()
    together, *alone = _size_windows(strip, np.vstack([outcomes.max(axis=0, keepdims=True), outcomes[bounding]]))
    by = [(graded.questions[asked[at]], window) for at, window in zip(bounding, alone, strict=True)]
    return SizeNeed(together, tuple(by))


def _size_windows(strip: _Strip, outcomes: Outcomes) -> list[SizeWindow]:
    """Return the window of each row of outcomes."""
    best = (np.maximum(outcomes, OPEN) * FAR_MM + np.abs(strip.sizes - strip.now)).argmin(axis=1)
    suitable, allowed = (_spans(outcomes <= most, best, strip.sizes.tolist()) for most in (OPEN, ADVISORY))
    return [SizeWindow(*each) for each in zip(suitable, allowed, strict=True)]


def _spans(allowed: Flags, best: Places, sizes: Sequence[float]) -> list[Span | None]:
    """Return for each row the run of allowed sizes around the best one; an end of all that was tried is no bound."""
    ends = zip(*(each.tolist() for each in run_around(allowed, best)), strict=True)
    return [
        None
        if first > last
        else Span(
            sizes[first] if first > 0 else UNKNOWN,
            sizes[last] if last < len(sizes) - 1 else UNKNOWN,
        )
        for first, last in ends
    ]
