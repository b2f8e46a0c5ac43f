"""Cornering stiffness of one tyre: its level, and how it changes from one size to another."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final, Generic, NamedTuple

from service.core.findings import Estimate
from service.core.numeric import Num, larger, natural_log, pick, smaller
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


class _Ends(NamedTuple):
    """The likely, the least and the greatest exponent of each ratio."""

    width: Estimate[float]
    height: Estimate[float]
    rim: Estimate[float]
    pressure: Estimate[float]


_ENDS: Final = _Ends._make(
    Estimate(likely, min(low, high), max(low, high)) for low, likely, high in zip(*ELASTICITIES, strict=True)
)


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


class RatioPowers(NamedTuple, Generic[Num]):
    """One ratio of two tyres to the likely exponent and to the ends of it, and its logarithm."""

    value: Num
    least: Num
    """To the least exponent; the power itself may be the greater one."""
    greatest: Num
    log: Num


class StiffnessRatios(NamedTuple, Generic[Num]):
    """The four ratios that cornering stiffness follows."""

    width: RatioPowers[Num]
    height: RatioPowers[Num]
    rim: RatioPowers[Num]
    pressure: RatioPowers[Num]


def stiffness_ratios(width_ratio: Num, height_ratio: Num, rim_ratio: Num, pressure_ratio: Num) -> StiffnessRatios[Num]:
    """Return the powers of the four ratios that make the proposed tyre's cornering stiffness of the present one's.

    The bands of stiffness and of balance are both made of them.

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

    Returns
    -------
    StiffnessRatios
        Each ratio to its likely, least and greatest exponent [1].

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    return StiffnessRatios(
        _powers(width_ratio, _ENDS.width),
        _powers(height_ratio, _ENDS.height),
        _powers(rim_ratio, _ENDS.rim),
        _powers(pressure_ratio, _ENDS.pressure),
    )


def _powers(ratio: Num, ends: Estimate[float]) -> RatioPowers[Num]:
    likely, least, greatest = ends
    return RatioPowers(ratio**likely, ratio**least, ratio**greatest, natural_log(ratio))


def likely_stiffness(ratios: StiffnessRatios[Num]) -> Num:
    """Return the proposed tyre's cornering stiffness over the present one's, same load, by the likely exponents.

    Parameters
    ----------
    ratios : StiffnessRatios
        The powers of the ratios of the two tyres [1].

    Returns
    -------
    float or array
        C' / C [1].

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    width, height, rim, pressure = ratios
    return width.value * height.value * rim.value * pressure.value


def stiffness_at(ratios: StiffnessRatios[Num], greatest: Sequence[object]) -> Num:
    """Return the same ratio at ends of the exponents: of each the greatest where `greatest` holds, else the least.

    Parameters
    ----------
    ratios : StiffnessRatios
        The powers of the ratios of the two tyres [1].
    greatest : sequence of bool or array of bool
        One for each ratio.

    Returns
    -------
    float or array
        C' / C [1].

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    width, height, rim, pressure = (
        pick(holds, each.greatest, each.least) for each, holds in zip(ratios, greatest, strict=True)
    )
    return width * height * rim * pressure


def relative_cornering_stiffness_band(ratios: StiffnessRatios[Num]) -> Estimate[Num]:
    """Return the same ratio with its band: every exponent anywhere between its ends, each on its own.

    A power of a positive ratio is monotonic in its exponent, so the ends of each factor are at the
    ends of its exponent and the ends of the product are the products of the ends.

    Parameters
    ----------
    ratios : StiffnessRatios
        The powers of the ratios of the two tyres [1].

    Returns
    -------
    Estimate
        C' / C [1]; exactly 1, 1, 1 for the same tyre, and the reciprocal band when the two are swapped.

    References
    ----------
    .. [PROJECT] no paper gives the exponents.
    """
    width, height, rim, pressure = ratios
    return Estimate(
        likely_stiffness(ratios),
        smaller(width.least, width.greatest)
        * smaller(height.least, height.greatest)
        * smaller(rim.least, rim.greatest)
        * smaller(pressure.least, pressure.greatest),
        larger(width.least, width.greatest)
        * larger(height.least, height.greatest)
        * larger(rim.least, rim.greatest)
        * larger(pressure.least, pressure.greatest),
    )
