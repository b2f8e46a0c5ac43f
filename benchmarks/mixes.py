"""Mixes of checks as callers send them: a shop's catalogue, and questions of which no part came before."""

from __future__ import annotations

import copy
import itertools
import random
from collections.abc import Iterator
from typing import NamedTuple

from benchmarks.bodies import Json, demo_checks
from service.standards.load_index import load_kg

_AXLES = ("front", "rear")
# Those of cars: with other widths and outer diameters [mm] stand tyres of vehicles that the service refuses.
_WIDTHS = tuple(range(165, 330, 10))
_ASPECTS = tuple(range(30, 80, 5))
_CODES = tuple(range(14, 22))
_SIZES = [
    (25.4 * code + 0.02 * width * aspect, code, width, aspect)
    for code in _CODES
    for width in _WIDTHS
    for aspect in _ASPECTS
]
_DIAMETERS_MM = (600.0, 720.0)
_SYMBOLS = {"S": 180.0, "T": 190.0, "H": 210.0, "V": 240.0, "W": 270.0, "Y": 300.0}
SLOW_KMH = 210.0
VEHICLES, CANDIDATES = 300, 30


class _Wheel(NamedTuple):
    tyre: str
    rim: str
    width_mm: int
    diameter_mm: float
    offset_mm: float


def cold_checks(count: int, seed: int = 1) -> Iterator[Json]:
    """Yield checks of vehicles of every kind of which hardly a designation and no mass, room or depth came before.

    The sizes proposed are those that a shop would try: some as large as the present ones, one in three not.
    """
    dice = random.Random(seed)
    for demo in itertools.islice(itertools.cycle(demo_checks()), count):
        vehicle, fitted = _vehicle(demo, dice)
        yield {**demo, "vehicle": vehicle, "candidate": _candidate(demo, vehicle, fitted, dice)}


def zipf_checks(count: int, seed: int = 2) -> Iterator[Json]:
    """Yield checks of a shop's 300 vehicles by 30 candidates: the one at rank n is asked about 1/n as often."""
    dice = random.Random(seed)
    asked = []
    for demo in itertools.islice(itertools.cycle(demo_checks()), VEHICLES):
        vehicle, fitted = _vehicle(demo, dice)
        asked += [
            {**demo, "vehicle": vehicle, "candidate": _candidate(demo, vehicle, fitted, dice)}
            for _ in range(CANDIDATES)
        ]
    dice.shuffle(asked)
    yield from dice.choices(asked, [1.0 / rank for rank in range(1, len(asked) + 1)], k=count)


def _vehicle(demo: Json, dice: random.Random) -> tuple[Json, list[_Wheel]]:
    made: Json = copy.deepcopy(demo["vehicle"])
    for name in _AXLES:
        axle = made[name]
        axle["max_axle_mass_kg"] = round(axle["max_axle_mass_kg"] * dice.uniform(0.8, 1.1), 3)
        for room in axle.get("clearance", ()):
            axle["clearance"][room] = round(axle["clearance"][room] + dice.uniform(0.0, 4.0), 3)
    like = _Wheel("", "", dice.choice(_WIDTHS), dice.uniform(*_DIAMETERS_MM), dice.randint(300, 500) / 10.0)
    front = _wheel(dice, made, "front", like)
    # Three in ten have other wheels at the back.
    rear = front if dice.random() < 0.7 else _wheel(dice, made, "rear", like)
    for name, wheel in zip(_AXLES, (front, rear), strict=True):
        _fit(made[name]["fitted"], wheel, dice)
    return made, [front, rear]


def _candidate(demo: Json, vehicle: Json, fitted: list[_Wheel], dice: random.Random) -> Json:
    made: Json = copy.deepcopy(demo["candidate"])
    larger = dice.choice((1.0, 1.0, 1.0, 1.0, 0.97, 1.03))
    wheels = [
        _wheel(
            dice,
            vehicle,
            name,
            now._replace(diameter_mm=larger * now.diameter_mm, offset_mm=now.offset_mm + dice.randint(-30, 10) / 10.0),
        )
        for name, now in zip(_AXLES, fitted, strict=True)
    ]
    if dice.random() < 0.6:
        wheels[1] = wheels[0]
    for name, wheel in zip(_AXLES, wheels, strict=True):
        if name in made:
            _fit(made[name], wheel, dice)
    return made


def _wheel(dice: random.Random, vehicle: Json, axle: str, like: _Wheel) -> _Wheel:
    _, _, width_mm, outer_mm, offset_mm = like
    smallest = max(each.get("min_rim_diameter_in", 0.0) for each in (vehicle["front"], vehicle["rear"]))
    near = [each for each in _SIZES if abs(each[0] / outer_mm - 1.0) < 0.015 and each[1] >= smallest]
    # A step or two wider or narrower at most, where there is such a size.
    outer, code, width, aspect = dice.choice([each for each in near if abs(each[2] - width_mm) < 25] or near)
    rim = round(2.0 * (0.85 * width / 25.4 + dice.choice((-0.5, 0.0, 0.0, 0.5)))) / 2.0
    tyres = 2.0 * vehicle[axle].get("wheels_per_side", 1)
    # At its top speed a fast car may load its tyres less.
    share = 1.0 if vehicle["max_speed_kmh"] <= SLOW_KMH else 0.9
    least = next(i for i in range(280) if share * load_kg(i) >= vehicle[axle]["max_axle_mass_kg"] / tyres)
    fast = [name for name, kmh in _SYMBOLS.items() if kmh >= min(vehicle["max_speed_kmh"], 300.0)]
    service = f"{least + dice.randint(0, 5)}{dice.choice(fast[:2])}"
    marks = dice.choice(("", "", " XL", " M+S 3PMSF"))
    offset = round(offset_mm, 1)
    return _Wheel(
        f"{width}/{aspect} R{code} {service}{marks}", f"{rim:g}J x {code} H2 ET{offset:g}", width, outer, offset
    )


def _fit(fitment: Json, wheel: _Wheel, dice: random.Random) -> None:
    tyre, rim = fitment["tyre"], fitment["rim"]
    if "size" in tyre and "size" in rim:
        tyre["size"], rim["size"] = wheel.tyre, wheel.rim
        for name in ("overall_diameter_mm", "rolling_circumference_mm", "section_width_mm", "approved_rim_widths_in"):
            tyre.pop(name, None)
    tyre["tread_depth_mm"] = round(dice.uniform(3.0, 9.0), 3)
