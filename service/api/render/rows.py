"""Rows of many candidates as plain data: whole columns are rounded, then zipped into rows.

Row by row this would cost more than everything before it. What is not known is absent.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import isnan
from typing import Any, cast

import numpy as np

from service.api.render.figures_answer import percent_estimate
from service.api.render.findings_answer import action, finding, line, sources
from service.api.render.numbers import Json
from service.api.schemas.vocabulary import DetailName
from service.assessment.answer.assess import Assessment
from service.assessment.answer.told import RETOLD
from service.assessment.answer.verdict import VERDICTS
from service.assessment.batch.compare import MOST_FINDINGS, Compared
from service.assessment.batch.comparison_measures import load_margin_percent, trades
from service.assessment.checks.balance import DEGREES, DIRECTIONS, degree_code, direction_code
from service.assessment.checks.speedometer_lead import lead_after_percent
from service.assessment.view.views import AxleView
from service.core.findings import NOT_ASSESSED, OPEN, OUTCOME_NAMES, Estimate
from service.core.numeric import FloatArray, Number, known

Column = tuple[Number, int]
"""Values, of all candidates, and the decimals that are shown."""
_DIGITS = 2


def rows(found: Compared, detail: DetailName) -> list[Json]:
    """Return one row for each candidate, in the caller's order; a short one without findings, axles and vehicle."""
    size = len(found.order)
    parts: dict[str, list[Any]] = {
        "rank": _ranks(found),
        "verdict": [VERDICTS[code] for code in found.graded.verdicts.tolist()],
        "changed": found.changed,
        "change": found.changes,
        "not_bettered": found.not_bettered.tolist(),
        "measures": _measures(found, size),
        "gains": _trades(found.gains.tolist()),
        "losses": _trades(found.losses.tolist()),
        "finding_counts": _counts(found),
    }
    if detail != "short":
        parts |= {"axles": _axles(found, size), "vehicle": _vehicle(found, size), "findings": _findings(found)}
    names = tuple(parts)
    made = [dict(zip(names, values, strict=True)) for values in zip(*parts.values(), strict=True)]
    _add_words(made, found)
    return made


def _add_words(made: list[Json], found: Compared) -> None:
    """Put into each row the pressures to set and what stands against it, where there are any."""
    views = (found.graded.car.front, found.graded.car.rear)
    pressures = records({view.name: (view.ordered_pressure_kpa, _DIGITS) for view in views}, len(made))
    for row, pressure, (reason, remedy) in zip(made, pressures, found.words, strict=True):
        if row["verdict"] != "unsuitable":
            row["set_pressure_kpa"] = pressure
        if reason:
            row["reason"] = reason
        if remedy:
            row["first_remedy"] = remedy


def explain(row: Json, whole: Assessment, pointer: str, detail: DetailName) -> Json:
    """Put the sentences and remedies of a single check into the row of the candidate at this pointer.

    Return the documents that its bases name; none unless they are shown.
    """
    row["summary"] = whole.summary
    if detail == "short":
        row["actions"] = [line(each) for each in whole.actions if not each.code.startswith(RETOLD)]
        return {}
    row["actions"] = [action(each, whole=detail == "full") for each in whole.actions]
    shown = [each for each in whole.findings[:MOST_FINDINGS] if each.outcome > OPEN]
    row["findings"] = told = [finding(each, whole=detail == "full") for each in shown]
    for each in told:
        if detail == "standard":
            del each["basis"]
        if "remedy" in each:
            remedy = each["remedy"]
            remedy["pointer"] = remedy["pointer"].replace("/candidate", pointer, 1)
    return sources(each.basis for each in shown) if detail == "full" else {}


def records(columns: Mapping[str, Column], size: int) -> list[Json]:
    """Return one object for each candidate, rounded; a number that is not known is absent."""
    rounded = {name: _rounded(values, digits, size) for name, (values, digits) in columns.items()}
    gaps = {name: np.isnan(values) for name, values in rounded.items()}
    shown = {name: values.tolist() for name, values in rounded.items() if not gaps[name].all()}
    names = tuple(shown)
    if not names:
        return [{} for _ in range(size)]
    made = zip(*shown.values(), strict=True)
    if not any(gaps[name].any() for name in names):
        return [dict(zip(names, values, strict=True)) for values in made]
    return [{name: value for name, value in zip(names, values, strict=True) if not isnan(value)} for values in made]


def estimates(found: Estimate[Number], digits: int, size: int) -> list[Json | None]:
    """Return an estimate for each candidate, None where it is not known."""
    value, low, high = (_rounded(end, digits, size).tolist() for end in found)
    return [
        {"value": middle, "low": least, "high": most} if known(middle) else None
        for middle, least, most in zip(value, low, high, strict=True)
    ]


