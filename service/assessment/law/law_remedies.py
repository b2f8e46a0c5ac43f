"""What would keep a rule of a place, said of a field of the request: an offset, a size, a load index.

A rule limits a change or a margin; the caller cannot write either of them, so each is turned into what he can.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from types import MappingProxyType

from service.assessment.checks.grade import LAST_BIT
from service.assessment.checks.missing import diameter_remedy, offset_remedy, service_remedy, width_remedy
from service.assessment.checks.words import rim_pointer, span, tyre_pointer
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Remedy
from service.core.numeric import known_or, unknown
from service.core.saying import Amount, say
from service.core.units import MM_PER_INCH
from service.rules.rule import Bound, Rule
from service.standards.load_index import least_index_for_kg
from service.standards.speed_symbol import least_symbol_for_kmh

Span = tuple[float | None, float | None]
Field = Callable[[AxleView, Span], Remedy]


def law_remedy(rule: Rule, view: AxleView | CarView) -> Remedy | None:
    """Return what would keep the easiest bound of a rule; one bound kept is enough."""
    if not isinstance(view, AxleView):
        return _radial(view)
    if rule.divisor != 1.0 and view.then.facts.commercial != 1.0:
        return _rating(view, rule.divisor)
    # The request gives one designation per axle, so rules on its sameness have no field.
    ways = [_FIELDS[bound.quantity](view, _span(bound)) for bound in rule.bounds if bound.quantity in _FIELDS]
    return min(ways, key=_strictness, default=None)


def _strictness(remedy: Remedy) -> tuple[float, float]:
    least = -math.inf if remedy.at_least is None else remedy.at_least
    most = math.inf if remedy.at_most is None else remedy.at_most
    return least, -most


def missing_for_law(bound: Bound, where: str, view: AxleView | CarView) -> Remedy | None:
    """Return which field lacks for the quantity of a rule."""
    if not isinstance(view, AxleView) or bound.quantity == "same_size_on_axle":
        return None
    if bound.quantity.startswith(("track", "offset")):
        if bound.quantity == "track_change_percent" and unknown(view.axle.track_mm):
            text = say("give the registered track of the rear axle")
            if where == "front":
                text = say("give the registered track of the front axle")
            return Remedy(text, f"/vehicle/{where}/track_mm", "track_mm", unit="mm")
        return offset_remedy(view)
    if bound.quantity.startswith(("overall", "rolling")):
        return diameter_remedy(view)
    return width_remedy(view) if bound.quantity.startswith("section") else service_remedy(view)


def _span(bound: Bound) -> Span:
    least = None if bound.comparison == "at_most" else bound.value
    most = None if bound.comparison == "at_least" else bound.value
    if "_abs_" in bound.quantity:
        least = -bound.value
    return least, most


def _shifted(ends: Span, now: float, scale: float = 1.0) -> Span:
    """Return the bounds of a quantity whose change is bounded; a negative scale turns them round."""
    least, most = (None if end is None else now + scale * end for end in ends)
    return (most, least) if scale < 0.0 else (least, most)


def _radial(car: CarView) -> Remedy:
    front_radial = car.front.then.facts.radial == 1.0
    other = "rear" if front_radial else "front"
    words = say("radial tyres at the rear too") if front_radial else say("radial tyres at the front too")
    return Remedy(words, tyre_pointer(other), "construction", equals="radial")


def _offset(view: AxleView, ends: Span) -> Remedy:
    if unknown(view.now.facts.offset_mm):
        # The same rim, of which nobody read the offset: only its spacer moves it.
        return _spacer(view, _none_below_naught(_shifted(ends, view.now.facts.spacer_mm, -1.0)))
    # The rim's own mark: the spacer takes its thickness from it.
    spacer = view.then.facts.spacer_mm
    least, most = _shifted(ends, view.now.facts.offset_mm + spacer)
    # Marked in millimetres whatever units the answer is in.
    words = say("rims with ET {offset}", offset=span(least, most, ""))
    if spacer:
        words = say("rims with ET {offset} on these spacers", offset=span(least, most, ""))
    return Remedy(words, rim_pointer(view.name), "offset_mm", least, most, unit="mm")


def _spacer(view: AxleView, ends: Span) -> Remedy:
    least, most = ends
    words = say("no spacers")
    if most != 0.0:
        words = say("spacers of {thickness}", thickness=span(least, most, "mm"))
    return Remedy(words, f"/candidate/{view.name}/spacer_mm", "spacer_mm", least, most, unit="mm")


def _none_below_naught(ends: Span) -> Span:
    least, most = ends
    return None if least is None or least <= 0.0 else least, most


def _track_mm(view: AxleView, ends: Span) -> Remedy:
    least, most = ends
    return _offset(view, (None if most is None else -0.5 * most, None if least is None else -0.5 * least))


def _track_percent(view: AxleView, ends: Span) -> Remedy:
    least, most = (None if end is None else 0.01 * end * view.axle.sure_track_mm for end in ends)
    return _track_mm(view, (least, most))


def _diameter(view: AxleView, ends: Span) -> Remedy:
    least, most = _shifted(ends, view.now.geometry.overall_diameter_mm)
    words = say("an overall diameter of {size}", size=span(least, most, "mm"))
    return Remedy(words, tyre_pointer(view.name), "overall_diameter_mm", least, most, unit="mm")


def _diameter_percent(view: AxleView, ends: Span) -> Remedy:
    share = 0.01 * view.now.geometry.overall_diameter_mm
    return _diameter(view, (None if ends[0] is None else ends[0] * share, None if ends[1] is None else ends[1] * share))


def _circumference_percent(view: AxleView, ends: Span) -> Remedy:
    now = view.now.geometry.rolling_circumference_mm
    least, most = _shifted(ends, now, 0.01 * now)
    words = say("a rolling circumference of {size}", size=span(least, most, "mm"))
    pointer = f"/candidate/{view.name}/tyre/rolling_circumference_mm"
    return Remedy(words, pointer, "rolling_circumference_mm", least, most, unit="mm")


def _width(view: AxleView, ends: Span) -> Remedy:
    least, most = _shifted(ends, view.now.geometry.section_width_mm)
    words = say("a section width of {size}", size=span(least, most, "mm"))
    pointer = f"/candidate/{view.name}/tyre/section_width_mm"
    return Remedy(words, pointer, "section_width_mm", least, most, unit="mm")


def _width_percent(view: AxleView, ends: Span) -> Remedy:
    share = 0.01 * view.now.geometry.section_width_mm
    return _width(view, (None if ends[0] is None else ends[0] * share, None if ends[1] is None else ends[1] * share))


def _rim_diameter(view: AxleView, ends: Span) -> Remedy:
    least, most = _shifted(ends, view.now.facts.rim_code, 1.0 / MM_PER_INCH)
    words = say("rim diameter code {code}", code=span(least, most, "", 1))
    return Remedy(words, rim_pointer(view.name), "rim_diameter_in", least, most, unit="in")


def _rim_width(view: AxleView, ends: Span) -> Remedy:
    least, most = _shifted(ends, view.now.facts.rim_width_in, 1.0 / MM_PER_INCH)
    facts = view.then.facts
    # Only a rim that the proposed tyre takes as well is any help.
    low, high = _narrowed(least, facts.approved_min_in, max), _narrowed(most, facts.approved_max_in, min)
    if low is not None and high is not None and low > high + LAST_BIT:
        width = span(least, most, "in", 1)
        words = say("a rim width of {width}, and a tyre that is approved on it", width=width)
        return Remedy(words, tyre_pointer(view.name), "nominal_width_mm")
    words = say("a rim width of {width}", width=span(low, high, "in", 1))
    return Remedy(words, rim_pointer(view.name), "rim_width_in", low, high, unit="in")


def _narrowed(end: float | None, other: float, choose: Callable[[float, float], float]) -> float | None:
    """Return the narrower of two ends of a range, of which either may not be known."""
    if unknown(other):
        return end
    return other if end is None else choose(end, other)


def _index(view: AxleView, ends: Span) -> Remedy:
    least, most = _shifted(ends, view.now.facts.load_index)
    words = say("load index {index}", index=span(least, most, ""))
    return Remedy(words, tyre_pointer(view.name), "load_index", least, most)


def _carrying(view: AxleView, per_tyre_kg: float) -> Remedy:
    # What an index carries exactly, it carries: a sum may be off by the last bit.
    index = least_index_for_kg(per_tyre_kg - LAST_BIT)
    if index is None:
        text = say("check the axle's mass: no load index of the table carries it")
        return Remedy(text, tyre_pointer(view.name), "load_index")
    words = say("load index {index} or more", index=Amount(index))
    return Remedy(words, tyre_pointer(view.name), "load_index", float(index))


def _rating(view: AxleView, divisor: float = 1.0) -> Remedy:
    return _carrying(view, divisor * view.axle.max_axle_mass_kg / view.axle.tyres)


def _capacity(view: AxleView, ends: Span) -> Remedy:
    facts, carried = view.then.facts, view.then.load
    asked = view.axle.max_axle_mass_kg * view.conditions.axle_mass_share * (1.0 + 0.01 * (ends[0] or 0.0))
    factor = known_or(facts.law_load_factor, facts.load_factor)
    if factor == 0.0:
        # So slow a tyre carries nothing at the speed at which the law reads the load.
        return _speed(view, (view.conditions.law_speed_kmh, None))
    return _carrying(view, asked * carried.capacity_kg / carried.axle_capacity_kg / factor)


def _speed(view: AxleView, ends: Span) -> Remedy:
    least = ends[0] or 0.0
    symbol = least_symbol_for_kmh(least)
    words = say("the tyre maker's statement for this speed")
    if symbol is not None:
        words = say("speed symbol {symbol} or faster", symbol=symbol)
    return Remedy(words, tyre_pointer(view.name), "speed_symbol", least, equals=symbol, unit="km/h")


_FIELDS: Mapping[str, Field] = MappingProxyType(
    {
        "track_change_percent": _track_percent,
        "track_change_mm": _track_mm,
        "track_change_abs_mm": _track_mm,
        "offset_change_mm": _offset,
        "spacer_mm": _spacer,
        "overall_diameter_change_percent": _diameter_percent,
        "overall_diameter_change_abs_percent": _diameter_percent,
        "overall_diameter_change_mm": _diameter,
        "rolling_circumference_change_percent": _circumference_percent,
        "rolling_circumference_change_abs_percent": _circumference_percent,
        "section_width_change_mm": _width,
        "section_width_change_percent": _width_percent,
        "rim_diameter_change_mm": _rim_diameter,
        "rim_diameter_change_abs_mm": _rim_diameter,
        "rim_width_change_mm": _rim_width,
        "load_index_change": _index,
        "load_capacity_margin_percent": _capacity,
        "load_rating_sum_margin_kg": lambda view, _: _rating(view),
        "tyre_load_rating_margin_kg": lambda view, _: _rating(view),
        "speed_capability_kmh": _speed,
        "speed_capability_margin_kmh": lambda view, ends: _speed(view, _shifted(ends, view.vehicle.max_speed_kmh)),
        "speed_symbol_change_kmh": lambda view, ends: _speed(view, _shifted(ends, view.now.facts.speed_capability_kmh)),
    }
)
