"""The answer to `rims`."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial
from typing import Any

import numpy as np

from service.api.render.needs_answer import both_needs, known_numbers, of_the_disc
from service.api.render.numbers import Json, to_hundredths
from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.on_assumption import taken
from service.assessment.answer.verdict import VERDICTS, verdict_codes
from service.assessment.batch.rim_grid import Grid
from service.assessment.batch.rim_search import AXLE_NOTE, ApprovedBy, Combined, RimsFound, fitted_on
from service.assessment.batch.rim_windows import Reason, RimWindows, Window
from service.assessment.batch.rim_words import Units, in_words, units_of
from service.assessment.batch.shared_rims import Demand
from service.assessment.case import Case, Fitment
from service.assessment.view.wheel_facts import BY_MAKER, BY_RULE, BY_TABLE
from service.core.findings import ADVISORY, OUTCOME_NAMES
from service.core.numeric import UNKNOWN, known

_BY: dict[float, ApprovedBy] = {BY_RULE: "estimate", BY_TABLE: "table", BY_MAKER: "maker"}


def rims_result(case: Case, found: RimsFound) -> Json:
    """Return the answer of `rims`."""
    told = partial(_reason, case, units_of(case))
    front, rear = (_axle(grid, rows, told) for grid, rows in zip(found.grids, found.windows, strict=True))
    named = partial(_served, found.grids)
    smallest = found.smallest
    return {
        "rule_pack": {"id": case.pack.id, "edition": case.pack.edition},
        "needs": both_needs(case, found.needs),
        "axles": {"front": front, "rear": rear},
        "shared": [
            {
                "diameter_in": each.diameter_code,
                "width_in": each.width_in,
                "from_mm": each.from_mm,
                "to_mm": each.to_mm,
                "best_mm": each.best_mm,
                "serves": named(each.serves),
            }
            for each in found.shared
        ],
        "smallest_set": {
            "rims": [
                {
                    "diameter_in": each.diameter_code,
                    "width_in": each.width_in,
                    "offset_mm": each.offset_mm,
                    "serves": named(each.serves),
                    "with_conditions": named(each.with_conditions),
                }
                for each in smallest.rims
            ],
            "method": "exact" if smallest.exact else "greedy",
            "unserved": named(smallest.unserved),
        },
        "combinations": [_combination(each) for each in found.combinations],
        "notes": [AXLE_NOTE, *taken(case.vehicle)],
        "cautions": tuple(CAUTIONS.values()),
    }


Tell = Callable[[Reason], Json]


def _reason(case: Case, units: Units, reason: Reason) -> Json:
    unit = units.get((reason.code, reason.where))
    shown: Json = {"code": reason.code, "axle": reason.where, "outcome": OUTCOME_NAMES[reason.outcome]}
    if unit is not None:
        numbers = {"measured": reason.measured, "limit": reason.limit}
        shown |= {name: to_hundredths(value) for name, value in numbers.items() if known(value)}
        shown["unit"] = unit
    return shown | {"text": in_words(reason, case, unit)}


def _served(grids: tuple[Grid, Grid], demands: Sequence[Demand]) -> list[Json]:
    tyres = {grid.axle.name: grid.tyres for grid in grids}
    return [{"axle": each.axle, "tyre": tyres[each.axle][each.tyre_at].designation.canonical} for each in demands]


def _axle(grid: Grid, found: Sequence[RimWindows], told: Tell) -> Json:
    axle, facts = grid.axle, grid.facts
    # Of a mass that nobody gave there is no reserve to name.
    mass_kg = UNKNOWN if axle.mass_assumed else axle.max_axle_mass_kg
    reserve = np.ravel(grid.view.then.load.axle_capacity_kg) - mass_kg
    columns = [
        np.ravel(each).tolist() for each in (reserve, facts.approved_min_in, facts.approved_max_in, facts.approval)
    ]
    tyres = []
    for at, tyre in enumerate(grid.tyres):
        shown: Json = {"tyre": tyre.designation.canonical, "rim_width_by": "estimate", "widths": []}
        for row, window in enumerate(found):
            if window.row.tyre_at != at:
                continue
            carried, low, high, approval = (column[row] for column in columns)
            shown |= known_numbers(mass_reserve_kg=carried, min_rim_width_in=low, max_rim_width_in=high)
            shown["rim_width_by"] = _BY[approval]
            shown["widths"].append(_width(grid, window, told))
        tyres.append(shown)
    return {"tyres": tyres}


def _width(grid: Grid, found: RimWindows, told: Tell) -> Json:
    row, reasons = found.row, [told(each) for each in found.reasons]
    shown: Json = {
        "width_in": row.width_in,
        "verdict": VERDICTS[int(verdict_codes(np.asarray(found.outcome)))],
        "besides": [told(each) for each in found.besides],
    }
    if found.suitable is not None:
        shown["suitable"] = _window(found.suitable, told)
    if found.with_conditions is not None:
        shown["with_conditions"] = _window(found.with_conditions, told)
    if found.outcome > ADVISORY:
        return shown | {"why_none": reasons}
    fitted = fitted_on(grid.axle, grid.tyres[row.tyre_at], row.width_in, found.best_mm)
    return shown | {"best": {"offset_mm": found.best_mm, "rim": _rim(fitted), "reasons": reasons}}


def _window(window: Window, told: Tell) -> Json:
    shown: Json = {"from_mm": window.from_mm, "to_mm": window.to_mm}
    if window.from_bound is not None:
        shown["from_bound"] = told(window.from_bound)
    if window.to_bound is not None:
        shown["to_bound"] = told(window.to_bound)
    if window.further:
        shown["further"] = [{"from_mm": low, "to_mm": high} for low, high in window.further]
    return shown


def _rim(fitted: Fitment) -> Json:
    return {"size": fitted.rim.designation.canonical, **of_the_disc(fitted.rim)}


def _combination(found: Combined) -> Json:
    shown: Json = {"label": found.asked.label}
    if found.candidate is None:
        return shown
    sides: dict[str, Any] = {}
    for name, tyre in (("front", found.asked.front), ("rear", found.asked.rear)):
        fitted: Fitment = getattr(found.candidate, name)
        # An axle that stays as it is is left out of a candidate.
        if tyre is not None:
            sides[name] = {"tyre": {"size": tyre.designation.canonical}, "rim": _rim(fitted)}
    return shown | {"verdict": found.verdict, "candidate": sides}
