"""A plan to compare combinations on one vehicle: which rims, which pressures, what to expect, what a test can show."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.answer.already import present_grades
from service.assessment.answer.verdict import VERDICTS, Verdict
from service.assessment.batch.changed_axles import change_in_words, changed_axles
from service.assessment.batch.grading import Graded, grade_all, stack_candidates
from service.assessment.batch.one_of_many import Words, words_of
from service.assessment.batch.plan_case import Combination, PlanAsked, PlannedWheel
from service.assessment.batch.plan_effects import effects_of
from service.assessment.batch.plan_measure_first import PlanMeasurement, measure_before
from service.assessment.batch.plan_order import running_order
from service.assessment.batch.plan_pairs import Bands, Pair, Repeats, bands_of, blocks_of, pairs_of, repeats_of
from service.assessment.batch.plan_pressures import PlannedPressures, planned_pressures
from service.assessment.batch.plan_rims import PlannedRim, RimsToBuy, rims_of
from service.assessment.batch.ranking import worst_questions
from service.assessment.case import Axle, Candidate, Case, Fitment, Tyre
from service.assessment.view.views import AxleView, candidate_facts, now_fitted, weigh
from service.core.numeric import Number, known

# Of each combination the worst finding, and the next ones while the worst has no remedy.
_LOOKED_AT = 5


class PlannedAxle(NamedTuple):
    """One axle of a combination: its wheel, where the rim comes from, and its pressure."""

    fitment: Fitment
    rim: PlannedRim
    stays: bool
    """Whether the axle stays as it is."""
    pressure_kpa: float
    share_percent: float
    pressure_held: bool
    """Whether the pressure is not the rule's, because the axle needs more or the tyre usually gets less."""


class PlannedCombination(NamedTuple):
    """What is said of one combination."""

    asked: Combination
    change: str
    """What it changes, in words."""
    verdict: Verdict
    words: Words
    front: PlannedAxle
    rear: PlannedAxle


class Plan(NamedTuple):
    """The plan; places count the combinations as they were asked."""

    asked: PlanAsked
    combinations: list[PlannedCombination]
    rims_to_buy: tuple[RimsToBuy, RimsToBuy]
    present: tuple[PlannedAxle, PlannedAxle]
    graded: Graded
    bands: Bands
    pairs: list[Pair]
    repeats: list[Repeats]
    blocks: float
    """How often to drive the order; NaN where no repeatability is stated or nothing can be told apart."""
    order: list[int]
    measure_first: list[PlanMeasurement]


def plan(case: Case, asked: PlanAsked) -> Plan:
    """Return the plan for 1 to 12 combinations on the vehicle of a case, whose own candidate does not count."""
    vehicle, size = case.vehicle, len(asked.combinations)
    fronts, rears = [each.front for each in asked.combinations], [each.rear for each in asked.combinations]
    rims = rims_of(case, _wanting(fronts), _wanting(rears))
    front_rims, rear_rims = _rims(vehicle.front, fronts, rims.front), _rims(vehicle.rear, rears, rims.rear)
    bare = [
        Candidate(_fitment(vehicle.front, each.front, front), _fitment(vehicle.rear, each.rear, rear), each.label)
        for each, front, rear in zip(asked.combinations, front_rims, rear_rims, strict=True)
    ]
    car = weigh(case, now_fitted(vehicle), *stack_candidates(case, bare))
    pressures = [planned_pressures(view, asked.pressure_rule, size) for view in (car.front, car.rear)]
    candidates = [_inflated(each, at, pressures) for at, each in enumerate(bare)]
    graded = grade_all(case, *stack_candidates(case, candidates))
    bands = bands_of(effects_of(graded.car), size)
    pairs = pairs_of(graded, bands, asked)
    repeats = repeats_of(pairs, asked)
    return Plan(
        asked=asked,
        combinations=_combinations(case, asked, candidates, graded, (front_rims, rear_rims), pressures),
        rims_to_buy=rims.to_buy,
        present=_present(case, asked),
        graded=graded,
        bands=bands,
        pairs=pairs,
        repeats=repeats,
        blocks=blocks_of(repeats),
        order=running_order(graded.verdicts.tolist()),
        measure_first=measure_before(case, candidates, graded, scatter_is_stated=bool(asked.repeatability)),
    )


