"""Vertical and cornering stiffness against published parameter sets and measurements.

Sources: open Magic Formula sets of 205/60R15, 235/60R16, 185/80R14; measurements of a 255/40R17 on a 9 in rim (secant
stiffness at 165 and 248 kPa, loaded radius at 5000 N). Nothing was tuned to them.

Honest disagreement, formula over reference: vertical stiffness +7.9, +9.6, +6.6, -2.8, +4.2 %, loaded radius within
0.3 mm; cornering stiffness +16.6 % (205/60R15 with load index 91) and -9.4 % (235/60R16 with load index 100). The load
indices are those of the sizes, the sets do not state them; with the extra-load 104 the second miss is -6.4 %.
"""

from __future__ import annotations

import pytest

from service.core.units import KPA_PER_PSI, STANDARD_GRAVITY_M_S2
from service.physics.cornering_stiffness import LEVEL_BAND, cornering_stiffness_n_per_deg
from service.physics.understeer import understeer_gradient_deg_per_g
from service.physics.vertical_stiffness import (
    LOADED_RADIUS_BAND_MM,
    STIFFNESS_BAND,
    static_loaded_radius_mm,
    vertical_stiffness_n_per_mm,
)


@pytest.mark.parametrize(
    ("pressure_kpa", "aspect", "width_mm", "rim_mm", "published"),
    [
        pytest.param(220.0, 60.0, 205.0, 381.0, 209.7, id="205/60R15"),
        pytest.param(200.0, 60.0, 235.0, 406.0, 210.0, id="235/60R16"),
        pytest.param(190.0, 80.0, 185.0, 356.0, 175.0, id="185/80R14"),
        pytest.param(165.0, 40.0, 255.0, 432.0, 210.0, id="255/40R17 soft"),
        pytest.param(248.0, 40.0, 255.0, 432.0, 278.0, id="255/40R17 hard"),
    ],
)
def test_the_vertical_stiffness_lies_within_its_band_of_the_published_one(
    pressure_kpa, aspect, width_mm, rim_mm, published
):
    stiffness = vertical_stiffness_n_per_mm(pressure_kpa, aspect, width_mm, rim_mm)
    assert stiffness == pytest.approx(published, rel=STIFFNESS_BAND)


@pytest.mark.parametrize(("pressure_psi", "measured"), [(27.0, 295.8), (30.0, 297.8), (33.0, 299.1)])
def test_the_loaded_radius_lies_within_its_band_of_the_measured_one(pressure_psi, measured):
    stiffness = vertical_stiffness_n_per_mm(pressure_psi * KPA_PER_PSI, 40.0, 255.0, 432.0)
    assert static_loaded_radius_mm(636.0, 5000.0, stiffness) == pytest.approx(measured, abs=LOADED_RADIUS_BAND_MM)


@pytest.mark.parametrize(
    ("load_n", "rated_kg", "published"),
    [pytest.param(4000.0, 615.0, 931.0, id="205/60R15"), pytest.param(4850.0, 800.0, 1484.0, id="235/60R16")],
)
def test_the_cornering_stiffness_lies_within_its_band_of_the_published_one(load_n, rated_kg, published):
    stiffness = cornering_stiffness_n_per_deg(load_n, rated_kg * STANDARD_GRAVITY_M_S2)
    assert stiffness == pytest.approx(published, rel=LEVEL_BAND)


def test_the_understeer_gradient_of_a_measured_car():
    # Published measurement: compliance 6.7 front, 3.1 rear, gradient 3.6 deg/g.
    assert understeer_gradient_deg_per_g(6.7, 3.1) == pytest.approx(3.6)
