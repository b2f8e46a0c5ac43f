"""Every bound of a field that may be sent, at its ends and a thousandth beyond.

The bounds are this project's own and part of the contract: what was let in yesterday is let in today. From outside,
from memory: load indices run from 0 to 279 (ISO 4000-1), a wheel is single or twin.
"""

from __future__ import annotations

from functools import cache

import pytest
from pydantic import ValidationError

from service.api.schemas.base import Wire
from service.api.schemas.comparison import CompareRequest
from service.api.schemas.planned import PlanRequest
from service.api.schemas.request import CheckRequest
from service.api.schemas.search import SearchRequest
from tests.support.cases import ABSENT, Json, changed, saloon
from tests.support.plans import request as plan

TYRE, RIM = "/candidate/front/tyre", "/candidate/rear/rim"
BOUNDS = {
    "/vehicle/max_speed_kmh": (10, 450),
    "/vehicle/wheelbase_mm": (500, 10000),
    "/vehicle/centre_of_gravity_height_mm": (100, 3000),
    "/vehicle/max_mass_kg": (100, 60000),
    "/vehicle/speed_limited_kmh": (10, 200),
    "/vehicle/speedometer/displayed_kmh": (10, 450),
    "/vehicle/speedometer/true_kmh": (10, 450),
    "/vehicle/speedometer/tolerance_percent": (0, 5),
    "/vehicle/front/max_axle_mass_kg": (50, 15000),
    "/vehicle/front/kerb_axle_mass_kg": (20, 15000),
    "/vehicle/front/track_mm": (500, 3000),
    "/vehicle/front/track_tolerance_mm": (0, 50),
    "/vehicle/front/wheels_per_side": (1, 2),
    "/vehicle/front/min_rim_diameter_in": (8, 30),
    "/vehicle/front/hub/centre_bore_mm": (20, 300),
    "/vehicle/front/clearance/inboard_mm": (0, 500),
    "/vehicle/front/clearance/outboard_mm": (0, 500),
    "/vehicle/front/clearance/radial_mm": (0, 500),
    "/vehicle/front/clearance/tolerance_mm": (0, 20),
    "/candidate/front/pressure_kpa": (50, 1000),
    "/candidate/front/spacer_mm": (0, 100),
    f"{TYRE}/tread_depth_mm": (0, 25),
    f"{TYRE}/overall_diameter_mm": (200, 1500),
    f"{TYRE}/section_width_mm": (50, 600),
    f"{TYRE}/rolling_circumference_mm": (600, 4800),
    f"{TYRE}/reference_pressure_kpa": (100, 1000),
    f"{TYRE}/mass_kg": (1, 200),
    f"{TYRE}/label/noise_db": (50, 90),
    f"{TYRE}/approved_rim_widths_in/min": (2, 20),
    f"{TYRE}/approved_rim_widths_in/max": (2, 20),
    f"{TYRE}/section_width_in": (3, 20),
    f"{TYRE}/overall_diameter_in": (20, 60),
    f"{TYRE}/aspect_ratio": (15, 100),
    f"{TYRE}/rim_diameter_in": (8, 30),
    f"{TYRE}/load_index": (0, 279),
    f"{TYRE}/load_index_twin": (0, 279),
    f"{TYRE}/ply_rating": (2, 24),
    f"{RIM}/width_in": (2, 20),
    f"{RIM}/diameter_in": (8, 30),
    f"{RIM}/offset_mm": (-200, 200),
    f"{RIM}/centre_bore_mm": (20, 300),
    f"{RIM}/load_rating_kg": (10, 8000),
    f"{RIM}/mass_kg": (1, 200),
}
BOUNDS_OF_A_SEARCH = {
    "/limits/overall_diameter_percent": (0, 10),
    "/limits/axle_ratio_percent": (0, 10),
    "/limits/balance_deg_per_g": (0, 10),
    "/limits/min_section_width_mm": (50, 600),
    "/limits/max_section_width_mm": (50, 600),
    "/limits/load_margin_percent": (0, 100),
    "/limits/room_mm": (0, 100),
    "/max_results": (1, 100),
    "/explain_first": (0, 100),
    "/stock/0/section_width_mm": (50, 600),
}
SCATTERS = (
    *("braking_distance_percent", "front_peak_grip_percent", "rear_peak_grip_percent", "balance_deg_per_g"),
    *("front_aquaplaning_onset_percent", "rear_aquaplaning_onset_percent", "wet_balance_points"),
    *("front_wet_reserve_points", "rear_wet_reserve_points"),
)
BOUNDS_OF_A_PLAN = {f"/repeatability/{name}": (0.0001, 1000) for name in SCATTERS} | {
    "/confidence": (0.5, 0.9999),
    "/power": (0.5, 0.9999),
}
SALOON = saloon()
RIMS = {"front": [{"size": "7.5J x 17 ET45"}]}
ASKED: dict[type[Wire], tuple[Json, dict[str, tuple[float, float]]]] = {
    CheckRequest: (SALOON, BOUNDS),
    SearchRequest: (
        {"vehicle": SALOON["vehicle"], "rims": RIMS, "stock": {"0": {"size": "225/45 R17 94W"}}},
        BOUNDS_OF_A_SEARCH,
    ),
    PlanRequest: (plan(("225/40 R19 93Y XL", None)), BOUNDS_OF_A_PLAN),
    CompareRequest: (
        {"vehicle": SALOON["vehicle"], "candidates": [SALOON["candidate"]]},
        {"/explain_first": (0, 500)},
    ),
}
CASES = [(model, pointer) for model, (_, bounds) in ASKED.items() for pointer in bounds]
WHOLE = ("wheels_per_side", "load_index", "load_index_twin", "ply_rating", "max_results", "explain_first")


