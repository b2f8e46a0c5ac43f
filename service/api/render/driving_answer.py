"""What a change does on the road, as plain data: put into the figures of the axles and of the vehicle."""

from __future__ import annotations

from collections.abc import Sequence

from service.api.render.numbers import Json, Layout, rounded
from service.assessment.answer.assess import Assessment
from service.assessment.answer.label_effects import LabelEffects
from service.assessment.answer.measure_first import MeasureFirst
from service.assessment.answer.road_words import turn_in_words, wet_balance
from service.assessment.view.driving import AxleDriving
from service.assessment.view.mass_change import mass_change
from service.assessment.view.views import AxleView
from service.core.findings import Estimate

_RESERVE = Layout({}, {"wet_reserve_percent": 1})
_AXLE = Layout(
    {"heat_reserve_percent": 1},
    {"peak_grip_percent": 1, "wheel_mass_kg": 1, "wheel_inertia_percent": 1},
)
_BRAKING = Layout({}, {"braking_distance_percent": 1})


def add_driving(axles: Json, vehicle: Json, assessed: Assessment) -> None:
    """Put what the change does on the road into the figures of both axles and of the vehicle."""
    car, found = assessed.car, assessed.driving
    _add_axle(axles["front"], car.front, found.front)
    _add_axle(axles["rear"], car.rear, found.rear)
    balance = vehicle["balance"]
    balance["dry"] = {"direction": balance["direction"], "degree": balance["degree"], "text": balance["text"]}
    wet = wet_balance(car)
    if wet is not None:
        balance["wet"] = wet._asdict()
    if not car.vehicle.is_trailer:
        vehicle |= _BRAKING.named(rounded(found.braking_distance_percent, _BRAKING.scale))
    turning = turn_in_words(car, found.turn_in)
    if turning is not None:
        vehicle["turn_in"] = turning._asdict()
    if assessed.label_effects is not None:
        vehicle["label_effects"] = _label(assessed.label_effects)


def measured_first(found: Sequence[MeasureFirst]) -> list[Json]:
    """Return what to measure first as plain data."""
    return [
        {"pointer": each.pointer, "text": each.text, "settles": list(each.settles), "narrows": list(each.narrows)}
        for each in found
    ]


def _add_axle(axle: Json, view: AxleView, found: AxleDriving) -> None:
    axle["present"] |= _RESERVE.named(rounded(found.wet_reserve_present, _RESERVE.scale))
    axle["proposed"] |= _RESERVE.named(rounded(found.wet_reserve_proposed, _RESERVE.scale))
    masses = mass_change(view.now, view.then)
    numbers = (found.heat_reserve_percent, *found.peak_grip_percent, *masses.mass_kg, *masses.inertia_percent)
    axle["change"] |= _AXLE.named(rounded(numbers, _AXLE.scale))


def _label(found: LabelEffects) -> Json:
    shown: Json = {}
    for name, value in found._asdict().items():
        if isinstance(value, Estimate):
            layout = Layout({}, {name: 2})
            shown |= layout.named(rounded(value, layout.scale))
        elif value is not None:
            shown[name] = value
    return shown
