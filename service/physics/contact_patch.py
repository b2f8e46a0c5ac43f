"""Size of the contact patch of a standing tyre: a model of this project, fitted to measured footprints."""

from __future__ import annotations

from typing import Final, Generic, NamedTuple

from service.core.numeric import Num

LENGTH_BAND: Final = 0.15
"""Half-width of the band of the length of one tyre, from about half of its rated load upwards."""
WIDTH_BAND: Final = 0.08
"""The same of its width."""
AREA_BAND: Final = 0.12
"""The same of its gross area."""
LIGHT_LOAD_BAND: Final = 0.20
"""Half-width of the band of length and area below half of the rated load, where both come out too large."""
LIGHT_LOAD_SHARE: Final = 0.5
"""The share of the rated load below which a load is light; the footprints held against went down to 0.3 of it."""
LENGTH_RATIO_BAND: Final = 0.08
"""Half-width of the band of the ratio of two sizes' lengths at the same load and pressure."""
WIDTH_RATIO_BAND: Final = 0.05
"""The same of their widths."""

GROSS_SHARE: Final = 0.92
"""Gross area over length times width: a footprint has round corners (mean of the measured footprints, 0.87 to 0.97)."""
_CUBE_ROOT: Final = 1.0 / 3.0
_NORMAL_FILL: Final = 1.2648 * 0.045**_CUBE_ROOT - 1.4057 * 0.045


class ContactPatch(NamedTuple, Generic[Num]):
    """Length along the car, width across it, and gross area (grooves included) of a contact patch."""

    length_mm: Num
    width_mm: Num
    area_cm2: Num


def length_band(load_share: float) -> float:
    """Return the half-width of the band of the length of one tyre's contact patch.

    Parameters
    ----------
    load_share : float
        Load over the tyre's rated load [1]; NaN, where that is not known, has the wider band.

    Returns
    -------
    float
        `LENGTH_BAND`, or `LIGHT_LOAD_BAND` below `LIGHT_LOAD_SHARE` [1].

    References
    ----------
    .. [FOOTPRINTS-2021] the measured footprints it was held against.
    """
    return LENGTH_BAND if load_share >= LIGHT_LOAD_SHARE else LIGHT_LOAD_BAND


def area_band(load_share: float) -> float:
    """Return the half-width of the band of the gross area of one tyre's contact patch.

    Parameters
    ----------
    load_share : float
        Load over the tyre's rated load [1]; NaN, where that is not known, has the wider band.

    Returns
    -------
    float
        `AREA_BAND`, or `LIGHT_LOAD_BAND` below `LIGHT_LOAD_SHARE` [1].

    References
    ----------
    .. [FOOTPRINTS-2021] the measured footprints it was held against.
    """
    return AREA_BAND if load_share >= LIGHT_LOAD_SHARE else LIGHT_LOAD_BAND


def tread_width_mm(nominal_width_mm: Num, aspect_percent: Num) -> Num:
    """Return the width of the tread from the size designation, (1.075 - 0.5 AR / 100) SN.

    Parameters
    ----------
    nominal_width_mm : float or array
        SN [mm].
    aspect_percent : float or array
        AR [%].

    Returns
    -------
    float or array
        Tread width [mm].

    References
    ----------
    .. [MF-TYRE] read in published code.
    """
    return (1.075 - 0.005 * aspect_percent) * nominal_width_mm


def contact_patch(
    load_n: Num,
    pressure_kpa: Num,
    overall_diameter_mm: Num,
    section_height_mm: Num,
    tread_width_mm: Num,
    deflection_mm: Num,
) -> ContactPatch[Num]:
    """Return length, width and gross area of the contact patch.

    With x = deflection / R0 and g(x) = 1.2648 x^(1/3) - 1.4057 x:
    width W = 0.89 rtw g(x) / g(0.045); length L = F / (k P W), k = 0.931 (deflection / H / 0.16)^0.212;
    gross area A = 0.92 L W, because F / (k P) was fitted to the rectangle around the footprint and the
    footprint does not fill it. The chord of the undeflected circle is not used: it is twice too long.

    Parameters
    ----------
    load_n : float or array
        F, load on one tyre [N].
    pressure_kpa : float or array
        P, inflation pressure [kPa].
    overall_diameter_mm : float or array
        2 R0 [mm].
    section_height_mm : float or array
        H [mm].
    tread_width_mm : float or array
        rtw, see `tread_width_mm` [mm].
    deflection_mm : float or array
        Vertical deflection under the load [mm].

    Returns
    -------
    ContactPatch
        Length [mm], width [mm], area [cm2]; bands `LENGTH_BAND`, `WIDTH_BAND`, `AREA_BAND`.

    References
    ----------
    .. [FOOTPRINTS-2021] the measured footprints it was fitted to.
    .. [PROJECT] the model.
    """
    relative = 2.0 * deflection_mm / overall_diameter_mm
    fill = (1.2648 * relative**_CUBE_ROOT - 1.4057 * relative) / _NORMAL_FILL
    width_mm = 0.89 * tread_width_mm * fill
    carried_share = 0.931 * (deflection_mm / section_height_mm / 0.16) ** 0.212
    # A newton per kilopascal is a thousandth of a square metre: ten square centimetres.
    rectangle_cm2 = 10.0 * load_n / (carried_share * pressure_kpa)
    return ContactPatch(100.0 * rectangle_cm2 / width_mm, width_mm, GROSS_SHARE * rectangle_cm2)
