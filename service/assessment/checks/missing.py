"""What must be read or measured so that an open question can be answered: the first thing lacking, with its pointer."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from service.assessment.checks.offset_window import unread_offset_mm
from service.assessment.checks.wheel_words import TYRES, WHEELS, Which
from service.assessment.checks.words import plain, span
from service.assessment.view.change import Wheel
from service.assessment.view.figures import DEEPEST_SHARE, HIGHEST_ASPECT_PERCENT, MOST_OVERLOAD
from service.assessment.view.views import AxleView
from service.core.findings import AxleName, Remedy
from service.core.numeric import UNKNOWN, known, unknown
from service.core.saying import Said, say
from service.core.units import STANDARD_GRAVITY_M_S2
from service.physics.vertical_stiffness import vertical_stiffness_n_per_mm
from service.standards.load_index import least_index_for_kg

# Below this the design guide has no rim width to compare with.
LOWEST_ASPECT_PERCENT = 20.0
# No advice beyond what is pumped into tyres: common practice, no source.
HIGHEST_USUAL_KPA = 600.0


class _Place(NamedTuple):
    """One wheel, where the request tells of it, and what a fitter calls it."""

    pointer: str
    wheel: Wheel
    view: AxleView
    which: Which

    @property
    def tyre(self) -> Said:
        """Return the tyre in words: `the new front tyre`."""
        return TYRES[self.which, self.view.name]


def _places(views: tuple[AxleView, ...]) -> Iterator[_Place]:
    for view in views:
        yield _Place(f"/vehicle/{view.name}/fitted", view.now, view, "present")
        yield _Place(f"/candidate/{view.name}", view.then, view, "new")


def offset_remedy(view: AxleView) -> Remedy | None:
    """Return which rim of an axle states no offset, and which one is enough; None when both do."""
    lacking = [place for place in _places((view,)) if unknown(place.wheel.facts.offset_mm)]
    if not lacking:
        return None
    low, high = unread_offset_mm(view) if len(lacking) == 1 else (None, None)
    wheel = WHEELS[lacking[0].which, view.name]
    text = say("read the offset (ET) on the back of {wheel}", wheel=wheel)
    if low is not None or high is not None:
        text = say(
            "read the offset (ET) on the back of {wheel}: ET {offset} is enough",
            wheel=wheel,
            offset=span(low, high, ""),
        )
    return Remedy(text, f"{lacking[0].pointer}/rim/size", "offset_mm", low, high, unit="mm")


def service_remedy(view: AxleView) -> Remedy | None:
    """Return which tyre of an axle states no load index or speed symbol with a meaning; None when both do."""
    for place in _places((view,)):
        facts = place.wheel.facts
        if unknown(facts.rated_kg * facts.load_factor * facts.speed_capability_kmh):
            text = say("read load index and speed symbol on the sidewall of {tyre}", tyre=place.tyre)
            return Remedy(text, f"{place.pointer}/tyre/size", "service_description")
    return None


def diameter_remedy(*views: AxleView) -> Remedy | None:
    """Return which wheel's overall diameter is lacking; None when all are known."""
    for place in _places(views):
        if unknown(place.wheel.geometry.rolling_circumference_mm):
            return _state_diameter(place)
    for place in _places(views):
        if unknown(place.wheel.facts.section_height_mm):
            return _state_diameter(place)
    return None


def _state_diameter(place: _Place) -> Remedy:
    pointer = f"{place.pointer}/tyre/overall_diameter_mm"
    text = say("look up the overall diameter of {tyre} in its maker's data, or measure it", tyre=place.tyre)
    return Remedy(text, pointer, "overall_diameter_mm", unit="mm")


def width_remedy(*views: AxleView) -> Remedy | None:
    """Return which wheel's section width is lacking; None when all are known."""
    for place in _places(views):
        if unknown(place.wheel.geometry.section_width_mm):
            pointer = f"{place.pointer}/tyre/section_width_mm"
            text = say("look up the section width of {tyre} in its maker's data, or measure it", tyre=place.tyre)
            return Remedy(text, pointer, "section_width_mm", unit="mm")
    return None


def _same_structure(*views: AxleView) -> Remedy | None:
    """Return which axle changes between radial and diagonal tyres; None when none does."""
    for view in views:
        if view.then.facts.radial != view.now.facts.radial:
            was = "radial" if view.now.facts.radial else "diagonal"
            text = say("diagonal tyres as at present: no estimate compares radial with diagonal ones")
            if view.now.facts.radial:
                text = say("radial tyres as at present: no estimate compares radial with diagonal ones")
            return Remedy(text, f"/candidate/{view.name}/tyre/size", "construction", equals=was)
    return None


