"""Where on the car or in its papers a number of a request stands, and what one may leave out.

The codes are those of the harmonised registration certificate (Council Directive 1999/37/EC, Annex I), told from
memory, as the introduction of the document says; so is where sidewalls, wheels and plates show what.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from service.api.render.numbers import Json

_SIDEWALL: Final = "On the sidewall"
_IN_SIZE: Final = "Part of what the sidewall says; leave it out where `size` is sent."
_IN_RIM: Final = "Part of what the back of the wheel says; leave it out where `size` is sent."
_TRADE: Final = "The tyre maker's data sheet has it; leave it out where you do not know it, it is then computed."
_LABEL: Final = "On the tyre's label and in the EU's product database; may be left out."

_VEHICLE: Final = {
    "category": "Code J of the registration certificate; leave it out for a passenger car, which is M1.",
    "max_speed_kmh": "Code T of the registration certificate, else the certificate of conformity. May "
    "be left out where the new tyres are no slower than the present ones.",
    "wheelbase_mm": "Code M of the registration certificate, else the certificate of conformity; or measure it from "
    "hub to hub. May be left out: what needs it stays open.",
    "built": "Near enough is the first registration, code B of the registration certificate. May be left out where no "
    "rule of the place asks for it.",
    "max_mass_kg": "Code F.1 of the registration certificate, or the plate on the door pillar. May be left out.",
    "driven_axle": "In the vehicle's handbook; may be left out.",
    "centre_of_gravity_height_mm": "Hardly any paper states it: leave it out unless a test bench told you.",
    "seats_standing": "On the registration certificate (code S.2, standing places); buses alone need it.",
    "speed_limited_kmh": "On the limiter's own plate in the cab; leave it out where there is none.",
    "towing": "What the vehicle is used for; may be left out.",
}
_AXLE: Final = {
    "max_axle_mass_kg": "Code N of the registration certificate (N.1 the first axle, N.2 the second), or the plate on "
    "the door pillar, which lists the axles from the front on. May be left out where the new wheels carry no less "
    "than the present ones.",
    "kerb_axle_mass_kg": "Weigh the axle on a scale; papers hold the mass of the whole car alone (code G). May be "
    "left out.",
    "track_mm": "Certificate of conformity; or measure it from the middle of one tread to the other. May be left out.",
    "track_tolerance_mm": "Leave it out where the track comes from the papers.",
    "wheels_per_side": "Count them; leave it out for one wheel a side.",
    "min_rim_diameter_in": "The maker's list of approved wheels, or the brake measured; may be left out where the rim "
    "is no smaller than the present one.",
}
_HUB: Final = {
    "bolt_circle": "On the back of the present wheel, or measure it; the present rim may state it instead.",
    "centre_bore_mm": "Measure the spigot with a caliper, wheel off; the present rim may state it instead.",
}
_CLEARANCE: Final = {
    "inboard_mm": "Measure with tape or feeler between tyre and strut, turned to full lock too. May be left out where "
    "the wheel does not come nearer.",
    "outboard_mm": "Measure with the tape from the tyre's shoulder to the edge of the wing. May be left out where the "
    "wheel does not come further out.",
    "radial_mm": "Measure with the tape above the tread, at full lock too, less the travel that is left. May be left "
    "out where the tyre does not grow.",
    "tolerance_mm": "How well your tape reads, such as 2 mm.",
}
_SPEEDOMETER: Final = {
    "displayed_kmh": "Read it off while a second person reads the true speed.",
    "true_kmh": "From a satellite receiver on a level road at a steady speed, or from a test bench.",
}
_FITMENT: Final = {
    "pressure_kpa": "Of the present tyres: the plate on the door pillar or the fuel flap. May be left out; the answer "
    "says what to set.",
    "spacer_mm": "Written on the spacer's edge, or measure it.",
}
_TYRE: Final = {
    "size": f"{_SIDEWALL}, all of it: size, load index, speed symbol, XL or C.",
    "tread_depth_mm": "Measure in the main grooves, the least counts. May be left out.",
    "section_width_mm": "Leave it out where `size` is sent and nothing was measured.",
    "load_index": f"{_SIDEWALL} behind the size (the number); leave it out where `size` has it.",
    "speed_symbol": f"{_SIDEWALL} behind the load index (the letter); leave it out where `size` has it.",
    "reference_pressure_kpa": f"{_SIDEWALL} of a commercial tyre, as MAX LOAD AT kPa or psi; else leave it out.",
    **dict.fromkeys(
        ("aspect_ratio", "commercial", "construction", "load_index_twin", "load_range", "load_version"), _IN_SIZE
    ),
    **dict.fromkeys(("overall_diameter_in", "ply_rating", "rim_diameter_in", "section_width_in"), _IN_SIZE),
    **dict.fromkeys(("overall_diameter_mm", "rolling_circumference_mm", "approved_rim_widths_in", "mass_kg"), _TRADE),
}
_RIM: Final = {
    "size": "On the back of the wheel or of its spokes, ET with it.",
    "bolt_circle": "On the back of the wheel, or measure it. There is no firm answer on another rim than the "
    "present one without it.",
    "centre_bore_mm": "On the back of the wheel, or measure it with a caliper. There is no firm answer on another rim "
    "than the present one without it.",
    "load_rating_kg": "On the back of the wheel (MAX LOAD) or in its approval papers. There is no firm answer on "
    "another rim than the present one without it.",
    "mass_kg": "Put the bare wheel on a scale; may be left out.",
    **dict.fromkeys(("diameter_in", "flange", "hump", "offset_mm", "one_piece", "width_in"), _IN_RIM),
}
PLACES: Final[Mapping[str, Mapping[str, str]]] = {
    "Vehicle": _VEHICLE,
    "Axle": _AXLE,
    "Hub": _HUB,
    "Clearance": _CLEARANCE,
    "Speedometer": _SPEEDOMETER,
    "Fitment": _FITMENT,
    "Tyre": _TYRE,
    "Rim": _RIM,
    "Label": dict.fromkeys(("noise_db", "rolling_resistance_class", "wet_grip_class"), _LABEL),
}


def tell_places(document: Json) -> None:
    """Add to the description of each field of a request where its number stands."""
    schemas: Json = document["components"]["schemas"]
    for model, places in PLACES.items():
        for field, place in places.items():
            member = schemas[model]["properties"][field]
            # A choice of words may leave its description to the model that it refers to.
            told = member.get("description") or schemas[member["$ref"].rpartition("/")[2]]["description"]
            member["description"] = f"{told} {place}"
