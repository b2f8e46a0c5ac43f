"""Steering balance of a car: compliance of an axle, understeer gradient and its change."""

from __future__ import annotations

from service.core.findings import Estimate
from service.core.numeric import Num, larger, smaller
from service.core.units import STANDARD_GRAVITY_M_S2
from service.physics.cornering_stiffness import (
    LEVEL_BAND,
    StiffnessRatios,
    cornering_stiffness_n_per_deg,
    likely_stiffness,
    stiffness_at,
)


def axle_compliance_deg_per_g(axle_weight_n: Num, axle_stiffness_n_per_deg: Num) -> Num:
    """Return how far an axle's tyres slip for each g of cornering, D = W / C.

    Parameters
    ----------
    axle_weight_n : float or array
        W, weight on the axle [N].
    axle_stiffness_n_per_deg : float or array
        C, cornering stiffness of all tyres of the axle together [N/deg].

    Returns
    -------
    float or array
        D [deg/g], the tyres' part of it: roll and compliance steer are as large and not in it.

    References
    ----------
    .. [GILLESPIE] ch. 6 (read).
    """
    return axle_weight_n / axle_stiffness_n_per_deg


def understeer_gradient_deg_per_g(front_compliance: Num, rear_compliance: Num) -> Num:
    """Return the understeer gradient, K = Wf / Cf - Wr / Cr.

    Parameters
    ----------
    front_compliance : float or array
        Df [deg/g].
    rear_compliance : float or array
        Dr [deg/g].

    Returns
    -------
    float or array
        K [deg/g]; positive is understeer.

    References
    ----------
    .. [GILLESPIE] ch. 6 (read).
    """
    return front_compliance - rear_compliance


def understeer_gradient_change_deg_per_g(
    front_compliance: Num, rear_compliance: Num, front_relative: Num, rear_relative: Num
) -> Num:
    """Return the change of the understeer gradient when the tyres' cornering stiffness changes.

    dK = Df (1 / rf - 1) - Dr (1 / rr - 1): a stiffer rear axle moves the car towards understeer.

    Parameters
    ----------
    front_compliance : float or array
        Df with the present tyres [deg/g].
    rear_compliance : float or array
        Dr with the present tyres [deg/g].
    front_relative : float or array
        rf, proposed over present cornering stiffness of the front axle [1].
    rear_relative : float or array
        rr, the same of the rear axle [1].

    Returns
    -------
    float or array
        dK [deg/g]; positive is towards understeer.

    References
    ----------
    .. [GILLESPIE] ch. 6 (read).
    """
    return front_compliance * (1.0 / front_relative - 1.0) - rear_compliance * (1.0 / rear_relative - 1.0)


def understeer_gradient_change_band_deg_per_g(
    front_compliance: Num,
    rear_compliance: Num,
    front_ratios: StiffnessRatios[Num],
    rear_ratios: StiffnessRatios[Num],
    level_band: float = LEVEL_BAND,
) -> Estimate[Num]:
    """Return the change of the understeer gradient with its band.

    The exponents are one property of tyres at large, so front and rear share them: the band runs between the two
    sets of end exponents that move the gradient furthest down and up. The level of cornering stiffness, and with it
    both compliances, is off by one and the same share; it scales the whole, so it widens the far end of each side.

    Parameters
    ----------
    front_compliance, rear_compliance : float or array
        Df and Dr with the present tyres [deg/g].
    front_ratios, rear_ratios : StiffnessRatios
        The ratios of proposed and present tyres of each axle, to the powers of their exponents [1].
    level_band : float
        Half-width of the band of the present level; 0 where the compliances are measured [1].

    Returns
    -------
    Estimate
        dK [deg/g]; positive is towards understeer; exactly 0, 0, 0 when nothing changes.

    References
    ----------
    .. [GILLESPIE] ch. 6 (read), the relation.
    .. [PROJECT] the band.
    """
    # Where a slope is positive a greater exponent lowers the gradient.
    slopes = [
        front_compliance * front.log - rear_compliance * rear.log
        for front, rear in zip(front_ratios, rear_ratios, strict=True)
    ]
    down, up = [slope > 0.0 for slope in slopes], [slope <= 0.0 for slope in slopes]
    value = understeer_gradient_change_deg_per_g(
        front_compliance, rear_compliance, likely_stiffness(front_ratios), likely_stiffness(rear_ratios)
    )
    one, other = (
        understeer_gradient_change_deg_per_g(
            front_compliance, rear_compliance, stiffness_at(front_ratios, ends), stiffness_at(rear_ratios, ends)
        )
        for ends in (down, up)
    )
    least, most = smaller(smaller(one, other), value), larger(larger(one, other), value)
    # A level that is too high makes the compliances, and the change with them, too small.
    soft, stiff = 1.0 / (1.0 - level_band), 1.0 / (1.0 + level_band)
    return Estimate(value, smaller(least * soft, least * stiff), larger(most * soft, most * stiff))


def lateral_load_transfer_n(
    axle_mass_kg: Num, track_mm: Num, centre_of_gravity_height_mm: Num, lateral_g: float
) -> Num:
    """Return the load that leaves the inner and joins the outer wheel of an axle in a bend.

    F = m a h / t, each axle carrying its own share: how the springs and bars divide the roll is not known here.

    Parameters
    ----------
    axle_mass_kg : float or array
        m, mass on the axle [kg].
    track_mm : float or array
        t [mm].
    centre_of_gravity_height_mm : float or array
        h [mm].
    lateral_g : float
        Lateral acceleration [g].

    Returns
    -------
    float or array
        Load moved from one wheel to the other [N].

    References
    ----------
    .. [GILLESPIE] ch. 6 (read).
    """
    return axle_mass_kg * STANDARD_GRAVITY_M_S2 * lateral_g * centre_of_gravity_height_mm / track_mm


def axle_stiffness_n_per_deg(axle_weight_n: Num, rated_load_n: Num, transfer_n: Num) -> Num:
    """Return the cornering stiffness of an axle of two tyres, the loads apart by a lateral transfer.

    The stiffness of a tyre grows less than its load, so the axle loses by the transfer. A wheel that
    has lifted off carries nothing.

    Parameters
    ----------
    axle_weight_n : float or array
        Weight on the axle [N].
    rated_load_n : float or array
        Load of each tyre's load index [N].
    transfer_n : float or array
        Load moved from the inner to the outer wheel, 0 when going straight [N].

    Returns
    -------
    float or array
        Stiffness of the axle [N/deg].

    References
    ----------
    .. [SIMILARITY] read in an open vehicle simulator.
    """
    wheel_n = 0.5 * axle_weight_n
    moved_n = smaller(transfer_n, wheel_n)
    inner = cornering_stiffness_n_per_deg(wheel_n - moved_n, rated_load_n)
    outer = cornering_stiffness_n_per_deg(wheel_n + moved_n, rated_load_n)
    return inner + outer
