"""What the speedometer shows after a change of wheels, and the lead it needs to stay within bounds."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final, Generic, NamedTuple

from service.core.numeric import Num

if TYPE_CHECKING:
    from collections.abc import Sequence

R39_SHARE: Final = 0.1
"""Share of the true speed by which UN Regulation No. 39 lets the speedometer show too much."""
R39_CONSTANT_KMH: Final = 4.0
"""What it allows on top."""


class LeadRange(NamedTuple, Generic[Num]):
    """The least and the greatest lead (displayed over true speed, now) that stays within bounds after the change."""

    least: Num
    greatest: Num


def indicated_speed_kmh(true_kmh: Num, lead_ratio: Num, circumference_ratio: Num) -> Num:
    """Return the speed shown after the change: a larger wheel turns less and shows less.

    Parameters
    ----------
    true_kmh : float or array
        V2, true speed [km/h].
    lead_ratio : float or array
        Displayed over true speed with the present wheels [1].
    circumference_ratio : float or array
        Proposed over present rolling circumference of the metered wheels [1].

    Returns
    -------
    float or array
        V1, speed shown [km/h].
    """
    return true_kmh * lead_ratio / circumference_ratio


def r39_upper_margin_kmh(true_kmh: Num) -> Num:
    """Return by how much a speedometer may show too much, 0.1 V2 + 4; it may never show too little.

    Parameters
    ----------
    true_kmh : float or array
        V2, true speed [km/h].

    Returns
    -------
    float or array
        Greatest V1 - V2 [km/h].

    References
    ----------
    .. [UN-R39 5.3] second hand.
    .. [EU-75-443] the same bound, read.
    """
    return R39_SHARE * true_kmh + R39_CONSTANT_KMH


def lead_range(circumference_ratio: Num, test_speeds_kmh: Sequence[float]) -> LeadRange[Num]:
    """Return the lead the present speedometer needs so that 0 <= V1 - V2 <= 0.1 V2 + 4 holds after the change.

    The upper bound is a falling share of the speed, so the fastest test speed decides it; the lower
    bound is the same share at every speed.

    Parameters
    ----------
    circumference_ratio : float or array
        Proposed over present rolling circumference [1].
    test_speeds_kmh : sequence of float
        True speeds at which the rule is tested, at least one [km/h].

    Returns
    -------
    LeadRange
        Least and greatest lead, displayed over true speed with the present wheels [1].

    References
    ----------
    .. [UN-R39 5.3] second hand.
    """
    fastest_kmh = max(test_speeds_kmh)
    greatest_share = 1.0 + r39_upper_margin_kmh(fastest_kmh) / fastest_kmh
    return LeadRange(circumference_ratio, circumference_ratio * greatest_share)
