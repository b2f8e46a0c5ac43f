"""The figures of one wheel: geometry, load, pressure, behaviour; one function each, floats or arrays.

Loads for the estimates of behaviour come from `Axle.estimate_mass_kg`; `view/ordered_pressure.py` says which pressure.
"""

from __future__ import annotations

from typing import Generic, NamedTuple

from service.assessment.case import Axle, Vehicle
from service.assessment.view.wheel_facts import NO_MARK, WheelFacts
from service.core.numeric import UNKNOWN, Num, Num_co, known_or, larger, pick
from service.core.units import MM_PER_INCH, STANDARD_GRAVITY_M_S2
from service.physics.aquaplaning import gallaway_onset_kmh
from service.physics.contact_patch import contact_patch, tread_width_mm
from service.physics.cornering_stiffness import cornering_stiffness_n_per_deg
from service.physics.dimensions import section_width_mm, service_width_mm
from service.physics.pressure_load import (
    pressure_for_load_kpa,
    speed_pressure_addition_by_symbol_kpa,
)
from service.physics.rolling import revolutions_per_km, rolling_circumference_mm
from service.physics.understeer import axle_stiffness_n_per_deg, lateral_load_transfer_n
from service.physics.vertical_stiffness import vertical_stiffness_n_per_mm
from service.physics.wheel_position import (
    grown_diameter_mm,
    inner_edge_mm,
    outer_edge_mm,
    rim_overall_width_mm,
)
from service.rules.limits import Limits

# Trailers for which UN R142 counts passenger tyres with a smaller share at up to 100 km/h.
SLOW_TRAILERS = ("O1", "O2")
# Tread depth of a new car tyre where the caller gives none: common practice, no source.
NEW_TREAD_DEPTH_MM = 8.0
# The standing water of the aquaplaning level: a 2 mm film on a road of 1 mm texture depth (project's choice).
WATER_FILM_MM = 2.0
TEXTURE_DEPTH_MM = 1.0
# The steady cornering at which load transfer is taken into account (project's choice).
LATERAL_ACCELERATION_G = 0.3
# The models hold for a tyre that is not crushed: deflection below half its sidewall, load below 1.2 of the rated one.
DEEPEST_SHARE = 0.5
MOST_OVERLOAD = 1.2
# A load carried exactly must not fail by the last bit of a float.
LAST_BIT_KG = 1e-9
# Flotation sizes may be printed far higher than any tyre the stiffness and the tread width were fitted to.
HIGHEST_ASPECT_PERCENT = 150.0


class Geometry(NamedTuple, Generic[Num_co]):
    """Sizes and places of one wheel as designed; edges are measured from the hub face, the inner one inboard."""

    section_width_mm: Num_co
    overall_diameter_mm: Num_co
    rolling_circumference_mm: Num_co
    revolutions_per_km: Num_co
    inner_edge_mm: Num_co
    outer_edge_mm: Num_co
    widest_mm: Num_co
    """The wider of tyre and rim."""
    grown_widest_mm: Num_co
    """The same with a tyre as wide as it may grow in service."""
    grown_diameter_mm: Num_co
    twin_gap_mm: Num_co
    """Between the two grown tyres of a twin; NaN for a single wheel."""


class Load(NamedTuple, Generic[Num_co]):
    """What one wheel carries at the vehicle's top speed, and what it must carry."""

    capacity_kg: Num_co
    axle_capacity_kg: Num_co
    required_kg: Num_co
    required_pressure_kpa: Num_co
    """Cold, for the axle at the top speed; NaN where it is not known, and where no pressure is enough."""


class Behaviour(NamedTuple, Generic[Num_co]):
    """Estimates of one wheel at a pressure, under the estimate load."""

    pressure_kpa: Num_co
    load_share: Num_co
    """That load over the rated one; NaN where no load index is stated."""
    static_loaded_radius_mm: Num_co
    patch_length_mm: Num_co
    patch_width_mm: Num_co
    patch_area_cm2: Num_co
    cornering_stiffness_n_per_deg: Num_co
    axle_stiffness_n_per_deg: Num_co
    aquaplaning_onset_kmh: Num_co
    """With the tread as stated; its width is not counted in it yet."""
    onset_as_new_kmh: Num_co
    """The same with a new tread."""


def geometry(facts: WheelFacts[Num], limits: Limits, axle: Axle[Num]) -> Geometry[Num]:
    """Return sizes and places of a wheel, its tyres new; of twins, the inner one's inner and the outer's outer edge.

    The outer wheel of a twin is the inner one turned round, so both edges move out as the offset grows.
    """
    rim_width_mm = facts.rim_width_in * MM_PER_INCH
    width = known_or(
        facts.measured_width_mm,
        known_or(section_width_mm(facts.design_width_mm, rim_width_mm, facts.design_rim_mm), facts.design_width_mm),
    )
    circumference = known_or(
        facts.measured_circumference_mm, rolling_circumference_mm(facts.overall_diameter_mm, facts.circumference_factor)
    )
    grown = service_width_mm(width, limits.service_width_growth_percent.value)
    rim_overall = rim_overall_width_mm(rim_width_mm)
    widest = larger(width, rim_overall)
    snow = pick(facts.winter_mark == NO_MARK, 0.0, limits.snow_diameter_growth_percent.value)
    single = axle.wheels_per_side == 1
    inner_edge = inner_edge_mm(widest, facts.offset_mm)
    return Geometry(
        section_width_mm=width,
        overall_diameter_mm=facts.overall_diameter_mm,
        rolling_circumference_mm=circumference,
        revolutions_per_km=revolutions_per_km(circumference),
        inner_edge_mm=inner_edge,
        outer_edge_mm=outer_edge_mm(widest, facts.offset_mm) if single else inner_edge,
        widest_mm=widest,
        grown_widest_mm=larger(grown, rim_overall),
        grown_diameter_mm=grown_diameter_mm(
            facts.rim_diameter_mm, facts.section_height_mm, limits.service_height_growth_percent.value, snow
        ),
        twin_gap_mm=UNKNOWN if single else 2.0 * facts.offset_mm - grown,
    )


