"""A place is added with one file: what it says comes out, what it does not say is inherited."""

import shutil

import pytest

from service.core.errors import UnknownName
from service.core.findings import ADVISORY
from service.rules.reader import PACKS_DIRECTORY, default_packs, load_packs, pack_ids, pack_named

ISLAND = """\
id = "island"
title = "An invented island"
edition = "2026-11"
inherits = ["nl"]

[limits.overall_diameter_met_percent]
value = 1.0
unit = "%"
article = "no source"
source = "COMMON-PRACTICE"
status = "memory"

[[rules]]
code = "law.track_change"
title = "Track"
message = "The track may be 10 mm wider."
quantity = "track_change_mm"
comparison = "at_most"
value = 10
unit = "mm"
article = "invented"
source = "COMMON-PRACTICE"
status = "memory"
"""


@pytest.fixture(scope="module")
def island(tmp_path_factory):
    place = tmp_path_factory.mktemp("packs") / "packs"
    shutil.copytree(PACKS_DIRECTORY, place)
    (place / "island.toml").write_text(ISLAND, encoding="utf-8")
    return load_packs(place)["island"]


def test_its_own_rule_replaces_the_inherited_one(island):
    track = next(rule for rule in island.rules if rule.code == "law.track_change")
    assert track.outcome(11.0) == ADVISORY


def test_rules_of_its_parent_and_of_its_grandparent_are_inherited(island):
    assert {rule.pack for rule in island.rules} == {"island", "nl", "unece"}


def test_its_own_limit_replaces_the_inherited_one(island):
    assert island.limits.overall_diameter_met_percent.value == 1.0


def test_a_limit_that_it_does_not_give_is_inherited(island):
    assert island.limits.load_share_trailer_single == default_packs()["nl"].limits.load_share_trailer_single


def test_reliefs_are_inherited(island):
    assert island.allowances == default_packs()["nl"].allowances


def test_a_pack_is_found_by_its_name():
    assert pack_named("nl").title == "Netherlands"


def test_an_unknown_pack_is_refused_with_the_known_ones():
    with pytest.raises(UnknownName, match=", ".join(pack_ids())):
        pack_named("mars")


def test_the_packs_come_in_alphabetical_order():
    assert list(pack_ids()) == sorted(pack_ids())
