"""Aquaplaning: both branches of the road term, by hand at unit values (1 psi, 1 in of water, no tread, 1 % spin-down).

At unit values the powers drop out of V = SD^0.04 p^0.3 (TD + 1)^0.06 A and A is left (FHWA-RD-79-31, second hand).
"""

from __future__ import annotations

import pytest

from service.core.units import KMH_PER_MPH, KPA_PER_PSI, MM_PER_INCH
from service.physics.aquaplaning import gallaway_onset_kmh


def _road_term(texture_in: float) -> float:
    return gallaway_onset_kmh(KPA_PER_PSI, 0.0, MM_PER_INCH, texture_in * MM_PER_INCH, 1.0) / KMH_PER_MPH


def test_a_smooth_road_has_the_constant_branch():
    # 10.409 + 3.507
    assert _road_term(0.01) == pytest.approx(13.916)


def test_a_coarse_road_has_the_branch_with_texture():
    # 28.952 - 7.817
    assert _road_term(1.0) == pytest.approx(21.135)


def test_texture_counts_with_its_power():
    # 21.135 x 0.1^0.14 = 21.135 x 0.72444
    assert _road_term(0.1) == pytest.approx(15.311, abs=0.001)


def test_an_inch_of_tread_counts_in_32nds():
    # 33^0.06 = 1.23340 over no tread.
    bare = gallaway_onset_kmh(220.0, 0.0, 2.0, 0.5)
    assert gallaway_onset_kmh(220.0, MM_PER_INCH, 2.0, 0.5) / bare == pytest.approx(1.2334, abs=1e-4)
