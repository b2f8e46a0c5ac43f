"""What was assumed where the caller said nothing, so that nobody takes it for measured."""

from __future__ import annotations

from collections.abc import Sequence

from service.assessment.case import Case, Fitment
from service.assessment.comparison import AxleView
from service.assessment.figures import LATERAL_ACCELERATION_G, NEW_TREAD_DEPTH_MM, TEXTURE_DEPTH_MM, WATER_FILM_MM
from service.assessment.words import plain

NEW_TYRE = (
    f"A tyre without a tread depth counts as new ({plain(NEW_TREAD_DEPTH_MM)} mm); aquaplaning is estimated for a "
    f"{plain(WATER_FILM_MM)} mm film on a road of {plain(TEXTURE_DEPTH_MM)} mm texture."
)
LOAD_TRANSFER = f"Load transfer is taken at {plain(LATERAL_ACCELERATION_G, 1)} g of cornering where a track is given."


def axle_assumptions(view: AxleView, proposed: Fitment) -> tuple[str, ...]:
    """Return what was assumed of one axle, in sentences."""
    name, axle, found = view.name, view.axle, []
    if axle.kerb_axle_mass_kg != axle.kerb_axle_mass_kg:
        found.append(f"Estimates for the {name} axle use its maximum mass, since the kerb mass is not given.")
    if view.now.facts.pressure_kpa != view.now.facts.pressure_kpa:
        found.append(
            f"The present {name} pressure is not given; {plain(view.now.behaviour.pressure_kpa)} kPa is assumed."
        )
    if view.then.facts.pressure_kpa != view.then.facts.pressure_kpa:
        found.append(
            f"The proposed {name} pressure is not given; {plain(view.then.behaviour.pressure_kpa)} kPa is assumed, "
            "which carries what the present tyres carry."
        )
    assumed = (*proposed.tyre.designation.assumed, *proposed.rim.designation.assumed)
    return (*found, *(f"{name.capitalize()}: {text}" for text in assumed))


def assumptions(case: Case, front: Sequence[str], rear: Sequence[str]) -> list[str]:
    """Return what was assumed, in sentences; those on the axles are given."""
    vehicle, found = case.vehicle, [*front, *rear]
    if vehicle.driven_axle is None:
        found.append("The driven axle is not given; the speedometer is taken to follow the mean of both axles.")
    found.append(NEW_TYRE)
    if vehicle.centre_of_gravity_height_mm == vehicle.centre_of_gravity_height_mm:
        found.append(LOAD_TRANSFER)
    return found
