"""A rule pack: the law of one place, with what it inherits already in it."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from service.rules.limits import Limits
from service.rules.rule import Applies, Bound, Rule, VehicleFacts, within
from service.rules.sections import (
    Allowance,
    SpeedometerRule,
    TemporarySpareRule,
    TowingRule,
    TrailerRule,
    TwinRule,
    WinterRule,
)

__all__ = ["Applies", "Bound", "Rule", "RulePack", "VehicleFacts"]


# A pack is itself and no other (eq=False), which makes it a cheap key for what was asked of it before.
@dataclass(frozen=True, slots=True, eq=False)
class RulePack:
    """The law of one place; rules of the packs it builds on are included, its own come in their stead by code."""

    id: str
    title: str
    edition: str
    inherits: tuple[str, ...]
    limits: Limits
    rules: tuple[Rule, ...]
    speedometers: tuple[SpeedometerRule, ...]
    winter: WinterRule | None
    allowances: tuple[Allowance, ...]
    notes: tuple[str, ...]

    def rules_for(
        self,
        category: str | None,
        axle: str,
        *,
        driven: bool | None,
        mass_kg: float | None,
        built: str | None,
        date: str | None,
    ) -> tuple[Rule, ...]:
        """Return the rules that apply to an axle (`front`, `rear`) or the `vehicle` on this ISO day.

        Without a day it is the first day of the pack's edition. A rule that needs a fact not given
        is left out here and named by `unsettled_for`.
        """
        found = _candidates(self, VehicleFacts(category, driven, mass_kg, built), axle, date or self.edition_date)
        return tuple(rule for rule, missing in found if not missing)

    def unsettled_for(
        self,
        category: str | None,
        axle: str,
        *,
        driven: bool | None,
        mass_kg: float | None,
        built: str | None,
        date: str | None,
    ) -> tuple[tuple[Rule, tuple[str, ...]], ...]:
        """Return the rules that may apply, each with the names of the vehicle facts that would settle it."""
        found = _candidates(self, VehicleFacts(category, driven, mass_kg, built), axle, date or self.edition_date)
        return tuple((rule, missing) for rule, missing in found if missing)

    def speedometer_for(
        self, category: str | None, mass_kg: float | None, built: str | None, date: str | None
    ) -> SpeedometerRule:
        """Return the speedometer rule of a vehicle: the first that surely applies.

        The last rule of a pack applies to every vehicle (the reader sees to it), so there is always one.
        """
        facts = VehicleFacts(category, None, mass_kg, built)
        day = date or self.edition_date
        return next(
            (
                rule
                for rule in self.speedometers
                if within(day, rule.valid_from, rule.valid_to) and rule.applies.missing(facts) == ()
            ),
            self.speedometers[-1],
        )

    def unsettled_speedometer_for(
        self, category: str | None, mass_kg: float | None, built: str | None, date: str | None
    ) -> tuple[str, ...]:
        """Return the names of the vehicle facts that would settle which speedometer rule applies, empty if none."""
        facts = VehicleFacts(category, None, mass_kg, built)
        day = date or self.edition_date
        lacking: dict[str, None] = {}
        for rule in self.speedometers:
            missing = rule.applies.missing(facts) if within(day, rule.valid_from, rule.valid_to) else None
            if missing == ():
                break
            lacking |= dict.fromkeys(missing or ())
        return tuple(lacking)

    def allowances_for(
        self,
        facts: VehicleFacts,
        *,
        seats_standing: bool | None = None,
        speed_limited_kmh: float | None = None,
    ) -> tuple[Allowance, ...]:
        """Return the reliefs that a vehicle surely has; a fact not given gives no relief."""
        return tuple(
            allowance
            for allowance in self.allowances
            if allowance.applies.missing(facts) == ()
            and allowance.seats_standing in (None, seats_standing)
            and (
                allowance.speed_limited_kmh is None
                or (speed_limited_kmh is not None and speed_limited_kmh <= allowance.speed_limited_kmh)
            )
        )

    @property
    def edition_date(self) -> str:
        """Return the first day of the edition as an ISO text."""
        return f"{self.edition}-01"

    @property
    def speedometer(self) -> SpeedometerRule:
        """Return the pack's first speedometer rule."""
        return self.speedometers[0]

    @property
    def temporary_spare(self) -> TemporarySpareRule:
        """Return what a temporary-use spare permits here."""
        return TemporarySpareRule(self.limits.temporary_spare_speed_kmh)

    @property
    def twin(self) -> TwinRule:
        """Return the load shares of twin tyres here."""
        return TwinRule(self.limits.load_share_twin_passenger, self.limits.load_share_twin_commercial)

    @property
    def trailer(self) -> TrailerRule:
        """Return the load shares of trailers' passenger tyres here."""
        limits = self.limits
        return TrailerRule(limits.load_share_trailer_single, limits.load_share_trailer_twin, limits.trailer_speed_kmh)

    @property
    def towing(self) -> TowingRule:
        """Return what towing permits here."""
        limits = self.limits
        return TowingRule(limits.towing_load_excess_percent, limits.towing_speed_kmh, limits.towing_pressure_gain_kpa)


@lru_cache(maxsize=4096)
def _candidates(pack: RulePack, facts: VehicleFacts, axle: str, day: str) -> tuple[tuple[Rule, tuple[str, ...]], ...]:
    """Return the rules that apply or may apply on an ISO day, each with the names of the facts still needed."""
    asked = (
        (rule, rule.applies.missing(facts)) for rule in pack.rules if rule.applies.concerns(axle) and rule.valid_on(day)
    )
    return tuple((rule, missing) for rule, missing in asked if missing is not None)
