"""The answer to `plan`, as an object and as a table."""

from __future__ import annotations

from math import isfinite

from service.api.render.csv_cells import written
from service.api.render.numbers import HUNDREDTHS, Json, rounded, to_hundredths
from service.assessment.answer.cautions import CAUTIONS
from service.assessment.answer.on_assumption import taken
from service.assessment.batch.plan import Plan, PlannedAxle, PlannedCombination
from service.assessment.batch.plan_effects import EFFECT_NAMES, EFFECTS
from service.assessment.batch.plan_measure_first import PlanMeasurement
from service.assessment.batch.plan_pairs import REFERENCE, Difference, Pair, Repeats
from service.assessment.batch.plan_words import (
    RULES,
    blocks_text,
    fewest_for_certain,
    name_of,
    pair_text,
    repeats_text,
    rims_to_buy,
)
from service.assessment.case import Case
from service.core.findings import Estimate
from service.core.numeric import known

_AXLES = ("front", "rear")
_WHEEL_COLUMNS = ("tyre", "rim", "rim_origin", "set_pressure_kpa", "share_percent")
_ENDS = ("value", "low", "high")
COLUMNS = (
    *("index", "id", "label", "change", "verdict", "reason", "first_remedy"),
    *(f"{axle}.{name}" for axle in _AXLES for name in _WHEEL_COLUMNS),
    *(f"effects.{name}.{end}" for name in EFFECT_NAMES for end in _ENDS),
    "tests",
)


def plan_result(case: Case, found: Plan) -> Json:
    """Return the answer to a plan."""
    front, rear = found.present
    return {
        "rule_pack": {"id": case.pack.id, "edition": case.pack.edition},
        "pressure_rule": found.asked.pressure_rule,
        "pressure_rule_text": RULES[found.asked.pressure_rule],
        "reference": {"front": _wheel(front), "rear": _wheel(rear)},
        "rims_to_buy": [{"axle": axle, "rim": rim, "serves": serves} for axle, rim, serves in rims_to_buy(found)],
        "rims_method": "exact" if fewest_for_certain(found) else "greedy",
        "combinations": [_combination(found, at, each) for at, each in enumerate(found.combinations)],
        "effects": [
            {"effect": name, "unit": each.unit, "text": each.words, "better": each.better, "least": each.least}
            for name, each in EFFECTS.items()
        ],
        "pairs": [_pair(found, each) for each in found.pairs],
        "repeats": [_repeats(each) for each in found.repeats],
        "order": _order(found),
        "measure_first": [_measurement(each) for each in found.measure_first],
        **({"notes": list(taken(case.vehicle))} if case.vehicle.assumes else {}),
        "cautions": tuple(CAUTIONS.values()),
    }


def _combination(found: Plan, at: int, each: PlannedCombination) -> Json:
    shown: Json = {"index": at}
    if each.asked.id:
        shown["id"] = each.asked.id
    shown |= {"label": each.asked.label, "change": each.change, "verdict": each.verdict}
    if each.words.reason:
        shown["reason"] = each.words.reason
    if each.words.remedy:
        shown["first_remedy"] = each.words.remedy
    bands = {name: found.bands[name][at] for name in EFFECT_NAMES}
    effects = {name: _estimate(band) for name, band in bands.items() if known(band.value)}
    return shown | {"front": _wheel(each.front), "rear": _wheel(each.rear), "effects": effects}


def _wheel(axle: PlannedAxle) -> Json:
    fitment = axle.fitment
    shown: Json = {
        "tyre": fitment.tyre.designation.canonical,
        "rim": fitment.rim.designation.canonical,
        "rim_origin": axle.rim.origin,
        "stays": axle.stays,
        "pressure_held": axle.pressure_held,
    }
    numbers = {
        "rim_load_rating_kg": fitment.rim.load_rating_kg,
        "set_pressure_kpa": axle.pressure_kpa,
        "share_percent": axle.share_percent,
    }
    return shown | {name: to_hundredths(value) for name, value in numbers.items() if known(value)}


def _estimate(band: Estimate[float]) -> Json:
    return dict(zip(_ENDS, rounded(band, HUNDREDTHS), strict=True))


def _pair(found: Plan, pair: Pair) -> Json:
    shown: Json = {} if pair.first == REFERENCE else {"first": pair.first}
    return shown | {
        "second": pair.second,
        "apart": [_difference(each) for each in pair.apart],
        "alike": list(pair.alike),
        "text": pair_text(found, pair),
    }


def _difference(each: Difference) -> Json:
    shown: Json = {"effect": each.effect, "difference": _estimate(each.difference)}
    return shown | ({"repeats": each.repeats} if isfinite(each.repeats) else {})


def _repeats(each: Repeats) -> Json:
    shown: Json = {
        "effect": each.effect,
        "standard_deviation": each.standard_deviation,
        "pairs_apart": each.pairs_apart,
        "text": repeats_text(each),
    }
    if isfinite(each.for_greatest):
        shown |= {"for_greatest": each.for_greatest, "for_all": each.for_all}
    return shown


def _order(found: Plan) -> Json:
    shown: Json = {"runs": [name_of(found, place) for place in found.order], "text": blocks_text(found)}
    return shown | ({"blocks": found.blocks} if known(found.blocks) else {})


def _measurement(each: PlanMeasurement) -> Json:
    return {
        "pointer": each.pointer,
        "text": each.text,
        "settles": list(each.settles),
        "narrows": list(each.narrows),
        "combinations": each.combinations,
    }


def plan_table(answer: Json) -> str:
    """Return the combinations of a plan as CSV (RFC 4180) with a header line; `tests` says what a test may show."""
    against_present = {each["second"]: each["text"] for each in answer["pairs"] if "first" not in each}
    return written(COLUMNS, (_cells(row, against_present[row["index"]]) for row in answer["combinations"]))


def _cells(row: Json, tests: str) -> Json:
    cells = {**row, "tests": tests}
    cells |= {f"{axle}.{name}": row[axle].get(name, "") for axle in _AXLES for name in _WHEEL_COLUMNS}
    for name, band in row["effects"].items():
        cells |= {f"effects.{name}.{end}": band[end] for end in _ENDS}
    return cells
