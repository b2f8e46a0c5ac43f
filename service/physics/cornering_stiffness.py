"""Cornering stiffness of one tyre: its level, and how it changes from one size to another."""

from __future__ import annotations

from typing import Final, NamedTuple

from service.core.findings import Estimate
from service.core.numeric import Num, larger, smaller
from service.core.units import DEGREES_PER_RADIAN

LEVEL_BAND: Final = 0.35
"""Half-width of the band of the level."""


class Elasticity(NamedTuple):
    """The exponents with which cornering stiffness follows a ratio of width, height, rim and pressure."""

    width: float
    height: float
    rim: float
    pressure: float


class Elasticities(NamedTuple):
    """The likely exponents and the two ends between which each of them lies."""

    low: Elasticity
    value: Elasticity
    high: Elasticity


ELASTICITIES: Final = Elasticities(
    low=Elasticity(width=0.2, height=-0.1, rim=0.1, pressure=0.2),
    value=Elasticity(width=0.5, height=-0.4, rim=0.4, pressure=-0.3),
    high=Elasticity(width=1.0, height=-0.8, rim=0.5, pressure=-0.7),
)
"""This project's judgement: no paper gives them. The pressure exponent spans zero because published
tyre sets show stiffness falling with pressure while the textbook line has it rising."""


def cornering_stiffness_n_per_deg(load_n: Num, rated_load_n: Num) -> Num:
    """Return the cornering stiffness of one tyre by similarity with its rated load.

    pn = rated load / 2, q = F / pn, C [N/rad] = pn (20.59 q - 3.80 q^2).

    Parameters
    ----------
    load_n : float or array
        F, load on the tyre [N].
    rated_load_n : float or array
        Load of the tyre's load index [N].

    Returns
    -------
    float or array
        C [N/deg], within plus or minus `LEVEL_BAND`.

    References
    ----------
    .. [SIMILARITY] read in an open vehicle simulator.
    """
    half_rated_n = 0.5 * rated_load_n
    share = load_n / half_rated_n
    return half_rated_n * (20.59 - 3.80 * share) * share / DEGREES_PER_RADIAN


def relative_cornering_stiffness(
    width_ratio: Num, height_ratio: Num, rim_ratio: Num, pressure_ratio: Num, elasticity: Elasticity
) -> Num:
    """Return the proposed tyre's cornering stiffness over the present one's, same load, for one set of exponents.

    Parameters
    ----------
    width_ratio : float or array
        Proposed over present nominal width [1].
    height_ratio : float or array
        Proposed over present section height [1]. The height, not the aspect ratio: at equal
        diameter a wider tyre keeps its sidewall, so that width does not count twice.
    rim_ratio : float or array
        Rim width over measuring-rim width, proposed over present [1].
    pressure_ratio : float or array
        Proposed over present inflation pressure [1].
    elasticity : Elasticity
        The exponents [1].

    Returns
    -------
    float or array
        C' / C [1].

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    ratio: Num = (
        width_ratio**elasticity.width
        * height_ratio**elasticity.height
        * rim_ratio**elasticity.rim
        * pressure_ratio**elasticity.pressure
    )
    return ratio


def relative_cornering_stiffness_band(
    width_ratio: Num, height_ratio: Num, rim_ratio: Num, pressure_ratio: Num
) -> Estimate[Num]:
    """Return the same ratio with its band: every exponent anywhere between its ends, each on its own.

    A power of a positive ratio is monotonic in its exponent, so the ends of each factor are at the
    ends of its exponent and the ends of the product are the products of the ends.

    Parameters
    ----------
    width_ratio, height_ratio, rim_ratio, pressure_ratio : float or array
        As for `relative_cornering_stiffness` [1].

    Returns
    -------
    Estimate
        C' / C [1]; exactly 1, 1, 1 for the same tyre, and the reciprocal band when the two are swapped.

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    low, value, high = ELASTICITIES
    width_a, width_b = width_ratio**low.width, width_ratio**high.width
    height_a, height_b = height_ratio**low.height, height_ratio**high.height
    rim_a, rim_b = rim_ratio**low.rim, rim_ratio**high.rim
    pressure_a, pressure_b = pressure_ratio**low.pressure, pressure_ratio**high.pressure
    return Estimate(
        relative_cornering_stiffness(width_ratio, height_ratio, rim_ratio, pressure_ratio, value),
        smaller(width_a, width_b)
        * smaller(height_a, height_b)
        * smaller(rim_a, rim_b)
        * smaller(pressure_a, pressure_b),
        larger(width_a, width_b) * larger(height_a, height_b) * larger(rim_a, rim_b) * larger(pressure_a, pressure_b),
    )
