"""Dry braking distance after a change of tyres: how the axles share the work, and what more or less grip does."""

from __future__ import annotations

from typing import Final

from service.core.findings import Estimate
from service.core.numeric import Num, exponential, filled, known_or, larger, natural_log, smaller
from service.physics.peak_grip import LOAD_SENSITIVITY

HARD_BRAKING_G: Final = 1.0
"""The deceleration at which the axles are weighed [g]."""
ASSUMED_FRONT_SHARE: Final = Estimate(value=0.7, low=0.6, high=0.85)
"""Share of the front axle where masses, wheelbase or height of the centre of gravity are not given; own. The ends are
a rear-engined car and a short front-driven one."""


def front_braking_share(
    front_mass_kg: Num,
    mass_kg: Num,
    centre_of_gravity_height_mm: Num,
    wheelbase_mm: Num,
    deceleration_g: float = HARD_BRAKING_G,
) -> Num:
    """Return the share of the weight, and so of the braking, that the front axle carries under braking.

    phi = m_f / m + a h / (g L), between 0 and 1: a rear wheel that has lifted off does no work.

    Parameters
    ----------
    front_mass_kg : float or array
        m_f, mass on the front axle at a standstill [kg].
    mass_kg : float or array
        m, mass of the car [kg].
    centre_of_gravity_height_mm : float or array
        h [mm].
    wheelbase_mm : float or array
        L [mm].
    deceleration_g : float
        a [g].

    Returns
    -------
    float or array
        phi [1]; NaN where a quantity is not known.

    References
    ----------
    .. [GILLESPIE] the load transfer of a braking car (read).
    """
    share = front_mass_kg / mass_kg + deceleration_g * centre_of_gravity_height_mm / wheelbase_mm
    none = share - share
    return smaller(larger(share, none), none + 1.0)


def known_or_assumed_share(front_share: Num) -> Estimate[Num]:
    """Return the front share without a band where it is known, else the assumed one with its band.

    Parameters
    ----------
    front_share : float or array
        phi, NaN where it is not known [1].

    Returns
    -------
    Estimate
        phi [1].

    References
    ----------
    .. [PROJECT] `ASSUMED_FRONT_SHARE`.
    """
    value, low, high = (known_or(front_share, filled(front_share, end)) for end in ASSUMED_FRONT_SHARE)
    return Estimate(value, low, high)


def braking_distance_change_percent(
    front_share: Estimate[Num], front_reserve_ratio: Num, rear_reserve_ratio: Num
) -> Estimate[Num]:
    """Return by how much the braking distance in the dry grows, every wheel at its limit.

    ln(s' / s) = -[phi ln(mu_f' / mu_f) + (1 - phi) ln(mu_r' / mu_r)], with mu' / mu = (SN' / SN)^e. The logarithm is
    linear in phi and in e, so the ends of the band lie at the ends of both.

    Parameters
    ----------
    front_share : Estimate
        phi, its three figures alike where it is known [1].
    front_reserve_ratio, rear_reserve_ratio : float or array
        SN' / SN of the axle, proposed over present load reserve, greater than zero [1].

    Returns
    -------
    Estimate
        Change of the distance [%], negative is shorter; exactly 0, 0, 0 when nothing changes.

    References
    ----------
    .. [LOAD-SENSITIVITY] that friction falls with load.
    .. [PROJECT] the exponent, the mean over the axles and the band.
    """
    front_log, rear_log = natural_log(front_reserve_ratio), natural_log(rear_reserve_ratio)

    def mean_log(share: Num) -> Num:
        return share * front_log + (1.0 - share) * rear_log

    one, other = mean_log(front_share.low), mean_log(front_share.high)
    least, most = smaller(one, other), larger(one, other)
    return Estimate(
        _percent(-LOAD_SENSITIVITY.value * mean_log(front_share.value)),
        smaller(_percent(-LOAD_SENSITIVITY.low * most), _percent(-LOAD_SENSITIVITY.high * most)),
        larger(_percent(-LOAD_SENSITIVITY.low * least), _percent(-LOAD_SENSITIVITY.high * least)),
    )


def _percent(log_ratio: Num) -> Num:
    return 100.0 * (exponential(log_ratio) - 1.0)
