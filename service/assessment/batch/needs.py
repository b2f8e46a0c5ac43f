"""The least load index and speed symbol that each axle asks of its tyres, found by asking the checks themselves."""

from __future__ import annotations

from itertools import groupby
from typing import NamedTuple

import numpy as np

from service.assessment.batch.comparison_measures import load_margin_percent
from service.assessment.batch.grading import Graded, as_column
from service.assessment.batch.sizes import Sizes, marking_for, service_table, stock
from service.assessment.case import Axle, Case, Fitment, Tyre, Vehicle
from service.assessment.checks.load_below_present import BELOW_PRESENT
from service.assessment.view.conditions import law_speed_kmh
from service.assessment.view.facts import wheel_facts
from service.assessment.view.figures import NEW_TREAD_DEPTH_MM
from service.assessment.view.views import AxleView
from service.assessment.view.wheel_facts import ROW, table_of
from service.core.findings import ADVISORY, NOT_MET
from service.core.numeric import FloatArray, Number
from service.designation.commercial import FROM_LOAD_INDEX
from service.designation.rim import parse_rim
from service.designation.tyre import TyreDesignation, parse_tyre
from service.standards.load_index import least_index_for_kg, load_kg
from service.standards.speed_symbol import SYMBOLS, least_symbol_for_kmh

# What a plain tyre on a plain rim is tried with: load and speed that an axle asks for do not depend on the size.
_TRIAL_TYRE = "205/55 R16"
_TRIAL_RIM = "6.5J x 16"
# The tries begin below an equal share of the axle's mass, because slow trailers may load a tyre beyond its index, and
# end far above it, because a fast car needs more than its share and the law of a place may ask for more.
_FIRST_SHARE = 0.8
_INDICES_TRIED = 40
# By how much the index for single wheels usually is above the one for twins (107/105): common practice, no source.
_SINGLE_ABOVE_TWIN = 2
# Of these questions advice counts as well: a size that is only supposed need not begin with a point against it.
_ADVICE_HEEDED = ("law.", BELOW_PRESENT.code)


class Needs(NamedTuple):
    """What an axle asks of its tyres; None where no symbol reaches the vehicle's speed or no index its mass."""

    load_index: int | None
    speed_symbol: str | None
    load_index_twin: int | None = None
    """On a vehicle with twin wheels, whose tyres state both."""

    @property
    def description(self) -> str:
        """Return it as it stands on a tyre, empty when it is not known."""
        if self.load_index is None or self.speed_symbol is None:
            return ""
        twin = "" if self.load_index_twin is None else f"/{self.load_index_twin}"
        return f"{self.load_index}{twin}{self.speed_symbol}"


UNKNOWN_NEEDS = Needs(None, None)


def stronger(one: Needs, other: Needs) -> Needs:
    """Return what does for both axles, unknown where it is not known of one."""
    known = [each for each in (one, other) if each.load_index is not None and each.speed_symbol is not None]
    if len(known) < len((one, other)):
        return UNKNOWN_NEEDS
    twins = [each.load_index_twin for each in known if each.load_index_twin is not None]
    return Needs(
        max(each.load_index or 0 for each in known),
        max((each.speed_symbol or "" for each in known), key=SYMBOLS.index),
        max(twins, default=None),
    )


class Trial(NamedTuple):
    """The descriptions to try on an axle, with a wheel for each: slow symbols first and then low indices first."""

    descriptions: list[Needs]
    table: FloatArray
    """Shape (facts of a wheel, descriptions)."""


def trials(case: Case) -> tuple[Trial, Trial] | None:
    """Return what to try on the front and the rear axle, as many for both; None where no symbol or index is enough."""
    front, rear = (_descriptions(case.vehicle, axle) for axle in (case.vehicle.front, case.vehicle.rear))
    if not front or not rear:
        return None
    return _trial_on(case, case.vehicle.front, front), _trial_on(case, case.vehicle.rear, rear)


