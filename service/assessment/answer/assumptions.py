"""What was assumed where the caller said nothing, so that nobody takes it for measured."""

from __future__ import annotations

from collections.abc import Iterator

from service.assessment.answer.dimensions_note import dimensions_note
from service.assessment.answer.on_assumption import BY_TODAY, taken
from service.assessment.answer.subjects import on_axle
from service.assessment.answer.unlikely import unlikely
from service.assessment.case import Case, Fitment
from service.assessment.checks.words import plain
from service.assessment.view.driving import of_one_kind
from service.assessment.view.figures import LATERAL_ACCELERATION_G, NEW_TREAD_DEPTH_MM, TEXTURE_DEPTH_MM, WATER_FILM_MM
from service.assessment.view.views import AxleView, CarView
from service.core.numeric import known, unknown
from service.core.saying import Said, say
from service.designation.tyre import not_read
from service.designation.tyre_size import STRUCTURE_ASSUMED

NEW_TYRE = say("A tyre without a tread depth counts as new ({depth}).", depth=plain(NEW_TREAD_DEPTH_MM, 0, "mm"))
WATER = say(
    "Aquaplaning is estimated for {film} of water on a road with {texture} of texture.",
    film=plain(WATER_FILM_MM, 0, "mm"),
    texture=plain(TEXTURE_DEPTH_MM, 0, "mm"),
)
OTHER_KIND = say(
    "The proposed tyres are of another kind than the present ones (winter against summer, van against car). Their "
    "compound decides on grip and braking more than their size does, so no gain or loss of these is named."
)
LOAD_TRANSFER = say(
    "Load transfer in a bend is taken at {acceleration}, on axles whose track is given.",
    acceleration=plain(LATERAL_ACCELERATION_G, 1, "g"),
)


def _on_axle(view: AxleView, proposed: Fitment) -> list[Said]:
    """Return what was assumed of one axle, in sentences."""
    name, axle, at_front = view.name, view.axle, view.name == "front"
    found = [*_masses(view), *_pressures_taken(view)]
    if axle.wheels_per_side > 1 and proposed.tyre.designation.load_index_twin is None:
        found.append(
            say("The front tyre states no load index for twin mounting; its single index is taken for it.")
            if at_front
            else say("The rear tyre states no load index for twin mounting; its single index is taken for it.")
        )
    assumed = (*proposed.tyre.designation.assumed, *proposed.rim.designation.assumed)
    found += [on_axle(name, text) for text in assumed]
    found += [
        say("Front, present tyre: {sentence}", sentence=text)
        if at_front
        else say("Rear, present tyre: {sentence}", sentence=text)
        for text in _of_the_present(axle.fitted, proposed)
    ]
    # Of a size on both sides of the change the same is said once.
    tyres = (axle.fitted.tyre, proposed.tyre)
    notes = dict.fromkeys(text for tyre in tyres for text in (dimensions_note(tyre), *unlikely(tyre)))
    return found + [on_axle(name, text) for text in notes if text]


def _masses(view: AxleView) -> Iterator[Said]:
    """Yield what was taken for the mass on an axle, and what cannot be."""
    axle, at_front = view.axle, view.name == "front"
    if unknown(axle.kerb_axle_mass_kg) and not axle.mass_unbounded:
        yield (
            say("Estimates for the front axle use its maximum mass, since the kerb mass is not given.")
            if at_front
            else say("Estimates for the rear axle use its maximum mass, since the kerb mass is not given.")
        )
    if axle.kerb_axle_mass_kg > axle.max_axle_mass_kg and not axle.mass_assumed:
        yield (
            say("The front axle's kerb mass is above its maximum mass; one of the two must be wrong.")
            if at_front
            else say("The rear axle's kerb mass is above its maximum mass; one of the two must be wrong.")
        )