def out_of_range(model: type[Wire], pointer: str, value: float) -> bool:
    """Return whether the field at this pointer is refused for being too small or too large."""
    made = changed(ASKED[model][0], {pointer: value})
    if isinstance(made.get("stock"), dict):
        made["stock"] = list(made["stock"].values())
    kinds = ("greater_than_equal", "less_than_equal")
    try:
        model.model_validate(made)
    except ValidationError as refused:
        faults = {"".join(f"/{step}" for step in each["loc"]) for each in refused.errors() if each["type"] in kinds}
        assert faults <= {pointer}
        return bool(faults)
    return False


@pytest.mark.parametrize(("model", "pointer"), CASES, ids=[f"{model.__name__}{pointer}" for model, pointer in CASES])
def test_a_bound_is_let_in_and_what_lies_beyond_is_not(model: type[Wire], pointer: str) -> None:
    low, high = ASKED[model][1][pointer]
    step = 1 if pointer.rpartition("/")[2] in WHOLE else 0.001 * (high - low) if low >= 1 or low <= 0 else 0.00001
    told = [out_of_range(model, pointer, value) for value in (low - step, low, high, high + step)]
    assert told == [True, False, False, True]


LISTS = [
    # As many as the contract says: five hundred candidates, twelve combinations.
    (CompareRequest, "candidates", SALOON["candidate"], 500),
    (PlanRequest, "combinations", plan(("225/40 R19 93Y XL", None))["combinations"][0], 12),
]


@pytest.mark.parametrize(("model", "name", "entry", "most"), LISTS)
def test_a_list_has_one_entry_at_least_and_no_more_than_the_contract_says(model, name, entry, most) -> None:
    for count, kind in ((0, "too_short"), (1, None), (most, None), (most + 1, "too_long")):
        try:
            model.model_validate(ASKED[model][0] | {name: [entry] * count})
            told = None
        except ValidationError as refused:
            (told,) = (each["type"] for each in refused.errors())
        assert told == kind, count


@cache
def numbers_of(model: type[Wire]) -> frozenset[str]:
    """Return the names of the bounded numbers that a model and its parts have."""
    parts = [model.model_json_schema(), *model.model_json_schema().get("$defs", {}).values()]
    fields = ((name, each) for part in parts for name, each in part.get("properties", {}).items())
    return frozenset(name for name, each in fields if "minimum" in each or "maximum" in each)


@pytest.mark.parametrize("model", ASKED)
def test_no_bounded_number_is_forgotten(model: type[Wire]) -> None:
    asked = {pointer.rpartition("/")[2] for bounds in (ASKED[model][1], BOUNDS) for pointer in bounds}
    assert numbers_of(model) <= asked


def test_an_absent_field_is_no_number_out_of_range() -> None:
    CheckRequest.model_validate(changed(SALOON, {"/vehicle/wheelbase_mm": ABSENT}))
