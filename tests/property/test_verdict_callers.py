"""Check, compare, search and sweep give the same verdict for the same question."""

import pandas as pd
import pytest

from service.sweep import main
from tests.support import tyre_stock, workshop
from tests.support.effort import cases
from tests.support.shop_cases import shop_question
from tests.support.wire import AXLES, PACKS, check, post

SEEDS = range(cases(48, 400))
ROWS = 30


def _verdicts_of_rows(answer):
    return {row["index"]: row["verdict"] for row in answer["rows"]}


@pytest.mark.parametrize("seed", range(0, 120, cases(12, 3)))
def test_compare_says_what_check_says(seed):
    asked = [shop_question(seed + 120 * step) for step in range(6)]
    vehicle, pack = asked[0]["vehicle"], PACKS[seed % len(PACKS)]
    candidates = [each["candidate"] for each in asked]
    rows = _verdicts_of_rows(
        post("/v1/fitments/compare", {"vehicle": vehicle, "rule_pack": pack, "candidates": candidates})
    )
    alone = [check({"vehicle": vehicle, "rule_pack": pack, "candidate": each})["verdict"] for each in candidates]
    assert [rows[at] for at in range(len(candidates))] == alone


@pytest.mark.parametrize("pack", ["unece", "de", "us"])
@pytest.mark.parametrize("name", workshop.NAMES)
def test_every_row_of_search_is_what_check_says(name, pack):
    vehicle = workshop.vehicle(name)
    rims = {axle: [vehicle[axle]["fitted"]["rim"]] for axle in AXLES}
    asked = {
        "vehicle": vehicle,
        "rule_pack": pack,
        "rims": rims,
        "stock": [{"size": each} for each in tyre_stock.STOCK],
        "max_results": ROWS,
    }
    rows = post("/v1/fitments/search", asked)["rows"]
    assert rows
    for row in rows:
        alone = check({"vehicle": vehicle, "rule_pack": pack, "candidate": row["candidate"]})
        assert alone["verdict"] == row["verdict"], row["candidate"]


@pytest.mark.parametrize("name", workshop.NAMES)
def test_search_offers_the_present_size_first_and_without_conditions(name):
    """The stock holds each present size: what is fitted now is what a fitter offers first."""
    vehicle = workshop.vehicle(name)
    rims = {axle: [vehicle[axle]["fitted"]["rim"]] for axle in AXLES}
    asked = {
        "vehicle": vehicle,
        "rims": rims,
        "stock": [{"size": each} for each in tyre_stock.STOCK],
        "max_results": ROWS,
    }
    best = post("/v1/fitments/search", asked)["rows"][0]
    assert best["verdict"] == "suitable"
    for axle in AXLES:
        present = vehicle[axle]["fitted"]["tyre"]["size"]
        offered = best["candidate"][axle]["tyre"]["size"]
        assert offered.replace(" ", "").startswith(present.rpartition(" R")[0].replace(" ", "")), offered


def _columns(wheel, axle):
    """Return the columns of a sweep for one wheel."""
    tyre, rim = wheel["tyre"], wheel["rim"]
    made = {f"{axle}_tyre": tyre["size"], f"{axle}_rim": rim["size"], f"{axle}_pressure_kpa": wheel.get("pressure_kpa")}
    made |= {f"{axle}_{name}": tyre.get(name) for name in ("tread_depth_mm", "reference_pressure_kpa")}
    return made | {f"{axle}_{name}": rim.get(name) for name in ("bolt_circle", "centre_bore_mm", "load_rating_kg")}


def _vehicle_row(vehicle, seed):
    row = {"vehicle_id": str(seed)}
    row |= {name: vehicle.get(name) for name in ("max_speed_kmh", "category", "driven_axle", "wheelbase_mm")}
    row |= {name: vehicle.get(name) for name in ("built", "max_mass_kg")}
    row |= {name: vehicle.get("speedometer", {}).get(name) for name in ("displayed_kmh", "true_kmh")}
    for axle in AXLES:
        part = vehicle[axle]
        row |= {
            f"{axle}_{name}": part.get(name)
            for name in ("max_axle_mass_kg", "kerb_axle_mass_kg", "track_mm", "wheels_per_side", "min_rim_diameter_in")
        }
        row |= {f"{axle}_hub_{name}": part.get("hub", {}).get(name) for name in ("bolt_circle", "centre_bore_mm")}
        sides = ("inboard_mm", "outboard_mm", "radial_mm")
        row |= {f"{axle}_clearance_{name}": part.get("clearance", {}).get(name) for name in sides}
        row |= _columns(part["fitted"], axle)
    return row


@pytest.mark.parametrize("pack", ["unece", "nl", "au-nsw"])
def test_the_sweep_says_what_check_says(tmp_path, pack):
    asked = {seed: {**shop_question(seed), "rule_pack": pack} for seed in SEEDS}
    for each in asked.values():
        each.pop("season", None)
    vehicles = [_vehicle_row(each["vehicle"], seed) for seed, each in asked.items()]
    candidates = [
        {"candidate_id": f"c{seed}", "vehicle_id": str(seed)}
        | _columns(each["candidate"]["front"], "front")
        | _columns(each["candidate"]["rear"], "rear")
        for seed, each in asked.items()
    ]
    files = {"vehicles": vehicles, "candidates": candidates}
    for name, rows in files.items():
        pd.DataFrame(rows).to_parquet(tmp_path / f"{name}.parquet")
    named = [f"--{name}={tmp_path / f'{name}.parquet'}" for name in files]
    assert main([*named, f"--out={tmp_path / 'out'}", "--pairs", f"--rule-pack={pack}", "--threads", "1"]) == 0
    pairs = pd.read_parquet(tmp_path / "out" / "pairs")
    swept = dict(zip(pairs["vehicle_id"].astype(str), pairs["verdict"].astype(str), strict=True))
    assert swept == {str(seed): check(each)["verdict"] for seed, each in asked.items()}
