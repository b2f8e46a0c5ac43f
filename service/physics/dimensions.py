"""Design dimensions of a tyre from its designation and the rim it sits on (UN Regulation No. 30)."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num, round_half_up

SECTION_WIDTH_GAIN: Final = 0.4
"""K, millimetres of section width for each millimetre of rim width [UN-R30 6.1.1.1]."""


def section_width_mm(nominal_mm: Num, rim_width_mm: Num, theoretical_rim_mm: Num) -> Num:
    """Return the design section width of a new tyre on a given rim.

    S = S1 + K (A - A1), with K = 0.4. The regulation rounds S on the measuring rim to whole
    millimetres; the width on any other rim stays unrounded here.

    Parameters
    ----------
    nominal_mm : float or array
        S1, the width in the size designation [mm].
    rim_width_mm : float or array
        A, the rim width between flanges [mm], same shape as `nominal_mm`.
    theoretical_rim_mm : float or array
        A1 = x S1, the width of the theoretical rim [mm].

    Returns
    -------
    float or array
        S [mm], not rounded.

    References
    ----------
    .. [UN-R30 6.1.1.1] read in reproduction.
    """
    return nominal_mm + SECTION_WIDTH_GAIN * (rim_width_mm - theoretical_rim_mm)


def section_height_mm(nominal_mm: Num, aspect_percent: Num) -> Num:
    """Return the design section height in whole millimetres, halves rounded up.

    H = 0.01 S1 Ra. The product is taken before the division, so that 275/30 gives exactly 82.5 and
    rounds to 83: the other order depends on how 0.01 happens to be stored.

    Parameters
    ----------
    nominal_mm : float or array
        S1, the width in the size designation [mm].
    aspect_percent : float or array
        Ra, the nominal aspect ratio [%].

    Returns
    -------
    float or array
        H, whole millimetres [mm].

    References
    ----------
    .. [UN-R30 6.1.2.1] from memory.
    """
    return round_half_up(nominal_mm * aspect_percent / 100.0)


def overall_diameter_mm(rim_diameter_mm: Num, section_height_mm: Num) -> Num:
    """Return the design overall diameter, D = d + 2 H.

    Parameters
    ----------
    rim_diameter_mm : float or array
        d, the nominal rim diameter [mm], rounded as the regulation tabulates it (code 17 is 432).
    section_height_mm : float or array
        H [mm].

    Returns
    -------
    float or array
        D [mm].

    References
    ----------
    .. [UN-R30 6.1.2.1] from memory.
    """
    return rim_diameter_mm + 2.0 * section_height_mm


def worn_diameter_mm(overall_diameter_mm: Num, tread_loss_mm: Num) -> Num:
    """Return the overall diameter of a tyre that has lost tread: two depths off the diameter.

    Parameters
    ----------
    overall_diameter_mm : float or array
        D of the new tyre [mm].
    tread_loss_mm : float or array
        New tread depth less present tread depth [mm].

    Returns
    -------
    float or array
        Diameter of the worn tyre [mm].
    """
    return overall_diameter_mm - 2.0 * tread_loss_mm


def service_width_mm(section_width_mm: Num, growth_percent: float) -> Num:
    """Return the greatest width that a tyre may grow to in service; clearance must use it.

    Parameters
    ----------
    section_width_mm : float or array
        S, the design section width on the rim fitted [mm].
    growth_percent : float
        The tolerance of the regulation, 4 for radial tyres [%].

    Returns
    -------
    float or array
        Width to keep clear [mm].

    References
    ----------
    .. [UN-R30 6.1.4.2] from memory.
    """
    return section_width_mm * (1.0 + growth_percent / 100.0)