def deflection_remedy(*views: AxleView) -> Remedy | None:
    """Return which wheel's overall diameter, or pressure, the estimates under load lack; None when nothing is."""
    lacking = diameter_remedy(*views) or _same_structure(*views)
    if lacking is not None:
        return lacking
    for place in _places(views):
        if place.wheel.facts.aspect_percent > HIGHEST_ASPECT_PERCENT:
            most = plain(HIGHEST_ASPECT_PERCENT, 0, "%")
            text = say("a size no higher than {most} of its width for {tyre}", most=most, tyre=place.tyre)
            return Remedy(text, f"{place.pointer}/tyre/size", "aspect_percent", at_most=HIGHEST_ASPECT_PERCENT)
        if known(place.wheel.behaviour.static_loaded_radius_mm):
            continue
        if unknown(place.view.axle.estimate_mass_kg):
            return mass_remedy(place.view.name)
        least = _least_pressure_kpa(place)
        if least >= HIGHEST_USUAL_KPA:
            text = say("a stronger tyre for {tyre}, one that is not crushed by its load", tyre=place.tyre)
            return Remedy(text, f"{place.pointer}/tyre/size", "load_index")
        text = say(
            "more than {pressure} in {tyre}, or a tyre that is not crushed by its load",
            pressure=plain(least, 0, "kPa"),
            tyre=place.tyre,
        )
        return Remedy(text, f"{place.pointer}/pressure_kpa", "pressure_kpa", least, unit="kPa")
    return None


def mass_remedy(name: AxleName, enough_kg: float = UNKNOWN) -> Remedy:
    """Return that the maximum mass of an axle is to be stated, and up to which one is enough (NaN: not known)."""
    pointer, field = f"/vehicle/{name}/max_axle_mass_kg", "max_axle_mass_kg"
    at_front = name == "front"
    if unknown(enough_kg):
        text = say("state the maximum mass of the rear axle")
        if at_front:
            text = say("state the maximum mass of the front axle")
        return Remedy(text, pointer, field, unit="kg")
    mass = plain(enough_kg, 0, "kg")
    text = say("state the maximum mass of the rear axle: up to {mass} is enough", mass=mass)
    if at_front:
        text = say("state the maximum mass of the front axle: up to {mass} is enough", mass=mass)
    return Remedy(text, pointer, field, at_most=enough_kg, unit="kg")


def _least_pressure_kpa(place: _Place) -> float:
    """Return the pressure at which the tyre yields by no more than the estimates were made for."""
    facts, axle = place.wheel.facts, place.view.axle
    needed = axle.estimate_mass_kg * STANDARD_GRAVITY_M_S2 / axle.tyres / (DEEPEST_SHARE * facts.section_height_mm)
    # The stiffness is a straight line over the pressure.
    flat, one = (
        vertical_stiffness_n_per_mm(kpa, facts.aspect_percent, facts.nominal_width_mm, facts.rim_diameter_mm)
        for kpa in (0.0, 1.0)
    )
    return (needed - flat) / (one - flat)


def stiffness_remedy(*views: AxleView) -> Remedy | None:
    """Return what the estimates of cornering stiffness lack of any wheel; None when nothing is."""
    lacking = diameter_remedy(*views) or _same_structure(*views)
    if lacking is not None:
        return lacking
    for place in _places(views):
        if place.wheel.facts.aspect_percent < LOWEST_ASPECT_PERCENT:
            least = plain(LOWEST_ASPECT_PERCENT)
            return Remedy(
                say("a size with an aspect ratio of {least} or more for {tyre}", least=least, tyre=place.tyre),
                f"{place.pointer}/tyre/size",
                "aspect_percent",
                LOWEST_ASPECT_PERCENT,
            )
    return None


def level_remedy(*views: AxleView) -> Remedy | None:
    """Return what the level of the present cornering stiffness lacks; None when nothing is."""
    for view in views:
        pointer, facts = f"/vehicle/{view.name}/fitted/tyre/size", view.now.facts
        if unknown(view.axle.estimate_mass_kg):
            return mass_remedy(view.name)
        if unknown(facts.rated_kg):
            tyre = TYRES["present", view.name]
            text = say("read load index and speed symbol on the sidewall of {tyre}", tyre=tyre)
            return Remedy(text, pointer, "service_description")
        if unknown(view.now.behaviour.axle_stiffness_n_per_deg):
            least = least_index_for_kg(view.axle.estimate_mass_kg / view.axle.tyres / MOST_OVERLOAD + 1e-6)
            words = say(
                "check the present load index and the axle's mass: they overload the present tyre by over {share}",
                share=plain(100.0 * (MOST_OVERLOAD - 1.0), 0, "%"),
            )
            return Remedy(words, pointer, "load_index", None if least is None else float(least))
    return None