def load_share(facts: WheelFacts[Num], axle: Axle[Num], limits: Limits, vehicle: Vehicle[Num]) -> Num:
    """Return the share of the axle's mass that each tyre must be able to carry.

    Slow light trailers may load passenger tyres more; commercial tyres never get that relief.
    """
    slow = vehicle.category in SLOW_TRAILERS
    slow_trailer = (vehicle.max_speed_kmh <= limits.trailer_speed_kmh.value) & slow
    if axle.wheels_per_side == 1:
        commercial = limits.load_share_single.value
        passenger = pick(slow_trailer, limits.load_share_trailer_single.value, commercial)
    else:
        commercial = limits.load_share_twin_commercial.value
        twin = limits.load_share_twin_passenger.value
        passenger = pick(slow_trailer, limits.load_share_trailer_twin.value, twin)
    return passenger + (commercial - passenger) * facts.commercial


def load(facts: WheelFacts[Num], axle: Axle[Num], limits: Limits, vehicle: Vehicle[Num]) -> Load[Num]:
    """Return what a wheel carries at the top speed against what its axle asks of it."""
    capacity = facts.rated_kg * facts.load_factor
    share = load_share(facts, axle, limits, vehicle)
    required = axle.max_axle_mass_kg * share
    # On an assumption nobody pumps tyres up: they get what makes them carry as much as the present ones do today.
    pressed = axle.todays_mass_kg if vehicle.speed_assumed or axle.mass_assumed else axle.max_axle_mass_kg
    carrying = pressure_for_load_kpa(pressed * share, capacity, facts.reference_pressure_kpa, facts.pressure_exponent)
    addition = speed_pressure_addition_by_symbol_kpa(vehicle.max_speed_kmh, facts.speed_capability_kmh)
    enough = larger(carrying + addition, limits.least_pressure_kpa.value)
    return Load(
        capacity_kg=capacity,
        axle_capacity_kg=capacity / share,
        required_kg=required,
        # Above its reference pressure a tyre carries no more: what it cannot carry there, it never will.
        required_pressure_kpa=pick(capacity >= required - LAST_BIT_KG, enough, UNKNOWN),
    )


def standing_water_onset_kmh(pressure_kpa: Num, tread_depth_mm: Num) -> Num:
    """Return the level of the aquaplaning onset [km/h] on the road and in the water that all estimates assume."""
    return gallaway_onset_kmh(pressure_kpa, tread_depth_mm, WATER_FILM_MM, TEXTURE_DEPTH_MM)


def behaviour(
    facts: WheelFacts[Num], shape: Geometry[Num], pressure_kpa: Num, axle: Axle[Num], height_mm: Num
) -> Behaviour[Num]:
    """Return the estimates of one wheel under the axle's estimate load; `height_mm` is the centre of gravity's."""
    mass = axle.estimate_mass_kg
    force = mass * STANDARD_GRAVITY_M_S2 / axle.tyres
    aspect = pick(facts.aspect_percent <= HIGHEST_ASPECT_PERCENT, facts.aspect_percent, UNKNOWN)
    stiffness = vertical_stiffness_n_per_mm(pressure_kpa, aspect, facts.nominal_width_mm, facts.rim_diameter_mm)
    deflection = force / stiffness
    # Half the sidewall is beyond what any of the models was made for; what rests on it is not known then.
    deflection = pick(deflection < DEEPEST_SHARE * facts.section_height_mm, deflection, UNKNOWN)
    radius = 0.5 * shape.overall_diameter_mm - deflection
    patch = contact_patch(
        force,
        pressure_kpa,
        shape.overall_diameter_mm,
        facts.section_height_mm,
        tread_width_mm(facts.nominal_width_mm, aspect),
        deflection,
    )
    stated = facts.rated_kg * STANDARD_GRAVITY_M_S2
    rated = pick(force < MOST_OVERLOAD * stated, stated, UNKNOWN)
    level = cornering_stiffness_n_per_deg(force, rated)
    pairs = axle.wheels_per_side
    transfer = lateral_load_transfer_n(mass, axle.track_mm, height_mm, LATERAL_ACCELERATION_G)
    per_axle = pairs * known_or(axle_stiffness_n_per_deg(2.0 * force, rated, transfer / pairs), 2.0 * level)
    onset = standing_water_onset_kmh(pressure_kpa, known_or(facts.tread_depth_mm, NEW_TREAD_DEPTH_MM))
    return Behaviour(
        pressure_kpa=pressure_kpa,
        load_share=force / stated,
        static_loaded_radius_mm=radius,
        patch_length_mm=patch.length_mm,
        patch_width_mm=patch.width_mm,
        patch_area_cm2=patch.area_cm2,
        cornering_stiffness_n_per_deg=level,
        axle_stiffness_n_per_deg=per_axle,
        aquaplaning_onset_kmh=onset,
        onset_as_new_kmh=standing_water_onset_kmh(pressure_kpa, NEW_TREAD_DEPTH_MM),
    )
