"""Tyres and rims by their numbers, instead of the designation or beside it, where both must agree."""

from __future__ import annotations

from typing import Literal, Self

from pydantic import model_validator

from service.api.schemas.base import Wire, as_fault, number, part, read_as, text, whole
from service.core import ranges
from service.core.errors import DomainError
from service.core.numeric import UNKNOWN, known
from service.core.saying import Said, say
from service.designation.rim import Flange, Hump, RimDesignation, parse_rim
from service.designation.rim_numbers import RimNumbers, rim_from_both, rim_from_numbers
from service.designation.tyre import TyreDesignation, parse_tyre
from service.designation.tyre_numbers import TyreNumbers, tyre_from_both, tyre_from_numbers
from service.designation.tyre_size import Construction
from service.designation.tyre_words import LoadVersion

CommercialLetters = Literal["C", "CP", "LT"]


class NoDesignation(DomainError):
    """Neither a designation nor numbers: what is expected."""

    code = "required"

    def __init__(self, detail: Said) -> None:
        super().__init__(detail, "/size")


class TyreFields(Wire):
    """The numbers of a tyre; its width in mm stands beside them, in `section_width_mm`."""

    size: str
    section_width_mm: float
    section_width_in: float = number("Nominal width of a size in inches", "in", (3.0, 20.0), 10.5, UNKNOWN)
    overall_diameter_in: float = number("Nominal diameter of a flotation size", "in", (20.0, 60.0), 31.0, UNKNOWN)
    aspect_ratio: float = number("Aspect ratio", "%", (15.0, 100.0), 40.0, UNKNOWN)
    rim_diameter_in: float = number("Rim diameter code", "1", ranges.RIM_DIAMETER_IN, 18.0, UNKNOWN)
    construction: Construction = part("Structure; radial where nothing is said.", "radial", default=None)
    commercial: CommercialLetters = part("Letters of a commercial tyre.", "C", default=None)
    load_index: int = whole("Load index, single", "1", (0, 279), 95, None)
    load_index_twin: int = whole("Load index in twin mounting", "1", (0, 279), 93, None)
    speed_symbol: str = text("Speed symbol.", 2, "Y", r"^[A-Z][1-8]?$", None)
    load_version: LoadVersion = part("Load version; standard where nothing is said.", "extra_load", default=None)
    load_range: str = text("Load range of a light-truck tyre.", 1, "E", r"^[A-N]$", None)
    ply_rating: int = whole("Ply rating", "1", (2, 24), 8, None)

    def designation(self) -> TyreDesignation:
        """Return what the designation says, what the numbers make, or what both say alike."""
        if self.size and self.model_fields_set.isdisjoint(_OF_TYRES):
            return read_as(self.size, parse_tyre)
        numbers = self.numbers()
        if not self.size:
            numbers["section_width_mm"] = _known(self.section_width_mm)
        # Beside a designation the width is what was measured, and no second statement of the size.
        return _tyre(self.size, numbers)

    def numbers(self) -> TyreNumbers:
        """Return the numbers that were stated, but for the width in mm."""
        return {
            "section_width_in": _known(self.section_width_in),
            "overall_diameter_in": _known(self.overall_diameter_in),
            "aspect_ratio": _known(self.aspect_ratio),
            "rim_diameter_in": _known(self.rim_diameter_in),
            "construction": self.construction,
            "commercial": self.commercial,
            "load_index": self.load_index,
            "load_index_twin": self.load_index_twin,
            "speed_symbol": self.speed_symbol,
            "load_version": self.load_version,
            "load_range": self.load_range,
            "ply_rating": self.ply_rating,
        }


class TyreByNumbers(TyreFields):
    """A tyre that is refused where its numbers make none."""

    @model_validator(mode="after")
    def _can_be_read(self) -> Self:
        """Refuse numbers that make no tyre, or not that of the designation beside them."""
        try:
            self.designation()
        except DomainError as error:
            raise as_fault(error, member=True) from None
        return self


class TyreInStock(TyreFields):
    """A tyre of a stock; one that cannot be read is named in the answer and ends nothing, so it is not read here."""

    def designation(self) -> TyreDesignation:
        """Return what the designation says, what the numbers make, or what both say alike."""
        numbers = self.numbers()
        numbers["section_width_mm"] = _known(self.section_width_mm)
        return _tyre(self.size, numbers)


def _tyre(size: str, numbers: TyreNumbers) -> TyreDesignation:
    stated = any(value is not None for value in numbers.values())
    if size:
        return tyre_from_both(size, **numbers) if stated else read_as(size, parse_tyre)
    if not stated:
        raise NoDesignation(
            say("The size of the tyre is missing: state the designation, such as 205/55 R16 91V, or its numbers.")
        )
    return tyre_from_numbers(**numbers)


class RimByNumbers(Wire):
    """The numbers of a rim."""

    size: str
    width_in: float = number("Width between the flanges", "in", ranges.RIM_WIDTH_IN, 8.0, UNKNOWN)
    diameter_in: float = number("Diameter code", "1", ranges.RIM_DIAMETER_IN, 18.0, UNKNOWN)
    flange: Flange = part("Flange, such as J.", "J", default=None)
    hump: Hump = part("Hump, such as H2.", "H2", default=None)
    one_piece: bool = part("Whether the rim is of one piece.", example=True, default=None)
    offset_mm: float = number("Offset (ET)", "mm", (-200.0, 200.0), 45.0, UNKNOWN)

    @model_validator(mode="after")
    def _can_be_read(self) -> Self:
        """Refuse numbers that make no rim, or not that of the designation beside them."""
        try:
            self.designation()
        except DomainError as error:
            raise as_fault(error, member=True) from None
        return self

    def designation(self) -> RimDesignation:
        """Return what the designation says, what the numbers make, or what both say alike."""
        if self.size and self.model_fields_set.isdisjoint(_OF_RIMS):
            return read_as(self.size, parse_rim)
        numbers: RimNumbers = {
            "width_in": _known(self.width_in),
            "diameter_in": _known(self.diameter_in),
            "flange": self.flange,
            "hump": self.hump,
            "one_piece": self.one_piece,
            "offset_mm": _known(self.offset_mm),
        }
        stated = any(value is not None for value in numbers.values())
        if self.size:
            return rim_from_both(self.size, **numbers) if stated else read_as(self.size, parse_rim)
        if not stated:
            raise NoDesignation(
                say(
                    "The size of the rim is missing: state the designation, such as 8J x 18 ET45, or width, diameter "
                    "and offset."
                )
            )
        return rim_from_numbers(**numbers)


# The numbers that may stand in a designation's stead; most requests state none.
_OF_TYRES = frozenset(TyreFields.model_fields) - {"size", "section_width_mm"}
_OF_RIMS = frozenset(RimByNumbers.model_fields) - {"size"}


def _known(value: float) -> float | None:
    return value if known(value) else None
