"""Mixes of checks as callers send them: a shop's catalogue, and questions of which no part came before."""

from __future__ import annotations

import copy
import itertools
import random
from collections.abc import Iterator

from benchmarks.bodies import Json, demo_checks

_AXLES = ("front", "rear")
# Those of cars: with other widths and outer diameters [mm] stand tyres of vehicles that the service refuses.
_WIDTHS = tuple(range(165, 330, 10))
_ASPECTS = tuple(range(30, 80, 5))
_DIAMETERS = (580.0, 760.0)
_SYMBOLS = "STHVWY"
# By rim code: the load indices that a size of it usually has.
_INDICES = {code: (68 + 2 * (code - 13), 100 + 2 * (code - 13)) for code in range(14, 22)}
_SIZES = [
    (code, width, aspect)
    for code in _INDICES
    for width in _WIDTHS
    for aspect in _ASPECTS
    if _DIAMETERS[0] < 25.4 * code + 0.02 * width * aspect < _DIAMETERS[1]
]
VEHICLES, CANDIDATES = 300, 30


def cold_checks(count: int, seed: int = 1) -> Iterator[Json]:
    """Yield checks of vehicles of every kind of which hardly a designation and no mass, room or depth came before."""
    dice = random.Random(seed)
    for demo in itertools.islice(itertools.cycle(demo_checks()), count):
        vehicle = _vehicle(demo, dice)
        yield {**demo, "vehicle": vehicle, "candidate": _candidate(demo, vehicle, dice)}


def zipf_checks(count: int, seed: int = 2) -> Iterator[Json]:
    """Yield checks of a shop's 300 vehicles by 30 candidates: the one at rank n is asked about 1/n as often."""
    dice = random.Random(seed)
    vehicles = [
        {**each, "vehicle": _vehicle(each, dice)} for each in itertools.islice(itertools.cycle(demo_checks()), VEHICLES)
    ]
    asked = [
        {**each, "candidate": _candidate(each, each["vehicle"], dice)} for each in vehicles for _ in range(CANDIDATES)
    ]
    dice.shuffle(asked)
    yield from dice.choices(asked, [1.0 / rank for rank in range(1, len(asked) + 1)], k=count)


def _vehicle(demo: Json, dice: random.Random) -> Json:
    made: Json = copy.deepcopy(demo["vehicle"])
    # Some have other wheels at the back.
    wheels = [_wheel(dice)] * 2 if dice.random() < 0.7 else [_wheel(dice), _wheel(dice)]
    for name, wheel in zip(_AXLES, wheels, strict=True):
        axle = made[name]
        axle["max_axle_mass_kg"] = round(axle["max_axle_mass_kg"] * dice.uniform(0.8, 1.1), 3)
        for room in axle.get("clearance", ()):
            axle["clearance"][room] = round(axle["clearance"][room] + dice.uniform(0.0, 4.0), 3)
        _fit(axle["fitted"], wheel, dice)
    return made


def _candidate(demo: Json, vehicle: Json, dice: random.Random) -> Json:
    made: Json = copy.deepcopy(demo["candidate"])
    for name, wheel in zip(
        _AXLES, [_wheel(dice)] * 2 if dice.random() < 0.5 else [_wheel(dice), _wheel(dice)], strict=True
    ):
        if name not in made:
            continue
        _fit(made[name], vehicle[name]["fitted"] if dice.random() < 0.2 else wheel, dice)
    return made


def _wheel(dice: random.Random) -> Json:
    code, width, aspect = dice.choice(_SIZES)
    rim = round(2.0 * (0.85 * width / 25.4 + dice.choice((-0.5, 0.0, 0.0, 0.5)))) / 2.0
    return {
        "tyre": {
            "size": f"{width}/{aspect} R{code} {dice.randint(*_INDICES[code])}{dice.choice(_SYMBOLS)}"
            f"{dice.choice(('', '', ' XL', ' M+S 3PMSF'))}"
        },
        "rim": {"size": f"{rim:g}J x {code} H2 ET{dice.randint(200, 550) / 10:g}"},
    }


def _fit(fitment: Json, wheel: Json, dice: random.Random) -> None:
    tyre, rim = fitment["tyre"], fitment["rim"]
    if "size" in tyre and "size" in rim:
        tyre["size"], rim["size"] = wheel["tyre"]["size"], wheel["rim"]["size"]
        for name in ("overall_diameter_mm", "rolling_circumference_mm", "section_width_mm", "approved_rim_widths_in"):
            tyre.pop(name, None)
    tyre["tread_depth_mm"] = round(dice.uniform(2.0, 9.0), 3)
