"""The law of each place as `tests/reference/data/places` prints it, and what a pack holds in the same words."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

from service.core.findings import Basis
from service.rules.pack import RulePack
from service.rules.provenance import Provenance
from service.rules.rule import Applies, Rule
from service.rules.sections import Allowance, SpeedometerRule

PRINTED = Path(__file__).parents[1] / "reference" / "data" / "places"


class Held(NamedTuple):
    """A line: what, its limit, for whom, and the document with how far it was read and the day it was compared."""

    what: str
    limit: str
    whom: str
    document: str
    article: str
    status: str
    checked: str


def printed(place: str) -> list[Held]:
    """Return the lines of a place as they were copied by hand."""
    with (PRINTED / f"{place}.csv").open(encoding="utf-8", newline="") as file:
        _, *lines = csv.reader(file, delimiter="|")
    return [Held(*line) for line in lines]


def held(pack: RulePack) -> Iterator[Held]:
    """Yield what a pack holds beside its limits."""
    for rule in (each for each in pack.rules if each.pack == pack.id):
        bounds = [f"{each.quantity} {each.comparison} {each.value:g} {each.unit}" for each in rule.bounds]
        yield Held(rule.code, " or ".join(bounds), _whom(rule.applies, *_of_rule(rule)), *_origin(rule))
    for number, rule in enumerate((each for each in pack.speedometers if each.pack == pack.id), start=1):
        yield Held(f"speedometer {number}", _band(rule), _whom(rule.applies, *_dates(rule)), *_origin(rule))
        yield Held(f"test speeds {number}", _test_speeds(rule), "all", *_origin_told(rule.test_speeds_basis))
    for relief in (each for each in pack.allowances if each.pack == pack.id):
        limit = f"{relief.kind} {relief.value:g} {relief.unit}"
        yield Held(relief.code, limit, _whom(relief.applies, *_of_relief(relief)), *_origin(relief))


def held_on_winter(pack: RulePack) -> Iterator[Held]:
    """Yield what a pack, or the one it builds on, holds on winter tyres."""
    label = "label in the driver's view" if pack.winter.label_required else "no label"
    yield Held("winter", label, "all", *_origin(pack.winter))
    for each in pack.winter.markings:
        words = [f"tyres to {each.built_to}"] * bool(each.built_to) + [f"used to {each.used_to}"] * bool(each.used_to)
        yield Held(f"winter {each.marking}", "counts", ", ".join(words) or "all", *_origin(each))


def held_limit(pack: RulePack, name: str) -> Held:
    """Return a limit that is in force in a place."""
    limit = getattr(pack.limits, name)
    return Held(f"limit {name}", f"{limit.value:g} {limit.unit}", "all", *_origin(limit))


def _origin(given: Provenance) -> tuple[str, str, str, str]:
    return given.source, given.article, given.status, given.checked or ""


def _origin_told(basis: Basis) -> tuple[str, str, str, str]:
    checked = re.search(r"checked (\d{4}-\d\d-\d\d)$", basis.reference)
    return basis.source, basis.place, basis.status, checked[1] if checked else ""


def _whom(applies: Applies, *more: str) -> str:
    words = [" ".join(applies.categories)] if applies.categories else []
    words += [] if applies.axle == "any" else [applies.axle]
    words += [] if applies.driven is None else ["driven" if applies.driven else "not driven"]
    words += [] if applies.over_mass_kg is None else [f">{applies.over_mass_kg:g} kg"]
    words += [] if applies.max_mass_kg is None else [f"<={applies.max_mass_kg:g} kg"]
    words += [] if applies.built_from is None else [f"from {applies.built_from}"]
    words += [] if applies.built_to is None else [f"to {applies.built_to}"]
    return ", ".join([*words, *more]) or "all"


def _dates(rule: Rule | SpeedometerRule) -> list[str]:
    return [f"law {word} {day}" for word, day in (("from", rule.valid_from), ("to", rule.valid_to)) if day]


def _of_rule(rule: Rule) -> list[str]:
    divided = [] if rule.divisor == 1.0 else [f"divided by {rule.divisor:g}"]
    return [*divided, *(["stand-in"] if rule.stand_in else []), *_dates(rule)]


def _of_relief(relief: Allowance) -> list[str]:
    standing = {None: [], True: ["standing"], False: ["no standing"]}[relief.seats_standing]
    limited = relief.speed_limited_kmh
    return [*standing, *([] if limited is None else [f"limited to {limited:g} km/h"])]


def _edge(gain: float, constant_kmh: float) -> str:
    return f"{gain:g} V2 {'-' if constant_kmh < 0 else '+'} {abs(constant_kmh):g}"


def _band(rule: SpeedometerRule) -> str:
    least = f"{rule.kind}: {_edge(rule.least_gain, rule.least_constant_kmh)} <= V1"
    return least if rule.most_gain is None else f"{least} <= {_edge(rule.most_gain, rule.most_constant_kmh)} km/h"


def _test_speeds(rule: SpeedometerRule) -> str:
    rows = []
    for row in rule.test_speeds:
        share = [] if row.share_of_max is None else [f"{row.share_of_max:g}max"]
        rows.append(" ".join([f">{row.above_kmh:g}", *(f"{speed:g}" for speed in row.speeds_kmh), *share]))
    return f"{rule.test_speed_is}: {', '.join(rows)}"