def _rounded(values: Number, digits: int, size: int) -> FloatArray:
    # Adding zero takes the sign from a zero.
    return np.broadcast_to(np.round(values, digits) + 0.0, (size,))


def _add(to: list[Json], name: str, values: Iterable[Any]) -> None:
    for row, value in zip(to, values, strict=True):
        if value is not None:
            row[name] = value


def _ranks(found: Compared) -> list[int]:
    ranks = np.empty(len(found.order), np.intp)
    ranks[found.order] = np.arange(1, len(found.order) + 1)
    in_order: list[int] = ranks.tolist()
    return in_order


def _measures(found: Compared, size: int) -> list[Json]:
    return records({name: (values, _DIGITS) for name, values in found.measures._asdict().items()}, size)


def _trades(members: list[int]) -> list[list[str]]:
    words = {each: trades(each) for each in set(members)}
    return [cast("list[str]", words[each]) for each in members]


def _axles(found: Compared, size: int) -> list[Json]:
    car = found.graded.car
    return [
        {"front": front, "rear": rear}
        for front, rear in zip(_axle(car.front, size), _axle(car.rear, size), strict=True)
    ]


def _axle(view: AxleView[Number], size: int) -> list[Json]:
    change = view.change
    made = records(
        {
            "overall_diameter_percent": (change.overall_diameter_percent, 2),
            "section_width_mm": (change.section_width_mm, 1),
            "inboard_edge_mm": (change.inboard_edge_mm, 1),
            "outboard_edge_mm": (change.outboard_edge_mm, 1),
            "load_margin_percent": (load_margin_percent(view), 1),
        },
        size,
    )
    _add(made, "cornering_stiffness_percent", estimates(percent_estimate(change.cornering_stiffness), 1, size))
    _add(made, "aquaplaning_onset_percent", estimates(change.aquaplaning_onset_percent, 1, size))
    return made


def _vehicle(found: Compared, size: int) -> list[Json]:
    car = found.graded.car
    made = records(
        {
            "axle_circumference_ratio_change_percent": (car.change.axle_ratio_percent, 2),
            "speedometer_lead_percent": (lead_after_percent(car), 2),
        },
        size,
    )
    gradients = estimates(car.change.gradient_deg_per_g, 2, size)
    directions, degrees = (np.broadcast_to(code, (size,)).tolist() for code in (direction_code(car), degree_code(car)))
    for row, gradient, direction, degree in zip(made, gradients, directions, degrees, strict=True):
        if gradient is not None:
            row["understeer_gradient_change_deg_per_g"] = gradient
            row["direction"] = DIRECTIONS[direction]
            row["degree"] = DEGREES[degree]
    return made


def _findings(found: Compared) -> list[list[Json]]:
    """Return the worst findings of each candidate without their sentences."""
    graded = found.graded
    heads = [(each.code, each.where, unit) for each, unit in zip(graded.questions, found.units, strict=True)]
    at = found.worst
    picked = (
        at,
        np.take_along_axis(graded.outcomes, at, axis=0),
        np.take_along_axis(found.already, at, axis=0),
        np.round(np.take_along_axis(graded.measured, at, axis=0), _DIGITS) + 0.0,
        np.round(np.take_along_axis(graded.limits, at, axis=0), _DIGITS) + 0.0,
        found.worth_showing,
    )
    made: list[list[Json]] = [[] for _ in found.order]
    for numbers in zip(*(each.tolist() for each in picked), strict=True):
        for mine, question, outcome, already, measured, limit, shown in zip(made, *numbers, strict=True):
            if shown:
                code, axle, unit = heads[question]
                each = {"code": code, "axle": axle, "outcome": OUTCOME_NAMES[outcome], "already": already}
                if outcome in (OPEN, NOT_ASSESSED):
                    each["decides"] = outcome == NOT_ASSESSED
                # Written out here: some thousands of them are made for an answer.
                if unit is not None:
                    if not isnan(measured):
                        each["measured"] = measured
                        each["unit"] = unit
                    if not isnan(limit):
                        each["limit"] = limit
                        each["unit"] = unit
                mine.append(each)
    return made


def _counts(found: Compared) -> list[Json]:
    names = tuple(dict.fromkeys(OUTCOME_NAMES))
    outcomes = np.array([names.index(name) for name in OUTCOME_NAMES], np.int8)[found.graded.outcomes]
    counts = ((outcomes == place).sum(axis=0).tolist() for place in range(len(names)))
    return [dict(zip(names, each, strict=True)) for each in zip(*counts, strict=True)]
