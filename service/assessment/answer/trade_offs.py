"""What is gained and what is lost, one fact an entry, and the entries as a paragraph.

Where the service has a number it is given; where no published number exists (ride, ruts) only the usual direction is
said, as common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import isfinite
from operator import attrgetter
from typing import Literal, NamedTuple

from service.assessment.answer.label_effects import LABEL, LabelEffects
from service.assessment.answer.subjects import on_axle
from service.assessment.checks.balance import GRADIENT
from service.assessment.checks.wet_reserve import FILM, LIFT, SPEED
from service.assessment.checks.words import plain
from service.assessment.view.change import percent
from service.assessment.view.driving import AxleDriving, Driving, Reserve
from service.assessment.view.views import AxleView, CarView
from service.core.findings import Basis, Where
from service.core.numeric import known
from service.core.saying import Said, say, sentences
from service.core.sources import basis

TradeCode = Literal[
    "peak_grip",
    "cornering_stiffness",
    "wet_reserve",
    "heat_reserve",
    "load_capacity",
    "ride",
    "ruts",
    "braking",
    "label_wet_braking",
    "label_energy",
]
TradeDirection = Literal["gain", "loss", "alike"]

PRACTICE = basis("COMMON-PRACTICE", "usual direction, no published number")
GRIP = basis("PROJECT", "friction after the load reserve, same make and compound")
HEAT = basis("PROJECT", "tread width and overall diameter for the same work of friction")
LOAD = basis("UN-R30 load index")
OF_A_KIND = attrgetter("commercial", "winter_mark", "temporary_spare")
COMMERCIAL_LOAD = basis("UN-R54 annex 8")
# Less than this is no difference worth a word.
WORTH_A_WORD_PERCENT = 0.5
WORTH_A_WORD_MM = 2.0
WORTH_A_WORD_KWH = 0.05
NOTHING = say("Nothing changes that could be felt.")


class TradeOff(NamedTuple):
    """One thing that is gained, lost or stays alike; value and unit are None where no number exists."""

    code: TradeCode
    axle: Where
    direction: TradeDirection
    value: float | None
    unit: str | None
    text: str
    basis: Basis


class _Change(NamedTuple):
    """A change by its size: what more and less of it are, and how much is worth a word."""

    value: float
    worth: float = WORTH_A_WORD_PERCENT
    more_is: TradeDirection = "gain"
    less_is: TradeDirection = "loss"

    @property
    def direction(self) -> TradeDirection:
        if abs(self.value) <= self.worth:
            return "alike"
        return self.more_is if self.value > 0.0 else self.less_is

    def words(self, more: Said, less: Said, alike: Said) -> Said:
        if self.direction == "alike":
            return alike
        return more if self.value > 0.0 else less


def trade_offs(car: CarView, road: Driving, label: LabelEffects | None) -> tuple[TradeOff, ...]:
    """Return what is gained and lost: front, rear, then the vehicle; empty where nothing could be felt."""
    found = (
        *_on_axle(car.front, road.front, car.front_reserve),
        *_on_axle(car.rear, road.rear, car.rear_reserve),
        *_braking(car, road.braking_distance_percent.value),
        *_label(label),
    )
    # What is not known, or grows from nothing, is not spoken of.
    found = tuple(each for each in found if each.value is None or isfinite(each.value))
    return found if any(each.direction != "alike" for each in found) else ()


def trade_offs_text(found: Sequence[TradeOff]) -> Said:
    """Return the gains and losses as a paragraph; what stays alike is not spoken of."""
    return sentences(*(each.text for each in found if each.direction != "alike")) or NOTHING


def _on_axle(view: AxleView, found: AxleDriving, reserve: Reserve) -> Iterator[TradeOff]:
    made = (
        _peak_grip(view, found),
        _stiffness(view),
        _wet_reserve(view, reserve),
        _heat(view, found),
        _load(view),
        _ride(view),
        _ruts(view),
    )
    return (each for each in made if _is_felt(each, view))


def _is_felt(found: TradeOff, view: AxleView) -> bool:
    """Return whether an entry says what is so: a trailer is not steered."""
    if view.vehicle.is_trailer:
        return found.code == "load_capacity"
    if found.code == "heat_reserve":
        # Only a car is driven so hard that its tread runs hot.
        return view.vehicle.category.startswith("M1")
    return True


def _peak_grip(view: AxleView, found: AxleDriving) -> TradeOff:
    change = _Change(found.peak_grip_percent.value)
    size = plain(abs(change.value), 1, "%")
    text = change.words(
        say("the tyres grip about {size} more on a dry road.", size=size),
        say("the tyres grip about {size} less on a dry road.", size=size),
        say("the grip on a dry road stays as it is."),
    )
    return _entry("peak_grip", view, change, text, GRIP)


def _stiffness(view: AxleView) -> TradeOff:
    change = _Change(percent(1.0, view.change.cornering_stiffness.value))
    size = plain(abs(change.value), 0, "%")
    text = change.words(
        say("the cornering stiffness in the dry rises by about {size}.", size=size),
        say("the cornering stiffness in the dry falls by about {size}.", size=size),
        say("the cornering stiffness stays as it is."),
    )
    return _entry("cornering_stiffness", view, change, text, GRADIENT)


def _wet_reserve(view: AxleView, reserve: Reserve) -> TradeOff:
    now, then = reserve.present_percent, reserve.proposed_percent
    change = _Change(then - now)
    digits = 1 if plain(then) == plain(now) else 0
    rests = say(
        "at {speed} in {film} of water about {then} of the load still rests on the road instead of {now}.",
        speed=SPEED,
        film=FILM,
        then=plain(then, digits, "%"),
        now=plain(now, digits, "%"),
    )
    text = change.words(rests, rests, say("the wet reserve stays as it is."))
    return _entry("wet_reserve", view, change, text, LIFT)


def _heat(view: AxleView, found: AxleDriving) -> TradeOff:
    change = _Change(found.heat_reserve_percent)
    size = plain(abs(change.value), 0, "%")
    text = change.words(
        say("the tread stands about {size} more heat when driven hard.", size=size),
        say("the tread stands about {size} less heat when driven hard.", size=size),
        say("the tread stands as much heat as now."),
    )
    return _entry("heat_reserve", view, change, text, HEAT)


def _load(view: AxleView) -> TradeOff:
    change = _Change(view.change.load_capacity_percent)
    size = plain(abs(change.value), 1, "%")
    text = change.words(
        say("the tyres carry {size} more.", size=size),
        say("the tyres carry {size} less.", size=size),
        say("the tyres carry as much as now."),
    )
    ground = COMMERCIAL_LOAD if view.then.facts.commercial else LOAD
    return _entry("load_capacity", view, change, text, ground)


def _ride(view: AxleView) -> TradeOff:
    change = _Change(view.then.facts.section_height_mm - view.now.facts.section_height_mm, WORTH_A_WORD_MM)
    size = plain(abs(change.value), 0, "mm")
    text = change.words(
        say("the sidewall is {size} higher, which usually softens the ride.", size=size),
        say("the sidewall is {size} lower, which usually hardens the ride.", size=size),
        say("the sidewall is as high as now."),
    )
    return _entry("ride", view, change, text, PRACTICE, "mm")


def _ruts(view: AxleView) -> TradeOff:
    change = _Change(
        view.then.facts.nominal_width_mm - view.now.facts.nominal_width_mm, WORTH_A_WORD_MM, "loss", "gain"
    )
    text = change.words(
        say("a wider tyre usually follows ruts more."),
        say("a narrower tyre usually follows ruts less."),
        say("the tyre follows ruts as it does now."),
    )
    return _entry("ruts", view, change, text, PRACTICE, None)


def _entry(
    code: TradeCode, view: AxleView, change: _Change, text: Said, ground: Basis, unit: str | None = "%"
) -> TradeOff:
    # What has no unit has no number, but a size that is not known must be seen, so that the entry is left out.
    value = change.value if unit is not None or not known(change.value) else None
    return TradeOff(code, view.name, change.direction, value, unit, on_axle(view.name, text), ground)


def _braking(car: CarView, value: float) -> Iterator[TradeOff]:
    if car.vehicle.is_trailer or not known(value):
        return
    change = _Change(value, more_is="loss", less_is="gain")
    size = plain(abs(value), 1, "%")
    text = change.words(
        say("The braking distance on a dry road grows by about {size}.", size=size),
        say("The braking distance on a dry road shrinks by about {size}.", size=size),
        say("The braking distance on a dry road stays as it is."),
    )
    yield TradeOff("braking", "vehicle", change.direction, value, "%", text, GRIP)


def _label(found: LabelEffects | None) -> Iterator[TradeOff]:
    if found is None:
        return
    if found.wet_braking_distance_percent is not None:
        value = found.wet_braking_distance_percent.value
        wet, size = _Change(value, more_is="loss", less_is="gain"), plain(abs(value), 0, "%")
        text = wet.words(
            say("By the wet grip class of the label the wet braking distance grows by about {size}.", size=size),
            say("By the wet grip class of the label the wet braking distance shrinks by about {size}.", size=size),
            say("By the wet grip class of the label the wet braking distance stays as it is."),
        )
        yield TradeOff("label_wet_braking", "vehicle", wet.direction, value, "%", text, LABEL)
    if found.energy_kwh_per_100km is not None:
        value = found.energy_kwh_per_100km.value
        energy, size = _Change(value, WORTH_A_WORD_KWH, "loss", "gain"), plain(abs(value), 2, "kWh/100 km")
        text = energy.words(
            say("By the rolling resistance class of the label the wheels take {size} more.", size=size),
            say("By the rolling resistance class of the label the wheels take {size} less.", size=size),
            say("By the rolling resistance class of the label the wheels take as much energy as now."),
        )
        yield TradeOff("label_energy", "vehicle", energy.direction, value, "kWh/100 km", text, LABEL)
