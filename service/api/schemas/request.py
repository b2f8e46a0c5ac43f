"""What a caller may send: vehicle, axles, fitments, candidates.

An optional field that is absent holds NaN, an empty text or an empty part here; none of them may be sent, and none is
shown in the schema. `null` is not a way to leave a field out.
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import AfterValidator, ConfigDict

from service.api.schemas.base import Wire, as_fault, number, part, text, whole
from service.api.schemas.vocabulary import Category, DrivenAxle, RulePackId, Season
from service.assessment import ranges
from service.core.errors import DomainError
from service.core.numeric import UNKNOWN
from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN, parse_bolt_circle
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.tyre import TYRE_PATTERN, parse_tyre

MAX_DESIGNATION = ranges.LONGEST_DESIGNATION


def _hide_absent(schema: dict[str, Any]) -> None:
    """Drop the defaults that only stand for "not given"."""
    for field in schema.get("properties", {}).values():
        if field.get("default") in ("", None) or not isinstance(field["default"], (str, int)):
            field.pop("default", None)


class Asked(Wire):
    """A part of a request."""

    model_config = ConfigDict(json_schema_extra=_hide_absent)


def _readable_tyre(value: str) -> str:
    try:
        parse_tyre(value)
    except DomainError as error:
        raise as_fault(error) from None
    return value


def _readable_rim(value: str) -> str:
    try:
        parse_rim(value)
    except DomainError as error:
        raise as_fault(error) from None
    return value


def _readable_bolt_circle(value: str) -> str:
    try:
        parse_bolt_circle(value)
    except DomainError as error:
        raise as_fault(error) from None
    return value


def _designation(description: str, pattern: str, example: str, **more: Any) -> Any:  # noqa: ANN401 - as pydantic's Field
    """Return a field whose pattern is published; the reader itself refuses, since it says where and why."""
    return part(
        description,
        example,
        json_schema_extra={"pattern": pattern, "minLength": 1, "maxLength": MAX_DESIGNATION},
        **more,
    )


TyreSize = Annotated[str, AfterValidator(_readable_tyre)]
RimSize = Annotated[str, AfterValidator(_readable_rim)]
BoltCircleText = Annotated[str, AfterValidator(_readable_bolt_circle)]


class RimWidths(Asked):
    """The rim widths that the tyre's maker approves."""

    min: float = number("Narrowest approved rim", *ranges.APPROVED_RIM_WIDTH, 8.0)
    max: float = number("Widest approved rim", *ranges.APPROVED_RIM_WIDTH, 9.5)


NO_RIM_WIDTHS = RimWidths.model_construct(min=UNKNOWN, max=UNKNOWN)


class Tyre(Asked):
    """A tyre: its designation; all else replaces what would be computed, from the maker's data or measured."""

    size: TyreSize = _designation(
        "Size designation and service description as on the sidewall.", TYRE_PATTERN, "235/40 R18 95Y XL"
    )
    tread_depth_mm: float = number("Tread depth", *ranges.TREAD_DEPTH, 7.5, UNKNOWN)
    overall_diameter_mm: float = number("Overall diameter of the new tyre", *ranges.OVERALL_DIAMETER, 645.0, UNKNOWN)
    section_width_mm: float = number("Section width on this rim", *ranges.SECTION_WIDTH, 241.0, UNKNOWN)
    rolling_circumference_mm: float = number("Rolling circumference", *ranges.ROLLING_CIRCUMFERENCE, 1967.0, UNKNOWN)
    approved_rim_widths_in: RimWidths = part("Approved rim widths by the tyre's maker.", default=NO_RIM_WIDTHS)
    reference_pressure_kpa: float = number(
        "Pressure at which the tyre carries its load index, as marked", *ranges.REFERENCE_PRESSURE, 475.0, UNKNOWN
    )
    mass_kg: float = number("Mass of the tyre", *ranges.PART_MASS, 10.4, UNKNOWN)


class Rim(Asked):
    """A rim with its disc, as it is marked."""

    size: RimSize = _designation("Rim designation with offset (ET).", RIM_PATTERN, "8J x 18 H2 ET45")
    bolt_circle: BoltCircleText = _designation(
        "Number of bolts and diameter of their circle.", BOLT_CIRCLE_PATTERN, "5x112", default=""
    )
    centre_bore_mm: float = number("Diameter of the centre bore", *ranges.CENTRE_BORE, 66.6, UNKNOWN)
    load_rating_kg: float = number("Load rating of the wheel", *ranges.LOAD_RATING, 690.0, UNKNOWN)
    mass_kg: float = number("Mass of the rim", *ranges.PART_MASS, 11.2, UNKNOWN)


