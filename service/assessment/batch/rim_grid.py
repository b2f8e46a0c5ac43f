"""Every rim width that the tyres of an axle take, at every offset, through the questions of a check at once.

What depends on the offset has one column for each offset, all else one column alone: numpy spreads it where the two
meet, so that the whole grid costs little more than one check.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor
from typing import Any, NamedTuple

import numpy as np

from service.assessment.batch.grading import Question, graded_questions
from service.assessment.batch.wheel_table import RIM_WIDTH
from service.assessment.case import Axle, Candidate, Case, Fitment, Rim, Tyre
from service.assessment.checks.grade import Grade
from service.assessment.checks.hub_bolts import BOLT_CIRCLE
from service.assessment.checks.hub_bore import CENTRE_BORE
from service.assessment.view.axle_view import fitted, present_wheel
from service.assessment.view.conditions import law_speed_kmh
from service.assessment.view.facts import wheel_facts
from service.assessment.view.figures import geometry
from service.assessment.view.views import AxleView, CarView, candidate_facts, now_fitted, weigh
from service.assessment.view.wheel_facts import FACTS, WheelFacts, table_of
from service.core.findings import Outcomes
from service.core.numeric import FloatArray, Number, known_or, unknown
from service.designation.rim import RimDesignation, parse_rim
from service.designation.rim_grammar import HIGHEST_OFFSET_MM, NARROWEST_IN, WIDEST_IN, widest_in

# What a rim needs to go on the hub is said once, and bounds no window: where nobody read it, it is read first.
OF_THE_HUB = (BOLT_CIRCLE.code, CENTRE_BORE.code)
STEPS_AN_INCH = 2.0
# The columns on either side of where a wheel surely touches or must be measured first, so that it is seen what does.
MARGIN_MM = 2.0


class Row(NamedTuple):
    """One tyre on one width of rim."""

    tyre_at: int
    width_in: float


class Layer(NamedTuple):
    """Questions with what came out of each: arrays of shape (questions, rows, offsets), one column if that is all."""

    questions: tuple[Question, ...]
    outcomes: Outcomes
    measured: FloatArray
    limits: FloatArray


class Grid(NamedTuple):
    """What was found of every row at every offset; the other axle stays as it is."""

    axle: Axle
    tyres: tuple[Tyre, ...]
    rows: tuple[Row, ...]
    offsets_mm: FloatArray
    """Whole millimetres; beyond them no offset is suitable, be it with conditions."""
    facts: WheelFacts[Number]
    """Columns of shape (rows, 1), the offset of shape (1, offsets)."""
    view: AxleView[Number]
    moving: Layer
    """The questions on this axle that depend on the offset."""
    fixed: Layer
    """Those that do not."""
    outcomes: Outcomes
    """Shape (rows, offsets): the worst outcome on this axle."""
    besides: Layer
    """The questions on the vehicle and on the other axle, which stays as it is; they do not depend on the offset."""

    @property
    def shape(self) -> tuple[int, int]:
        """Return how many rows and offsets there are."""
        return len(self.rows), len(self.offsets_mm)


def least_rating_kg(axle: Axle) -> float:
    """Return the least load rating of a rim, in whole kilograms: its share of the axle's mass."""
    return float(ceil(axle.max_axle_mass_kg / axle.tyres))


def wanted_rim(axle: Axle, designation: RimDesignation) -> Rim:
    """Return a rim with all that the hub and the axle's mass ask of it, as far as that is known."""
    present = axle.fitted.rim
    return Rim(
        designation,
        axle.hub_bolt_circle or present.bolt_circle,
        known_or(axle.hub_centre_bore_mm, present.centre_bore_mm),
        least_rating_kg(axle),
    )


def rim_designation(axle: Axle, tyre: Tyre, width_in: float, offset_mm: float | None = None) -> RimDesignation:
    """Return the rim of a width for a tyre: a modern one of one piece, its flange that of the present rim."""
    code = tyre.designation.rim_code
    present = axle.fitted.rim.designation
    blank = parse_rim(f"{width_in:g} x {code:g}")
    flange = present.flange or "J"
    letters = "" if blank.is_fifteen_degree else flange
    hump = "" if blank.is_fifteen_degree else " H2"
    offset = "" if offset_mm is None else f" ET{offset_mm:g}"
    return parse_rim(f"{width_in:g}{letters} x {code:g}{hump}{offset}")


def widths_in(facts: WheelFacts) -> list[float]:
    """Return the widths in steps of half an inch that a tyre takes, none where they are not known."""
    low, high = facts.approved_min_in, facts.approved_max_in
    if unknown(low) or unknown(high):
        return []
    low = max(low, NARROWEST_IN)
    high = min(high, WIDEST_IN, widest_in(facts.tyre_rim_code))
    return [step / STEPS_AN_INCH for step in range(ceil(low * STEPS_AN_INCH), int(high * STEPS_AN_INCH) + 1)]


