"""How many tests it takes to see a difference."""

from __future__ import annotations

import math
from statistics import NormalDist
from typing import Final

from service.core.numeric import Num, larger, pick

CONFIDENCE: Final = 0.95
"""One less the risk of seeing a difference where there is none, both sides together; the usual choice."""
POWER: Final = 0.80
"""Chance of seeing the difference when it is there; the usual choice."""

FEWEST: Final = 2.0
"""A single test of each tyre shows no scatter."""


def repeats_needed(effect: Num, repeatability: Num, confidence: float = CONFIDENCE, power: float = POWER) -> Num:
    """Return how often each of two tyres must be tested for their difference to show.

    n = 2 ((z_a + z_b) s / d)^2 + z_a^2 / 4, rounded up: the normal approximation of the two-sided test of two means,
    and a term for the scatter being known only from the tests themselves.

    Parameters
    ----------
    effect : float or array
        d, the difference that matters, of either sign [any unit].
    repeatability : float or array
        s, standard deviation of repeated tests of one tyre, not negative [the same unit].
    confidence : float
        1 less the two-sided risk, between 0 and 1 [1].
    power : float
        Chance of seeing the difference, between 0 and 1 [1].

    Returns
    -------
    float or array
        Tests of each tyre, whole, at least `FEWEST`; infinite where there is no difference to see [1].

    References
    ----------
    .. [NIST-HANDBOOK] 7.2.2.2, the first term: sample sizes for a mean, doubled for a difference of two (from memory).
    .. [GUENTHER-1981] sample size of the two-sample t test (from memory).
    """
    risk_z = NormalDist().inv_cdf(0.5 + 0.5 * confidence)
    power_z = NormalDist().inv_cdf(power)
    none = effect == 0.0
    size = pick(none, effect + 1.0, effect)
    count: Num = 2.0 * ((risk_z + power_z) * repeatability / size) ** 2 + 0.25 * risk_z**2
    whole = -(-count // 1.0)
    return pick(none, whole - whole + math.inf, larger(whole, whole - whole + FEWEST))
