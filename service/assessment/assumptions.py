"""What was assumed where the caller said nothing, so that nobody takes it for measured."""

from __future__ import annotations

from service.assessment.case import Case
from service.assessment.comparison import CarView
from service.assessment.figures import LATERAL_ACCELERATION_G, NEW_TREAD_DEPTH_MM, TEXTURE_DEPTH_MM, WATER_FILM_MM
from service.assessment.words import plain


def assumptions(case: Case, car: CarView) -> list[str]:
    """Return what was assumed, in sentences."""
    vehicle, found = case.vehicle, []
    for view in (car.front, car.rear):
        name, axle = view.name, view.axle
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
        found += [f"{name.capitalize()}: {text}" for text in _readings(case, name)]
    if vehicle.driven_axle is None:
        found.append("The driven axle is not given; the speedometer is taken to follow the mean of both axles.")
    found.append(
        f"A tyre without a tread depth counts as new ({plain(NEW_TREAD_DEPTH_MM)} mm); aquaplaning is estimated for a "
        f"{plain(WATER_FILM_MM)} mm film on a road of {plain(TEXTURE_DEPTH_MM)} mm texture."
    )
    if vehicle.centre_of_gravity_height_mm == vehicle.centre_of_gravity_height_mm:
        found.append(
            f"Load transfer is taken at {plain(LATERAL_ACCELERATION_G, 1)} g of cornering where a track is given."
        )
    return found


def _readings(case: Case, name: str) -> list[str]:
    fitment = case.candidate.front if name == "front" else case.candidate.rear
    return [*fitment.tyre.designation.assumed, *fitment.rim.designation.assumed]
