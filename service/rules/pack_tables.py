"""The tables of a pack as a file writes them, brought into the shape of the classes that they become."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, NamedTuple

from pydantic import AfterValidator, ConfigDict, TypeAdapter

from service.core.saying import Said
from service.rules.limits import Limits
from service.rules.provenance import Provenance
from service.rules.rule import Applies, Bound, Rule
from service.rules.sections import Allowance, SpeedometerRule, WinterRule
from service.rules.written import Table, fault, filled, gathered, keys_of, known, shaped

# What is said of a vehicle as a whole is said of no axle.
_OF_THE_VEHICLE = tuple(key for key in keys_of(Applies) if key not in ("axle", "driven"))


class Setting(NamedTuple):
    """Where a table is read: the pack's id, its place, the limits in force there, the speedometer rules it inherits."""

    pack: str
    place: Said
    limits: Limits
    speedometers: tuple[SpeedometerRule, ...]


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class TestSpeedsProvenance(Provenance):
    """Where the test speeds of a speedometer rule come from; the keys say whose they are."""

    __pydantic_config__ = ConfigDict(extra="forbid", alias_generator=lambda key: f"test_speeds_{key}")


_TEST_SPEEDS_PROVENANCE = TypeAdapter(TestSpeedsProvenance)
_TEST_SPEEDS_KEYS = tuple(f"test_speeds_{key}" for key in keys_of(Provenance) if key != "note")


def _rule(table: Table, setting: Setting) -> Table:
    if "any_of" not in table:
        table = gathered(table, "any_of", keys_of(Bound))
        table["any_of"] = [table["any_of"]]
    elif isinstance(table["any_of"], list) and len(table["any_of"]) <= 1:
        raise fault("{key} needs two bounds or more", "any_of")
    return filled(gathered(table, "applies", keys_of(Applies)), pack=setting.pack, place=setting.place)


def _speedometer(table: Table, setting: Setting) -> Table:
    if "unit" not in table:
        raise fault("{key} is missing", "unit")
    known(str(table["unit"]), ("km/h",), "unit")
    table = {key: value for key, value in table.items() if key != "unit"}
    table = _with_test_speeds(_with_band(table, setting.limits), setting.speedometers)
    return filled(gathered(table, "applies", _OF_THE_VEHICLE), pack=setting.pack)


def _with_band(table: Table, limits: Limits) -> Table:
    """Return the table with both edges: those of UN R39, which advises where there is no rule, come from the limits."""
    if table.get("kind") == "r39":
        gain, constant_kmh = limits.speedometer_gain.value, limits.speedometer_constant_kmh.value
        lower = filled(table, least_gain=1.0, least_constant_kmh=0.0)
        return filled(lower, most_gain=1.0 + gain, most_constant_kmh=constant_kmh)
    return table if "most_gain" in table else filled(table, most_gain=None, most_constant_kmh=0.0)


def _with_test_speeds(table: Table, inherited: tuple[SpeedometerRule, ...]) -> Table:
    """Return the table with its own test speeds, or with the first inherited ones."""
    if "test_speeds" in table:
        # A day that is not given is a fault too, and of this key.
        given = {"test_speeds_checked": None, **{key: table[key] for key in _TEST_SPEEDS_KEYS if key in table}}
        rest = {key: value for key, value in table.items() if key not in given}
        return filled(rest, test_speeds_basis=_TEST_SPEEDS_PROVENANCE.validate_python(given).basis)
    if not inherited:
        raise fault("{key} is missing and none are inherited", "test_speeds")
    first = inherited[0]
    return filled(table, test_speeds=first.test_speeds, test_speeds_basis=first.test_speeds_basis)


def _winter(table: Table, setting: Setting) -> Table:
    # The floor that the file itself writes has been read with the limits.
    return table | {"speed_floor": setting.limits.winter_speed_floor_kmh}


def _allowance(table: Table, setting: Setting) -> Table:
    return filled(gathered(table, "applies", _OF_THE_VEHICLE), pack=setting.pack)


def _no_code_twice(rules: tuple[Rule, ...]) -> tuple[Rule, ...]:
    codes = [rule.code for rule in rules]
    for position, code in enumerate(codes):
        if code in codes[:position]:
            raise fault(f"the {{key}} {code} repeats", position, "code")
    return rules


RuleTables = Annotated[tuple[Annotated[Rule, shaped(_rule)], ...], AfterValidator(_no_code_twice)]
SpeedometerTables = tuple[Annotated[SpeedometerRule, shaped(_speedometer)], ...]
WinterTable = Annotated[WinterRule, shaped(_winter)]
AllowanceTables = tuple[Annotated[Allowance, shaped(_allowance)], ...]
