"""Which class a tyre is of, and at which pressure it carries its load index: by its designation, not by letters alone.

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
from service.standards.commercial_speed_load import LEAST_HEAVY_INDEX

STANDARD_PRESSURE_KPA = 250.0
REINFORCED_PRESSURE_KPA = 290.0
P_METRIC_PRESSURE_KPA = 240.0
P_METRIC_REINFORCED_PRESSURE_KPA = 280.0
TEMPORARY_SPARE_PRESSURE_KPA = 420.0
P_METRIC_EXPONENT = 0.5
# Rims of these codes take commercial tyres alone: common practice, from memory.
COMMERCIAL_RIM_CODES = (17.5, 19.5, 22.5)


def is_commercial(designation: TyreDesignation) -> bool:
    """Return whether it is a commercial tyre: by C, CP or LT, a second load index, a high one, or its rim."""
    index = designation.load_index
    return (
        designation.commercial != ""
        or designation.load_index_twin is not None
        or (index is not None and index >= LEAST_HEAVY_INDEX)
        or designation.rim_code in COMMERCIAL_RIM_CODES
    )


def pressure_exponent(designation: TyreDesignation) -> float:
    """Return the power of the pressure with which the load goes [1]."""
    if designation.system == "p_metric":
        return P_METRIC_EXPONENT
    return LT_LOAD_EXPONENT if designation.commercial == "LT" else LOAD_EXPONENT


def reference_pressure_kpa(designation: TyreDesignation) -> float:
    """Return the pressure at which a tyre carries its load index [kPa], NaN where only its sidewall tells."""
    if designation.system == "temporary_spare":
        return TEMPORARY_SPARE_PRESSURE_KPA
    if is_commercial(designation):
        # Other load ranges stand for more than one pressure.
        by_range = designation.commercial == "LT" and designation.load_range == "E"
        return load_range_e_pressure_kpa(designation.section_width_mm) if by_range else UNKNOWN
    reinforced = designation.load_version in ("extra_load", "high_load")
    if designation.system == "p_metric":
        return P_METRIC_REINFORCED_PRESSURE_KPA if reinforced else P_METRIC_PRESSURE_KPA
    return REINFORCED_PRESSURE_KPA if reinforced else STANDARD_PRESSURE_KPA