def _wanting(wheels: Sequence[PlannedWheel | None]) -> list[Tyre]:
    return [each.tyre for each in wheels if each is not None and each.rim is None]


def _rims(axle: Axle, wheels: Sequence[PlannedWheel | None], found: Mapping[Tyre, PlannedRim]) -> list[PlannedRim]:
    """Return the rim of each wheel on an axle: the given one, the present one where the axle stays, else one found."""
    return [
        PlannedRim(axle.fitted.rim, "present")
        if each is None
        else found[each.tyre]
        if each.rim is None
        else PlannedRim(each.rim, "given")
        for each in wheels
    ]


def _fitment(axle: Axle, wheel: PlannedWheel | None, rim: PlannedRim) -> Fitment:
    return axle.fitted if wheel is None else Fitment(wheel.tyre, rim.rim)


def _inflated(candidate: Candidate, at: int, pressures: Sequence[PlannedPressures]) -> Candidate:
    front, rear = (float(each.pressure_kpa[at]) for each in pressures)
    return candidate._replace(
        front=candidate.front._replace(pressure_kpa=front) if known(front) else candidate.front,
        rear=candidate.rear._replace(pressure_kpa=rear) if known(rear) else candidate.rear,
    )


def _combinations(
    case: Case,
    asked: PlanAsked,
    candidates: Sequence[Candidate],
    graded: Graded,
    rims: tuple[list[PlannedRim], list[PlannedRim]],
    pressures: Sequence[PlannedPressures],
) -> list[PlannedCombination]:
    worst, _ = worst_questions(graded, _LOOKED_AT)
    words = words_of(case, candidates, graded, present_grades(case), worst)
    ordered = [np.broadcast_to(view.ordered_pressure_kpa, graded.verdicts.shape) for view in _views(graded)]
    made = []
    for at, (each, candidate) in enumerate(zip(asked.combinations, candidates, strict=True)):
        axles = [
            PlannedAxle(
                fitment=fitment,
                rim=of_rim[at],
                stays=wheel is None,
                pressure_kpa=float(to_set[at]),
                share_percent=float(pressure.share_percent[at]),
                pressure_held=bool(pressure.held[at]),
            )
            for fitment, of_rim, wheel, to_set, pressure in zip(
                (candidate.front, candidate.rear), rims, (each.front, each.rear), ordered, pressures, strict=True
            )
        ]
        change = change_in_words(case.vehicle, candidate, changed_axles(case.vehicle, candidate))
        made.append(PlannedCombination(each, change, VERDICTS[graded.verdicts[at]], words[at], *axles))
    return made


def _views(graded: Graded) -> tuple[AxleView[Number], AxleView[Number]]:
    return graded.car.front, graded.car.rear


def _present(case: Case, asked: PlanAsked) -> tuple[PlannedAxle, PlannedAxle]:
    """Return the wheels of the reference, at the pressure that the rule begins from."""
    vehicle = case.vehicle
    car = weigh(case, now_fitted(vehicle), *candidate_facts(case, Candidate(vehicle.front.fitted, vehicle.rear.fitted)))
    front, rear = (
        PlannedAxle(
            fitment=view.axle.fitted,
            rim=PlannedRim(view.axle.fitted.rim, "present"),
            stays=True,
            pressure_kpa=view.now.behaviour.pressure_kpa,
            share_percent=float(planned_pressures(view, asked.pressure_rule, 1).share_percent[0]),
            pressure_held=False,
        )
        for view in (car.front, car.rear)
    )
    return front, rear
