"""What was assumed where the caller said nothing, so that nobody takes it for measured."""

from __future__ import annotations

from service.assessment.answer.dimensions_note import dimensions_note
from service.assessment.answer.trade_offs import of_one_kind
from service.assessment.answer.unlikely import unlikely
from service.assessment.case import Case, Fitment
from service.assessment.checks.words import plain
from service.assessment.view.figures import LATERAL_ACCELERATION_G, NEW_TREAD_DEPTH_MM, TEXTURE_DEPTH_MM, WATER_FILM_MM
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import known, unknown
from service.designation.tyre import not_read
from service.designation.tyre_size import STRUCTURE_ASSUMED

NEW_TYRE = f"A tyre without a tread depth counts as new ({plain(NEW_TREAD_DEPTH_MM)} mm)."
WATER = (
    f"Aquaplaning is estimated for {plain(WATER_FILM_MM)} mm of water on a road with {plain(TEXTURE_DEPTH_MM)} mm "
    "of texture."
)
OTHER_KIND = (
    "The proposed tyres are of another kind than the present ones (winter against summer, van against car). Their "
    "compound decides on grip and braking more than their size does, so no gain or loss of these is named."
)
LOAD_TRANSFER = (
    f"Load transfer in a bend is taken at {plain(LATERAL_ACCELERATION_G, 1)} g, on axles whose track is given."
)


def _on_axle(view: AxleView, proposed: Fitment) -> list[str]:
    """Return what was assumed of one axle, in sentences."""
    name, axle, found = view.name, view.axle, []
    if unknown(axle.kerb_axle_mass_kg):
        found.append(f"Estimates for the {name} axle use its maximum mass, since the kerb mass is not given.")
    found += _pressures_taken(view)
    if axle.kerb_axle_mass_kg > axle.max_axle_mass_kg:
        found.append(f"The {name} axle's kerb mass is above its maximum mass; one of the two must be wrong.")
    if axle.wheels_per_side > 1 and proposed.tyre.designation.load_index_twin is None:
        found.append(f"The {name} tyre states no load index for twin mounting; its single index is taken for it.")
    assumed = (*proposed.tyre.designation.assumed, *proposed.rim.designation.assumed)
    found += [f"{name.capitalize()}: {text}" for text in assumed]
    found += [f"{name.capitalize()}, present tyre: {text}" for text in _of_the_present(axle.fitted, proposed)]
    # Of a size on both sides of the change the same is said once.
    tyres = (axle.fitted.tyre, proposed.tyre)
    notes = dict.fromkeys(text for tyre in tyres for text in (dimensions_note(tyre), *unlikely(tyre)))
    return found + [f"{name.capitalize()}: {text}" for text in notes if text]


def _of_the_present(fitted: Fitment, proposed: Fitment) -> list[str]:
    """Return what was taken or passed over in the present tyre's designation, where it is not the proposed one's."""
    now = fitted.tyre.designation
    if now == proposed.tyre.designation:
        return []
    taken = [text for text in now.assumed if text in STRUCTURE_ASSUMED]
    return [*taken, not_read(now.unread)] if now.unread else taken


def _pressures_taken(view: AxleView) -> list[str]:
    """Return which pressures the estimates hold for, where they are not the stated ones."""
    found, name = [], view.name
    stated, taken = view.now.facts.pressure_kpa, view.now.behaviour.pressure_kpa
    if unknown(stated):
        found.append(f"The present {name} pressure is not given; {plain(taken)} kPa is assumed.")
    elif stated != taken:
        found.append(f"The present {name} pressure is not right for its tyre; the comparison takes {plain(taken)} kPa.")
    stated, taken = view.then.facts.pressure_kpa, view.then.behaviour.pressure_kpa
    if unknown(view.ordered_pressure_kpa) and unknown(stated):
        found.append(
            f"The proposed {name} pressure is not given; {plain(taken)} kPa is assumed for the estimates alone."
        )
    elif stated != taken:
        why = "is not given" if unknown(stated) else "that is given is not used"
        found.append(
            f"The proposed {name} pressure {why}; everything is computed for the {plain(taken)} kPa to be set."
        )
    return found


def assumptions(case: Case, car: CarView) -> list[str]:
    """Return what was assumed, in sentences."""
    vehicle, proposed = case.vehicle, case.candidate
    found = _on_axle(car.front, proposed.front) + _on_axle(car.rear, proposed.rear)
    if vehicle.driven_axle is None:
        found.append("The driven axle is not given; the speedometer is taken to follow the mean of both axles.")
    if not car.vehicle.is_trailer and not (of_one_kind(car.front) and of_one_kind(car.rear)):
        found.append(OTHER_KIND)
    if any(unknown(each.facts.tread_depth_mm) for view in (car.front, car.rear) for each in (view.now, view.then)):
        found.append(NEW_TYRE)
    if not car.vehicle.is_trailer:
        found.append(WATER)
    if known(vehicle.centre_of_gravity_height_mm):
        found.append(LOAD_TRANSFER)
    return found
