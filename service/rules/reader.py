"""The rule packs, read from their files, checked, and with what they inherit added."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from service.core.errors import UnknownName
from service.core.saying import Said, say
from service.rules.faults import PackError, PackFile
from service.rules.limits import LIMIT_NAMES, SECTION_OF, Limit, Limits
from service.rules.pack import RulePack
from service.rules.pack_tables import Setting
from service.rules.rule import Applies, Rule
from service.rules.sheet import Sheet, read_limits, read_sheet

__all__ = ["PackError", "default_packs", "load_packs", "pack_ids", "pack_named"]

_HERE = Path(__file__).parent
PACKS_DIRECTORY = _HERE / "packs"
COMMON_PRACTICE = _HERE / "common_practice.toml"
# The code by which a place drops the inherited rules on the speedometer.
SPEEDOMETER_CODE = "law.speedometer"


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
    sheets = {path.stem: read_sheet(PackFile(path)) for path in sorted(place.glob("*.toml"))}
    if not sheets:
        raise PackError(str(place), 1, "directory", "there is no pack: no file ends in .toml")
    common = read_limits(PackFile(COMMON_PRACTICE))
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
    file, heading = sheets[name]
    for parent in heading.inherits:
        if parent not in sheets:
            file.refuse(f"inherits the unknown pack {parent[:60]!r}; known: {', '.join(sheets)}", "inherits")
        if parent == name or parent in path:
            file.refuse(f"inherits in a circle: {' -> '.join((*path, name, parent))}", "inherits")
    parents = [_resolve(parent, sheets, packs, common, (*path, name)) for parent in heading.inherits]
    packs[name] = _assemble(sheets[name], parents, common)
    return packs[name]


def _assemble(sheet: Sheet, parents: list[RulePack], common: Mapping[str, Limit]) -> RulePack:
    """Return a pack: what it writes itself before, or in place of, what it inherits."""
    file, heading = sheet
    limits = _limits(sheet, parents, common)
    # Two parents may have the same grandparent; its rules come once.
    inherited = tuple(dict.fromkeys(rule for parent in parents for rule in parent.speedometers))
    dropped = SPEEDOMETER_CODE in heading.drops
    allowances = tuple(dict.fromkeys(item for parent in parents for item in parent.allowances))
    own = sheet.own_law(Setting(heading.id, _place(sheet), limits, inherited))
    pack = RulePack(
        id=heading.id,
        title=heading.title,
        edition=heading.edition,
        inherits=heading.inherits,
        limits=limits,
        rules=_rules(sheet, own.rules, parents),
        speedometers=own.speedometer + (() if dropped else inherited),
        winter=own.winter or next((parent.winter for parent in parents if parent.winter), None),
        allowances=allowances + own.allowances,
        notes=heading.notes,
        not_held=heading.not_held,
    )
    # A place may have no rule for some vehicles; but it has to say so, by dropping what it inherits.
    if not dropped and all(map(_has_one_for_all, parents)):
        if not pack.speedometers:
            file.refuse("[[speedometer]] is missing and none is inherited", "speedometer")
        if not _has_one_for_all(pack):
            file.refuse("the last speedometer rule must apply to every vehicle at every date", "speedometer")
    return pack


def _place(sheet: Sheet) -> Said:
    """Return where the pack's rules are law, with its preposition."""
    return sheet.heading.place or say("in {country}", country=sheet.heading.title)


def _has_one_for_all(pack: RulePack) -> bool:
    """Return whether every vehicle at every date has a speedometer rule."""
    last = pack.speedometers[-1] if pack.speedometers else None
    return last is not None and last.applies == Applies() and not last.valid_from and not last.valid_to


def _limits(sheet: Sheet, parents: list[RulePack], common: Mapping[str, Limit]) -> Limits:
    merged: dict[str, Limit] = dict(common)
    # The first pack named in `inherits` has the last word among them.
    for parent in reversed(parents):
        merged |= {name: getattr(parent.limits, name) for name in LIMIT_NAMES}
    merged |= sheet.heading.by_name
    lacking = [name for name in LIMIT_NAMES if name not in merged]
    if lacking:
        where = ".".join(SECTION_OF.get(lacking[0], ("limits", lacking[0])))
        reason = "a pack that inherits nothing gives every limit itself that common_practice.toml does not"
        sheet.file.refuse(f"[{where}] is missing: {reason}", "inherits")
    return Limits(**merged)


def _rules(sheet: Sheet, own: tuple[Rule, ...], parents: list[RulePack]) -> tuple[Rule, ...]:
    """Return own rules in place of inherited ones of the same code, the inherited order first."""
    merged: dict[str, Rule] = {}
    for parent in parents:
        for rule in parent.rules:
            merged.setdefault(rule.code, rule)
    for code in sheet.heading.drops:
        if code == SPEEDOMETER_CODE and any(parent.speedometers for parent in parents):
            continue
        if code not in merged:
            sheet.file.refuse(f"drops {code[:60]!r}, which no inherited pack has", "drops")
        del merged[code]
    return tuple((merged | {rule.code: rule for rule in own}).values())
