"""The units of the columns, as shown, as told in a refusal, and as the results are counted."""

import re

import pandas as pd
import pytest

from service.sweep import main
from service.sweep.columns import CANDIDATE_COLUMNS, VEHICLE_COLUMNS
from tests.unit.sweep.small_catalogue import vehicles

# By hand, from the words that stand beside each column; a name without its axle.
UNITS = {
    "kPa": "pressure_kpa reference_pressure_kpa",
    "mm": "tread_depth_mm overall_diameter_mm section_width_mm rolling_circumference_mm centre_bore_mm track_mm "
    "hub_centre_bore_mm clearance_inboard_mm clearance_outboard_mm clearance_radial_mm clearance_tolerance_mm "
    "track_tolerance_mm wheelbase_mm centre_of_gravity_height_mm",
    "in": "approved_min_in approved_max_in min_rim_diameter_in",
    "kg": "tyre_mass_kg rim_mass_kg load_rating_kg max_axle_mass_kg kerb_axle_mass_kg max_mass_kg",
    "km/h": "max_speed_kmh displayed_kmh true_kmh speed_limited_kmh",
    "%": "speedometer_tolerance_percent",
    "": "wheels_per_side tyre rim bolt_circle hub_bolt_circle category driven_axle built seats_standing towing "
    "vehicle_id candidate_id",
}
UNIT_OF = {name: unit for unit, names in UNITS.items() for name in names.split()}


def without_axle(name: str) -> str:
    return name.removeprefix("front_").removeprefix("rear_")


@pytest.mark.parametrize("columns", [VEHICLE_COLUMNS, CANDIDATE_COLUMNS], ids=["vehicles", "candidates"])
def test_a_column_has_the_unit_that_belongs_to_it(columns):
    assert {each.name: each.unit for each in columns} == {
        each.name: UNIT_OF[without_axle(each.name)] for each in columns
    }


def test_every_column_of_an_axle_is_there_for_both():
    named = [each.name for each in (*VEHICLE_COLUMNS, *CANDIDATE_COLUMNS)]
    front, rear = ([name.removeprefix(axle) for name in named if name.startswith(axle)] for axle in ("front", "rear"))
    assert front == rear


def test_the_unit_of_every_number_is_shown(capsys):
    assert main(["--columns"]) == 0
    shown = dict(
        re.findall(
            r"^  (\w+) +.*\((?:number|whole), \S+ to [\d.]+(?: ([^;)]+))?", capsys.readouterr().out, re.MULTILINE
        )
    )
    numbers = [each.name for each in (*VEHICLE_COLUMNS, *CANDIDATE_COLUMNS) if each.kind in ("number", "whole")]
    assert shown == {name: UNIT_OF[without_axle(name)] for name in numbers}


def test_what_must_be_given_is_what_a_single_check_must_have():
    needed = {"max_speed_kmh", "front_max_axle_mass_kg", "rear_max_axle_mass_kg"}
    wheels = {f"{axle}_{part}" for axle in ("front", "rear") for part in ("tyre", "rim")}
    assert {each.name for each in VEHICLE_COLUMNS if each.required} == needed | wheels | {"vehicle_id"}
    assert {each.name for each in CANDIDATE_COLUMNS if each.required} == wheels | {"candidate_id"}


def test_what_must_be_given_is_shown_as_required_and_nothing_else_is(capsys):
    assert main(["--columns"]) == 0
    vehicles_shown, candidates_shown, paired, *_ = capsys.readouterr().out.split("\n\n")
    for shown, columns in ((vehicles_shown, VEHICLE_COLUMNS), (candidates_shown, CANDIDATE_COLUMNS)):
        required = [line.split()[0] for line in shown.splitlines() if line.endswith("; required)")]
        assert required == [each.name for each in columns if each.required]
    assert paired.splitlines()[1].endswith("; required)")


def test_what_is_no_number_is_shown_by_its_kind_in_words(capsys):
    assert main(["--columns"]) == 0
    shown = re.findall(
        r"^  (\w+) +.*\((yes/no|day|bolt circle|tyre|rim|text)[;)]", capsys.readouterr().out, re.MULTILINE
    )
    names = {
        "yes/no": "seats_standing towing",
        "day": "built",
        "bolt circle": "hub_bolt_circle bolt_circle",
        "tyre": "tyre",
        "rim": "rim",
        "text": "vehicle_id candidate_id",
    }
    assert {(without_axle(name), kind) for name, kind in shown} == {
        (name, kind) for kind, told in names.items() for name in told.split()
    }


def test_the_results_are_in_the_units_of_their_names(sweep_of):
    """A saloon on 225/45 R17 of ET45, offered 225/40 R18 of ET38 in front and ET50 at the rear; by hand.

    UN R30 6.1.2.1: D is 432 + 2 x 101 = 634 mm and 457 + 2 x 90 = 637 mm, 0.473 % more. An offset 7 mm smaller brings
    the wheel 7 mm outwards, one 5 mm greater 5 mm inwards, as width of tyre and rim stay (geometry). Load index 92 is
    630 kg (UN R54, annex 4), for two tyres 1260 kg; the symbol W carries it whole to 240 km/h. An XL tyre on a car is
    set to 150 to 340 kPa (1.5 bar is the least of the ETRTO table; 290 + 50 by practice).
    """
    car = vehicles(1).assign(
        driven_axle="rear", max_speed_kmh=228.0, front_max_axle_mass_kg=960.0, rear_max_axle_mass_kg=1000.0
    )
    for axle in ("front", "rear"):
        car[f"{axle}_tyre"], car[f"{axle}_rim"] = "225/45 R17 94W XL", "7.5J x 17 H2 ET45"
    offer = {"candidate_id": "c", "front_tyre": "225/40 R18 92W XL", "rear_tyre": "225/40 R18 92W XL"}
    offer |= {"front_rim": "7.5J x 18 H2 ET38", "rear_rim": "7.5J x 18 H2 ET50"}
    sweep = sweep_of(car, pd.DataFrame([offer]))
    assert sweep.run() == 0
    shown = sweep.pairs().iloc[0]
    by_hand = {
        "driven_circumference_ratio": 637 / 634,
        "axle_ratio_percent": 0.0,
        "front_load_margin_percent": 100.0 * (1260 / 960 - 1.0),
        "rear_load_margin_percent": 100.0 * (1260 / 1000 - 1.0),
        "front_outboard_edge_mm": 7.0,
        "front_inboard_edge_mm": -7.0,
        "rear_outboard_edge_mm": -5.0,
        "rear_inboard_edge_mm": 5.0,
    } | {f"{axle}_overall_diameter_percent": 100.0 * (637 / 634 - 1.0) for axle in ("front", "rear")}
    assert {name: shown[name] for name in by_hand} == pytest.approx(by_hand, abs=1e-3)
    assert 150.0 <= shown["front_pressure_kpa"] <= 340.0
