"""What a new rolling circumference does to engine speed, distance shown and the agreement of the axles."""

from __future__ import annotations

from service.core.numeric import Num


def engine_speed_change_percent(circumference_present_mm: Num, circumference_proposed_mm: Num) -> Num:
    """Return how much faster the engine turns at the same road speed and gear.

    Parameters
    ----------
    circumference_present_mm : float or array
        Rolling circumference of the driven wheels now [mm].
    circumference_proposed_mm : float or array
        Rolling circumference proposed [mm].

    Returns
    -------
    float or array
        Change [%]; negative for larger wheels.
    """
    return 100.0 * (circumference_present_mm / circumference_proposed_mm - 1.0)


def odometer_change_percent(circumference_present_mm: Num, circumference_proposed_mm: Num) -> Num:
    """Return how much more distance is shown for the same distance driven: turns are counted, as by the engine.

    Parameters
    ----------
    circumference_present_mm : float or array
        Rolling circumference of the metered wheels now [mm].
    circumference_proposed_mm : float or array
        Rolling circumference proposed [mm].

    Returns
    -------
    float or array
        Change [%]; negative for larger wheels.
    """
    return engine_speed_change_percent(circumference_present_mm, circumference_proposed_mm)


def axle_ratio_change_percent(
    front_present_mm: Num, rear_present_mm: Num, front_proposed_mm: Num, rear_proposed_mm: Num
) -> Num:
    """Return how much the front axle's circumference grows against the rear's.

    Parameters
    ----------
    front_present_mm, rear_present_mm : float or array
        Rolling circumferences now [mm].
    front_proposed_mm, rear_proposed_mm : float or array
        Rolling circumferences proposed [mm].

    Returns
    -------
    float or array
        Change of front over rear [%].
    """
    return 100.0 * (front_proposed_mm * rear_present_mm / (rear_proposed_mm * front_present_mm) - 1.0)
