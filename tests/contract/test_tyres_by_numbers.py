"""A tyre and a rim may be given by their numbers, instead of the designation or beside it; null is read as absent."""

from __future__ import annotations

import pytest

from tests.support.cases import ABSENT, Json, at, changed, saloon
from tests.support.wire import check as wire_check
from tests.support.wire import client

# 225/45 R17 94W XL on 7.5J x 17 H2 ET45, as the saloon has it, number by number: sidewall practice.
TYRE = {
    "section_width_mm": 225,
    "aspect_ratio": 45,
    "rim_diameter_in": 17,
    "load_index": 94,
    "speed_symbol": "W",
    "load_version": "extra_load",
}
RIM = {"width_in": 7.5, "diameter_in": 17, "flange": "J", "hump": "H2", "offset_mm": 45}


def _by_numbers(part: str, numbers: Json) -> dict[str, object]:
    return {f"/candidate/front/{part}/size": ABSENT} | {
        f"/candidate/front/{part}/{name}": value for name, value in numbers.items()
    }


def _faults(changes: dict[str, object]) -> list[tuple[str, str]]:
    refused = client().post("/v1/fitments/check", json=changed(saloon(), changes))
    assert refused.status_code == 422
    return [(each["pointer"], each["code"]) for each in refused.json()["errors"]]


def test_numbers_are_answered_as_the_designation_that_they_make():
    numbers = _by_numbers("tyre", TYRE) | _by_numbers("rim", RIM)
    assert wire_check(changed(saloon(), numbers)) == wire_check(saloon())


def test_numbers_beside_a_designation_that_says_the_same_change_nothing():
    beside = {
        f"/candidate/front/{part}/{name}": value
        for part, numbers in (("tyre", TYRE), ("rim", RIM))
        for name, value in numbers.items()
        if name != "section_width_mm"
    }
    assert wire_check(changed(saloon(), beside)) == wire_check(saloon())


def test_numbers_at_odds_with_the_designation_are_refused_by_name():
    assert _faults({"/candidate/rear/tyre/aspect_ratio": 55}) == [("/candidate/rear/tyre/aspect_ratio", "wrong_number")]
    assert _faults({"/candidate/rear/rim/offset_mm": 35}) == [("/candidate/rear/rim/offset_mm", "wrong_number")]


def test_numbers_that_make_no_tyre_are_refused_by_name():
    lacking = _by_numbers("tyre", TYRE) | {"/candidate/front/tyre/rim_diameter_in": ABSENT}
    assert _faults(lacking) == [("/candidate/front/tyre/rim_diameter_in", "wrong_number")]


@pytest.mark.parametrize("part", ["tyre", "rim"])
def test_neither_a_designation_nor_numbers_is_a_missing_designation(part):
    assert _faults({f"/candidate/front/{part}": {}})[0] == (f"/candidate/front/{part}/size", "required")


def test_a_rim_that_states_no_offset_takes_it_from_the_number():
    without = {"/candidate/front/rim/size": "7.5J x 17 H2", "/candidate/front/rim/offset_mm": 45}
    assert wire_check(changed(saloon(), without))["verdict"] == wire_check(saloon())["verdict"] == "suitable"


def test_null_is_read_as_absent_for_every_field_that_may_be_absent():
    """Most serialisers write what is not known as null."""
    optional = [
        "/vehicle/speedometer",
        "/vehicle/wheelbase_mm",
        "/vehicle/built",
        "/vehicle/front/clearance",
        "/vehicle/front/clearance/inboard_mm",
        "/vehicle/rear/hub",
        "/candidate/front/pressure_kpa",
        "/candidate/rear/tyre/tread_depth_mm",
        "/candidate/rear/rim/bolt_circle",
        "/season",
    ]
    for pointer in optional:
        gone, null = ({pointer: value} for value in (ABSENT, None))
        assert wire_check(changed(saloon(), null)) == wire_check(changed(saloon(), gone)), pointer


def test_null_for_a_field_that_must_be_there_is_missing():
    assert _faults({"/vehicle/front": None}) == [("/vehicle/front", "required")]
    assert at(saloon(), "/vehicle/front")
