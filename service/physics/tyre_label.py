"""The EU tyre label of passenger tyres (class C1) in figures: rolling resistance and wet grip."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal

from service.core.findings import Estimate
from service.core.numeric import Num

LabelClass = Literal["A", "B", "C", "D", "E"]

# The printed limits [EU-1222-2009 annex I] (read); the letters A to E are those of [EU-2020-740] (from memory). The
# open ends, best of A and worst of E, are one class further: this project's judgement.
ROLLING_RESISTANCE_KG_PER_T: Final[Mapping[LabelClass, Estimate[float]]] = MappingProxyType(
    {
        "A": Estimate(value=6.5, low=5.3, high=6.5),
        "B": Estimate(value=7.7, low=6.5, high=7.7),
        "C": Estimate(value=9.0, low=7.7, high=9.0),
        "D": Estimate(value=10.5, low=9.0, high=10.5),
        "E": Estimate(value=12.0, low=10.5, high=12.0),
    }
)
"""Rolling resistance coefficient of each class [kg/t], the likely one at the limit it must keep: classes are
chosen so that tyres just pass."""
WET_GRIP_INDEX: Final[Mapping[LabelClass, Estimate[float]]] = MappingProxyType(
    {
        "A": Estimate(value=1.55, low=1.55, high=1.70),
        "B": Estimate(value=1.40, low=1.40, high=1.55),
        "C": Estimate(value=1.25, low=1.25, high=1.40),
        "D": Estimate(value=1.10, low=1.10, high=1.25),
        "E": Estimate(value=0.95, low=0.95, high=1.10),
    }
)
"""Wet grip index of each class [1], the likely one at the limit it must reach."""


def rolling_resistance_change_kg_per_t(present: LabelClass, proposed: LabelClass) -> Estimate[float]:
    """Return by how much the rolling resistance coefficient grows from one class to another.

    Parameters
    ----------
    present, proposed : str
        Class of the label, A to E.

    Returns
    -------
    Estimate
        Limit to limit, and between the nearest and the furthest tyres of the two classes [kg/t].

    References
    ----------
    .. [EU-1222-2009 annex I] the limits (read).
    .. [EU-2020-740] the letters (from memory).
    """
    now, then = ROLLING_RESISTANCE_KG_PER_T[present], ROLLING_RESISTANCE_KG_PER_T[proposed]
    return Estimate(then.value - now.value, then.low - now.high, then.high - now.low)


def wet_braking_distance_change_percent(index_present: Num, index_proposed: Num) -> Num:
    """Return by how much the wet braking distance grows with the wet grip index, s' / s = G / G'.

    Parameters
    ----------
    index_present, index_proposed : float or array
        G and G', greater than zero [1].

    Returns
    -------
    float or array
        Change of the distance [%], negative is shorter.

    References
    ----------
    .. [EU-1222-2009 annex I] the index compares decelerations (read).
    """
    return 100.0 * (index_present / index_proposed - 1.0)


def wet_class_distance_change_percent(present: LabelClass, proposed: LabelClass) -> Estimate[float]:
    """Return by how much the wet braking distance grows from one class to another.

    Parameters
    ----------
    present, proposed : str
        Class of the label, A to E.

    Returns
    -------
    Estimate
        Limit to limit, and between the nearest and the furthest tyres of the two classes [%].

    References
    ----------
    .. [EU-1222-2009 annex I] the limits (read).
    .. [EU-2020-740] the letters (from memory).
    """
    now, then = WET_GRIP_INDEX[present], WET_GRIP_INDEX[proposed]
    return Estimate(
        wet_braking_distance_change_percent(now.value, then.value),
        wet_braking_distance_change_percent(now.low, then.high),
        wet_braking_distance_change_percent(now.high, then.low),
    )
