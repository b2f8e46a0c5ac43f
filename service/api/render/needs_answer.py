"""What each axle asks of a tyre and of a rim."""

from __future__ import annotations

from service.api.render.numbers import Json, to_hundredths
from service.assessment.batch.axle_needs import AxleNeeds, SizeNeed, SizeWindow, Span
from service.assessment.batch.rim_words import subject_of
from service.assessment.case import Axle, Case, Rim
from service.core.numeric import known


def both_needs(case: Case, found: tuple[AxleNeeds, AxleNeeds]) -> Json:
    """Return what both axles ask for."""
    axles = case.vehicle.front, case.vehicle.rear
    return {axle.name: _needs(case, axle, each) for axle, each in zip(axles, found, strict=True)}


def of_the_disc(rim: Rim) -> Json:
    """Return what a hub and the axle's mass ask of a rim, as far as it is known."""
    shown: Json = {} if rim.bolt_circle is None else {"bolt_circle": rim.bolt_circle.canonical}
    return shown | known_numbers(centre_bore_mm=rim.centre_bore_mm, load_rating_kg=rim.load_rating_kg)


def known_numbers(**numbers: float) -> Json:
    """Return the numbers that are known, rounded, by name."""
    return {name: to_hundredths(value) for name, value in numbers.items() if known(value)}


def _needs(case: Case, axle: Axle, found: AxleNeeds) -> Json:
    shown = {name: value for name, value in found.service._asdict().items() if value is not None}
    if axle.wheels_per_side == 1:
        shown.pop("load_index_twin", None)
    shown |= known_numbers(winter_floor_kmh=found.winter_floor_kmh)
    if found.winter_symbol is not None:
        shown["winter_speed_symbol"] = found.winter_symbol
    sizes = {"overall_diameter_mm": found.overall_diameter, "nominal_width_mm": found.nominal_width}
    shown |= {name: _size(case, need) for name, need in sizes.items() if need is not None}
    return shown | {"rim": known_numbers(min_diameter_in=found.min_rim_diameter_in) | of_the_disc(found.rim)}


def _size(case: Case, need: SizeNeed) -> Json:
    by = [
        {"code": question.code, "axle": question.where, "text": subject_of(question.code, case), **_window(window)}
        for question, window in need.by
    ]
    return {**_window(need.window), "by": by}


def _window(window: SizeWindow) -> Json:
    return {name: _span(span) for name, span in window._asdict().items() if span is not None}


def _span(span: Span) -> Json:
    return known_numbers(**span._asdict())
