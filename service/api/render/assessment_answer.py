"""From the domain to the wire: rounding, and leaving out what is not known. Nothing is computed here."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from functools import lru_cache

import orjson

from service.api.render.driving_answer import add_driving
from service.api.render.figures_answer import axle_figures, vehicle_figures
from service.api.render.numbers import Json, to_hundredths
from service.assessment.answer.action import Action
from service.assessment.answer.assess import Assessment
from service.assessment.answer.trade_offs import TradeOff, trade_offs_text
from service.core.findings import NOT_ASSESSED, OPEN, OUTCOME_NAMES, Basis, Finding, Remedy

# The ends of a remedy are rounded into its range, so that the number shown settles the finding.
REMEDY_STEPS = 1e4
LAST_BIT = 1e-6
# What a check may be asked for whatever it shows of the findings.
_NO_FINDINGS: dict[str, int] = dict.fromkeys(OUTCOME_NAMES, 0)


def assessment(found: Assessment) -> Json:
    """Return the answer to a check as plain data."""
    case, car = found.case, found.car
    patch_mm = car.front.now.behaviour.patch_width_mm
    axles = {
        "front": axle_figures(car.front, case.candidate.front, patch_mm),
        "rear": axle_figures(car.rear, case.candidate.rear, patch_mm),
    }
    vehicle = vehicle_figures(car)
    add_driving(axles, vehicle, car, case.candidate)
    return {
        "verdict": found.verdict,
        "summary": found.summary,
        "label": case.candidate.label,
        "rule_pack": _rule_pack(found),
        "findings": list(map(finding, found.findings)),
        "finding_counts": _counts(found.findings),
        "axles": axles,
        "vehicle": vehicle,
        "trade_offs": list(map(trade_off, found.trade_offs)),
        "trade_offs_text": trade_offs_text(found.trade_offs),
        "actions": list(map(action, found.actions)),
        "assumptions": found.assumptions,
        "cautions": found.cautions,
    }


def _counts(findings: Sequence[Finding]) -> Json:
    return _NO_FINDINGS | Counter(OUTCOME_NAMES[each.outcome] for each in findings)


def _rule_pack(found: Assessment) -> Json:
    pack, law = found.case.pack, found.law
    return {
        "id": pack.id,
        "edition": pack.edition,
        "rules_held": law.held,
        "rules_applied": law.applied,
        "rules_met": law.met,
        "not_held": pack.not_held,
    }


def action(each: Action) -> Json:
    """Return one action as plain data."""
    numbers = {name: round(number, 2) for name, number in each.numbers.items()}
    return {"code": each.code, "text": each.text, "numbers": numbers, "findings": list(each.findings)}


def finding(each: Finding) -> Json:
    """Return one finding as plain data."""
    code, axle, outcome, message, measured, limit, unit, ground, remedy, already, holds = each
    shown: Json = {
        "code": code,
        "axle": axle,
        "outcome": OUTCOME_NAMES[outcome],
        "already": already,
        "message": message,
    }
    if outcome in (OPEN, NOT_ASSESSED):
        shown["decides"] = outcome == NOT_ASSESSED
    if holds is not None:
        shown["holds_within_tolerance"] = holds
    if measured is not None:
        shown["measured"] = to_hundredths(measured)
    if limit is not None:
        shown["limit"] = to_hundredths(limit)
    if unit is not None and (measured is not None or limit is not None):
        shown["unit"] = unit
    shown["basis"] = basis(ground)
    if remedy is not None:
        shown["remedy"] = _remedy(remedy)
    return shown


def trade_off(each: TradeOff) -> Json:
    """Return one gain or loss as plain data."""
    shown: Json = {"code": each.code, "axle": each.axle, "direction": each.direction}
    if each.value is not None:
        shown |= {"value": to_hundredths(each.value), "unit": each.unit}
    return shown | {"text": each.text, "basis": basis(each.basis)}


@lru_cache(maxsize=1024)
def basis(ground: Basis) -> orjson.Fragment:
    """Return what something rests on, ready to be sent: there are some dozens of grounds and as many findings."""
    kind, reference, status = ground
    return orjson.Fragment(orjson.dumps({"kind": kind, "reference": reference, "status": status}))


def _remedy(remedy: Remedy) -> Json:
    words, pointer, quantity, at_least, at_most, equals, unit = remedy
    shown: Json = {"text": words, "pointer": pointer, "quantity": quantity}
    if at_least is not None and at_least == at_most:
        shown["at_least"] = shown["at_most"] = round(at_least, 4)
        at_least = at_most = None
    if at_least is not None:
        shown["at_least"] = math.ceil(at_least * REMEDY_STEPS - LAST_BIT) / REMEDY_STEPS
    if at_most is not None:
        shown["at_most"] = math.floor(at_most * REMEDY_STEPS + LAST_BIT) / REMEDY_STEPS
    if equals is not None:
        shown["equals"] = equals
    if unit is not None:
        shown["unit"] = unit
    return shown
