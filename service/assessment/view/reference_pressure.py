"""At which pressure a tyre carries its load index, and by which law it carries less below: by its class.

A commercial tyre (classes C2, C3 and light truck) carries its load index at the pressure on its sidewall, which the
designation does not tell; a passenger tyre at that of its load version.

References
----------
.. [TRA] pressures and the load-pressure law of P-metric tyres (second hand).
.. [TRADE-LT] light-truck tyres of load range E (read).
.. [ETRTO pressure-load] standard load (read); extra and high load from memory.
"""

from __future__ import annotations

from service.core.numeric import UNKNOWN
from service.designation.tyre import TyreDesignation
from service.physics.pressure_load import LOAD_EXPONENT, LT_LOAD_EXPONENT, load_range_e_pressure_kpa

STANDARD_PRESSURE_KPA = 250.0
REINFORCED_PRESSURE_KPA = 290.0
P_METRIC_PRESSURE_KPA = 240.0
P_METRIC_REINFORCED_PRESSURE_KPA = 280.0
TEMPORARY_SPARE_PRESSURE_KPA = 420.0
P_METRIC_EXPONENT = 0.5


def pressure_exponent(designation: TyreDesignation) -> float:
    """Return the power of the pressure with which the load goes [1]."""
    if designation.system == "p_metric":
        return P_METRIC_EXPONENT
    return LT_LOAD_EXPONENT if _is_light_truck(designation) else LOAD_EXPONENT


def _is_light_truck(designation: TyreDesignation) -> bool:
    """Return whether it is a light-truck tyre, as sizes in inches of diameter and width are with or without LT."""
    return designation.commercial == "LT" or designation.system == "flotation"


def reference_pressure_kpa(designation: TyreDesignation) -> float:
    """Return the pressure at which a tyre carries its load index [kPa], NaN where only its sidewall tells."""
    if designation.system == "temporary_spare":
        return TEMPORARY_SPARE_PRESSURE_KPA
    if designation.is_commercial or _is_light_truck(designation):
        # Other load ranges stand for more than one pressure.
        by_range = _is_light_truck(designation) and designation.load_range == "E"
        return load_range_e_pressure_kpa(designation.section_width_mm) if by_range else UNKNOWN
    reinforced = designation.load_version in ("extra_load", "high_load")
    if designation.system == "p_metric":
        return P_METRIC_REINFORCED_PRESSURE_KPA if reinforced else P_METRIC_PRESSURE_KPA
    return REINFORCED_PRESSURE_KPA if reinforced else STANDARD_PRESSURE_KPA
