"""Where a wheel stands: the hub's mounting face is the origin, outboard is positive."""

from __future__ import annotations

from typing import Final

from service.core.numeric import Num

FLANGE_MM: Final = 12.7
"""Width of one rim flange outside the measured rim width [COMMON-PRACTICE] (from memory)."""


def outer_edge_mm(width_mm: Num, offset_mm: Num) -> Num:
    """Return how far a tyre or rim reaches outboard of the mounting face, w / 2 - ET.

    Parameters
    ----------
    width_mm : float or array
        Overall width of the tyre or of the rim [mm].
    offset_mm : float or array
        ET, positive when the mounting face lies outboard of the rim's centre plane [mm].

    Returns
    -------
    float or array
        Distance outboard [mm].
    """
    return 0.5 * width_mm - offset_mm


def inner_edge_mm(width_mm: Num, offset_mm: Num) -> Num:
    """Return how far a tyre or rim reaches inboard of the mounting face, w / 2 + ET.

    Parameters
    ----------
    width_mm : float or array
        Overall width of the tyre or of the rim [mm].
    offset_mm : float or array
        ET [mm].

    Returns
    -------
    float or array
        Distance inboard [mm].
    """
    return 0.5 * width_mm + offset_mm


def rim_overall_width_mm(rim_width_mm: Num) -> Num:
    """Return the width of a rim over its flanges; the designation measures between them.

    Parameters
    ----------
    rim_width_mm : float or array
        Rim width between flanges [mm].

    Returns
    -------
    float or array
        Width over both flanges [mm], flange thickness from memory.
    """
    return rim_width_mm + 2.0 * FLANGE_MM


def grown_diameter_mm(
    rim_diameter_mm: Num, section_height_mm: Num, height_growth_percent: float, more_percent: Num
) -> Num:
    """Return the greatest diameter that a tyre may have in service, (d + 2 H b) c.

    Parameters
    ----------
    rim_diameter_mm : float or array
        d, the nominal rim diameter [mm].
    section_height_mm : float or array
        H, the design section height [mm].
    height_growth_percent : float
        How much higher than designed the section may be, b = 1 + this / 100 [%].
    more_percent : float or array
        How much more of the whole diameter is allowed, as it is to tyres for snow, c = 1 + this / 100 [%].

    Returns
    -------
    float or array
        Diameter to keep clear [mm].

    References
    ----------
    .. [COMMON-PRACTICE] tolerances of the outer diameter, from memory.
    """
    grown = rim_diameter_mm + 2.0 * section_height_mm * (1.0 + height_growth_percent / 100.0)
    return grown * (1.0 + more_percent / 100.0)


def track_change_mm(offset_present_mm: Num, offset_proposed_mm: Num) -> Num:
    """Return how much the track of an axle grows, -2 dET; neither rim nor tyre width matters.

    Parameters
    ----------
    offset_present_mm : float or array
        ET now [mm].
    offset_proposed_mm : float or array
        ET proposed [mm].

    Returns
    -------
    float or array
        Change of track, positive is wider [mm].
    """
    return 2.0 * (offset_present_mm - offset_proposed_mm)


def scrub_radius_change_mm(offset_present_mm: Num, offset_proposed_mm: Num) -> Num:
    """Return how much the scrub radius grows (towards positive), -dET; the wheel's diameter left out.

    Parameters
    ----------
    offset_present_mm : float or array
        ET now [mm].
    offset_proposed_mm : float or array
        ET proposed [mm].

    Returns
    -------
    float or array
        Change of scrub radius, positive moves the patch outboard of the steering axis [mm].
    """
    return offset_present_mm - offset_proposed_mm


def ride_height_change_mm(loaded_radius_present_mm: Num, loaded_radius_proposed_mm: Num) -> Num:
    """Return how much an end of the car rises: the change of static loaded radius, not of half the diameter.

    Parameters
    ----------
    loaded_radius_present_mm : float or array
        Static loaded radius now [mm].
    loaded_radius_proposed_mm : float or array
        Static loaded radius proposed [mm].

    Returns
    -------
    float or array
        Change of height, positive is higher [mm].
    """
    return loaded_radius_proposed_mm - loaded_radius_present_mm
