"""The rule packs, read from their files, checked, and with what they inherit added."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from service.core.errors import UnknownName
from service.rules.faults import PackError
from service.rules.limits import LIMIT_NAMES, SECTION_OF, Limit, Limits
from service.rules.pack import RulePack
from service.rules.rule import Applies, Rule
from service.rules.section_tables import read_allowances, read_speedometers, read_winter
from service.rules.sheet import Sheet, open_table, read_limits, read_sheet

__all__ = ["PackError", "default_packs", "load_packs", "pack_ids", "pack_named"]

_HERE = Path(__file__).parent
PACKS_DIRECTORY = _HERE / "packs"
COMMON_PRACTICE = _HERE / "common_practice.toml"


@cache
def default_packs() -> Mapping[str, RulePack]:
    """Return the packs that come with the service, by id; read once."""
    return load_packs()


def pack_ids() -> tuple[str, ...]:
    """Return the ids of the packs that come with the service, in alphabetical order."""
    return tuple(default_packs())


def pack_named(name: str, pointer: str = "/rule_pack") -> RulePack:
    """Return a pack that comes with the service.

    Raises
    ------
    UnknownName
        When there is none of this id.
    """
    packs = default_packs()
    if name not in packs:
        raise UnknownName("rule pack", tuple(packs), pointer)
    return packs[name]


def load_packs(directory: Path | None = None) -> Mapping[str, RulePack]:
    """Return every pack of a directory by id, each checked and with what it inherits.

    Raises
    ------
    PackError
        At the first fault, with file, line, rule and reason.
    """
    place = PACKS_DIRECTORY if directory is None else directory
    sheets = {sheet.id: sheet for sheet in map(read_sheet, sorted(place.glob("*.toml")))}
    if not sheets:
        raise PackError(str(place), 1, "directory", "there is no pack: no file ends in .toml")
    practice = open_table(COMMON_PRACTICE)
    common = read_limits(practice)
    practice.done()
    packs: dict[str, RulePack] = {}
    for name in sheets:
        _resolve(name, sheets, packs, common, ())
    return MappingProxyType({name: packs[name] for name in sheets})


def _resolve(
    name: str,
    sheets: Mapping[str, Sheet],
    packs: dict[str, RulePack],
    common: Mapping[str, Limit],
    path: tuple[str, ...],
) -> RulePack:
    """Put a pack and all that it builds on into `packs`, those first, and return it."""
    if name in packs:
        return packs[name]
    sheet = sheets[name]
    for parent in sheet.inherits:
        if parent not in sheets:
            sheet.top.fault("inherits", f"inherits the unknown pack {parent[:60]!r}; known: {', '.join(sheets)}")
        if parent == name or parent in path:
            sheet.top.fault("inherits", f"inherits in a circle: {' -> '.join((*path, name, parent))}")
    parents = [_resolve(parent, sheets, packs, common, (*path, name)) for parent in sheet.inherits]
    packs[name] = _assemble(sheet, parents, common)
    return packs[name]


def _assemble(sheet: Sheet, parents: list[RulePack], common: Mapping[str, Limit]) -> RulePack:
    limits = _limits(sheet, parents, common)
    # Two parents may have the same grandparent; its rules come once.
    inherited = tuple(dict.fromkeys(rule for parent in parents for rule in parent.speedometers))
    reliefs = tuple(dict.fromkeys(item for parent in parents for item in parent.allowances))
    pack = RulePack(
        id=sheet.id,
        title=sheet.title,
        edition=sheet.edition,
        inherits=sheet.inherits,
        limits=limits,
        rules=_rules(sheet, parents),
        speedometers=read_speedometers(sheet.top, sheet.id, limits, inherited),
        winter=read_winter(sheet.top, limits, next((parent.winter for parent in parents if parent.winter), None)),
        allowances=reliefs + read_allowances(sheet.top, sheet.id),
        notes=sheet.notes,
    )
    last = pack.speedometers[-1]
    if last.applies != Applies() or last.valid_from or last.valid_to:
        sheet.top.fault("speedometer", "the last speedometer rule must apply to every vehicle at every date")
    sheet.top.done()
    return pack


def _limits(sheet: Sheet, parents: list[RulePack], common: Mapping[str, Limit]) -> Limits:
    merged: dict[str, Limit] = dict(common)
    # The first pack named in `inherits` has the last word among them.
    for parent in reversed(parents):
        merged |= {name: getattr(parent.limits, name) for name in LIMIT_NAMES}
    merged |= sheet.limits
    lacking = [name for name in LIMIT_NAMES if name not in merged]
    if lacking:
        where = ".".join(SECTION_OF.get(lacking[0], ("limits", lacking[0])))
        sheet.top.fault("inherits", f"[{where}] is missing: a pack that inherits nothing gives every limit itself")
    return Limits(**merged)


def _rules(sheet: Sheet, parents: list[RulePack]) -> tuple[Rule, ...]:
    """Return own rules in place of inherited ones of the same code, the inherited order first."""
    merged: dict[str, Rule] = {}
    for parent in parents:
        for rule in parent.rules:
            merged.setdefault(rule.code, rule)
    for code in sheet.drops:
        if code not in merged:
            sheet.top.fault("drops", f"drops {code[:60]!r}, which no inherited pack has")
        del merged[code]
    merged |= {rule.code: rule for rule in sheet.rules}
    return tuple(merged.values())
