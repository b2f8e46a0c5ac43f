"""A rule pack: the law of one place, with what it inherits already in it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from service.core.saying import Said
from service.rules.limits import Limits
from service.rules.rule import Applies, Bound, Rule, VehicleFacts, within
from service.rules.sections import Allowance, SpeedometerRule, WinterRule

__all__ = ["Applies", "Asked", "Bound", "Rule", "RulePack", "VehicleFacts"]


class Asked(NamedTuple):
    """The rules that apply, and those that may apply with the names of the vehicle facts that would settle it."""

    rules: tuple[Rule, ...]
    unsettled: tuple[tuple[Rule, tuple[str, ...]], ...]


# A pack is itself and no other (eq=False): a case is compared by its pack without a look through all rules.
@dataclass(frozen=True, slots=True, eq=False)
class RulePack:
    """The law of one place; rules of the packs it builds on are included, its own come in their stead by code."""

    id: str
    title: Said
    edition: str
    inherits: tuple[str, ...]
    limits: Limits
    rules: tuple[Rule, ...]
    speedometers: tuple[SpeedometerRule, ...]
    winter: WinterRule | None
    allowances: tuple[Allowance, ...]
    notes: tuple[Said, ...]
    not_held: tuple[Said, ...]
    """What of the place's law was not found or is not asked, in sentences."""

    @property
    def rule_count(self) -> int:
        """Return how many rules it has, those on the speedometer among them."""
        return len(self.rules) + len(self.speedometers)

    def r39_holds_for(self, facts: VehicleFacts, day: str) -> bool:
        """Return whether UN R39 itself is the law of the speedometer for a vehicle on an ISO day; see `r39_is_law`."""
        return r39_is_law(*speedometer_asked(self, facts, day))

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
        """Return the pack's first speedometer rule.

        Raises
        ------
        IndexError
            When the place has none.
        """
        return self.speedometers[0]


def asked(pack: RulePack, facts: VehicleFacts, axle: str, day: str) -> Asked:
    """Return the rules of a pack that apply, or may apply, to an axle or the `vehicle` on an ISO day."""
    candidates = [
        (rule, rule.applies.missing(facts)) for rule in pack.rules if rule.applies.concerns(axle) and rule.valid_on(day)
    ]
    return Asked(
        tuple(rule for rule, missing in candidates if missing == ()),
        tuple((rule, missing) for rule, missing in candidates if missing),
    )


def speedometer_asked(pack: RulePack, facts: VehicleFacts, day: str) -> tuple[SpeedometerRule | None, tuple[str, ...]]:
    """Return the first speedometer rule that surely applies, and the facts that may settle on one before it.

    Where none surely applies it is the last that may; None where the place has none for such a vehicle.
    """
    lacking: dict[str, None] = {}
    possible: SpeedometerRule | None = None
    for rule in pack.speedometers:
        missing = rule.applies.missing(facts) if within(day, rule.valid_from, rule.valid_to) else None
        if missing == ():
            return rule, tuple(lacking)
        if missing:
            possible = rule
            lacking |= dict.fromkeys(missing)
    return possible, tuple(lacking)


def r39_is_law(rule: SpeedometerRule | None, missing: tuple[str, ...]) -> bool:
    """Return whether what `speedometer_asked` found is UN R39 itself.

    Where it is not, a speedometer that R39 would refuse is no more than worth a word, and the place's own rule
    (`law.speedometer`), if it has one, decides.
    """
    return rule is not None and not missing and rule.is_un_r39