class Fitment(Asked):
    """Tyre, rim and pressure of one axle, the same on both sides."""

    tyre: Tyre = part("The tyre.")
    rim: Rim = part("The rim.")
    pressure_kpa: float = number("Cold pressure", *ranges.PRESSURE, 250.0, UNKNOWN)


class Hub(Asked):
    """What the wheel is fixed to."""

    bolt_circle: BoltCircleText = _designation(
        "Number of bolts and diameter of their circle.", BOLT_CIRCLE_PATTERN, "5x112", default=""
    )
    centre_bore_mm: float = number("Diameter of the hub's spigot", *ranges.CENTRE_BORE, 66.6, UNKNOWN)


class Clearance(Asked):
    """Room around the present wheel, measured where it is scarcest."""

    inboard_mm: float = number("Room to the strut", *ranges.CLEARANCE, 14.0, UNKNOWN)
    outboard_mm: float = number("Room to the edge of the wing", *ranges.CLEARANCE, 16.0, UNKNOWN)
    radial_mm: float = number("Room to the arch at full bump", *ranges.CLEARANCE, 25.0, UNKNOWN)


class Axle(Asked):
    """One axle with what is fitted now."""

    max_axle_mass_kg: float = number("Technically permissible maximum axle mass", *ranges.MAX_AXLE_MASS, 960.0)
    fitted: Fitment = part("The present fitment.")
    kerb_axle_mass_kg: float = number("Axle mass of the car ready to drive", *ranges.KERB_AXLE_MASS, 790.0, UNKNOWN)
    track_mm: float = number("Track, as registered", *ranges.TRACK, 1548.0, UNKNOWN)
    wheels_per_side: int = whole("Wheels on each side; 2 for twin wheels", "1", ranges.WHEELS_PER_SIDE, 1, 1)
    hub: Hub = part("The hub.", default=Hub())
    clearance: Clearance = part("Room around the present wheel.", default=Clearance())
    min_rim_diameter_in: float = number(
        "Least rim diameter that clears the brake", *ranges.MIN_RIM_DIAMETER, 17.0, UNKNOWN
    )


class Speedometer(Asked):
    """One measurement with the present fitment: what is displayed at a true speed."""

    displayed_kmh: float = number("Displayed speed", *ranges.SPEED, 100.0)
    true_kmh: float = number("True speed, by satellite or on a test bench", *ranges.SPEED, 97.0)


NO_SPEEDOMETER = Speedometer.model_construct(displayed_kmh=UNKNOWN, true_kmh=UNKNOWN)

DAY = r"^(19|20)[0-9]{2}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$"


class Vehicle(Asked):
    """The vehicle with its two axles."""

    max_speed_kmh: float = number("Maximum design speed", *ranges.SPEED, 228.0)
    front: Axle = part("The front axle.")
    rear: Axle = part("The rear axle.")
    category: Category = part("Vehicle category by the UN's classes.", "M1", default="M1")
    driven_axle: DrivenAxle = part("Which axle is driven.", "rear", default=None)
    wheelbase_mm: float = number("Wheelbase", *ranges.WHEELBASE, 2760.0, UNKNOWN)
    centre_of_gravity_height_mm: float = number(
        "Height of the centre of gravity above the road", *ranges.CENTRE_OF_GRAVITY_HEIGHT, 540.0, UNKNOWN
    )
    speedometer: Speedometer = part("A measurement of the speedometer.", default=NO_SPEEDOMETER)
    built: str = text("The day the vehicle was built, as an ISO date.", 10, "2019-05-20", DAY, "")
    max_mass_kg: float = number(
        "Technically permissible maximum mass of the vehicle", *ranges.MAX_MASS, 1870.0, UNKNOWN
    )
    seats_standing: bool = part("Whether passengers may stand.", example=False, default=None)
    speed_limited_kmh: float = number(
        "Speed to which a limiter holds the vehicle", *ranges.LIMITED_SPEED, 100.0, UNKNOWN
    )
    towing: bool = part("Whether the vehicle tows a trailer.", example=False, default=None)


class Candidate(Asked):
    """What is to be fitted."""

    front: Fitment = part("The front fitment.")
    rear: Fitment = part("The rear fitment.")
    label: str = text("A name of the caller's own, repeated in the answer.", 80, "one step wider", default="")


class Question(Asked):
    """What every question about fitments has in common."""

    vehicle: Vehicle = part("The vehicle as it is.")
    rule_pack: RulePackId = part("The rules to hold it against; see /v1/rule-packs.", "unece", default="unece")
    season: Season = part("For which season the tyres are meant; winter tyres may be slower.", "winter", default=None)
    date: str = text(
        "The day of use as an ISO date, for rules that begin or end; without it, the edition's.",
        10,
        "2026-11-24",
        DAY,
        "",
    )


class CheckRequest(Question):
    """One candidate on one vehicle."""

    candidate: Candidate = part("What is to be fitted.")
