"""The columns of the tables that a sweep reads and writes: name, kind, unit, range, and what they mean.

Names are those of the web interface with the axle before them; so are the ranges, which a test holds in step.
An optional column may be absent, and empty in any row: the number is then not known, as in a single check.
"""

from __future__ import annotations

from typing import Literal, NamedTuple, get_args

from service.assessment.answer.verdict import VERDICTS
from service.assessment.case import DrivenAxle
from service.core import ranges
from service.rules.rule import CATEGORIES

Kind = Literal["text", "word", "day", "yes_no", "number", "whole", "tyre", "rim", "bolt_circle"]
AXLES = ("front", "rear")
# Columns of the caller's own begin so and are not looked at; anything else unknown is a slip of the pen.
OWN_PREFIX = "x_"
LONGEST_DESIGNATION = 100
LONGEST_ID = 200


class Column(NamedTuple):
    """One column of a table."""

    name: str
    kind: Kind
    meaning: str
    unit: str = ""
    low: float = 0.0
    high: float = 0.0
    words: tuple[str, ...] = ()
    required: bool = False


def _number(name: str, meaning: str, unit: str, low: float, high: float) -> Column:
    return Column(name, "number", meaning, unit, low, high)


# What is said of one wheel, of the present ones in the vehicles and of the proposed ones in the candidates.
_WHEEL = (
    Column("tyre", "tyre", "size designation and service description of the tyre", required=True),
    Column("rim", "rim", "rim designation with offset (ET)", required=True),
    _number("pressure_kpa", "cold pressure", "kPa", *ranges.PRESSURE_KPA),
    _number("tread_depth_mm", "tread depth", "mm", *ranges.TREAD_DEPTH_MM),
    _number("overall_diameter_mm", "overall diameter of the new tyre, measured", "mm", *ranges.OVERALL_DIAMETER_MM),
    _number("section_width_mm", "section width on this rim, measured", "mm", *ranges.SECTION_WIDTH_MM),
    _number("rolling_circumference_mm", "rolling circumference, measured", "mm", *ranges.ROLLING_CIRCUMFERENCE_MM),
    _number("approved_min_in", "narrowest rim that the tyre's maker approves", "in", *ranges.RIM_WIDTH_IN),
    _number("approved_max_in", "widest rim that the tyre's maker approves", "in", *ranges.RIM_WIDTH_IN),
    _number(
        "reference_pressure_kpa",
        "pressure at which the tyre carries its load index",
        "kPa",
        *ranges.REFERENCE_PRESSURE_KPA,
    ),
    _number("tyre_mass_kg", "mass of the tyre", "kg", *ranges.TYRE_OR_RIM_MASS_KG),
    Column("bolt_circle", "bolt_circle", "number of bolts and diameter of their circle"),
    _number("centre_bore_mm", "diameter of the centre bore", "mm", *ranges.CENTRE_BORE_MM),
    _number("load_rating_kg", "load rating of the wheel", "kg", *ranges.RIM_LOAD_RATING_KG),
    _number("rim_mass_kg", "mass of the rim", "kg", *ranges.TYRE_OR_RIM_MASS_KG),
)
_AXLE = (
    Column("max_axle_mass_kg", "number", "permissible maximum axle mass", "kg", *ranges.AXLE_MASS_KG, required=True),
    _number("kerb_axle_mass_kg", "axle mass of the car ready to drive", "kg", *ranges.KERB_AXLE_MASS_KG),
    _number("track_mm", "track, as registered", "mm", *ranges.TRACK_MM),
    Column(
        "wheels_per_side", "whole", "wheels on each side, 2 for twin wheels; 1 where empty", "", *ranges.WHEELS_PER_SIDE
    ),
    Column("hub_bolt_circle", "bolt_circle", "number of bolts of the hub and diameter of their circle"),
    _number("hub_centre_bore_mm", "diameter of the hub's spigot", "mm", *ranges.CENTRE_BORE_MM),
    _number("clearance_inboard_mm", "room from the present wheel to the strut", "mm", *ranges.ROOM_MM),
    _number("clearance_outboard_mm", "room from the present wheel to the edge of the wing", "mm", *ranges.ROOM_MM),
    _number("clearance_radial_mm", "room from the present wheel to the arch at full bump", "mm", *ranges.ROOM_MM),
    _number(
        "clearance_tolerance_mm",
        "to within how much the rooms were measured; 0 where empty",
        "mm",
        *ranges.ROOM_TOLERANCE_MM,
    ),
    _number(
        "track_tolerance_mm",
        "to within how much the track is known; 0 where empty",
        "mm",
        *ranges.TRACK_TOLERANCE_MM,
    ),
    _number("min_rim_diameter_in", "least rim diameter that clears the brake", "in", *ranges.RIM_DIAMETER_IN),
)


def _on_axles(columns: tuple[Column, ...]) -> tuple[Column, ...]:
    return tuple(
        column._replace(name=f"{axle}_{column.name}", meaning=f"{axle}: {column.meaning}")
        for axle in AXLES
        for column in columns
    )


