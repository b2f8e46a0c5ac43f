"""Which sizes would suit: every size of a grid or of a stock on the caller's rims, each axle first, then in pairs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from service.assessment.answer.already import present_grades
from service.assessment.answer.verdict import UNSUITABLE, VERDICTS, Verdict
from service.assessment.batch.against import already_of
from service.assessment.batch.axle_needs import AxleNeeds, axle_needs
from service.assessment.batch.compare import Compared, compare
from service.assessment.batch.comparison_measures import RankBy, measures
from service.assessment.batch.grading import grade_all
from service.assessment.batch.left_out import AXLE, VERDICTS_ASKED, Sieve, why_none
from service.assessment.batch.needs import Needs, grid_services, marked, stronger
from service.assessment.batch.ranking import ranked
from service.assessment.batch.search_axle import AxleFound, AxleLimits, filter_axles, first_reasons
from service.assessment.batch.search_pairs import (
    CLASS_MIX,
    RATIO,
    RIM_WIDTH_MIX,
    SEASON_MIX,
    STAGGER,
    PairAsks,
    Pairs,
    Stagger,
    best,
    join,
    stagger_of,
)
from service.assessment.batch.sizes import Sizes, service_table
from service.assessment.batch.wheel_table import PRESSURE, Places, Wheels, wheels_of
from service.assessment.case import Axle, Candidate, Case, Fitment, Rim, Tyre
from service.assessment.checks.bead_diameter import DIAMETER
from service.assessment.checks.grade import LAST_BIT
from service.assessment.view.conditions import law_speed_kmh
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.wheel_facts import columns
from service.core.findings import NOT_MET
from service.core.numeric import UNKNOWN, known_or, larger, unknown
from service.core.saying import Amount, say
from service.designation.tyre import TyreDesignation

RIM_DIAMETER = DIAMETER.code
# The verdicts of what fits, in whatever manner: what a search finds unless fewer are asked for.
FITTING = VERDICTS[:UNSUITABLE]

GRID_NOTE = say(
    "The sizes come from a grid: a size, or the load index and speed symbol named with it, may not exist in the "
    "market. Each was assessed as a standard-load tyre marked with the description that its axle needs, and one size "
    "all round with that of the axle that needs more."
)
NEW_NOTE = say(
    "The tyres are taken as new, with {depth} of tread, at the pressure proposed for them.",
    depth=Amount(NEW_TREAD_DEPTH_MM, "mm", 1),
)


class Wanted(NamedTuple):
    """What the caller asks of the sizes to be found."""

    axle_limits: AxleLimits = AxleLimits()
    stagger: Stagger | None = None
    """None: a square car stays square, a staggered one keeps its stagger."""
    axle_ratio_percent: float = UNKNOWN
    balance_deg_per_g: float = UNKNOWN
    mixed: bool = False
    """Whether summer may be paired with winter tyres and passenger car with commercial tyres."""
    verdicts: tuple[Verdict, ...] = FITTING
    rank_by: RankBy = "closest_to_present"
    most: int = 20


class Hit(NamedTuple):
    """Where a result comes from: places of sizes and rims."""

    front_size: int
    front_rim: int
    rear_size: int
    rear_rim: int


class Found(NamedTuple):
    """What was found, best first."""

    candidates: list[Candidate]
    hits: list[Hit]
    compared: Compared | None
    """The comparison of the candidates, None where there are none."""
    needs: tuple[AxleNeeds, AxleNeeds]
    front: Sieve
    rear: Sieve
    pairs: Sieve
    defaults: frozenset[str]
    """What of the reasons the caller may ask otherwise and did not."""
    why_none: str
    """Empty where something was found."""


def search(case: Case, sizes: Sizes, rims: tuple[Sequence[Rim], Sequence[Rim]], wanted: Wanted) -> Found:
    """Return the best fitments of these sizes on these rims, front and rear, for the vehicle of a case."""
    vehicle, asks = case.vehicle, _pair_asks(case, wanted)
    needs = axle_needs(case, larger(wanted.axle_limits.load_margin_percent, 0.0))
    # One size all round is one tyre: it has to do for the axle that needs more.
    services = needs[0].service, needs[1].service
    marks = (stronger(*services),) * 2 if asks.stagger == "square" else services
    all_wheels = (
        _wheels(case, sizes, vehicle.front, marks[0], rims[0]),
        _wheels(case, sizes, vehicle.rear, marks[1], rims[1]),
    )
    found = filter_axles(case, *all_wheels, wanted.axle_limits, wanted.rank_by)
    front, rear = best(found[0]), best(found[1])
    pairs = join(case, front, rear, sizes, asks)
    renamed = _renamed(case, sizes, (front.wheels, rear.wheels), pairs)
    chosen, kept, removed = _best_pairs(case, (front.wheels, rear.wheels), pairs, renamed, wanted)
    hits = [
        Hit(
            int(front.wheels.size_at[one]),
            int(front.wheels.rim_at[one]),
            int(rear.wheels.size_at[other]),
            int(rear.wheels.rim_at[other]),
        )
        for one, other in chosen
    ]
    candidates = [
        Candidate(
            _fitment(marked(sizes, hit.front_size, marks[0]), rims[0][hit.front_rim], front.wheels, one),
            _fitment(marked(sizes, hit.rear_size, marks[1]), rims[1][hit.rear_rim], rear.wheels, other),
        )
        for hit, (one, other) in zip(hits, chosen, strict=True)
    ]
    sieves = (
        _sieve(front, len(sizes.designations) * len(rims[0])),
        _sieve(rear, len(sizes.designations) * len(rims[1])),
        Sieve(pairs.tried, kept, pairs.removed + removed),
    )
    defaults = defaults_of(wanted)
    return Found(
        candidates,
        hits,
        compare(case, candidates, wanted.rank_by) if candidates else None,
        needs,
        *sieves,
        defaults,
        why_none(*sieves, defaults),
    )


def _pair_asks(case: Case, wanted: Wanted) -> PairAsks:
    most_percent = known_or(wanted.axle_ratio_percent, case.pack.limits.axle_ratio_advisory_percent.value)
    return PairAsks(wanted.stagger or stagger_of(case.vehicle), most_percent, wanted.mixed)


def defaults_of(wanted: Wanted) -> frozenset[str]:
    """Return the reasons that come from defaults of the search: the caller may ask otherwise."""
    found = {RIM_WIDTH_MIX, SEASON_MIX, CLASS_MIX}
    if wanted.stagger is None:
        found.add(STAGGER)
    if unknown(wanted.axle_ratio_percent):
        found.add(RATIO)
    return frozenset(found)


def _wheels(case: Case, sizes: Sizes, axle: Axle, needs: Needs, rims: Sequence[Rim]) -> Wheels:
    if sizes.is_grid:
        services = grid_services(case, axle, needs)
    else:
        services = service_table(sizes, axle, case.vehicle.max_speed_kmh, law_speed_kmh(case))
    return wheels_of(sizes, services, rims)


def _sieve(found: AxleFound, tried: int) -> Sieve:
    """Return how an axle's wheels fared; sizes for other rims than the caller's were never made into wheels."""
    return Sieve(tried, found.wheels.size, Counter({RIM_DIAMETER: tried - found.tried}) + found.removed)


def _renamed(case: Case, sizes: Sizes, wheels: tuple[Wheels, Wheels], pairs: Pairs) -> Places:
    """Return for each pair on how many axles its tyre has another designation than the present one."""
    count = np.zeros(len(pairs.front_at), np.intp)
    axles = (case.vehicle.front, case.vehicle.rear)
    for axle, mine, places in zip(axles, wheels, (pairs.front_at, pairs.rear_at), strict=True):
        now = axle.fitted.tyre.designation.canonical
        differs = np.array([each.canonical != now for each in sizes.designations], np.bool_)
        count += differs[mine.size_at[places]]
    return count


def _best_pairs(
    case: Case, wheels: tuple[Wheels, Wheels], pairs: Pairs, renamed: Places, wanted: Wanted
) -> tuple[list[tuple[int, int]], int, Counter[str]]:
    """Return the best pairs, how many would do, and how many each reason sent away."""
    if not len(pairs.front_at):
        return [], 0, Counter()
    front, rear = wheels[0].table[:, pairs.front_at], wheels[1].table[:, pairs.rear_at]
    graded = grade_all(case, columns(front), columns(rear))
    found, already = measures(graded), already_of(present_grades(case), graded)
    broken = {
        question.code: outcomes == NOT_MET
        for question, outcomes in zip(graded.questions, graded.outcomes, strict=True)
        if question.where == "vehicle"
    }
    # What an axle asks for was asked before, but for the pressure, which was not yet proposed.
    broken[AXLE] = graded.verdicts == UNSUITABLE
    broken["limits.balance_deg_per_g"] = found.balance_deg_per_g > wanted.balance_deg_per_g + LAST_BIT
    asked = [VERDICTS.index(each) for each in wanted.verdicts]
    broken[VERDICTS_ASKED] = ~np.isin(graded.verdicts, asked)
    removed, left = first_reasons(broken, len(graded.verdicts))
    order = ranked(case, graded, already, found, wanted.rank_by, renamed)
    order = order[np.isin(order, left)][: wanted.most]
    chosen = zip(pairs.front_at[order].tolist(), pairs.rear_at[order].tolist(), strict=True)
    return list(chosen), len(left), removed


def _fitment(designation: TyreDesignation, rim: Rim, wheels: Wheels, place: int) -> Fitment:
    return Fitment(Tyre(designation, NEW_TREAD_DEPTH_MM), rim, float(wheels.table[PRESSURE, place]))
