"""The bands that answers carry are the stated ones: project judgement throughout, no paper gives them."""

from __future__ import annotations

import pytest

from service.physics import (
    aquaplaning,
    contact_patch,
    cornering_stiffness,
    inertia,
    peak_grip,
    rolling,
    vertical_stiffness,
    wet_reserve,
)


@pytest.mark.parametrize(
    ("band", "percent"),
    [
        pytest.param(rolling.BAND, 1.0, id="rolling circumference"),
        pytest.param(vertical_stiffness.STIFFNESS_BAND, 10.0, id="vertical stiffness"),
        pytest.param(vertical_stiffness.STIFFNESS_BAND_OTHER, 15.0, id="vertical stiffness, other than car sizes"),
        pytest.param(contact_patch.LENGTH_BAND, 15.0, id="patch length"),
        pytest.param(contact_patch.WIDTH_BAND, 8.0, id="patch width"),
        pytest.param(contact_patch.AREA_BAND, 12.0, id="patch area"),
        pytest.param(contact_patch.LENGTH_RATIO_BAND, 8.0, id="ratio of patch lengths"),
        pytest.param(contact_patch.WIDTH_RATIO_BAND, 5.0, id="ratio of patch widths"),
        pytest.param(cornering_stiffness.LEVEL_BAND, 35.0, id="cornering stiffness"),
        pytest.param(aquaplaning.ONSET_BAND, 20.0, id="aquaplaning onset"),
        pytest.param(inertia.MASS_BAND, 20.0, id="tyre mass"),
        pytest.param(inertia.SHAPE_BAND, 10.0, id="inertia of weighed parts"),
    ],
)
def test_a_band_is_the_stated_one(band, percent):
    assert 100.0 * band == pytest.approx(percent)


def test_the_change_of_the_onset_lies_between_three_quarters_and_seventeen_tenths_of_it():
    assert aquaplaning.CHANGE_BAND == (0.75, 1.7)


def test_the_band_of_the_loaded_radius_is_stated_in_millimetres():
    assert vertical_stiffness.LOADED_RADIUS_BAND_MM == 1.5


def test_the_exponent_of_peak_grip_is_a_fifth_between_a_tenth_and_a_third():
    assert peak_grip.LOAD_SENSITIVITY == (0.2, 0.1, 0.35)


def test_the_tread_pattern_adds_eight_points_to_the_band_of_the_onset():
    assert wet_reserve.PATTERN_POINTS == 8.0