VEHICLE_COLUMNS: tuple[Column, ...] = (
    Column("vehicle_id", "text", "the caller's name of the vehicle, once in the table", required=True),
    Column("max_speed_kmh", "number", "maximum design speed", "km/h", *ranges.SPEED_KMH, required=True),
    Column("category", "word", "vehicle category by the UN's classes; M1 where empty", words=CATEGORIES),
    Column("driven_axle", "word", "which axle is driven", words=get_args(DrivenAxle)),
    _number("wheelbase_mm", "wheelbase", "mm", *ranges.WHEELBASE_MM),
    _number(
        "centre_of_gravity_height_mm",
        "height of the centre of gravity above the road",
        "mm",
        *ranges.CENTRE_OF_GRAVITY_HEIGHT_MM,
    ),
    _number("displayed_kmh", "speedometer: what is displayed at `true_kmh`", "km/h", *ranges.SPEED_KMH),
    _number("true_kmh", "speedometer: the true speed at `displayed_kmh`", "km/h", *ranges.SPEED_KMH),
    _number(
        "speedometer_tolerance_percent",
        "to within how much of the true speed the speedometer was read; 0 where empty",
        "%",
        *ranges.SPEEDOMETER_TOLERANCE_PERCENT,
    ),
    Column("built", "day", "the day the vehicle was built, as an ISO date"),
    _number("max_mass_kg", "permissible maximum mass of the vehicle", "kg", *ranges.VEHICLE_MASS_KG),
    Column("seats_standing", "yes_no", "whether passengers may stand"),
    _number("speed_limited_kmh", "speed to which a limiter holds the vehicle", "km/h", *ranges.LIMITED_SPEED_KMH),
    Column("towing", "yes_no", "whether the vehicle tows a trailer"),
    *_on_axles(_AXLE + _WHEEL),
)
CANDIDATE_COLUMNS: tuple[Column, ...] = (
    Column("candidate_id", "text", "the caller's name of the candidate, once in the table", required=True),
    *_on_axles(_WHEEL),
)
# With --pairs: the vehicle that a candidate is meant for. The candidate's name is then once per vehicle.
PAIRED_VEHICLE = Column("vehicle_id", "text", "the one vehicle that this candidate is meant for", required=True)

# Two columns of which one says nothing without the other.
CANDIDATE_TOGETHER = tuple((f"{axle}_approved_min_in", f"{axle}_approved_max_in") for axle in AXLES)
TOGETHER = (("displayed_kmh", "true_kmh"), *CANDIDATE_TOGETHER)

RESULT_MEANINGS: dict[str, str] = {
    "vehicle_id": "from the vehicles",
    "candidate_id": "from the candidates",
    "verdict": f"one of {', '.join(VERDICTS)}",
    "worst_codes": "what the verdict rests on: the findings not met (unsuitable) or not recommended (not_recommended), "
    "the questions to be settled (undetermined) or the advisories (suitable_with_conditions), as axle:code, separated "
    "by blanks",
    "{axle}_overall_diameter_percent": "change of the overall diameter, for front and rear like all that follow",
    "{axle}_load_margin_percent": "by how much the axle's tyres carry more than its maximum mass at the vehicle's "
    "top speed; no relief of the law is counted",
    "{axle}_pressure_kpa": "cold pressure to set; none where the sidewall must tell it, or where no pressure is enough",
    "{axle}_cornering_stiffness_percent": "change of the cornering stiffness, an estimate",
    "{axle}_aquaplaning_onset_percent": "change of the speed at which aquaplaning begins, an estimate",
    "{axle}_inboard_edge_mm": "by how much the wheel reaches further inboard",
    "{axle}_outboard_edge_mm": "by how much the wheel reaches further outboard",
    "driven_circumference_ratio": "rolling circumference of the driven axle, proposed over present",
    "axle_ratio_percent": "change of the ratio of front to rear circumference",
    "understeer_gradient_deg_per_g": "change of the understeer gradient, an estimate",
    "understeer_gradient_low_deg_per_g": "its lower end",
    "understeer_gradient_high_deg_per_g": "its upper end",
}
REJECTED_MEANINGS: dict[str, str] = {
    "table": "vehicles or candidates",
    "row": "which row of that table, counted from 0",
    "id": "the row's own name, where it has one",
    "column": "the column that is at fault",
    "reason": "why the row was left out",
}


_BESIDE = """pairs beside each other, as `service.sweep.batches.grade_batches` takes them
  the columns of the vehicles, and those of the candidates with candidate_ before their names (candidate_front_tyre);
  results as above, and fault, which says why a row has no verdict"""


def described() -> str:
    """Return the documentation of all columns as text."""
    parts = [
        _table("vehicles", VEHICLE_COLUMNS),
        _table("candidates", CANDIDATE_COLUMNS),
        _table("candidates with --pairs, in addition", (PAIRED_VEHICLE,)),
        _plain("results, pairs/part-*.parquet; numbers are 32-bit floats, empty where not known", RESULT_MEANINGS),
        _plain("rejected.parquet", REJECTED_MEANINGS),
        _BESIDE,
        f"Columns of your own may be added to both input tables when their names begin with {OWN_PREFIX}.",
    ]
    return "\n\n".join(parts)


def _table(title: str, columns: tuple[Column, ...]) -> str:
    lines = [title]
    for column in columns:
        notes = [column.kind.replace("_", "/" if column.kind == "yes_no" else " ")]
        if column.kind in ("number", "whole"):
            notes = [f"{column.kind}, {column.low:g} to {column.high:g} {column.unit}".rstrip()]
        if column.words:
            notes = [", ".join(column.words)]
        if column.required:
            notes.append("required")
        lines.append(f"  {column.name:34}{column.meaning} ({'; '.join(notes)})")
    return "\n".join(lines)


def _plain(title: str, meanings: dict[str, str]) -> str:
    return "\n".join([title, *(f"  {name:36}{meaning}" for name, meaning in meanings.items())])
