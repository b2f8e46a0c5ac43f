"""Contact patch: units and the parts of the model."""

from __future__ import annotations

import pytest

from service.physics.contact_patch import contact_patch, tread_width_mm


def test_the_tread_of_a_forty_series_tyre_is_seven_eighths_of_its_width():
    # 1.075 - 0.5 x 0.40 = 0.875, by hand.
    assert tread_width_mm(240.0, 40.0) == pytest.approx(210.0)


def test_the_width_at_normal_deflection_is_nearly_the_tread():
    # Deflection over radius 0.045, where the fill is 1: 0.89 x 210 mm, by hand.
    patch = contact_patch(5000.0, 250.0, 640.0, 96.0, 210.0, 0.045 * 320.0)
    assert patch.width_mm == pytest.approx(0.89 * 210.0)


def test_length_times_width_carries_the_load_at_normal_deflection():
    # Deflection 0.16 of the height: k = 0.931, so L W = F / (0.931 P) in square metres, by hand.
    patch = contact_patch(5000.0, 250.0, 640.0, 100.0, 210.0, 16.0)
    assert patch.length_mm * patch.width_mm == pytest.approx(5000.0 / (0.931 * 250.0e3) * 1.0e6)


def test_a_footprint_fills_92_hundredths_of_its_rectangle():
    patch = contact_patch(5000.0, 250.0, 640.0, 100.0, 210.0, 16.0)
    assert patch.area_cm2 == pytest.approx(0.92 * patch.length_mm * patch.width_mm / 100.0)
