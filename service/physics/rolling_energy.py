"""What rolling resistance costs: energy at the wheel, and the fuel an engine burns for it."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final, Literal, NamedTuple

from service.core.findings import Estimate
from service.core.numeric import Num, larger, smaller
from service.core.units import STANDARD_GRAVITY_M_S2

_N_KM_PER_KWH: Final = 3600.0
_KM: Final = 100.0


class Fuel(NamedTuple):
    """Heat in a litre of fuel, and the share of it that more or less work at the wheel costs or saves."""

    heat_kwh_per_l: float
    efficiency: Estimate[float]


FuelName = Literal["petrol", "diesel"]

# Heat: 32 and 36 MJ/l [EU-2009-28 annex III] (from memory). Efficiency from tank to wheel of the last kilowatt-hour,
# better than the mean because an engine's idling losses are paid anyway: this project's judgement.
FUELS: Final[Mapping[FuelName, Fuel]] = MappingProxyType(
    {
        "petrol": Fuel(heat_kwh_per_l=32.0 / 3.6, efficiency=Estimate(value=0.35, low=0.25, high=0.40)),
        "diesel": Fuel(heat_kwh_per_l=36.0 / 3.6, efficiency=Estimate(value=0.40, low=0.30, high=0.45)),
    }
)


def energy_change_kwh_per_100km(rolling_resistance_change_kg_per_t: Num, mass_kg: Num) -> Num:
    """Return by how much the energy grows that the tyres take at the wheel on a level road.

    dE = dC g m s, exact: 0.2724 kWh/100 km for each kg/t and tonne.

    Parameters
    ----------
    rolling_resistance_change_kg_per_t : float or array
        dC, change of the rolling resistance coefficient [kg/t].
    mass_kg : float or array
        m, mass on the tyres that change [kg].

    Returns
    -------
    float or array
        dE [kWh/100 km], positive takes more.
    """
    force_n = rolling_resistance_change_kg_per_t * STANDARD_GRAVITY_M_S2 * mass_kg / 1000.0
    return force_n * _KM / _N_KM_PER_KWH


def fuel_change_l_per_100km(energy_change_kwh_per_100km: Num, fuel: FuelName) -> Estimate[Num]:
    """Return the fuel that an engine burns for a change of energy at the wheel.

    Parameters
    ----------
    energy_change_kwh_per_100km : float or array
        Energy at the wheel, of either sign [kWh/100 km].
    fuel : str
        `petrol` or `diesel`.

    Returns
    -------
    Estimate
        Fuel [l/100 km], positive takes more; the band is that of the efficiency.

    References
    ----------
    .. [EU-2009-28 annex III] heat of the fuels (from memory).
    .. [PROJECT] the efficiency and its band.
    """
    heat, efficiency = FUELS[fuel]
    value, one, other = (energy_change_kwh_per_100km / (heat * share) for share in efficiency)
    return Estimate(value, smaller(one, other), larger(one, other))
