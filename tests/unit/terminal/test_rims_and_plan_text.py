"""Rims and plans at the terminal where little is known or little goes: said in words, and nothing fails."""

from __future__ import annotations

import json
from typing import Any

import pytest

from service.ask import answer
from service.terminal.answers import shown
from tests.support.cases import ABSENT, changed, on_both_axles, saloon
from tests.support.plans import F255, F285, request

Json = dict[str, Any]
VEHICLE = saloon()["vehicle"]


def told(operation: str, question: Json) -> str:
    return shown(operation, answer(operation, json.dumps(question).encode()))


def rims(vehicle: Json = VEHICLE, **more: object) -> str:
    return told("rims", {"vehicle": vehicle, **more})


def row(printed: str, start: str) -> str:
    """Return the row of a table that begins so, with what goes on below it, in single spaces."""
    lines = printed.splitlines()
    first = next(at for at, line in enumerate(lines) if line.startswith(start))
    last = next(at for at in range(first + 1, len(lines) + 1) if lines[at][:1] != " ")
    return " ".join(" ".join(lines[first:last]).split())


def test_the_first_row_of_a_tyre_has_its_narrowest_rim_both_windows_and_what_bounds_them() -> None:
    found = answer("rims", json.dumps({"vehicle": VEHICLE}).encode())
    narrowest = found["axles"]["front"]["tyres"][0]["widths"][0]
    ends = [narrowest["best"]["offset_mm"]]
    ends += [narrowest[kind][end] for kind in ("suitable", "with_conditions") for end in ("from_mm", "to_mm")]
    best, *windows = (f"{each:g}" for each in ends)
    told_first = row(shown("rims", found), "225/45 R17 94W XL")
    assert told_first.startswith(
        "225/45 R17 94W XL {:g} {} {} to {} {} to {} ".format(narrowest["width_in"], best, *windows)
    )
    assert "room to the wing edge (front axle)" in told_first
    assert "room to the strut (front axle)" in told_first


def test_a_tyre_that_no_rim_serves_is_named_with_its_reason() -> None:
    # Load index 80 is 450 kg (ISO load index table): two tyres carry less than the 960 kg of the axle.
    printed = rims(tyres={"front": [{"size": "225/45 R17 80W"}]})
    assert "none" in row(printed, "225/45 R17 80W")
    assert "load capacity of the tyres" in row(printed, "225/45 R17 80W")
    assert "- 225/45 R17 80W at the front" in printed


def test_a_combination_without_rims_says_so() -> None:
    printed = rims(combinations=[{"label": "too weak", "front": {"size": "225/45 R17 80W"}}])
    assert row(printed, "too weak") == "too weak a tyre has no rim"


def test_a_tyre_whose_rim_widths_are_not_known_says_so() -> None:
    printed = rims(tyres={"rear": [{"size": "31x10.50 R15LT"}]})
    assert "31x10.50 R15LT" in printed


@pytest.mark.parametrize(
    "paths",
    [
        {"/vehicle/{axle}/fitted/rim/size": "7.5J x 17"},
        {"/vehicle/{axle}/clearance": ABSENT},
        {"/vehicle/{axle}/fitted/tyre/size": "31x10.50 R15LT"},
        {"/vehicle/{axle}/hub": ABSENT, "/vehicle/{axle}/min_rim_diameter_in": ABSENT},
    ],
)
def test_what_is_not_known_is_left_out(paths: dict[str, Any]) -> None:
    printed = rims(changed({"vehicle": VEHICLE}, on_both_axles(paths))["vehicle"])
    assert "Front axle\n==========\nIt asks for\n" in printed
    assert "None" not in printed.replace("None of the combinations", "")
    assert "nan" not in printed


@pytest.mark.parametrize("pair", [("155 R13", None), ("31x10.50 R15LT", "155 R13"), (None, None)])
def test_a_plan_of_which_nothing_can_be_driven_or_told(pair: tuple[str | None, str | None]) -> None:
    printed = told("plan", request(pair))
    assert printed.startswith("Combinations, rims and pressures\n")
    assert "combination 1" in printed
    assert "None" not in printed.replace("None of the combinations", "")
    assert "nan" not in printed


def test_a_plan_names_what_is_expected_of_each_combination() -> None:
    plan = request((F255, F285), (F255, None), (None, F285), (F255, F255))
    question = json.dumps(plan).encode()
    found = answer("plan", question)
    printed = shown("plan", found)
    for each in found["combinations"]:
        band = each["effects"]["braking_distance_percent"]
        assert f"{band['value']:g}".replace("-", "\N{MINUS SIGN}") in printed
