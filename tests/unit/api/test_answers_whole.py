"""What an answer has and has not: the caller's name, the figures that `standard` leaves out, notes, both axles."""

from __future__ import annotations

import csv
import io
from dataclasses import replace

import pytest

from service.api.inbound import translate
from service.api.render.plan_answer import plan_result, plan_table
from service.api.render.reference import rule_pack
from service.api.schemas import request as wire
from service.rules.reader import pack_named
from tests.support.cases import ABSENT, Json, changed, saloon
from tests.support.plans import F225, F255, F285, asked, request
from tests.support.wire import post

CHECK, COMPARE = "/v1/fitments/check", "/v1/fitments/compare"
# What `full` alone says of a wheel, where it is known.
OF_FULL = {
    "section_height_mm",
    "revolutions_per_km",
    "rolling_circumference_band_mm",
    "static_loaded_radius_mm",
}


def compared(vehicle: Json, **more: object) -> Json:
    return post(COMPARE, {"vehicle": vehicle, "candidates": [saloon()["candidate"]], **more})


@pytest.mark.parametrize("detail", ["short", "standard", "full"])
def test_the_callers_name_of_a_candidate_comes_back_where_there_is_one(detail):
    named = post(CHECK, changed(saloon(), {"/candidate/id": "A-7"}) | {"detail": detail})
    assert named["id"] == "A-7"
    assert "id" not in post(CHECK, saloon() | {"detail": detail})


def test_a_standard_answer_leaves_the_same_out_of_both_wheels_of_both_axles():
    full, standard = (post(CHECK, saloon() | {"detail": each}) for each in ("full", "standard"))
    for axle in ("front", "rear"):
        for which in ("present", "proposed"):
            whole, less = full["axles"][axle][which], standard["axles"][axle][which]
            assert set(whole) - set(less) == OF_FULL
            assert less == {name: value for name, value in whole.items() if name not in OF_FULL}
    assert "readings" in full["vehicle"]["speedometer"]
    assert "readings" not in standard["vehicle"]["speedometer"]


def test_a_comparison_notes_what_was_assumed_and_nothing_where_all_was_stated():
    assert "notes" not in compared(saloon()["vehicle"])
    bare = changed(saloon(), {"/vehicle/front/max_axle_mass_kg": ABSENT})
    assert compared(bare["vehicle"])["notes"]


def test_why_there_is_no_row_is_told_where_there_is_none():
    assert "why_none" not in compared(saloon()["vehicle"])
    none = compared(saloon()["vehicle"], verdicts=["unsuitable"])
    assert none["rows"] == []
    assert (none["compared"], none["left_out"]) == (1, 1)
    assert "of 1, 1 fit" in none["why_none"]


def test_the_table_of_a_plan_has_the_wheels_of_both_axles_and_every_effect():
    case, found = asked(request((F255, F285), (F225, F285)))
    answer = plan_result(case, found)
    cells = list(csv.DictReader(io.StringIO(plan_table(answer), newline="")))
    assert len(cells) == 2
    for row, told in zip(cells, answer["combinations"], strict=True):
        for axle in ("front", "rear"):
            assert row[f"{axle}.tyre"] == told[axle]["tyre"]
            assert row[f"{axle}.rim"] == told[axle]["rim"]
            assert float(row[f"{axle}.set_pressure_kpa"]) == told[axle]["set_pressure_kpa"]
        for name, band in told["effects"].items():
            assert {end: float(row[f"effects.{name}.{end}"]) for end in ("value", "low", "high")} == band
    assert (cells[0]["front.tyre"], cells[0]["rear.tyre"]) == (F255, F285)
    assert answer["pairs"][0]["text"] == cells[0]["tests"]


def test_a_pack_tells_of_winter_where_its_law_does():
    pack = pack_named("de")
    assert rule_pack(pack)["winter"]["speed_floor"]["name"] == "winter.speed_floor"
    assert "winter" not in rule_pack(replace(pack, winter=None))


def test_a_tyre_is_measured_where_the_caller_says_so():
    size = "225/45 R17 94W XL"
    assert translate.tyre(wire.Tyre.model_validate({"size": size})).measured is None
    measured = translate.tyre(wire.Tyre.model_validate({"size": size, "mass_kg": 10.4})).measured
    assert measured is not None
    assert measured.mass_kg == 10.4
    worn = translate.tyre(wire.Tyre.model_validate({"size": size, "tread_depth_mm": 3}))
    assert (worn.measured, worn.tread_depth_mm) == (None, 3)
