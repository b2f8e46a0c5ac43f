"""Aquaplaning onset against published speeds.

Sources: Gallaway et al. 1979, FHWA-RD-79-31 (second hand): 220 kPa and a 2 mm film give 88 to 89 km/h, tread depth and
texture not passed on; Horne and Dreher 1963, NASA TN D-2056: V = 6.36 sqrt(p) km/h with p in kPa, 94 km/h at 220 kPa.

The published span holds for 5.2 to 6.4 mm of tread on any texture up to 0.68 mm, where the texture has no effect. It
holds for other pairs too (2 mm of tread on 1.0 mm of texture gives 88.6), so it does not fix the pair.

The width factor has no published counterpart; what is expected of it comes from the trade (common practice, no
source): a 255/35R19 floats about 6 %, a 285/30R19 a bit over 15 % earlier than a 225/40R19.
"""

from __future__ import annotations

import pytest

from service.physics.aquaplaning import (
    CHANGE_BAND,
    ONSET_BAND,
    gallaway_onset_kmh,
    width_factor,
)
from service.physics.bands import multiple
from service.physics.contact_patch import contact_patch, tread_width_mm
from service.physics.dimensions import overall_diameter_mm, section_height_mm
from service.physics.vertical_stiffness import deflection_mm, vertical_stiffness_n_per_mm


@pytest.mark.parametrize("tread_depth_mm", [5.5, 6.0, 6.3])
@pytest.mark.parametrize("texture_depth_mm", [0.2, 0.5, 0.68])
def test_the_onset_is_the_published_one(tread_depth_mm, texture_depth_mm):
    assert 88.0 <= gallaway_onset_kmh(220.0, tread_depth_mm, 2.0, texture_depth_mm) <= 89.0


def test_a_second_opinion_lies_within_the_band():
    # A smooth tyre on a flooded road: 94 km/h, a formula of the pressure alone.
    assert gallaway_onset_kmh(220.0, 6.0, 2.0, 0.5) == pytest.approx(94.0, rel=ONSET_BAND)


def _patch_width_mm(nominal_mm: float, aspect: float) -> float:
    height = section_height_mm(nominal_mm, aspect)
    stiffness = vertical_stiffness_n_per_mm(250.0, aspect, nominal_mm, 483.0)
    diameter = overall_diameter_mm(483.0, height)
    deflection = deflection_mm(4000.0, stiffness)
    return contact_patch(4000.0, 250.0, diameter, height, tread_width_mm(nominal_mm, aspect), deflection).width_mm


@pytest.mark.parametrize(
    ("nominal_mm", "aspect", "earlier_percent"),
    [pytest.param(255.0, 35.0, 6.0, id="255/35R19"), pytest.param(285.0, 30.0, 15.5, id="285/30R19")],
)
def test_the_band_of_the_change_holds_what_the_trade_expects(nominal_mm, aspect, earlier_percent):
    factor = width_factor(_patch_width_mm(225.0, 40.0), _patch_width_mm(nominal_mm, aspect))
    change = multiple(100.0 * (factor - 1.0), CHANGE_BAND)
    assert change.low <= -earlier_percent <= change.high
