"""Contact patch against measured footprints.

Source: `data/footprints.csv`, static footprints of one 255/40R17 98W tyre on a 9.0 in rim, no camber, published by an
enthusiast engineer as tables (kktse.github.io, 25 September 2021). The table holds 25 footprints of one tyre; the
model was fitted to 50 of two such tyres, the other table is not at hand.

Honest disagreement, model over measurement: length mean +5.3 %, standard deviation 5.1 %, worst +16.7 %; width mean
-0.2 %, 2.8 %, worst -5.4 %; gross area mean +4.9 %, 5.4 %, worst +20 %. The worst are all at 500 lb, 30 % of the
tyre's rated load, where the model is too long; from 800 lb (48 %) upwards every footprint lies within the bands. The
share of length times width that a footprint fills (0.92) was itself taken from this table, so the area's mean says
nothing new beside the length's.
"""

from __future__ import annotations

import csv
import statistics
from pathlib import Path
from typing import NamedTuple

import pytest

from service.core.units import KPA_PER_PSI, MM_PER_INCH, STANDARD_GRAVITY_M_S2
from service.physics.contact_patch import (
    AREA_BAND,
    LENGTH_BAND,
    LIGHT_LOAD_BAND,
    WIDTH_BAND,
    contact_patch,
    tread_width_mm,
)
from service.physics.vertical_stiffness import deflection_mm, vertical_stiffness_n_per_mm

LIGHT_LOAD_LB = 500.0
KG_PER_POUND = 0.45359237
CM2_PER_SQUARE_INCH = 6.4516


class Miss(NamedTuple):
    """The load of a footprint, and the model over its measured length, width and area, less one."""

    load_lb: float
    length: float
    width: float
    area: float


def _misses() -> list[Miss]:
    path = Path(__file__).parent / "data" / "footprints.csv"
    lines = [line for line in path.read_text(encoding="utf-8").splitlines() if not line.startswith("#")]
    misses = []
    for row in csv.DictReader(lines):
        load_n = float(row["load_lb"]) * KG_PER_POUND * STANDARD_GRAVITY_M_S2
        pressure_kpa = float(row["pressure_psi"]) * KPA_PER_PSI
        stiffness = vertical_stiffness_n_per_mm(pressure_kpa, 40.0, 255.0, 432.0)
        patch = contact_patch(
            load_n, pressure_kpa, 636.0, 102.0, tread_width_mm(255.0, 40.0), deflection_mm(load_n, stiffness)
        )
        misses.append(
            Miss(
                float(row["load_lb"]),
                patch.length_mm / (float(row["length_in"]) * MM_PER_INCH) - 1.0,
                patch.width_mm / (float(row["width_in"]) * MM_PER_INCH) - 1.0,
                patch.area_cm2 / (float(row["gross_area_in2"]) * CM2_PER_SQUARE_INCH) - 1.0,
            )
        )
    return misses


MISSES = _misses()
NORMAL = [miss for miss in MISSES if miss.load_lb > LIGHT_LOAD_LB]
LIGHT = [miss for miss in MISSES if miss.load_lb == LIGHT_LOAD_LB]


def test_the_table_holds_five_loads_at_five_pressures():
    assert len(MISSES) == 25


def test_every_length_at_normal_load_lies_in_the_band():
    assert max(abs(miss.length) for miss in NORMAL) <= LENGTH_BAND


def test_every_width_lies_in_the_band():
    assert max(abs(miss.width) for miss in MISSES) <= WIDTH_BAND


def test_every_area_at_normal_load_lies_in_the_band():
    assert max(abs(miss.area) for miss in NORMAL) <= AREA_BAND


def test_length_and_area_at_light_load_lie_in_the_wider_band():
    assert max(max(abs(miss.length), abs(miss.area)) for miss in LIGHT) <= LIGHT_LOAD_BAND


def test_light_load_needs_the_wider_band():
    assert max(miss.length for miss in LIGHT) > LENGTH_BAND


@pytest.mark.parametrize(("quantity", "most"), [("length", 0.06), ("width", 0.01), ("area", 0.06)])
def test_the_model_is_off_on_average_by_no_more_than_stated(quantity, most):
    assert abs(statistics.mean(getattr(miss, quantity) for miss in MISSES)) <= most


@pytest.mark.parametrize(("quantity", "most"), [("length", 0.06), ("width", 0.03), ("area", 0.06)])
def test_the_model_scatters_by_no_more_than_stated(quantity, most):
    assert statistics.stdev(getattr(miss, quantity) for miss in MISSES) <= most


def test_the_chord_of_the_undeflected_circle_is_about_twice_too_long():
    # 1000 lb at 30 psi, measured 4.06 in: the reason why the model does not use the chord.
    deflection = deflection_mm(
        1000.0 * KG_PER_POUND * STANDARD_GRAVITY_M_S2,
        vertical_stiffness_n_per_mm(30.0 * KPA_PER_PSI, 40.0, 255.0, 432.0),
    )
    chord_mm = 2.0 * (636.0 * deflection - deflection**2) ** 0.5
    assert chord_mm / (4.06 * MM_PER_INCH) == pytest.approx(2.0, abs=0.2)
