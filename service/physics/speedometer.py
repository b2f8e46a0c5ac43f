"""What the speedometer shows after a change of wheels."""

from __future__ import annotations

from service.core.numeric import Num


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
