"""Each field that a caller has to look for says where its number stands.

Reference: Council Directive 1999/37/EC, Annex I, from memory: B first registration, F.1 permissible mass, J category,
M wheelbase, N masses on axles, S.2 standing places, T maximum speed.
"""

from __future__ import annotations

import re

import pytest

from service.api.contract.places import PLACES
from tests.contract.document import document

CODES = {
    "B": "Vehicle.built",
    "F.1": "Vehicle.max_mass_kg",
    "J": "Vehicle.category",
    "M": "Vehicle.wheelbase_mm",
    "N": "Axle.max_axle_mass_kg",
    "S.2": "Vehicle.seats_standing",
    "T": "Vehicle.max_speed_kmh",
}
# What holds other parts, or is worded whole where it stands.
WORDED = {"front", "rear", "fitted", "tyre", "rim", "hub", "clearance", "speedometer", "tolerance_percent", "label"}


def described(name: str) -> str:
    model, field = name.split(".")
    text: str = document()["components"]["schemas"][model]["properties"][field]["description"]
    return text


@pytest.mark.parametrize(("code", "name"), CODES.items())
def test_what_the_registration_certificate_holds_is_told_by_its_code(code, name):
    assert re.search(rf"\bcode {re.escape(code)}\b", described(name), re.IGNORECASE)


@pytest.mark.parametrize(
    ("name", "place"),
    [
        ("Axle.max_axle_mass_kg", "plate on the door pillar"),
        ("Vehicle.max_speed_kmh", "certificate of conformity"),
        ("Tyre.size", "sidewall"),
        ("Rim.load_rating_kg", "back of the wheel"),
        ("Clearance.outboard_mm", "tape"),
        ("Clearance.radial_mm", "full lock"),
    ],
)
def test_what_stands_elsewhere_is_told_by_its_place(name, place):
    assert place in described(name)


@pytest.mark.parametrize("model", PLACES)
def test_no_field_of_a_vehicle_or_its_wheels_is_forgotten(model):
    members = set(document()["components"]["schemas"][model]["properties"])
    assert members - set(PLACES[model]) <= WORDED
