"""Number of tests against the printed sample sizes of the two-sample t test, and against the formula by hand.

Source: Cohen, A Power Primer, Psychological Bulletin 112 (1992), table 2 (from memory): power 0.80, effects of 0.2, 0.5
and 0.8 standard deviations: 393, 64 and 26 at a two-sided risk of 0.05, 586, 95 and 38 at 0.01.
Tolerance: 1, because the approximation rounds up where the table rounds to nearest.
"""

from __future__ import annotations

from statistics import NormalDist

import pytest

from service.physics.repeats import repeats_needed


@pytest.mark.parametrize(
    ("effect", "confidence", "printed"),
    [
        (0.2, 0.95, 393.0),
        (0.5, 0.95, 64.0),
        (0.8, 0.95, 26.0),
        (0.2, 0.99, 586.0),
        (0.5, 0.99, 95.0),
        (0.8, 0.99, 38.0),
    ],
)
def test_the_number_of_tests_is_the_printed_one(effect, confidence, printed):
    assert repeats_needed(effect, 1.0, confidence) == pytest.approx(printed, abs=1.0)


def test_two_per_cent_of_braking_with_one_per_cent_of_scatter_takes_five_stops():
    # Two standard deviations: 2 (2.80 / 2)^2 + 0.96 = 4.88, by hand.
    assert repeats_needed(-2.0, 1.0) == 5.0


@pytest.mark.parametrize(("confidence", "power"), [(0.95, 0.8), (0.9, 0.95), (0.99, 0.9)])
def test_the_formula_of_the_handbook_is_the_first_term(confidence, power):
    """N = 2 ((z_a/2 + z_b) s / d)^2 (NIST/SEMATECH e-Handbook 7.2.2.2, doubled for two means; from memory).

    With the scatter as large as the difference the further term, z_a/2^2 / 4, is less than 2, and rounding adds 1.
    """
    z = NormalDist().inv_cdf
    first_term = 2.0 * (z(0.5 + 0.5 * confidence) + z(power)) ** 2
    assert first_term < repeats_needed(1.0, 1.0, confidence, power) < first_term + 3.0
