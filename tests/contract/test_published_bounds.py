"""Bounds that are published are round, so that a client can plan for them; what is not round has its reason here.

That they are round is the project's rule, as in `core/ranges.py`. From outside: the design of the contract (500
candidates, 5,000 sizes of a stock, 12 combinations, five verdicts); from memory: load indices to 279 (ISO 4000-1), a
status of an error from 400 to 599 (RFC 9110, section 15), a day of ten signs (ISO 8601-1).
"""

from __future__ import annotations

import pytest

from tests.contract.document import fields, resolve
from tests.contract.test_examples_add_up import ASKED, FIGURES, SAID, SENTENCES

MEMBERS = {name: {**resolve(member), **member} for name, member in fields()}
BOUNDS = ("minimum", "maximum", "minLength", "maxLength", "minItems", "maxItems")
# From ten on a bound is a multiple of ten with two figures at most, but for these.
UNEVEN = {
    # Twelve combinations: both axles of each, tyres of one axle besides, both on both axles, every two of thirteen.
    "maxItems": {12: "combinations", 24: "12 + 12", 48: "24 + 24", 78: "12 + 12 x 11 / 2", 16: "rims of an axle"},
    "maxLength": {64: "a line of a stock"},
    "maximum": {
        279: "load index",
        599: "status",
        78: "12 + 12 x 11 / 2",
        12: "combinations",
        # Places from nought: of twelve combinations, sixteen rims, five hundred candidates, five thousand sizes.
        11: "place",
        15: "place",
        499: "place",
        4999: "place",
        24: "plies",
        25: "tread depth in mm",
    },
    "minimum": {15: "aspect ratio"},
}
# What has fewer than ten at most.
FEW = {
    # Both axles; as many things to gain as there are, seven; the verdicts of the contract, without `unsuitable`.
    **dict.fromkeys(("ComparedRow.changed", "FoundRow.changed"), 2),
    **{f"{row}.{name}": 7 for row in ("ComparedRow", "FoundRow") for name in ("gains", "losses")},
    "CompareRequest.verdicts": 5,
    "PlotRequest.verdicts": 5,
    "SearchRequest.verdicts": 4,
    # The worst five, the first five.
    "ComparedRow.findings": 5,
    "FoundRow.findings": 5,
    "RefusedCandidate.errors": 5,
    "WinterRule.markings": 5,
    "Assessment.measure_first": 8,
    "SpeedometerAnswer.readings": 8,
    # A letter; a letter, or A with a digit (UN R30 para. 2.29, from memory); for what is yet unknown two more.
    **{f"{model}.load_range": 1 for model in ("Tyre", "StockLine")},
    "TyreParts.load_range": 2,
    "TyreParts.speed_letter": 2,
    **{f"{model}.speed_symbol": 2 for model in ("Tyre", "StockLine", "TyreParts", "ServicePoint")},
    "AxleNeeds.speed_symbol": 4,
    "AxleNeeds.winter_speed_symbol": 4,
}
SHARES = {"PlanRequest.confidence", "PlanRequest.power", *(name for name in MEMBERS if name.startswith("Repeatab"))}


def is_round(bound: str, value: float) -> bool:
    size = abs(value)
    if size < 10:
        return size % 1 == 0
    return (size % 10 == 0 and float(f"{size:.2g}") == size) or value in UNEVEN.get(bound, {})


@pytest.mark.parametrize("bound", BOUNDS)
def test_a_bound_is_round(bound):
    found = {name: member[bound] for name, member in MEMBERS.items() if bound in member and name not in SHARES}
    assert found
    assert {name: value for name, value in found.items() if not is_round(bound, value)} == {}


def test_what_has_few_has_as_many_as_there_are():
    found = {
        name: member[bound]
        for name, member in MEMBERS.items()
        for bound in ("maxLength", "maxItems")
        if member.get(bound, 10) < 10
    }
    assert found == FEW


def test_a_list_or_a_text_that_is_sent_is_not_empty_and_a_day_has_ten_signs():
    least = {member[bound] for member in MEMBERS.values() for bound in ("minItems", "minLength") if bound in member}
    assert least == {1, len("2026-11-24")}


# Numbers that a sum or a sentence holds, and counts of a search, which are what was found.
HELD = {
    *ASKED,
    *FIGURES,
    *(name for _, name, _ in SENTENCES),
    *(f"{model}.{name}" for (model, _), (_, numbers) in SAID.items() for name in numbers),
    *("Removed.count", "Sieve.tried", "RimReason.measured"),
}
LONE = {
    name: member["examples"][0]
    for name, member in MEMBERS.items()
    if member.get("type") in ("number", "integer") and member.get("examples") and name not in HELD
}


@pytest.mark.parametrize("name", LONE)
def test_an_example_that_no_sum_holds_is_rounded(name):
    """Three figures and one decimal, two below one: nobody shall take it for more than an example."""
    value = LONE[name]
    assert value == float(f"{value:.3g}") == round(value, 1 if abs(value) >= 1 else 2)