def _trial_on(case: Case, axle: Axle, tried: list[Needs]) -> Trial:
    """Return the descriptions with their wheels; those that differ by their index alone are looked up once."""
    rim = axle.fitted.rim._replace(designation=parse_rim(_TRIAL_RIM))
    law_speed, plain = law_speed_kmh(case), _trial(case)
    parts = []
    for _, group in groupby(tried, lambda each: (each.speed_symbol, (each.load_index or 0) >= FROM_LOAD_INDEX)):
        alike = list(group)
        tyre = Tyre(_with(plain, alike[0]), NEW_TREAD_DEPTH_MM)
        facts = wheel_facts(Fitment(tyre, rim), axle, case.vehicle.max_speed_kmh, law_speed)
        part = np.repeat(table_of([facts]), len(alike), axis=1)
        indices = [_counting(each, axle) for each in alike]
        part[ROW["load_index"]], part[ROW["rated_kg"]] = indices, [load_kg(index) for index in indices]
        parts.append(part)
    return Trial(tried, np.concatenate(parts, axis=1))


def _counting(needs: Needs, axle: Axle) -> int:
    """Return the load index that counts on an axle: with twin wheels the second one."""
    twin = needs.load_index_twin if axle.wheels_per_side > 1 else None
    return (needs.load_index or 0) if twin is None else twin


def _descriptions(vehicle: Vehicle, axle: Axle) -> list[Needs]:
    """Return the descriptions to try."""
    slowest = least_symbol_for_kmh(vehicle.max_speed_kmh)
    first = least_index_for_kg(_FIRST_SHARE * axle.max_axle_mass_kg / axle.tyres)
    if slowest is None or first is None:
        return []
    symbols = SYMBOLS[SYMBOLS.index(slowest) :]
    has_twins = max(vehicle.front.wheels_per_side, vehicle.rear.wheels_per_side) > 1
    # The index that counts on this axle is the one that is tried.
    single = _SINGLE_ABOVE_TWIN if axle.wheels_per_side > 1 else 0
    return [
        Needs(index + single, symbol, index + single - _SINGLE_ABOVE_TWIN if has_twins else None)
        for symbol in symbols
        for index in range(first, first + _INDICES_TRIED)
    ]


def best_of(trial: Trial, graded: Graded, view: AxleView[Number], least_margin_percent: float) -> Needs:
    """Return the description that an axle needs, from the grades of those tried, which stand first in the columns.

    It is one that leaves the fewest questions about the axle unmet, carrying less than the present tyres among them; of
    those, where there are any, one whose index is no higher than the present one, then the one with the slowest symbol,
    then the one with the least index. `least_margin_percent` is by how much the tyres shall carry more than the axle's
    maximum mass.
    """
    here = slice(len(trial.descriptions))
    mine = [place for place, each in enumerate(graded.questions) if each.where == view.name]
    asked = np.array([graded.questions[place].code.startswith(_ADVICE_HEEDED) for place in mine])
    outcomes, size = graded.outcomes[mine][:, here], graded.outcomes.shape[1:]
    scarce = as_column(load_margin_percent(view), size)[here] < least_margin_percent
    unmet = (outcomes == NOT_MET).sum(axis=0) + (outcomes[asked] == ADVISORY).sum(axis=0) + 1 * scarce
    # A size has its symbols to choose from, while a higher index mostly takes a larger tyre.
    heavier = as_column(view.then.facts.load_index, size)[here] > view.now.facts.load_index
    return trial.descriptions[int((2 * unmet + heavier).argmin())]


def grid_services(case: Case, axle: Axle, needs: Needs) -> FloatArray:
    """Return what every size of the grid carries when it is marked with what the axle needs, as one column."""
    designation = _with(_trial(case), needs)
    law_speed = law_speed_kmh(case)
    return service_table(stock([designation]), axle, case.vehicle.max_speed_kmh, law_speed)


def marked(sizes: Sizes, place: int, needs: Needs) -> TyreDesignation:
    """Return a size of the search as it is assessed: one of the grid bears the description that is needed."""
    designation = sizes.designations[place]
    return _with(designation, needs) if sizes.is_grid else designation


def _trial(case: Case) -> TyreDesignation:
    return parse_tyre(f"{_TRIAL_TYRE} {marking_for(case)}".strip())


def _with(designation: TyreDesignation, needs: Needs) -> TyreDesignation:
    return parse_tyre(f"{designation.canonical} {needs.description}".strip())
