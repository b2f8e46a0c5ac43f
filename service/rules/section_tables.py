"""The sections of a pack as they are written: speedometer, winter tyres, reliefs."""

from __future__ import annotations

from typing import get_args

from service.core.findings import Basis
from service.rules.limits import Limits
from service.rules.provenance import basis_of
from service.rules.rule_table import read_applies
from service.rules.sections import (
    Allowance,
    AllowanceKind,
    SpeedometerKind,
    SpeedometerRule,
    TestSpeedIs,
    TestSpeeds,
    WinterMark,
    WinterMarking,
    WinterRule,
)
from service.rules.table import Table

KINDS: tuple[SpeedometerKind, ...] = get_args(SpeedometerKind)
TEST_SPEED_IS: tuple[TestSpeedIs, ...] = get_args(TestSpeedIs)
MARKS: tuple[WinterMark, ...] = get_args(WinterMark)
ALLOWANCES: tuple[AllowanceKind, ...] = get_args(AllowanceKind)
_ALLOWANCE_UNITS: dict[AllowanceKind, str] = {"axle_mass_percent": "%", "load_at_speed_kmh": "km/h"}


def read_speedometers(
    top: Table, pack: str, limits: Limits, inherited: tuple[SpeedometerRule, ...]
) -> tuple[SpeedometerRule, ...]:
    """Return the speedometer rules in force: the file's own, then the inherited ones for whom none of them speaks."""
    own = tuple(read_speedometer(table, pack, limits, inherited) for table in top.tables("speedometer"))
    rules = own + inherited
    if not rules:
        top.fault("speedometer", "[[speedometer]] is missing and none is inherited")
    return rules


def read_speedometer(
    table: Table, pack: str, limits: Limits, inherited: tuple[SpeedometerRule, ...]
) -> SpeedometerRule:
    """Return one speedometer rule; the band of kind `r39` comes from the limits, that of `band` from the table."""
    title = table.text("title")
    table.label = title
    kind = table.choice("kind", KINDS)
    table.choice("unit", ("km/h",))
    least_gain, least_constant, most_gain, most_constant = _band(table, kind, limits)
    test_speeds, test_basis = _test_speeds(table, inherited)
    given = table.provenance()
    applies = read_applies(table)
    if applies.axle != "any" or applies.driven is not None:
        table.fault("axle", "a speedometer rule speaks of the vehicle: no axle, no driven")
    valid_from, valid_to = table.window("valid_from", "valid_to")
    rule = SpeedometerRule(
        kind=kind,
        title=title,
        least_gain=least_gain,
        least_constant_kmh=least_constant,
        most_gain=most_gain,
        most_constant_kmh=most_constant,
        test_speed_is=table.choice("test_speed_is", TEST_SPEED_IS),
        test_speeds=test_speeds,
        test_speeds_basis=test_basis,
        applies=applies,
        article=given.article,
        source=given.source,
        status=given.status,
        checked=given.checked,
        basis=basis_of(given),
        pack=pack,
        valid_from=valid_from,
        valid_to=valid_to,
        note=given.note,
    )
    table.done()
    return rule


def _band(table: Table, kind: SpeedometerKind, limits: Limits) -> tuple[float, float, float | None, float]:
    if kind == "r39":
        return 1.0, 0.0, 1.0 + limits.speedometer_gain.value, limits.speedometer_constant_kmh.value
    least_gain = table.number("least_gain")
    if least_gain <= 0:
        table.fault("least_gain", "least_gain must lie above 0")
    most_gain = table.number_or_none("most_gain")
    if most_gain is not None and most_gain < least_gain:
        table.fault("most_gain", "most_gain must not lie below least_gain")
    most_constant = table.number("most_constant_kmh") if most_gain is not None else 0.0
    return least_gain, table.number("least_constant_kmh"), most_gain, most_constant


def _test_speeds(table: Table, inherited: tuple[SpeedometerRule, ...]) -> tuple[tuple[TestSpeeds, ...], Basis]:
    if not table.has("test_speeds"):
        if not inherited:
            table.fault("test_speeds", "test_speeds is missing and none are inherited")
        return inherited[0].test_speeds, inherited[0].test_speeds_basis
    rows: list[TestSpeeds] = []
    for row in table.tables("test_speeds", table.label):
        rows.append(TestSpeeds(row.number("above_kmh"), row.numbers("speeds_kmh"), row.number_or_none("share_of_max")))
        row.done()
    if rows != sorted(rows, key=lambda row: -row.above_kmh):
        table.fault("test_speeds", "test_speeds must begin with the fastest vehicles")
    return tuple(rows), basis_of(table.provenance("test_speeds_"))


def read_winter(top: Table, limits: Limits, inherited: WinterRule | None) -> WinterRule | None:
    """Return the winter-tyre rule in force: the file's own, else the inherited one."""
    table = top.table("winter")
    if table is None:
        return inherited
    table.raw("speed_floor")
    label = table.flag_or_none("label_required")
    if label is None:
        table.fault("label_required", "label_required is missing")
    given = table.provenance()
    markings = tuple(read_marking(marking) for marking in table.tables("markings"))
    if not markings:
        table.fault("markings", "[[winter.markings]] is missing: no marking would count")
    table.done()
    return WinterRule(
        label_required=label,
        markings=markings,
        speed_floor=limits.winter_speed_floor_kmh,
        article=given.article,
        source=given.source,
        status=given.status,
        checked=given.checked,
        basis=basis_of(given),
        note=given.note,
    )


def read_marking(table: Table) -> WinterMarking:
    """Return one winter marking from its table."""
    marking = table.choice("marking", MARKS)
    given = table.provenance()
    built_to, used_to = table.day("built_to"), table.day("used_to")
    table.done()
    return WinterMarking(
        marking=marking,
        built_to=built_to,
        used_to=used_to,
        article=given.article,
        source=given.source,
        status=given.status,
        checked=given.checked,
        basis=basis_of(given),
        note=given.note,
    )


def read_allowances(top: Table, pack: str) -> tuple[Allowance, ...]:
    """Return the reliefs that a file gives."""
    return tuple(read_allowance(table, pack) for table in top.tables("allowances"))


def read_allowance(table: Table, pack: str) -> Allowance:
    """Return one relief from its table."""
    code = table.text("code")
    table.label = code
    kind = table.choice("kind", ALLOWANCES)
    given = table.provenance()
    allowance = Allowance(
        code=code,
        title=table.text("title"),
        kind=kind,
        value=table.number("value"),
        unit=table.choice("unit", (_ALLOWANCE_UNITS[kind],)),
        applies=read_applies(table),
        seats_standing=table.flag_or_none("seats_standing"),
        speed_limited_kmh=table.number_or_none("speed_limited_kmh"),
        article=given.article,
        source=given.source,
        status=given.status,
        checked=given.checked,
        basis=basis_of(given),
        pack=pack,
        note=given.note,
    )
    table.done()
    return allowance
