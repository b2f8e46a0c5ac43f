"""The closed list of quantities that a rule may limit, each with its unit and the words for it.

A rule names a quantity; the assessment computes it. Every change is proposed against present, and
positive means more. A yes-or-no quantity is 1 for yes and 0 for no.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

from service.core.saying import Said, say


class Quantity(NamedTuple):
    """A quantity that a rule may limit: its name, its unit and the words a message uses for it, with their article."""

    name: str
    unit: str
    words: Said


_WORDS: dict[str, tuple[str, Said]] = {
    "track_change_percent": ("%", say("the change of the track against the registered track")),
    "track_change_mm": ("mm", say("the change of the track")),
    "track_change_abs_mm": ("mm", say("the change of the track in either direction")),
    "offset_change_mm": ("mm", say("the change of the rim offset")),
    "spacer_mm": ("mm", say("the thickness of the spacers")),
    "overall_diameter_change_percent": ("%", say("the change of the overall diameter")),
    "overall_diameter_change_abs_percent": ("%", say("the change of the overall diameter in either direction")),
    "overall_diameter_change_mm": ("mm", say("the change of the overall diameter")),
    "rolling_circumference_change_percent": ("%", say("the change of the rolling circumference")),
    "rolling_circumference_change_abs_percent": (
        "%",
        say("the change of the rolling circumference in either direction"),
    ),
    "section_width_change_mm": ("mm", say("the change of the section width")),
    "section_width_change_percent": ("%", say("the change of the section width")),
    "rim_diameter_change_mm": ("mm", say("the change of the rim diameter")),
    "rim_diameter_change_abs_mm": ("mm", say("the change of the rim diameter in either direction")),
    "rim_width_change_mm": ("mm", say("the change of the rim width")),
    "load_index_change": ("index", say("the change of the load index")),
    "load_index_spread": ("index", say("the difference of the load indices on one axle")),
    "load_capacity_margin_percent": ("%", say("the load capacity of the axle's tyres beyond the maximum axle mass")),
    "load_rating_sum_margin_kg": ("kg", say("the sum of the load ratings of the axle's tyres beyond the axle rating")),
    "tyre_load_rating_margin_kg": (
        "kg",
        say("the maximum load marked on each tyre beyond its share of the maximum axle mass"),
    ),
    "speed_capability_kmh": ("km/h", say("the speed capability of the tyre")),
    "speed_capability_margin_kmh": ("km/h", say("the speed capability of the tyre beyond the vehicle's maximum speed")),
    "speed_symbol_change_kmh": ("km/h", say("the change of the speed of the tyre's symbol")),
    "same_size_on_axle": ("yes/no", say("the same designation on both sides of the axle")),
    "structure_same": ("yes/no", say("the same structure (radial or diagonal) on the whole vehicle")),
    "radial_rear_where_radial_front": ("yes/no", say("the radial tyres at the rear wherever the front has them")),
}

QUANTITIES: Mapping[str, Quantity] = MappingProxyType(
    {name: Quantity(name, unit, words) for name, (unit, words) in _WORDS.items()}
)