def _of_the_present(fitted: Fitment, proposed: Fitment) -> list[str]:
    """Return what was taken or passed over in the present tyre's designation, where it is not the proposed one's."""
    now = fitted.tyre.designation
    if now == proposed.tyre.designation:
        return []
    taken = [text for text in now.assumed if text in STRUCTURE_ASSUMED]
    return [*taken, not_read(now.unread)] if now.unread else taken


def _pressures_taken(view: AxleView) -> Iterator[Said]:
    """Yield which pressures the estimates hold for, where they are not the stated ones."""
    at_front = view.name == "front"
    stated, taken = view.now.facts.pressure_kpa, view.now.behaviour.pressure_kpa
    if unknown(stated):
        yield _present_is_assumed(plain(taken, 0, "kPa"), at_front=at_front)
    elif stated != taken:
        yield _present_is_wrong(plain(taken, 0, "kPa"), at_front=at_front)
    stated, taken = view.then.facts.pressure_kpa, view.then.behaviour.pressure_kpa
    if unknown(view.ordered_pressure_kpa) and unknown(stated):
        yield _proposed_is_assumed(plain(taken, 0, "kPa"), at_front=at_front)
    elif stated != taken:
        yield _proposed_is_to_be_set(plain(taken, 0, "kPa"), at_front=at_front, given=known(stated))


def _present_is_assumed(taken: str, *, at_front: bool) -> Said:
    if at_front:
        return say("The present front pressure is not given; {pressure} is assumed.", pressure=taken)
    return say("The present rear pressure is not given; {pressure} is assumed.", pressure=taken)


def _present_is_wrong(taken: str, *, at_front: bool) -> Said:
    if at_front:
        return say(
            "The present front pressure is not right for its tyre; the comparison takes {pressure}.", pressure=taken
        )
    return say("The present rear pressure is not right for its tyre; the comparison takes {pressure}.", pressure=taken)


def _proposed_is_assumed(taken: str, *, at_front: bool) -> Said:
    if at_front:
        return say(
            "The proposed front pressure is not given; {pressure} is assumed for the estimates alone.", pressure=taken
        )
    return say(
        "The proposed rear pressure is not given; {pressure} is assumed for the estimates alone.", pressure=taken
    )


def _proposed_is_to_be_set(taken: str, *, at_front: bool, given: bool) -> Said:
    if given and at_front:
        return say(
            "The proposed front pressure that is given is not used; everything is computed for the {pressure} to be "
            "set.",
            pressure=taken,
        )
    if given:
        return say(
            "The proposed rear pressure that is given is not used; everything is computed for the {pressure} to be "
            "set.",
            pressure=taken,
        )
    if at_front:
        return say(
            "The proposed front pressure is not given; everything is computed for the {pressure} to be set.",
            pressure=taken,
        )
    return say(
        "The proposed rear pressure is not given; everything is computed for the {pressure} to be set.", pressure=taken
    )


def assumptions(case: Case, car: CarView) -> list[Said]:
    """Return what was assumed, in sentences."""
    vehicle, proposed = case.vehicle, case.candidate
    found = [*taken(vehicle)]
    if any(known(axle.todays_mass_kg) for axle in (vehicle.front, vehicle.rear)):
        found.append(BY_TODAY)
    found += _on_axle(car.front, proposed.front) + _on_axle(car.rear, proposed.rear)
    if vehicle.driven_axle is None and not vehicle.is_trailer:
        found.append(say("The driven axle is not given; the speedometer is taken to follow the mean of both axles."))
    if not car.vehicle.is_trailer and not all(
        of_one_kind(view.now.facts, view.then.facts) for view in (car.front, car.rear)
    ):
        found.append(OTHER_KIND)
    if any(unknown(each.facts.tread_depth_mm) for view in (car.front, car.rear) for each in (view.now, view.then)):
        found.append(NEW_TYRE)
    if not car.vehicle.is_trailer:
        found.append(WATER)
    if known(vehicle.centre_of_gravity_height_mm):
        found.append(LOAD_TRANSFER)
    return found
