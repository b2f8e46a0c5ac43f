"""What a caller may send: vehicle, axles, fitments, candidates.

An optional field that is absent holds NaN, an empty text or an empty part here; none of them may be sent, and none is
shown in the schema. `null` is not a way to leave a field out.
"""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import ConfigDict

from service.api.schemas.base import Wire, identity, number, part, readable, text, whole
from service.api.schemas.by_numbers import RimByNumbers, TyreByNumbers
from service.api.schemas.vocabulary import (
    Category,
    Detail,
    DrivenAxle,
    LabelLetter,
    LanguageCode,
    RulePackId,
    Season,
    TyreTolerance,
    UnitSystem,
)
from service.core import ranges
from service.core.dates import DAY_LENGTH, DAY_PATTERN, parse_day
from service.core.numeric import UNKNOWN
from service.designation.bolt_circle import BOLT_CIRCLE_PATTERN, parse_bolt_circle
from service.designation.rim import RIM_PATTERN, parse_rim
from service.designation.tyre import TYRE_PATTERN, parse_tyre

MAX_DESIGNATION = 100


def _hide_absent(schema: dict[str, Any]) -> None:
    """Drop the defaults that only stand for "not given"."""
    for field in schema.get("properties", {}).values():
        if field.get("default") in ("", None) or not isinstance(field["default"], (str, int)):
            field.pop("default", None)


class RequestPart(Wire):
    """A part of a request."""

    model_config = ConfigDict(json_schema_extra=_hide_absent)


def _designation(description: str, pattern: str, example: str, **more: Any) -> Any:  # noqa: ANN401 - as pydantic's Field
    """Return a field whose pattern is published; the reader itself refuses, since it says where and why."""
    return part(
        description,
        example,
        json_schema_extra={"pattern": pattern, "minLength": 1, "maxLength": MAX_DESIGNATION},
        **more,
    )


TyreSize = Annotated[str, readable(parse_tyre)]
RimSize = Annotated[str, readable(parse_rim)]
BoltCircleText = Annotated[str, readable(parse_bolt_circle)]


class RimWidths(RequestPart):
    """The rim widths that the tyre's maker approves."""

    min: float = number("Narrowest approved rim", "in", ranges.RIM_WIDTH_IN, 8.0)
    max: float = number("Widest approved rim", "in", ranges.RIM_WIDTH_IN, 9.5)


NO_RIM_WIDTHS = RimWidths.model_construct(min=UNKNOWN, max=UNKNOWN)


class Label(RequestPart):
    """The tyre's label: its classes and the noise outside."""

    rolling_resistance_class: LabelLetter = part("Class of rolling resistance (energy).", "B", default=None)
    wet_grip_class: LabelLetter = part("Class of wet grip.", "A", default=None)
    noise_db: float = number("Noise outside", "dB", ranges.NOISE_DB, 71.0, UNKNOWN)


NO_LABEL = Label.model_construct(noise_db=UNKNOWN)


class Tyre(TyreByNumbers, RequestPart):
    """A tyre: its designation; all else replaces what would be computed, from the maker's data or measured."""

    size: TyreSize = _designation(
        "Size designation and service description as on the sidewall; the numbers may stand instead, or beside it "
        "where both agree.",
        TYRE_PATTERN,
        "235/40 R18 95Y XL",
        default="",
    )
    tread_depth_mm: float = number("Tread depth", "mm", ranges.TREAD_DEPTH_MM, 7.5, UNKNOWN)
    overall_diameter_mm: float = number(
        "Overall diameter of the new tyre", "mm", ranges.OVERALL_DIAMETER_MM, 645.0, UNKNOWN
    )
    section_width_mm: float = number(
        "Section width: beside a designation, as measured on this rim; without one, the nominal width",
        "mm",
        ranges.SECTION_WIDTH_MM,
        241.0,
        UNKNOWN,
    )
    rolling_circumference_mm: float = number(
        "Rolling circumference", "mm", ranges.ROLLING_CIRCUMFERENCE_MM, 1967.0, UNKNOWN
    )
    approved_rim_widths_in: RimWidths = part("Approved rim widths by the tyre's maker.", default=NO_RIM_WIDTHS)
    reference_pressure_kpa: float = number(
        "Pressure at which the tyre carries its load index, as marked",
        "kPa",
        ranges.REFERENCE_PRESSURE_KPA,
        475.0,
        UNKNOWN,
    )
    mass_kg: float = number("Mass of the tyre", "kg", ranges.TYRE_OR_RIM_MASS_KG, 10.4, UNKNOWN)
    label: Label = part("What the tyre's label says.", default=NO_LABEL)


