"""The parts of a pack that are more than bounds or limits: speedometer, winter tyres, reliefs."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import AfterValidator, Field, InstanceOf, ValidationInfo

from service.core.findings import Basis, Holds
from service.core.numeric import Num
from service.rules.limits import Limit
from service.rules.provenance import Provenance
from service.rules.rule import Applies, within
from service.rules.written import CLOSED, Day, Flag, Number, Positive, Sentence, Text, fault, known, not_before

SpeedometerKind = Literal["r39", "band"]
TestSpeedIs = Literal["true", "displayed"]
WinterMark = Literal["M+S", "3PMSF"]
AllowanceKind = Literal["axle_mass_percent", "load_at_speed_kmh"]

_UNIT_OF_ALLOWANCE: dict[AllowanceKind, str] = {"axle_mass_percent": "%", "load_at_speed_kmh": "km/h"}


@dataclass(frozen=True, slots=True)
class TestSpeeds:
    """The test speeds of vehicles faster than `above_kmh`: fixed ones, and a share of the maximum speed."""

    __pydantic_config__ = CLOSED

    above_kmh: Number
    speeds_kmh: tuple[Positive, ...]
    share_of_max: Positive | None = None


def _rows_of_speeds(rows: tuple[TestSpeeds, ...]) -> tuple[TestSpeeds, ...]:
    above = [row.above_kmh for row in rows]
    if above != sorted(above, reverse=True):
        raise fault("{key} must begin with the fastest vehicles")
    if not rows or not all(row.speeds_kmh or row.share_of_max for row in rows):
        raise fault("{key} must have rows, each with a speed or a share of the maximum speed")
    return rows


def _above_the_lower_edge(most: float | None, info: ValidationInfo) -> float | None:
    least = info.data.get("least_gain")
    if most is not None and least is not None and most < least:
        raise fault("{key} must not lie below least_gain")
    return most


# Itself and no other (eq=False), as the pack that it belongs to.
@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class SpeedometerRule(Provenance):
    """A band for the displayed speed V1 around the true speed V2, linear at both edges.

    least_gain V2 + least_constant <= V1 <= most_gain V2 + most_constant; None: no upper edge.
    """

    kind: SpeedometerKind
    title: Sentence
    least_gain: Positive
    least_constant_kmh: Number
    most_gain: Annotated[Number | None, AfterValidator(_above_the_lower_edge)]
    most_constant_kmh: Number
    test_speed_is: TestSpeedIs
    test_speeds: Annotated[tuple[TestSpeeds, ...], AfterValidator(_rows_of_speeds)]
    test_speeds_basis: InstanceOf[Basis]
    applies: Applies
    pack: str
    valid_from: Day | None = None
    valid_to: Annotated[Day | None, not_before("valid_from")] = None

    @property
    def is_un_r39(self) -> bool:
        """Return whether this is UN R39 itself: its band, tried at true speeds."""
        return self.kind == "r39" and self.test_speed_is == "true"

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

    def has_test_speed(self, max_speed_kmh: Num) -> Holds:
        """Return whether a vehicle of this maximum speed [km/h] reaches any test speed; floats or arrays alike."""
        return max_speed_kmh > self.test_speeds[-1].above_kmh

    def test_speeds_for(self, max_speed_kmh: float) -> tuple[float, ...]:
        """Return the test speeds of a vehicle by its maximum speed [km/h]."""
        row = next((row for row in self.test_speeds if max_speed_kmh > row.above_kmh), None)
        if row is None:
            return ()
        share = () if row.share_of_max is None else (row.share_of_max * max_speed_kmh,)
        return row.speeds_kmh + share


@dataclass(frozen=True, slots=True, kw_only=True)
class WinterMarking(Provenance):
    """A marking that makes a winter tyre here, for tyres built and days up to and including two dates."""

    marking: WinterMark
    built_to: Day | None = None
    used_to: Day | None = None

    def counts(self, tyre_built: str | None, date: str | None) -> bool | None:
        """Return whether the marking counts for a tyre built then and used on this ISO day, None when unsettled."""
        pairs = ((self.built_to, tyre_built), (self.used_to, date))
        if any(day is not None and not within(day, None, last) for last, day in pairs):
            return False
        return None if any(last is not None and day is None for last, day in pairs) else True


@dataclass(frozen=True, slots=True, kw_only=True)
class WinterRule(Provenance):
    """When a winter tyre may have a lower speed symbol than the vehicle's maximum speed."""

    label_required: Flag
    markings: Annotated[tuple[WinterMarking, ...], Field(min_length=1)]
    speed_floor: Limit


def _unit_of_the_kind(unit: str, info: ValidationInfo) -> str:
    kind = info.data.get("kind")
    return unit if kind is None else known(unit, (_UNIT_OF_ALLOWANCE[kind],))


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowance(Provenance):
    """A relief that the law gives to named vehicles.

    `axle_mass_percent` lowers the axle mass to be carried; `load_at_speed_kmh` lets the load at speed
    be read at this speed instead of the vehicle's own. A fact that is None does not matter;
    `speed_limited_kmh` is the highest setting of the speed limiter.
    """

    code: Text
    title: Sentence
    kind: AllowanceKind
    value: Number
    unit: Annotated[str, AfterValidator(_unit_of_the_kind)]
    applies: Applies
    seats_standing: Flag | None = None
    speed_limited_kmh: Number | None = None
    pack: str
