"""Which vehicles a pack treats alike: between two of its bounds a mass, a date or a speed makes no difference."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple, TypeVar

from service.rules.pack import RulePack
from service.rules.reader import default_packs
from service.rules.sections import SpeedometerRule

Step = TypeVar("Step", float, str)


class Steps(NamedTuple):
    """The numbers and days at which the answer to `does it apply?` may change, each in order and once."""

    masses_kg: tuple[float, ...]
    """Up to and including each of them it does not."""
    limited_kmh: tuple[float, ...]
    """The same of the speed to which a limiter holds the vehicle."""
    top_speeds_kmh: tuple[float, ...]
    """The same of the vehicle's own."""
    built_from: tuple[str, ...]
    """From each of these days on."""
    built_to: tuple[str, ...]
    """Up to and including each of these days."""


@lru_cache(maxsize=64)
def steps(pack: RulePack) -> Steps:
    """Return the steps of a pack and of UN R39, which is asked whatever the place."""
    speedometers: tuple[SpeedometerRule, ...] = (*pack.speedometers, default_packs()["unece"].speedometer)
    written = [each.applies for group in (pack.rules, speedometers, pack.allowances) for each in group]
    return Steps(
        masses_kg=_once(mass for each in written for mass in (each.over_mass_kg, each.max_mass_kg)),
        limited_kmh=_once(each.speed_limited_kmh for each in pack.allowances),
        top_speeds_kmh=_once(row.above_kmh for rule in speedometers for row in rule.test_speeds),
        built_from=_once(each.built_from for each in written),
        built_to=_once(each.built_to for each in written),
    )


def _once(values: Iterable[Step | None]) -> tuple[Step, ...]:
    return tuple(sorted({each for each in values if each is not None}))
