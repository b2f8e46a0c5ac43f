"""Heat: width times diameter, by hand."""

from __future__ import annotations

import pytest

from service.physics.heat import heat_reserve_change_percent


def test_a_tenth_more_width_stands_a_tenth_more():
    assert heat_reserve_change_percent(200.0, 650.0, 220.0, 650.0) == pytest.approx(10.0)


def test_a_tenth_more_diameter_stands_a_tenth_more():
    assert heat_reserve_change_percent(200.0, 600.0, 200.0, 660.0) == pytest.approx(10.0)
