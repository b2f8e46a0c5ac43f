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


@pytest.mark.parametrize(
    ("name", "member"), [(name, each) for name, each in fields() if resolve(each).get("type") == "integer"]
)
def test_places_begin_at_nought_and_ranks_at_one(name, member):
    member = resolve(member)
    last = name.rsplit(".", 1)[1]
    if "from 0" in member.get("description", ""):
        assert member["minimum"] == 0
    if last == "rank":
        assert member["minimum"] == 1
    if "How many" in member.get("description", "") and "minimum" in member:
        assert member["minimum"] in (0, 1)


def test_an_example_of_a_number_lies_within_its_limits():
    wrong = [
        name
        for name, member in FIELDS
        for example in member.get("examples", ())
        if not member.get("minimum", example) <= example <= member.get("maximum", example)
    ]
    assert wrong == []
