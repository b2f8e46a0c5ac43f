"""A field is in the unit that its name ends in, and says so; places and counts begin at nought.

That names end in units is the project's rule; the symbols are those of the SI brochure and the trade.
"""

from __future__ import annotations

import pytest

from tests.contract.document import fields, resolve

UNITS = {
    "_mm": "mm",
    "_percent": "%",
    "_kg": "kg",
    "_kpa": "kPa",
    "_kmh": "km/h",
    "_points": "points",
    "_deg_per_g": "deg/g",
    "_n_per_deg": "N/deg",
    "_kg_m2": "kg m2",
    "_cm2": "cm2",
    "_per_km": "1/km",
    "_db": "dB",
    "aspect_ratio": "%",
}
FIELDS = [(name, member) for name, member in fields() if "x-unit" in member]


def unit_of(name: str) -> str | None:
    return next((unit for ending, unit in UNITS.items() if name.endswith(ending)), None)


def test_there_are_many_numbers():
    assert len(FIELDS) > 150


@pytest.mark.parametrize(("name", "member"), FIELDS, ids=[name for name, _ in FIELDS])
def test_a_number_is_in_the_unit_of_its_name(name, member):
    unit = member["x-unit"]
    expected = unit_of(name)
    if expected is not None:
        assert unit == expected
    else:
        # No unit of measure belongs to a name without one, but inches of a rim's width or diameter.
        assert unit not in set(UNITS.values()) - {"mm", "kPa"}
        if unit in ("mm", "kPa"):
            # Two ends or two axles of a quantity, whose unit the name of the whole has.
            assert name.rsplit(".", 1)[1] in ("least", "most", "at_least", "at_most", "front", "rear")
    assert unit == "1" or f"[{unit}]" in member["description"]


def test_a_width_or_diameter_in_inches_says_so():
    inches = {name.rsplit(".", 1)[1] for name, member in FIELDS if member["x-unit"] == "in"}
    assert {name for name in inches if not name.endswith("_in")} <= {"min", "max", "rim_code", "diameter_code"}
    # The code of a rim's diameter is a number that is marked, and no length that anybody measures.
    others = {name.rsplit(".", 1)[1] for name, member in FIELDS if member["x-unit"] != "in"}
    assert {name for name in others if name.endswith("_in")} <= {"diameter_in", "rim_diameter_in", "min_diameter_in"}


WHOLE = {name: resolve(member) for name, member in fields() if resolve(member).get("type") == "integer"}
# Where there is none of it, it is not told; a result, a wheel on each side and a rank there is at least.
FROM_ONE = {
    *("Axle.wheels_per_side", "RefusedCandidate.error_count", "Removed.count", "SearchRequest.max_results"),
    *("ComparedRow.rank", "FoundRow.rank"),
}
ITEMS = {name: resolve(member)["maxItems"] for name, member in fields() if "maxItems" in resolve(member)}


def test_places_and_counts_begin_at_nought():
    others = {"Problem.status", "Tyre.ply_rating", "StockLine.ply_rating"}
    begins = {name: member["minimum"] for name, member in WHOLE.items() if name not in others}
    assert begins == {name: 1 if name in FROM_ONE else 0 for name in begins}


def test_a_load_index_is_one_of_the_table():
    """Load indices run from 0 to 279 (ISO 4000-1 and ETRTO, from memory)."""
    found = {name: member for name, member in WHOLE.items() if "load_index" in name}
    assert len(found) >= 8
    assert {(each["minimum"], each["maximum"]) for each in found.values()} == {(0, 279)}


@pytest.mark.parametrize(
    ("request_list", "most", "places"),
    # As many as the contract says: five hundred candidates, five thousand sizes of a stock, twelve combinations.
    [
        ("CompareRequest.candidates", 500, ("ComparedRow.index", "RefusedCandidate.index")),
        ("PlanRequest.combinations", 12, ("PlanCombination.index", "PlanPair.first", "PlanPair.second")),
        ("SearchRequest.stock", 5000, ("FoundAxle.stock_index",)),
    ],
)
def test_a_place_is_one_of_as_many_as_may_be_asked(request_list, most, places):
    assert ITEMS[request_list] == most
    assert {WHOLE[name]["maximum"] for name in places} == {most - 1}


@pytest.mark.parametrize(
    ("name", "most"),
    [
        *((f"Comparison.{name}", 500) for name in ("compared", "refused_count", "left_out")),
        *((name, 500) for name in ("ComparedRow.rank", "CompareRequest.explain_first")),
        ("PlanMeasurement.combinations", 12),
        # Each of twelve against the present wheels, and against each other: 12 + 12 x 11 / 2.
        ("PlanRepeats.pairs_apart", 78),
        ("SearchResult.refused_count", 5000),
        ("Axle.wheels_per_side", 2),
    ],
)
def test_a_count_is_no_more_than_may_be_asked(name, most):
    assert WHOLE[name]["maximum"] == most


def test_an_example_of_a_number_lies_within_its_limits():
    wrong = [
        name
        for name, member in FIELDS
        for example in member.get("examples", ())
        if not member.get("minimum", example) <= example <= member.get("maximum", example)
    ]
    assert wrong == []