def grid_of(case: Case, axle: Axle, tyres: Sequence[Tyre]) -> Grid:
    """Return what every width and offset is for these tyres on an axle, the tyres at the pressure to set."""
    vehicle = case.vehicle
    law_speed = law_speed_kmh(case)
    rows: list[Row] = []
    wheels: list[WheelFacts[float]] = []
    for at, tyre in enumerate(tyres):
        # The width is put in below: only the rim's own numbers hang on the rim.
        rim = wanted_rim(axle, rim_designation(axle, tyre, _any_width(tyre)))
        facts = wheel_facts(Fitment(tyre, rim), axle, vehicle.max_speed_kmh, law_speed)
        found = widths_in(facts)
        rows += [Row(at, width) for width in found]
        wheels += [facts] * len(found)
    table = table_of(wheels).reshape(len(FACTS), len(rows))
    table[RIM_WIDTH] = [each.width_in for each in rows]
    spread: dict[str, Any] = dict(zip(FACTS, table[:, :, None], strict=True))
    spread["offset_mm"] = _offsets_mm(case, axle, WheelFacts[Number](**spread))[None, :]
    return _graded(case, axle, (tuple(tyres), tuple(rows)), WheelFacts[Number](**spread))


def _any_width(tyre: Tyre) -> float:
    return min(NARROWEST_IN, widest_in(tyre.designation.rim_code))


def _offsets_mm(case: Case, axle: Axle, facts: WheelFacts[Number]) -> FloatArray:
    """Return the offsets to look at: as far as any of the widths finds room, or none measured it, and a little more."""
    limits = case.pack.limits
    now = present_wheel(fitted(axle, case.vehicle.max_speed_kmh).wheel, axle, case.vehicle, limits)
    if unknown(now.facts.offset_mm):
        # Where the present wheel stands is not known, so no other place can be judged by it: one column says as much.
        return np.zeros(1)
    half_width = 0.5 * (np.asarray(geometry(facts, limits, axle).widest_mm) - now.geometry.widest_mm)
    narrowest = float(np.nanmin(half_width, initial=0.0))
    least, most = limits.clearance_least_mm.value, limits.unmeasured_shift_most_mm.value
    rooms = (axle.clearance_inboard_mm, axle.clearance_outboard_mm)
    inboard, outboard = (known_or(room - least, most) - narrowest for room in rooms)
    if axle.wheels_per_side > 1:
        # Both edges of a twin move out with the offset; the two tyres come together without it.
        inboard, outboard = min(inboard, outboard), now.facts.offset_mm + HIGHEST_OFFSET_MM
    low = max(floor(now.facts.offset_mm - outboard - MARGIN_MM), -HIGHEST_OFFSET_MM)
    high = min(ceil(now.facts.offset_mm + inboard + MARGIN_MM), HIGHEST_OFFSET_MM)
    return np.arange(low, max(high, low) + 1.0)


def _graded(case: Case, axle: Axle, asked: tuple[tuple[Tyre, ...], tuple[Row, ...]], facts: WheelFacts[Number]) -> Grid:
    vehicle = case.vehicle
    front, rear = candidate_facts(case, Candidate(vehicle.front.fitted, vehicle.rear.fitted))
    wheels = (facts, rear) if axle.name == "front" else (front, facts)
    car: CarView[Number] = weigh(case, now_fitted(vehicle), *wheels)
    offsets: FloatArray = np.asarray(facts.offset_mm)[0]
    shape = len(asked[1]), len(offsets)
    mine: list[tuple[Question, Grade[Number]]] = []
    others: list[tuple[Question, Grade[Number]]] = []
    for question, grade in graded_questions(case, car):
        (mine if question.where == axle.name else others).append((question, grade))
    mine = [(question, grade) for question, grade in mine if question.code not in OF_THE_HUB]
    # What has a column for each offset, and not one for all.
    moves = [shape[1] > 1 and np.asarray(grade.outcome).shape[-1:] == shape[1:] for _, grade in mine]
    moving = _layer([each for each, with_offset in zip(mine, moves, strict=True) if with_offset], shape)
    fixed = _layer([each for each, with_offset in zip(mine, moves, strict=True) if not with_offset], (shape[0], 1))
    besides = _layer(others, (shape[0], 1))
    return Grid(
        axle,
        *asked,
        offsets,
        facts,
        car.front if axle.name == "front" else car.rear,
        moving,
        fixed,
        np.maximum(moving.outcomes.max(axis=0, initial=0), fixed.outcomes.max(axis=0)),
        besides,
    )


def _layer(graded: Sequence[tuple[Question, Grade[Number]]], shape: tuple[int, int]) -> Layer:
    """Return grades of numbers or of arrays that spread to this shape, as arrays of it."""
    outcomes = np.empty((len(graded), *shape), np.int8)
    measured, limits = np.empty(outcomes.shape), np.empty(outcomes.shape)
    for at, (_, grade) in enumerate(graded):
        outcomes[at] = grade.outcome
        # A number may move with the offset though the answer does not: it is that of the first one.
        measured[at], limits[at] = (_spread(each, shape) for each in (grade.measured, grade.limit))
    return Layer(tuple(question for question, _ in graded), outcomes, measured, limits)


def _spread(number: Number, shape: tuple[int, int]) -> FloatArray:
    array: FloatArray = np.asarray(number, np.float64)
    return array[:, : shape[1]] if array.ndim == len(shape) else array
