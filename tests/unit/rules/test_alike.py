"""Vehicles between the same steps of a pack have the same rules; just beyond a step they may not."""

from itertools import pairwise

import pytest

from service.rules.alike import steps
from service.rules.pack import VehicleFacts, asked, speedometer_asked
from service.rules.reader import default_packs
from service.rules.rule import CATEGORIES

PACKS = default_packs()


def _between(bounds: tuple[float, ...]) -> list[tuple[float, float]]:
    """Return for each interval two values in it: just above its lower bound, and its upper one."""
    ends = (0.0, *bounds, 9e9)
    return [(low + 1e-6 * max(low, 1.0), high) for low, high in pairwise(ends)]


def _rules(pack, mass, built, category):
    found = [
        asked(pack, VehicleFacts(category, driven, mass, built), where, pack.edition_date)
        for where in ("front", "rear", "vehicle")
        for driven in (True, False, None)
    ]
    return [*found, speedometer_asked(pack, VehicleFacts(category, None, mass, built), pack.edition_date)]


@pytest.mark.parametrize("name", PACKS)
def test_between_two_masses_the_rules_are_the_same(name):
    pack = PACKS[name]
    for low, high in _between(steps(pack).masses_kg):
        for category in CATEGORIES:
            assert _rules(pack, low, None, category) == _rules(pack, high, None, category)


@pytest.mark.parametrize("name", PACKS)
def test_between_two_days_the_rules_are_the_same(name):
    pack = PACKS[name]
    found = steps(pack)
    # The day before a first day and the day after a last one are the nearest that may differ.
    days = sorted({*found.built_from, *(f"{day}T" for day in found.built_to)})
    for first, after in pairwise(("1900-01-01", *days, "2099-12-31")):
        middle = f"{first}0"
        if middle < after:
            for category in CATEGORIES:
                assert _rules(pack, None, first, category) == _rules(pack, None, middle, category)


def test_a_step_that_a_rule_has_is_a_step():
    pack = PACKS["unece"]
    masses = {each.applies.over_mass_kg for each in pack.rules} | {each.applies.max_mass_kg for each in pack.rules}
    assert set(steps(pack).masses_kg) >= masses - {None}
