"""The largest bodies that the contract admits are taken, a larger one is refused, and the README says the limits.

Largest means every field stated, texts as long as the contract lets them be, and every character of text and key
escaped (RFC 8259, section 7), beyond the basic plane as two.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from starlette.testclient import TestClient

from service.api.routers.fitments import CHECK_BODY_BYTES
from service.api.routers.many import COMPARE_BODY_BYTES, RIMS_BODY_BYTES, SEARCH_BODY_BYTES
from service.api.routers.planning import PLAN_BODY_BYTES
from service.api.routers.plotted_comparison import PLOT_BODY_BYTES
from service.api.schemas.comparison import MAX_CANDIDATES
from service.api.schemas.request import CheckRequest
from service.api.transport.protocol import MAX_FIELDS_BYTES
from tests.contract.document import app
from tests.support.cases import Json, saloon

README = Path(__file__).parents[2] / "README.md"
FACE = "\N{GRINNING FACE}"
WIDE_BLANK = "\N{IDEOGRAPHIC SPACE}"
TYRE: Json = {
    "size": "225/70R15C 112/110R 8PR ".ljust(100, "x"),
    "section_width_mm": 225.12345678901234,
    "aspect_ratio": 70.0,
    "rim_diameter_in": 15.0,
    "construction": "radial",
    "commercial": "C",
    "load_index": 112,
    "load_index_twin": 110,
    "speed_symbol": "R",
    "load_version": "standard",
    "ply_rating": 8,
    **dict.fromkeys(("tread_depth_mm", "mass_kg"), 10.123456789012345),
    "overall_diameter_mm": 720.1234567890123,
    "rolling_circumference_mm": 1934.1234567890123,
    "approved_rim_widths_in": {"min": 5.123456789012345, "max": 9.123456789012345},
    "reference_pressure_kpa": 290.12345678901234,
    "label": {"noise_db": 71.12345678901234, "rolling_resistance_class": "B", "wet_grip_class": "A"},
}
RIM: Json = {
    "size": "7JJ x 15 EH2+ ET-12.25".ljust(100, WIDE_BLANK),
    "width_in": 7.0,
    "diameter_in": 15.0,
    "flange": "JJ",
    "hump": "EH2+",
    "one_piece": True,
    "offset_mm": -12.25,
    "bolt_circle": "10x112.35".ljust(100, WIDE_BLANK),
    "centre_bore_mm": 66.61234567890123,
    "load_rating_kg": 690.1234567890123,
    "mass_kg": 11.123456789012345,
}
FITMENT: Json = {"tyre": TYRE, "rim": RIM, "pressure_kpa": 250.12345678901234}
CANDIDATE: Json = {"label": FACE * 80, "front": FITMENT, "rear": FITMENT}


def vehicle() -> Json:
    """Return a vehicle of which everything is stated."""
    made: Json = saloon()["vehicle"]
    made |= {"built": "2020-01-01", "seats_standing": False, "towing": False, "speed_limited_kmh": 90.12345678901234}
    made |= {"max_mass_kg": 2010.1234567890123, "wheelbase_mm": 2760.1234567890123}
    for axle in ("front", "rear"):
        made[axle] |= {"fitted": FITMENT, "wheels_per_side": 1, "track_mm": 1548.1234567890123}
        made[axle]["hub"]["bolt_circle"] = RIM["bolt_circle"]
    return made


def escaped(value: object) -> str:
    """Return JSON with every character of every text escaped."""
    if isinstance(value, dict):
        return "{" + ",".join(f"{escaped(name)}:{escaped(item)}" for name, item in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ",".join(map(escaped, value)) + "]"
    if isinstance(value, str):
        units = value.encode("utf-16-be").hex()
        return '"' + "".join(f"\\u{units[at : at + 4]}" for at in range(0, len(units), 4)) + '"'
    return json.dumps(value)


CHECK: Json = {
    "vehicle": vehicle(),
    "candidate": CANDIDATE,
    "rule_pack": "unece",
    "season": "summer",
    "date": "2026-01-01",
    "measure_first": True,
    "detail": "standard",
    "language": "nl",
    "units": "imperial",
    "tyre_tolerance": "standard",
}
COMPARISON: Json = {
    "vehicle": vehicle(),
    "candidates": [CANDIDATE | {"id": FACE * 100}] * MAX_CANDIDATES,
    "explain_first": 0,
    "detail": "standard",
    "language": "nl",
    "units": "imperial",
    "tyre_tolerance": "standard",
    "rule_pack": "unece",
    "season": "summer",
    "date": "2026-01-01",
}


@pytest.fixture(scope="module")
def client() -> TestClient:
    return TestClient(app())


def test_every_field_of_the_contract_is_stated_but_those_that_exclude_each_other():
    found = CheckRequest.model_validate(CHECK)
    assert set(CHECK) == set(type(found).model_fields)
    for part, stated in ((found.vehicle, CHECK["vehicle"]), (found.candidate.front.rim, RIM)):
        assert set(stated) == set(type(part).model_fields)
    # Sizes in inches and load ranges are of other tyres than this one.
    other = {"section_width_in", "overall_diameter_in", "load_range"}
    assert set(TYRE) | other == set(type(found.candidate.front.tyre).model_fields)


@pytest.mark.parametrize(
    ("route", "question", "limit"),
    [("check", CHECK, CHECK_BODY_BYTES), ("compare", COMPARISON, COMPARE_BODY_BYTES)],
)
def test_the_largest_body_that_the_contract_admits_is_taken(client, route, question, limit):
    body = escaped(question).encode()
    assert 0.7 * limit < len(body) < limit
    found = client.post(f"/v1/fitments/{route}", content=body, headers={"Content-Type": "application/json"})
    assert found.status_code == 200
    assert not found.json().get("refused")


@pytest.mark.parametrize(
    ("route", "limit"), [("check", CHECK_BODY_BYTES), ("compare", COMPARE_BODY_BYTES), ("search", SEARCH_BODY_BYTES)]
)
def test_a_larger_body_is_refused(client, route, limit):
    path, kind = f"/v1/fitments/{route}", {"Content-Type": "application/json"}
    assert client.post(path, content=b" " * (limit + 1), headers=kind).status_code == 413


def test_the_readme_says_the_limits():
    said = " ".join(README.read_text("utf-8").split())
    for bytes_, what in (
        (CHECK_BODY_BYTES, "for a check"),
        (COMPARE_BODY_BYTES, "for a comparison"),
        (SEARCH_BODY_BYTES, "for a search"),
        (RIMS_BODY_BYTES, "for rims"),
        (PLAN_BODY_BYTES, "for a plan"),
        (PLOT_BODY_BYTES, "for a plot"),
    ):
        size = f"{bytes_ // 2**20} MiB" if bytes_ % 2**20 == 0 else f"{bytes_ // 2**10} KiB"
        assert f"{size} {what}" in said
    assert f"heads of {MAX_FIELDS_BYTES // 2**10} KiB" in said
    assert MAX_FIELDS_BYTES % 2**10 == 0
