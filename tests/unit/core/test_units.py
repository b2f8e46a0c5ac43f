"""Factors between units, against what defines them.

Source: international yard and pound agreement (1959): 1 in = 25.4 mm, 1 mile = 1609.344 m, 1 lb = 0.45359237 kg; SI
brochure, 9th edition: g = 9.80665 m/s2 (3rd CGPM), 1 bar = 100 kPa, 1 rad = 180/pi degrees. psi is the weight of a
pound on a square inch.
"""

from math import degrees

import pytest

from service.core import units

INCH_M = 0.0254


@pytest.mark.parametrize(
    ("factor", "defined"),
    [
        (units.MM_PER_INCH, 25.4),
        (units.KPA_PER_PSI, 0.45359237 * 9.80665 / INCH_M**2 / 1000.0),
        (units.KPA_PER_BAR, 100.0),
        (units.KMH_PER_MPH, 1.609344),
        (units.STANDARD_GRAVITY_M_S2, 9.80665),
        (units.DEGREES_PER_RADIAN, degrees(1.0)),
        (units.KG_PER_POUND, 0.45359237),
        (units.CM2_PER_SQUARE_INCH, 2.54**2),
    ],
)
def test_a_factor_is_what_its_definition_gives(factor, defined):
    assert factor == pytest.approx(defined, rel=1e-12)