class Rim(RimByNumbers, RequestPart):
    """A rim with its disc, as it is marked."""

    size: RimSize = _designation(
        "Rim designation with offset (ET); the numbers may stand instead, or beside it where both agree.",
        RIM_PATTERN,
        "8J x 18 H2 ET45",
        default="",
    )
    bolt_circle: BoltCircleText = _designation(
        "Number of bolts and diameter of their circle.", BOLT_CIRCLE_PATTERN, "5x112", default=""
    )
    centre_bore_mm: float = number("Diameter of the centre bore", "mm", ranges.CENTRE_BORE_MM, 66.6, UNKNOWN)
    load_rating_kg: float = number("Load rating of the wheel", "kg", ranges.RIM_LOAD_RATING_KG, 690.0, UNKNOWN)
    mass_kg: float = number("Mass of the rim", "kg", ranges.TYRE_OR_RIM_MASS_KG, 11.2, UNKNOWN)


class Fitment(RequestPart):
    """Tyre, rim and pressure of one axle, the same on both sides."""

    tyre: Tyre = part("The tyre.")
    rim: Rim = part("The rim.")
    pressure_kpa: float = number("Cold pressure", "kPa", ranges.PRESSURE_KPA, 250.0, UNKNOWN)
    spacer_mm: float = number(
        "Thickness of the spacer between hub and wheel, which moves the wheel out; absent: none",
        "mm",
        ranges.SPACER_MM,
        10.0,
        0.0,
    )


class Hub(RequestPart):
    """What the wheel is fixed to."""

    bolt_circle: BoltCircleText = _designation(
        "Number of bolts and diameter of their circle.", BOLT_CIRCLE_PATTERN, "5x112", default=""
    )
    centre_bore_mm: float = number("Diameter of the hub's spigot", "mm", ranges.CENTRE_BORE_MM, 66.6, UNKNOWN)


class Clearance(RequestPart):
    """Room around the present wheel, measured where it is scarcest."""

    inboard_mm: float = number("Room to the strut", "mm", ranges.ROOM_MM, 14.0, UNKNOWN)
    outboard_mm: float = number("Room to the edge of the wing", "mm", ranges.ROOM_MM, 16.0, UNKNOWN)
    radial_mm: float = number("Room to the arch at full bump", "mm", ranges.ROOM_MM, 25.0, UNKNOWN)
    tolerance_mm: float = number(
        "To within how much the rooms were measured; the worse end is judged. Absent: they are taken as exact",
        "mm",
        ranges.ROOM_TOLERANCE_MM,
        2.0,
        0.0,
    )


class Axle(RequestPart):
    """One axle with what is fitted now."""

    max_axle_mass_kg: float = number(
        "Technically permissible maximum axle mass; absent: taken to be no more than the present wheels carry",
        "kg",
        ranges.AXLE_MASS_KG,
        960.0,
        UNKNOWN,
    )
    fitted: Fitment = part("The present fitment.")
    kerb_axle_mass_kg: float = number(
        "Axle mass of the car ready to drive", "kg", ranges.KERB_AXLE_MASS_KG, 790.0, UNKNOWN
    )
    track_mm: float = number("Track, as registered", "mm", ranges.TRACK_MM, 1548.0, UNKNOWN)
    track_tolerance_mm: float = number(
        "To within how much the track is known; the worse end is judged", "mm", ranges.TRACK_TOLERANCE_MM, 5.0, 0.0
    )
    wheels_per_side: int = whole("Wheels on each side; 2 for twin wheels", "1", ranges.WHEELS_PER_SIDE, 1, 1)
    hub: Hub = part("The hub.", default=Hub())
    clearance: Clearance = part("Room around the present wheel.", default=Clearance())
    min_rim_diameter_in: float = number(
        "Least rim diameter that clears the brake", "in", ranges.RIM_DIAMETER_IN, 17.0, UNKNOWN
    )


