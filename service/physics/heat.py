"""How much work a tread takes before it is too hot: for hard driving and the track."""

from __future__ import annotations

from service.core.numeric import Num


def heat_reserve_change_percent(
    tread_width_present_mm: Num,
    overall_diameter_present_mm: Num,
    tread_width_proposed_mm: Num,
    overall_diameter_proposed_mm: Num,
) -> Num:
    """Return by how much the friction work grows that warms the tread as much as before.

    For the same work the tread's temperature rises with 1 / (w D), the rubber that shares the work. Tread depth and
    compound, which matter as much, are not in it; there is no band, because nothing measured is known to set one by.

    Parameters
    ----------
    tread_width_present_mm, tread_width_proposed_mm : float or array
        w, both by the same measure [mm].
    overall_diameter_present_mm, overall_diameter_proposed_mm : float or array
        D [mm].

    Returns
    -------
    float or array
        Change of w D [%], positive stands more.

    References
    ----------
    .. [PROJECT] own law.
    """
    present = tread_width_present_mm * overall_diameter_present_mm
    proposed = tread_width_proposed_mm * overall_diameter_proposed_mm
    return 100.0 * (proposed / present - 1.0)
