"""Designations, tables and rule packs as plain data; a part that is not there is left out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from service.api.render.findings_answer import in_full
from service.api.render.numbers import Json, to_hundredths
from service.core.findings import Basis
from service.core.sources import basis as basis_of
from service.designation.rim import RimDesignation
from service.designation.tyre import TyreDesignation
from service.rules.limits import LIMIT_NAMES, Limit
from service.rules.pack import RulePack
from service.rules.rule import Rule
from service.standards.catalogue import Table


def plain(value: object) -> Any:  # noqa: ANN401 - any value of the domain becomes any value of JSON
    """Return records as objects, what is None or empty left out."""
    if isinstance(value, Basis):
        return in_full(value)
    if hasattr(value, "_asdict"):
        return _members(value._asdict())
    if is_dataclass(value):
        return _members({field.name: getattr(value, field.name) for field in fields(value)})
    if isinstance(value, (tuple, list)):
        return [plain(each) for each in value]
    return value


def _members(values: Mapping[str, object]) -> Json:
    # `source` is a key of our own; the basis beside it names the document.
    return {
        name: plain(value) for name, value in values.items() if value is not None and value != "" and name != "source"
    }


def table(found: Table) -> Json:
    """Return a printed table."""
    names = [column.name for column in found.columns]
    return {
        "name": found.name,
        "title": found.title,
        "source": basis_of(found.source).reference,
        "status": found.status,
        "edition": found.edition,
        "note": found.note,
        "interpolate": found.interpolate,
        "columns": [column._asdict() for column in found.columns],
        "rows": [{name: cell for name, cell in zip(names, row, strict=True) if cell is not None} for row in found.rows],
    }


def designation(found: TyreDesignation | RimDesignation) -> Json:
    """Return a designation taken apart."""
    parts: Json = plain(found)
    if isinstance(found, TyreDesignation):
        parts["structure_assumed"] = found.structure_assumed
        # A width in inches makes 177.79999999999998 mm of 7.00.
        parts["section_width_mm"] = to_hundredths(found.section_width_mm)
    return parts


def rule_packs(packs: Mapping[str, RulePack]) -> Json:
    """Return the list of packs."""
    return {
        "rule_packs": [
            {
                "id": pack.id,
                "title": pack.title,
                "edition": pack.edition,
                "inherits": list(pack.inherits),
                "rule_count": pack.rule_count,
            }
            for pack in packs.values()
        ]
    }


def rule_pack(pack: RulePack) -> Json:
    """Return a pack, whole."""
    shown: Json = {
        "id": pack.id,
        "title": pack.title,
        "edition": pack.edition,
        "inherits": list(pack.inherits),
        "notes": list(pack.notes),
        "not_held": list(pack.not_held),
        "rules": [_rule(rule) for rule in pack.rules],
        "limits": [_limit(name, getattr(pack.limits, name)) for name in LIMIT_NAMES],
        "speedometer": plain(pack.speedometers),
        "allowances": plain(pack.allowances),
    }
    if pack.winter is not None:
        floor = _limit("winter.speed_floor", pack.winter.speed_floor)
        shown["winter"] = plain(pack.winter) | {"speed_floor": floor}
    return shown


def _rule(rule: Rule) -> Json:
    shown: Json = plain(rule)
    for hidden in ("divisor", "stand_in", "place"):
        shown.pop(hidden, None)
    return shown | {"can_forbid": rule.can_forbid}


def _limit(name: str, limit: Limit) -> Json:
    shown = {"name": name, "value": limit.value, "unit": limit.unit, "basis": in_full(limit.basis)}
    return shown | ({"note": limit.note} if limit.note else {})
