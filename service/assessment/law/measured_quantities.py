"""The quantities that a rule of a place may limit, computed from present against proposed.

Every name of `rules.quantities` has its function here; floats or arrays alike. What cannot be known is NaN.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from service.assessment.checks.grade import AxleFigure, CarFigure
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import UNKNOWN, Num, known_or, pick
from service.core.units import MM_PER_INCH


def _track_percent(view: AxleView[Num]) -> Num:
    # No change is none of any track.
    changed = 100.0 * view.change.track_mm / view.axle.sure_track_mm
    return pick(view.change.track_mm == 0.0, 0.0, changed)


def _capacity_margin_percent(view: AxleView[Num]) -> Num:
    # The law may read the load at another speed, and ask for less than the axle mass.
    facts = view.then.facts
    gain = known_or(facts.law_load_factor, facts.load_factor) / facts.load_factor
    asked = view.axle.max_axle_mass_kg * view.conditions.axle_mass_share
    return 100.0 * (gain * view.then.load.axle_capacity_kg / asked - 1.0)


def _rating_sum_margin_kg(view: AxleView[Num]) -> Num:
    return view.axle.tyres * view.then.facts.rated_kg - view.axle.max_axle_mass_kg


def _rating_margin_kg(view: AxleView[Num]) -> Num:
    return view.then.facts.rated_kg - view.axle.max_axle_mass_kg / view.axle.tyres


def _rim_width_mm(view: AxleView[Num]) -> Num:
    return MM_PER_INCH * (view.then.facts.rim_width_in - view.now.facts.rim_width_in)


def _rim_diameter_mm(view: AxleView[Num]) -> Num:
    return MM_PER_INCH * (view.then.facts.rim_code - view.now.facts.rim_code)


def _width_percent(view: AxleView[Num]) -> Num:
    return 100.0 * view.change.section_width_mm / view.now.geometry.section_width_mm


def _structure_same(car: CarView[Num]) -> Num:
    front, rear = car.front.then.facts, car.rear.then.facts
    # A temporary spare is excepted from this rule.
    spare = (front.temporary_spare == 1.0) | (rear.temporary_spare == 1.0)
    return pick((front.radial == rear.radial) | spare, 1.0, 0.0)


ON_AN_AXLE: Mapping[str, AxleFigure] = MappingProxyType(
    {
        "track_change_percent": _track_percent,
        "track_change_mm": lambda view: view.change.track_mm,
        "track_change_abs_mm": lambda view: abs(view.change.track_mm),
        "offset_change_mm": lambda view: view.change.offset_mm,
        "spacer_mm": lambda view: view.then.facts.spacer_mm,
        "overall_diameter_change_percent": lambda view: view.change.overall_diameter_percent,
        "overall_diameter_change_abs_percent": lambda view: abs(view.change.overall_diameter_percent),
        "overall_diameter_change_mm": lambda view: view.change.overall_diameter_mm,
        "rolling_circumference_change_percent": lambda view: view.change.rolling_circumference_percent,
        "rolling_circumference_change_abs_percent": lambda view: abs(view.change.rolling_circumference_percent),
        "section_width_change_mm": lambda view: view.change.section_width_mm,
        "section_width_change_percent": _width_percent,
        "rim_diameter_change_mm": _rim_diameter_mm,
        "rim_diameter_change_abs_mm": lambda view: abs(_rim_diameter_mm(view)),
        "rim_width_change_mm": _rim_width_mm,
        "load_index_change": lambda view: view.then.facts.load_index - view.now.facts.load_index,
        # One designation per axle is the request's shape, so all load indices of an axle are alike.
        "load_index_spread": lambda _: 0.0,
        # A type is more than its designation: maker, use, structure (92/23). That is seen on the car.
        "same_size_on_axle": lambda _: UNKNOWN,
        "load_capacity_margin_percent": _capacity_margin_percent,
        "load_rating_sum_margin_kg": _rating_sum_margin_kg,
        "tyre_load_rating_margin_kg": _rating_margin_kg,
        "speed_capability_kmh": lambda view: view.then.facts.speed_capability_kmh,
        "speed_capability_margin_kmh": lambda view: view.then.facts.speed_capability_kmh - view.vehicle.max_speed_kmh,
        "speed_symbol_change_kmh": lambda view: (
            view.then.facts.speed_capability_kmh - view.now.facts.speed_capability_kmh
        ),
    }
)

ON_THE_VEHICLE: Mapping[str, CarFigure] = MappingProxyType(
    {
        "structure_same": _structure_same,
        "radial_rear_where_radial_front": lambda car: pick(
            car.rear.then.facts.radial >= car.front.then.facts.radial, 1.0, 0.0
        ),
    }
)
