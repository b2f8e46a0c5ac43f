"""A contract that changes says so in its version.

Reference: Semantic Versioning 2.0.0, items 4, 7 and 8.
"""

import copy
import json
import re

import pytest

from tests.contract.compatibility import changes, least_version, version
from tests.contract.document import document
from tests.contract.http_wire import ROOT

OPENAPI = ROOT / "openapi"
RELEASED = json.loads((OPENAPI / "released.json").read_text(encoding="utf-8"))
CHANGELOG = (OPENAPI / "CHANGELOG.md").read_text(encoding="utf-8")


def found(change):
    """Return what a change of the document's schemas amounts to."""
    new = copy.deepcopy(document())
    change(new["components"]["schemas"])
    return list(changes(document(), new))


def test_a_changed_contract_has_a_higher_version():
    differences = list(changes(RELEASED, document()))
    least = least_version(version(RELEASED), differences)
    told = "\n".join(map(str, differences[:20]))
    assert version(document()) >= least, f"at least version {'.'.join(map(str, least))} is needed:\n{told}"


def test_the_changelog_tells_callers_of_this_version():
    assert re.search(rf"^## {re.escape(document()['info']['version'])}\b", CHANGELOG, re.MULTILINE)


def test_the_changelog_tells_callers_of_the_released_version():
    assert re.search(rf"^## {re.escape(RELEASED['info']['version'])}\b", CHANGELOG, re.MULTILINE)


def test_the_same_document_is_no_change():
    assert list(changes(document(), copy.deepcopy(document()))) == []


def test_better_words_are_no_change():
    def better(schemas):
        schemas["Tyre"]["description"] = "A tyre."
        schemas["Tyre"]["properties"]["size"]["description"] = "Its size."
        schemas["Tyre"]["properties"]["size"]["examples"] = ["205/55 R16 91V"]

    assert found(better) == []


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(lambda schemas: schemas["Tyre"]["properties"].pop("mass_kg"), id="a field is gone"),
        pytest.param(lambda schemas: schemas.pop("Clearance"), id="a model is gone"),
        pytest.param(
            lambda schemas: schemas["Fitment"]["required"].append("pressure_kpa"), id="a field is newly required"
        ),
        pytest.param(lambda schemas: schemas["Season"]["enum"].remove("winter"), id="a word is gone"),
        pytest.param(
            lambda schemas: schemas["Rim"]["properties"]["mass_kg"].update(maximum=20.0), id="a bound is tighter"
        ),
        pytest.param(
            lambda schemas: schemas["Rim"]["properties"]["mass_kg"].update({"x-unit": "lb"}), id="another unit"
        ),
        pytest.param(lambda schemas: schemas["Rim"]["properties"]["mass_kg"].update(type="string"), id="another type"),
        pytest.param(lambda schemas: schemas["Table"]["properties"].pop("title"), id="a field called title is gone"),
    ],
)
def test_what_callers_may_break_on_is_a_break(change):
    assert any(each.breaks for each in found(change))


@pytest.mark.parametrize(
    "change",
    [
        pytest.param(
            lambda schemas: schemas["Tyre"]["properties"].update(colour={"type": "string"}), id="a field is new"
        ),
        pytest.param(lambda schemas: schemas.update(Valve={"type": "object"}), id="a model is new"),
        pytest.param(lambda schemas: schemas["Season"]["enum"].append("spring"), id="a word is new"),
        pytest.param(
            lambda schemas: schemas["Rim"]["properties"]["mass_kg"].update(maximum=1e4), id="a bound is wider"
        ),
    ],
)
def test_what_is_only_more_is_an_addition(change):
    assert [each.breaks for each in found(change)] == [False]


@pytest.mark.parametrize(
    ("released", "change", "least"),
    [
        ((1, 4, 2), None, (1, 4, 2)),
        ((1, 4, 2), lambda schemas: schemas["Season"]["enum"].append("spring"), (1, 5, 0)),
        ((1, 4, 2), lambda schemas: schemas["Season"]["enum"].remove("winter"), (2, 0, 0)),
        ((0, 4, 2), lambda schemas: schemas["Season"]["enum"].append("spring"), (0, 4, 3)),
        ((0, 4, 2), lambda schemas: schemas["Season"]["enum"].remove("winter"), (0, 5, 0)),
    ],
)
def test_the_version_follows_from_the_change(released, change, least):
    assert least_version(released, found(change) if change else []) == least
