"""One rule of a place: what it limits, for whom, from when, and how far its text was read.

Dates are ISO texts (`2006-12-31`): they compare as they stand. Windows include both ends.
Numbers may be arrays: the grading has no branches on the values.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, Literal, NamedTuple, get_args

from pydantic import AfterValidator, Field, ValidationInfo

from service.core.findings import ADVISORY, MET, NOT_MET, OPEN, BasisStatus, Holds, Where
from service.core.numeric import Num, magnitude, pick, unknown
from service.core.saying import Said, say
from service.rules.provenance import Provenance
from service.rules.quantities import QUANTITIES
from service.rules.written import CLOSED, Day, Flag, Number, Sentence, Text, fault, known, not_before

Comparison = Literal["at_most", "at_least", "equals"]
RuleAxle = Literal["any", Where]
Category = Literal["M1", "M1G", "M2", "M3", "N1", "N2", "N3", "O1", "O2", "O3", "O4"]

CATEGORIES: tuple[Category, ...] = get_args(Category)

# The one quantity that a rule may derate: a passenger tyre's rating is divided on some vehicles.
DIVIDED = "load_rating_sum_margin_kg"

# A limit reached exactly (1530 mm on 1500 mm is 2.0 %) must not fail by the last bit of a float.
TOLERANCE = 1e-9

_CAVEATS: dict[str, Said] = {
    "second_hand": say("Known from a quotation only: check the official text."),
    "memory": say("Known from memory only: check the official text."),
}
_STAND_IN = say("Measured against the present fitment as a stand-in: check the official text.")


def within(day: str, first: str | None, last: str | None) -> bool:
    """Return whether an ISO day lies in a window whose ends are included and may be open."""
    return (first is None or day >= first) and (last is None or day <= last)


class VehicleFacts(NamedTuple):
    """What decides for whom a rule is written; None (a mass: also NaN) where it is not known."""

    category: str | None = None
    driven: bool | None = None
    mass_kg: float | None = None
    built: str | None = None


def _above_the_lower_mass(most_kg: float | None, info: ValidationInfo) -> float | None:
    over_kg = info.data.get("over_mass_kg")
    if most_kg is not None and over_kg is not None and most_kg <= over_kg:
        raise fault("{key} must lie above over_mass_kg")
    return most_kg


@dataclass(frozen=True, slots=True)
class Applies:
    """For whom a rule is written; empty or None means for all."""

    __pydantic_config__ = CLOSED

    categories: tuple[Category, ...] = ()
    axle: RuleAxle = "any"
    driven: Flag | None = None
    over_mass_kg: Number | None = None
    max_mass_kg: Annotated[Number | None, AfterValidator(_above_the_lower_mass)] = None
    built_from: Day | None = None
    built_to: Annotated[Day | None, not_before("built_from")] = None

    def concerns(self, axle: str) -> bool:
        """Return whether the rule speaks of this axle (`front`, `rear`) or of the `vehicle`."""
        return self.axle == axle or (self.axle == "any" and axle != "vehicle")

    def missing(self, facts: VehicleFacts) -> tuple[str, ...] | None:
        """Return the names of the facts still needed to say that the rule applies, None when it does not."""
        # The category decides most rules; asking it first keeps a check fast.
        if self.categories and facts.category is not None and facts.category not in self.categories:
            return None
        lacking: list[str] = []
        for name, holds in self._conditions(facts):
            if holds is None:
                lacking.append(name)
            elif not holds:
                return None
        return tuple(lacking)

    def _conditions(self, facts: VehicleFacts) -> Iterator[tuple[str, bool | None]]:
        category, driven, mass_kg, built = facts
        if self.categories:
            yield "category", None if category is None else category in self.categories
        if self.driven is not None:
            yield "driven_axle", None if driven is None else driven == self.driven
        if self.over_mass_kg is not None or self.max_mass_kg is not None:
            weighed = None if mass_kg is None or unknown(mass_kg) else mass_kg
            yield "max_mass_kg", None if weighed is None else self._holds_mass(weighed)
        if self.built_from is not None or self.built_to is not None:
            yield "built", None if built is None else within(built, self.built_from, self.built_to)

    def _holds_mass(self, mass_kg: float) -> bool:
        above = self.over_mass_kg is None or mass_kg > self.over_mass_kg
        return above and (self.max_mass_kg is None or mass_kg <= self.max_mass_kg)


def _known_quantity(quantity: str) -> str:
    return known(quantity, QUANTITIES)


def _unit_of_the_quantity(unit: str, info: ValidationInfo) -> str:
    quantity = info.data.get("quantity")
    return unit if quantity is None else known(unit, (QUANTITIES[quantity].unit,))


@dataclass(frozen=True, slots=True)
class Bound:
    """One bound on one quantity."""

    __pydantic_config__ = CLOSED

    quantity: Annotated[str, AfterValidator(_known_quantity)]
    comparison: Comparison
    value: Number
    unit: Annotated[str, AfterValidator(_unit_of_the_quantity)]

    def holds(self, measured: Num) -> Holds:
        """Return whether the measured quantity keeps the bound; false where it is not known."""
        if self.comparison == "at_most":
            return measured <= self.value + TOLERANCE
        if self.comparison == "at_least":
            return measured >= self.value - TOLERANCE
        return magnitude(measured - self.value) <= TOLERANCE


def _code_of_a_law(code: str) -> str:
    if not code.startswith("law."):
        raise fault("the {key} of a pack's own rule begins with `law.`")
    return code


def _status_of_a_text(status: BasisStatus) -> BasisStatus:
    if status in ("derived", "own"):
        raise fault("a rule of the place is read, second_hand or memory")
    return status


def _divides_a_rating(divisor: float, info: ValidationInfo) -> float:
    bounds = info.data.get("bounds")
    if divisor < 1.0 or (bounds and bounds[0].quantity != DIVIDED):
        raise fault(f"a {{key}} of 1 or more belongs to {DIVIDED} alone")
    return divisor


@dataclass(frozen=True, slots=True, kw_only=True)
class Rule(Provenance):
    """A rule of a place; where it has several bounds, keeping one of them suffices."""

    status: Annotated[BasisStatus, AfterValidator(_status_of_a_text)]
    code: Annotated[Text, AfterValidator(_code_of_a_law)]
    title: Sentence
    message: Sentence
    bounds: Annotated[tuple[Bound, ...], Field(alias="any_of")]
    applies: Applies
    pack: str
    place: Sentence
    """Where it is law, with its preposition: `in Spain`."""
    divisor: Annotated[Number, AfterValidator(_divides_a_rating)] = 1.0
    stand_in: Flag = False
    valid_from: Day | None = None
    valid_to: Annotated[Day | None, not_before("valid_from")] = None

    @property
    def value(self) -> float:
        """Return the value of the first bound."""
        return self.bounds[0].value

    @property
    def unit(self) -> str:
        """Return the unit of the first bound."""
        return self.bounds[0].unit

    @property
    def can_forbid(self) -> bool:
        """Return whether breaking the rule is `not_met`; what was not read, or is measured by a stand-in, advises."""
        return self.was_read and not self.stand_in

    @property
    def caveat(self) -> str:
        """Return the sentence that warns of a text not read or of a stand-in, empty when there is neither."""
        if self.status in _CAVEATS:
            return _CAVEATS[self.status]
        return _STAND_IN if self.stand_in else ""

    def outcome(self, *measured: Num) -> int:
        """Return the outcome for the measured quantities, one for each bound and in that order.

        MET when a bound is kept, OPEN when none is and one could not be measured (NaN), else
        NOT_MET, or ADVISORY for a rule that cannot forbid.
        """
        broken = NOT_MET if self.can_forbid else ADVISORY
        kept: Holds = False
        lacking: Holds = False
        for bound, value in zip(self.bounds, measured, strict=True):
            kept = kept | bound.holds(value)
            lacking = lacking | unknown(value)
        return pick(kept, MET, pick(lacking, OPEN, broken))

    def valid_on(self, date: str) -> bool:
        """Return whether the rule is in force on this ISO day."""
        return within(date, self.valid_from, self.valid_to)
