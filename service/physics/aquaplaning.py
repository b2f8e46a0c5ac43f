"""Speed at which a tyre begins to float on standing water."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num, larger
from service.core.units import KMH_PER_MPH, KPA_PER_PSI, MM_PER_INCH
from service.physics.bands import Multiples

ONSET_BAND: Final = 0.20
"""Half-width of the band of the onset speed."""
CHANGE_BAND: Final = Multiples(0.75, 1.7)
"""Band of the change of the onset, as multiples of it."""

_MM_PER_32ND: Final = MM_PER_INCH / 32.0


def gallaway_onset_kmh(
    pressure_kpa: Num,
    tread_depth_mm: Num,
    water_film_mm: Num,
    texture_depth_mm: Num,
    spin_down_percent: float = 10.0,
) -> Num:
    """Return the speed at which a tyre has lost a share of its turning speed to the water.

    V = SD^0.04 p^0.3 (TD + 1)^0.06 A in miles per hour, with
    A = max(10.409 / WD^0.06 + 3.507, (28.952 / WD^0.06 - 7.817) TXD^0.14); p in psi, TD in 32nds of
    an inch, WD and TXD in inches. Tread pattern, void and width have no term in it.

    Parameters
    ----------
    pressure_kpa : float or array
        p, inflation pressure [kPa].
    tread_depth_mm : float or array
        TD, tread depth [mm].
    water_film_mm : float or array
        WD, water above the road's texture, greater than zero [mm].
    texture_depth_mm : float or array
        TXD, mean texture depth of the road [mm].
    spin_down_percent : float
        SD, loss of turning speed that counts as floating [%].

    Returns
    -------
    float or array
        Onset speed [km/h], within plus or minus `ONSET_BAND`.

    References
    ----------
    .. [GALLAWAY-1979] FHWA-RD-79-31 (second hand).
    """
    thinning: Num = (water_film_mm / MM_PER_INCH) ** -0.06
    texture: Num = (texture_depth_mm / MM_PER_INCH) ** 0.14
    road = larger(10.409 * thinning + 3.507, (28.952 * thinning - 7.817) * texture)
    tyre: Num = (pressure_kpa / KPA_PER_PSI) ** 0.3 * (tread_depth_mm / _MM_PER_32ND + 1.0) ** 0.06
    spin_down: float = spin_down_percent**0.04
    return KMH_PER_MPH * spin_down * tyre * road


def width_factor(width_present_mm: Num, width_proposed_mm: Num) -> Num:
    """Return the onset of the proposed tyre over that of the present one, sqrt(W / W').

    A wider patch has more water to push aside. This project's own law: the published
    formula above has no width in it.

    Parameters
    ----------
    width_present_mm : float or array
        W, width of the contact patch now [mm].
    width_proposed_mm : float or array
        W', width of the contact patch proposed [mm].

    Returns
    -------
    float or array
        Ratio of the onsets [1]; 1 less than it times `CHANGE_BAND` is the band of the change.

    References
    ----------
    .. [PROJECT] own law.
    """
    factor: Num = (width_present_mm / width_proposed_mm) ** 0.5
    return factor
