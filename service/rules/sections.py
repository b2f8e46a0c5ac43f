"""The parts of a pack that are more than one bound: speedometer, winter tyres, spare, twin wheels, trailers, towing."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal, NamedTuple

from service.core.findings import Basis, BasisStatus
from service.rules.limits import Limit
from service.rules.rule import Applies, within

SpeedometerKind = Literal["r39", "band"]
TestSpeedIs = Literal["true", "displayed"]
WinterMark = Literal["M+S", "3PMSF"]
AllowanceKind = Literal["axle_mass_percent", "load_at_speed_kmh"]


class TestSpeeds(NamedTuple):
    """The test speeds of vehicles faster than `above_kmh`: fixed ones, and a share of the maximum speed."""

    above_kmh: float
    speeds_kmh: tuple[float, ...]
    share_of_max: float | None = None


# Itself and no other (eq=False), as the pack that it belongs to.
@dataclass(frozen=True, slots=True, eq=False)
class SpeedometerRule:
    """A band for the displayed speed V1 around the true speed V2, linear at both edges.

    least_gain V2 + least_constant <= V1 <= most_gain V2 + most_constant; None: no upper edge.
    """

    kind: SpeedometerKind
    title: str
    least_gain: float
    least_constant_kmh: float
    most_gain: float | None
    most_constant_kmh: float
    test_speed_is: TestSpeedIs
    test_speeds: tuple[TestSpeeds, ...]
    test_speeds_basis: Basis
    applies: Applies
    article: str
    source: str
    status: BasisStatus
    checked: str | None
    basis: Basis
    pack: str
    valid_from: str | None = None
    valid_to: str | None = None
    note: str = ""

    @property
    def can_forbid(self) -> bool:
        """Return whether a speed outside the band is `not_met`, not merely an advisory."""
        return self.status == "read"

    def least_displayed_kmh(self, true_kmh: float) -> float:
        """Return the lowest lawful displayed speed at a true speed [km/h]."""
        return self.least_gain * true_kmh + self.least_constant_kmh

    def most_displayed_kmh(self, true_kmh: float) -> float:
        """Return the highest lawful displayed speed at a true speed [km/h]; infinite where there is none."""
        return float("inf") if self.most_gain is None else self.most_gain * true_kmh + self.most_constant_kmh

    def least_true_kmh(self, displayed_kmh: float) -> float:
        """Return the lowest lawful true speed at a displayed speed [km/h]; 0 where there is none."""
        return 0.0 if self.most_gain is None else (displayed_kmh - self.most_constant_kmh) / self.most_gain

    def most_true_kmh(self, displayed_kmh: float) -> float:
        """Return the highest lawful true speed at a displayed speed [km/h]."""
        return (displayed_kmh - self.least_constant_kmh) / self.least_gain

    def test_speeds_for(self, max_speed_kmh: float) -> tuple[float, ...]:
        """Return the test speeds of a vehicle by its maximum speed [km/h]."""
        row = next((row for row in self.test_speeds if max_speed_kmh > row.above_kmh), None)
        if row is None:
            return ()
        share = () if row.share_of_max is None else (row.share_of_max * max_speed_kmh,)
        return row.speeds_kmh + share


@dataclass(frozen=True, slots=True)
class WinterMarking:
    """A marking that makes a winter tyre here, for tyres built and days up to and including two dates."""

    marking: WinterMark
    built_to: str | None
    used_to: str | None
    article: str
    source: str
    status: BasisStatus
    checked: str | None
    basis: Basis
    note: str = ""

    def counts(self, tyre_built: str | None, date: str | None) -> bool | None:
        """Return whether the marking counts for a tyre built then and used on this ISO day, None when unsettled."""
        pairs = ((self.built_to, tyre_built), (self.used_to, date))
        if any(day is not None and not within(day, None, last) for last, day in pairs):
            return False
        return None if any(last is not None and day is None for last, day in pairs) else True


@dataclass(frozen=True, slots=True)
class WinterRule:
    """When a winter tyre may have a lower speed symbol than the vehicle's maximum speed."""

    label_required: bool
    markings: tuple[WinterMarking, ...]
    speed_floor: Limit
    article: str
    source: str
    status: BasisStatus
    checked: str | None
    basis: Basis
    note: str = ""

    @property
    def can_forbid(self) -> bool:
        """Return whether breaking the rule is `not_met`, not merely an advisory."""
        return self.status == "read"


@dataclass(frozen=True, slots=True)
class Allowance:
    """A relief that the law gives to named vehicles.

    `axle_mass_percent` lowers the axle mass to be carried; `load_at_speed_kmh` lets the load at speed
    be read at this speed instead of the vehicle's own. A fact that is None does not matter;
    `speed_limited_kmh` is the highest setting of the speed limiter.
    """

    code: str
    title: str
    kind: AllowanceKind
    value: float
    unit: str
    applies: Applies
    seats_standing: bool | None
    speed_limited_kmh: float | None
    article: str
    source: str
    status: BasisStatus
    checked: str | None
    basis: Basis
    pack: str
    note: str = ""


class TemporarySpareRule(NamedTuple):
    """What a T-type spare permits."""

    speed_kmh: Limit


class TwinRule(NamedTuple):
    """The least load of each twin tyre as a share of the axle mass."""

    passenger_share: Limit
    commercial_share: Limit


class TrailerRule(NamedTuple):
    """The least load of each passenger tyre of a slow trailer as a share of the axle mass."""

    single_share: Limit
    twin_share: Limit
    speed_kmh: Limit


class TowingRule(NamedTuple):
    """What the rear tyres of a towing car may carry beyond their load, how fast, at what extra pressure."""

    load_excess_percent: Limit
    speed_kmh: Limit
    pressure_gain_kpa: Limit
