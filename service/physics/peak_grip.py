"""Peak grip of a tyre in the dry: friction, not cornering stiffness, of the same make and compound."""

from __future__ import annotations

from typing import Final

from service.core.findings import Estimate
from service.core.numeric import Num, larger, smaller

LOAD_SENSITIVITY: Final = Estimate(value=0.2, low=0.1, high=0.35)
"""e, the exponent of friction on the load reserve. That friction falls with load stands in every tyre-model text;
how fast is this project's judgement."""


def load_reserve(capacity_kg: Num, load_kg: Num) -> Num:
    """Return what a tyre is built for over what it carries.

    Parameters
    ----------
    capacity_kg : float or array
        What the tyre carries at its pressure [kg].
    load_kg : float or array
        Load on the tyre [kg].

    Returns
    -------
    float or array
        SN [1].
    """
    return capacity_kg / load_kg


def relative_peak_grip(reserve_ratio: Num) -> Estimate[Num]:
    """Return the proposed tyre's coefficient of friction over the present one's, mu' / mu = (SN' / SN)^e.

    Parameters
    ----------
    reserve_ratio : float or array
        SN' / SN, proposed over present load reserve, greater than zero [1].

    Returns
    -------
    Estimate
        mu' / mu [1]; exactly 1, 1, 1 for the same reserve, and the reciprocal band when the two are swapped.

    References
    ----------
    .. [LOAD-SENSITIVITY] that friction falls with load.
    .. [PROJECT] the exponent and its band.
    """
    value: Num = reserve_ratio**LOAD_SENSITIVITY.value
    least: Num = reserve_ratio**LOAD_SENSITIVITY.low
    most: Num = reserve_ratio**LOAD_SENSITIVITY.high
    return Estimate(value, smaller(least, most), larger(least, most))


def peak_grip_change_percent(reserve_ratio: Num) -> Estimate[Num]:
    """Return by how much the grip of an axle grows in the dry.

    Parameters
    ----------
    reserve_ratio : float or array
        SN' / SN, proposed over present load reserve, greater than zero [1].

    Returns
    -------
    Estimate
        Change of mu [%], positive is more grip.

    References
    ----------
    .. [LOAD-SENSITIVITY] that friction falls with load.
    .. [PROJECT] the exponent and its band.
    """
    value, low, high = relative_peak_grip(reserve_ratio)
    return Estimate(100.0 * (value - 1.0), 100.0 * (low - 1.0), 100.0 * (high - 1.0))
