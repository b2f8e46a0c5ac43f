"""What season, day, place and use of the vehicle change in the questions: winter relief and the law's reliefs."""

from __future__ import annotations

from typing import NamedTuple

from service.assessment.case import Case, Vehicle
from service.assessment.view.wheel_facts import ALPINE, MUD_AND_SNOW
from service.core.numeric import UNKNOWN, Num, known, pick
from service.rules.pack import Asked, RulePack, asked, speedometer_asked
from service.rules.rule import VehicleFacts
from service.rules.sections import SpeedometerRule


class RulesHere(NamedTuple):
    """Which rules of the place are asked of this vehicle on this day."""

    front: Asked
    rear: Asked
    vehicle: Asked
    speedometer: SpeedometerRule | None
    speedometer_missing: tuple[str, ...]
    """The facts that would settle whether that of the speedometer applies."""


class Conditions(NamedTuple):
    """Numbers, so that arrays meet them too: 1 yes, 0 no, NaN not settled; `day` is the one asked about."""

    winter: bool
    alpine_counts: float
    snow_counts: float
    winter_floor_kmh: float
    law_speed_kmh: float
    axle_mass_share: float
    day: str
    rules: RulesHere
    tyres_vary: bool
    """Whether a speedometer is judged for tyres that roll as differently as the standard lets them."""

    def winter_tyre(self, winter_mark: Num) -> Num:
        """Return whether a tyre with this mark is a winter tyre here and today: 1, 0, NaN where unsettled."""
        return pick(winter_mark == ALPINE, self.alpine_counts, pick(winter_mark == MUD_AND_SNOW, self.snow_counts, 0.0))

    def slow_winter_tyre(self, winter_mark: Num) -> Num:
        """Return whether it is one that may be slower than the vehicle: 3PMSF in any season, M+S alone in winter."""
        other = self.winter_tyre(winter_mark) if self.winter else 0.0
        return pick(winter_mark == ALPINE, self.alpine_counts, other)


def conditions_of(case: Case[Num]) -> Conditions:
    """Return the conditions of a case."""
    pack = case.pack
    day = case.date or pack.edition_date
    vary = case.tyre_tolerance == "standard"
    rules = _rules(pack, case.vehicle, day)
    return Conditions(case.season == "winter", *_winter_marks(pack, day), *_reliefs(case), day, rules, vary)


def _rules(pack: RulePack, vehicle: Vehicle[Num], day: str) -> RulesHere:
    facts = VehicleFacts(vehicle.category, None, vehicle.max_mass_kg, vehicle.built)
    driven = vehicle.driven_axle
    on_front, on_rear, on_vehicle = (
        asked(pack, facts if driven is None else facts._replace(driven=driven in (where, "all")), where, day)
        for where in ("front", "rear", "vehicle")
    )
    return RulesHere(on_front, on_rear, on_vehicle, *speedometer_asked(pack, facts, day))


def law_speed_kmh(case: Case[Num]) -> float:
    """Return the speed at which the law reads the load, NaN where it is the vehicle's own."""
    return _reliefs(case)[0]


def _winter_marks(pack: RulePack, day: str) -> tuple[float, float, float]:
    """Return whether 3PMSF and M+S make a winter tyre on an ISO day, and the lowest speed it may be marked for."""
    counts = {"3PMSF": 0.0, "M+S": 0.0}
    if pack.winter is None:
        return 0.0, 0.0, UNKNOWN
    for marking in pack.winter.markings:
        # The day a tyre was built is not part of a request.
        found = marking.counts(None, day)
        counts[marking.marking] = UNKNOWN if found is None else float(found)
    return counts["3PMSF"], counts["M+S"], pack.winter.speed_floor.value


def _reliefs(case: Case[Num]) -> tuple[float, float]:
    """Return the speed at which the law reads the load (NaN: the vehicle's own), and the share of axle mass it asks."""
    if not case.pack.allowances:
        return UNKNOWN, 1.0
    vehicle = case.vehicle
    limited = vehicle.speed_limited_kmh
    allowances = case.pack.allowances_for(
        VehicleFacts(vehicle.category, None, vehicle.max_mass_kg, vehicle.built),
        seats_standing=vehicle.seats_standing,
        speed_limited_kmh=limited if known(limited) else None,
    )
    speed, share = UNKNOWN, 1.0
    for each in allowances:
        if each.kind == "load_at_speed_kmh":
            speed = each.value
        else:
            share = 1.0 - each.value / 100.0
    return speed, share
