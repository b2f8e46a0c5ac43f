"""Findings, remedies, trade-offs and lines of the job card as plain data; what they rest on, once each."""

from __future__ import annotations

import math
from collections.abc import Iterable
from functools import lru_cache

import orjson

from service.api.render.numbers import Json, to_hundredths
from service.api.render.parameters_answer import parameters
from service.assessment.answer.action import Action
from service.assessment.answer.trade_offs import TradeOff
from service.core.findings import ADVISORY, NOT_ASSESSED, OPEN, OUTCOME_NAMES, Basis, Finding, Remedy
from service.core.sources import SOURCES, UNREAD

# The ends of a remedy are rounded into its range, so that the number shown settles the finding.
REMEDY_STEPS = 1e4
LAST_BIT = 1e-6


def action(each: Action, *, whole: bool = True) -> Json:
    """Return one line of the job card as plain data; `whole` adds what fills its sentence."""
    numbers = {name: round(number, 2) for name, number in each.numbers.items()}
    shown = {**line(each), "numbers": numbers, "findings": list(each.findings)}
    return shown | parameters(each.text, whole=True) if whole else shown


def line(each: Action) -> Json:
    """Return what to do, without its numbers and the findings that it answers."""
    return {"code": each.code, "text": each.text}


def finding(each: Finding, *, whole: bool = True) -> Json:
    """Return one finding as plain data; `whole` adds its template and where in its source it stands."""
    measured, limit, unit = each.measured, each.limit, each.unit
    shown = head(each)
    shown["already"], shown["message"] = each.already, each.message
    shown |= parameters(each.message, whole=whole)
    if measured is not None:
        shown["measured"] = to_hundredths(measured)
    if limit is not None:
        shown["limit"] = to_hundredths(limit)
    if unit is not None and (measured is not None or limit is not None):
        shown["unit"] = unit
    shown["basis"] = placed(each.basis) if whole else basis(each.basis)
    if each.remedy is not None:
        shown["remedy"] = _remedy(each.remedy)
    return shown


def brief(each: Finding) -> Json:
    """Return one finding with its sentence, and with the words of its remedy where it holds the verdict."""
    shown = {**head(each), "already": each.already, "message": each.message}
    if each.remedy is None or each.outcome == ADVISORY:
        return shown
    return shown | {"remedy": {"text": each.remedy.text}}


def head(each: Finding) -> Json:
    """Return which question it is, where it was asked and how it came out."""
    shown: Json = {"code": each.code, "axle": each.axle, "outcome": OUTCOME_NAMES[each.outcome]}
    if each.outcome in (OPEN, NOT_ASSESSED):
        shown["decides"] = each.outcome == NOT_ASSESSED
    if each.holds_within_tolerance is not None:
        shown["holds_within_tolerance"] = each.holds_within_tolerance
    return shown


def trade_off(each: TradeOff) -> Json:
    """Return one gain or loss as plain data."""
    shown: Json = {"code": each.code, "axle": each.axle, "direction": each.direction}
    if each.value is not None:
        shown |= {"value": to_hundredths(each.value), "unit": each.unit}
    return shown | {"text": each.text, "basis": placed(each.basis)}


@lru_cache(maxsize=1024)
def basis(ground: Basis) -> orjson.Fragment:
    """Return what something rests on, ready to be sent: there are some dozens of grounds and as many findings."""
    return orjson.Fragment(orjson.dumps(_basis(ground)))


@lru_cache(maxsize=1024)
def placed(ground: Basis) -> orjson.Fragment:
    """Return the same with the place in the document."""
    return orjson.Fragment(orjson.dumps(_basis(ground) | ({"place": ground.place} if ground.place else {})))


@lru_cache(maxsize=1024)
def in_full(ground: Basis) -> orjson.Fragment:
    """Return the same with its reference in words, for an answer that has no list of sources."""
    place = {"place": ground.place} if ground.place else {}
    return orjson.Fragment(orjson.dumps(_basis(ground) | place | {"reference": ground.reference}))


def sources(grounds: Iterable[Basis]) -> Json:
    """Return the documents that these rest on, by key, in the order in which they are cited."""
    return {key: _source(key) for key in dict.fromkeys(each.source for each in grounds)}


def _basis(ground: Basis) -> Json:
    return {"kind": ground.kind, "source": ground.source, "status": ground.status}


def _source(key: str) -> Json:
    source = SOURCES[key]
    shown: Json = {"reference": source.title, "status": source.status}
    if source.edition:
        shown["edition"] = source.edition
    return shown if source.checked == UNREAD else shown | {"checked": source.checked}


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