class Speedometer(RequestPart):
    """One measurement with the present fitment: what is displayed at a true speed."""

    displayed_kmh: float = number("Displayed speed", "km/h", ranges.SPEED_KMH, 100.0)
    true_kmh: float = number("True speed, by satellite or on a test bench", "km/h", ranges.SPEED_KMH, 97.0)
    tolerance_percent: float = number(
        "To within how much of the true speed it was read; the worse end is judged",
        "%",
        ranges.SPEEDOMETER_TOLERANCE_PERCENT,
        1.0,
        0.0,
    )


NO_SPEEDOMETER = Speedometer.model_construct(displayed_kmh=UNKNOWN, true_kmh=UNKNOWN, tolerance_percent=0.0)


def _day(description: str, example: str) -> Any:  # noqa: ANN401 - as pydantic's Field
    """Return a field for an ISO day; the reader itself refuses, since it says what is wrong with the day."""
    published = {"format": "date", "pattern": DAY_PATTERN, "minLength": DAY_LENGTH, "maxLength": DAY_LENGTH}
    return part(description, example, json_schema_extra=published, default="")


Day = Annotated[str, readable(parse_day)]


class Vehicle(RequestPart):
    """The vehicle with its two axles."""

    max_speed_kmh: float = number(
        "Maximum design speed; absent: taken to be no more than the speed symbols of the present tyres allow",
        "km/h",
        ranges.SPEED_KMH,
        228.0,
        UNKNOWN,
    )
    front: Axle = part("The front axle.")
    rear: Axle = part("The rear axle.")
    category: Category = part("Vehicle category by the UN's classes.", "M1", default="M1")
    driven_axle: DrivenAxle = part("Which axle is driven.", "rear", default=None)
    wheelbase_mm: float = number("Wheelbase", "mm", ranges.WHEELBASE_MM, 2760.0, UNKNOWN)
    centre_of_gravity_height_mm: float = number(
        "Height of the centre of gravity above the road", "mm", ranges.CENTRE_OF_GRAVITY_HEIGHT_MM, 540.0, UNKNOWN
    )
    speedometer: Speedometer = part("A measurement of the speedometer.", default=NO_SPEEDOMETER)
    built: Day = _day("The day the vehicle was built, as an ISO date.", "2019-05-20")
    max_mass_kg: float = number(
        "Technically permissible maximum mass of the vehicle", "kg", ranges.VEHICLE_MASS_KG, 1870.0, UNKNOWN
    )
    seats_standing: bool = part("Whether passengers may stand.", example=False, default=None)
    speed_limited_kmh: float = number(
        "Speed to which a limiter holds the vehicle", "km/h", ranges.LIMITED_SPEED_KMH, 100.0, UNKNOWN
    )
    towing: bool = part("Whether the vehicle tows a trailer.", example=False, default=None)


class Candidate(RequestPart):
    """What is to be fitted; an axle that is left out stays as it is."""

    id: str = identity("The caller's own name of the candidate; comes back with what is said of it.")
    front: Fitment = part("The front fitment; absent: the front axle stays as it is.", default=None)
    rear: Fitment = part("The rear fitment; absent: the rear axle stays as it is.", default=None)
    label: str = text("A name of the caller's own, repeated in the answer.", 80, "one step wider", default="")


class FitmentRequest(RequestPart):
    """What every question about fitments has in common."""

    language: LanguageCode = part(
        "The language of the sentences; absent: by the header Accept-Language, else English.", "de", default=None
    )
    units: UnitSystem = part("The units of the sentences; numbers of data fields stay metric.", "metric", default=None)

    vehicle: Vehicle = part("The vehicle as it is.")
    rule_pack: RulePackId = part("The rules to hold it against; see /v1/rule-packs.", "unece", default="unece")
    season: Season = part("For which season the tyres are meant; winter tyres may be slower.", "winter", default=None)
    tyre_tolerance: TyreTolerance = part(
        "What a speedometer that was read is judged for: tyres as designed, or as the standard lets them differ.",
        "standard",
        default="design",
    )
    date: Day = _day(
        "The day of use as an ISO date, for rules that begin or end; without it, the edition's.", "2026-11-24"
    )


class CheckRequest(FitmentRequest):
    """One candidate on one vehicle."""

    candidate: Candidate = part("What is to be fitted.")
    detail: Detail = part("How much is answered.", "short", default="standard")
    measure_first: bool = part(
        "Whether to work out which missing fact would settle or narrow the most; this takes longer.",
        example=True,
        default=False,
    )
