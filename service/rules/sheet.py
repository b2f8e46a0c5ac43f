"""One pack file as it is written, before what it inherits is added."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Annotated, NamedTuple

from pydantic import AfterValidator, BeforeValidator, TypeAdapter, ValidationInfo

from service.rules.faults import PackFile
from service.rules.limits import LIMIT_NAMES, SECTION_LIMITS, SECTION_OF, Limit, unit_of
from service.rules.pack_tables import AllowanceTables, RuleTables, Setting, SpeedometerTables, WinterTable
from service.rules.written import CLOSED, Sentence, Sentences, Texts, fault, keys_of, known

_EDITION = re.compile(r"\d{4}-(0[1-9]|1[0-2])")
_LIMITS_BY_SECTION: Mapping[str, Mapping[str, str]] = {
    "limits": {name: name for name in LIMIT_NAMES if name not in SECTION_OF},
    "winter": {"speed_floor": "winter_speed_floor_kmh"},
    **SECTION_LIMITS,
}


def _by_limit_name(given: dict[str, Limit], info: ValidationInfo) -> dict[str, Limit]:
    names = _LIMITS_BY_SECTION[info.field_name or ""]
    for key, limit in given.items():
        if info.field_name == "limits" and key in SECTION_OF:
            raise fault(f"write this limit as [{'.'.join(SECTION_OF[key])}]", key)
        if key not in names:
            raise fault(f"unknown limit {key[:60]!r}; known: {', '.join(names)}", key)
        known(limit.unit, (unit_of(names[key]),), key, "unit")
    return {names[key]: limit for key, limit in given.items()}


def _floor_alone(winter: object) -> object:
    # The rest of the section is read when the limits are known.
    return {key: value for key, value in winter.items() if key == "speed_floor"} if isinstance(winter, dict) else {}


def _name_of_the_file(pack: str, info: ValidationInfo) -> str:
    if pack != info.context:
        raise fault(f"the {{key}} {pack[:60]!r} is not the file's name {info.context!r}")
    return pack


def _year_and_month(edition: str) -> str:
    if not _EDITION.fullmatch(edition):
        raise fault("{key} must be a year and month such as 2026-11")
    return edition


LimitTables = Annotated[dict[str, Limit], AfterValidator(_by_limit_name)]


@dataclass(frozen=True, slots=True, kw_only=True)
class GivenLimits:
    """The limits that a file gives, those under `limits` and those in the section of their subject."""

    __pydantic_config__ = CLOSED

    limits: LimitTables = field(default_factory=dict)
    winter: Annotated[LimitTables, BeforeValidator(_floor_alone)] = field(default_factory=dict)
    twin: LimitTables = field(default_factory=dict)
    trailer: LimitTables = field(default_factory=dict)
    towing: LimitTables = field(default_factory=dict)
    temporary_spare: LimitTables = field(default_factory=dict)

    @property
    def by_name(self) -> dict[str, Limit]:
        """Return the limits by their names; the section's word counts more than that under `limits`."""
        return self.limits | self.winter | self.twin | self.trailer | self.towing | self.temporary_spare


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading(GivenLimits):
    """What must be known of a pack before its rules are read: its name, what it builds on, and its limits."""

    id: Annotated[str, AfterValidator(_name_of_the_file)]
    title: Sentence
    edition: Annotated[str, AfterValidator(_year_and_month)]
    inherits: Texts
    place: Sentence | None = None
    drops: Texts = ()
    notes: Sentences = ()
    not_held: Sentences = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLaw:
    """The rules and sections that a file writes itself."""

    __pydantic_config__ = CLOSED

    rules: RuleTables = ()
    speedometer: SpeedometerTables = ()
    winter: WinterTable | None = None
    allowances: AllowanceTables = ()


_GIVEN_LIMITS, _HEADING, _OWN_LAW = TypeAdapter(GivenLimits), TypeAdapter(Heading), TypeAdapter(OwnLaw)


def read_limits(file: PackFile) -> dict[str, Limit]:
    """Return the limits of a file that has nothing else."""
    return file.read(_GIVEN_LIMITS, file.data).by_name


class Sheet(NamedTuple):
    """A pack of which the heading has been read and the rest is still to be."""

    file: PackFile
    heading: Heading

    def own_law(self, setting: Setting) -> OwnLaw:
        """Return the rules and sections that the file writes itself."""
        own = keys_of(OwnLaw)
        return self.file.read(_OWN_LAW, {key: value for key, value in self.file.data.items() if key in own}, setting)


def read_sheet(file: PackFile) -> Sheet:
    """Return a pack with its heading; a key that no pack has is refused here."""
    later = set(keys_of(OwnLaw)) - set(keys_of(Heading))
    data = {key: value for key, value in file.data.items() if key not in later}
    return Sheet(file, file.read(_HEADING, data, file.stem))
